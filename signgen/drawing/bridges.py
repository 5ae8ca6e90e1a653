"""Bridges that hold the insides of letters which are cut right through."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from msgspec.structs import replace
from shapely.geometry import LineString, MultiPolygon, Point, Polygon

from signgen.errors import Problem
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.offsets import area_of, polygons
from signgen.messages import Message
from signgen.spec.finish import BridgeSpec

DIRECTIONS = 72
"""Ways out of a counter that are tried: every five degrees."""

UPRIGHT_RATIO = 0.6
"""How much longer a bridge may be to stand upright or lie level rather than at 45 degrees: it looks meant."""

APART_RATIO = 0.5
"""Bridges of one counter keep at least this part of an even spacing."""

STENCIL_FACE = "saira-stencil"

Area = Polygon | MultiPolygon


def with_bridges(recess: Recess, count: int, width_mm: float) -> Recess:
    """The letter with up to `count` bars of wood across its stroke from every counter, the shortest ways out."""
    parts: list[Polygon] = []
    for part in polygons(recess.area):
        bars = [bar for ring in part.interiors for bar in _bars(part, Polygon(ring), count, width_mm)]
        parts += polygons(shapely.difference(part, shapely.union_all(bars))) if bars else [part]
    return replace(recess, area=area_of(tuple(parts)))


def _bars(part: Polygon, counter: Polygon, count: int, width_mm: float) -> Iterator[Polygon]:
    """Bars from a counter, those that lead outside the letter before those that lead into another counter."""
    middle = counter.centroid if counter.contains(counter.centroid) else shapely.point_on_surface(counter)
    x, y = (float(value) for value in shapely.get_coordinates(middle)[0])
    x0, y0, x1, y1 = part.bounds
    far = math.hypot(x1 - x0, y1 - y0)
    outline = Polygon(part.exterior)
    found: list[tuple[bool, float, float, LineString]] = []
    for number in range(DIRECTIONS):
        angle = 2 * math.pi * number / DIRECTIONS
        ux, uy = math.cos(angle), math.sin(angle)
        ray = shapely.intersection(LineString([(x, y), (x + far * ux, y + far * uy)]), part)
        pieces = [piece for piece in shapely.get_parts(ray) if piece.geom_type == "LineString"]
        if not pieces:
            continue
        ends = [np.hypot(*(shapely.get_coordinates(piece) - (x, y)).T) for piece in pieces]
        first = min(ends, key=lambda away: float(away.min()))
        near, end = float(first.min()), float(first.max())
        beyond = Point(x + (end + 1e-3) * ux, y + (end + 1e-3) * uy)
        slant = abs(math.sin(2 * angle))  # 0 upright and level, 1 in between
        near, end = near - width_mm / 2, end + width_mm / 2
        line = LineString([(x + near * ux, y + near * uy), (x + end * ux, y + end * uy)])
        found.append((outline.contains(beyond), (end - near) * (1 + UPRIGHT_RATIO * slant), angle, line))
    apart = APART_RATIO * 2 * math.pi / count
    chosen: list[float] = []
    for _, _, angle, line in sorted(found, key=lambda row: (row[0], round(row[1], 6), row[2])):
        turned = [abs(math.remainder(angle - other, 2 * math.pi)) for other in chosen]
        if len(chosen) < count and all(turn >= apart - 1e-9 for turn in turned):
            chosen.append(angle)
            yield line.buffer(width_mm / 2, cap_style="flat")


def loose_problems(
    letters: Sequence[Recess], edge: Polygon, holes: Sequence[Hole], bridges: BridgeSpec | None
) -> Iterator[Problem]:
    """What would fall out of the sign when these letters are cut through it: the rest must be one piece."""
    gone = [letter.area for letter in letters] + [hole.footprint for hole in holes]
    pieces = sorted(polygons(shapely.difference(edge, shapely.union_all(gone))), key=lambda piece: -piece.area)
    names: dict[str, int] = {}
    for piece in pieces[1:]:
        touching = [letter for letter in letters if shapely.dwithin(letter.area, piece, 1e-6)]
        # The letter that goes furthest round it.
        around = max(
            touching, key=lambda letter: shapely.intersection(letter.area.buffer(1e-3), piece).area, default=None
        )
        name = around.name if around else ""
        names[name] = names.get(name, 0) + 1
    for of, count in names.items():
        inside_of = of or Message("drawing.the_letters")
        what = Message("drawing.inside_would_fall_out", name=inside_of)
        if count > 1:
            what = Message("drawing.insides_would_fall_out", count=count, name=inside_of)
        remedy = Message("drawing.use_face_bridges_2_hold", stencil_face=STENCIL_FACE)
        if bridges:
            remedy = Message("drawing.use_more_bridges_narrower_bridge", stencil_face=STENCIL_FACE)
        yield Problem(where="bridges" if bridges else "finish", what=what, remedy=remedy)
