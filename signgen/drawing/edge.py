"""The sign's edge as a round cutter can make it: inside corners get the cutter's radius."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry import Polygon

from signgen.errors import CannotMakeError, Problem
from signgen.geometry.offsets import area_of, inward, outward, polygons
from signgen.messages import Message, Mm, Num
from signgen.shop.tools import Tool
from signgen.spec.edge_mills import edge_mills
from signgen.spec.sign_spec import SignSpec
from signgen.tolerances import CHECK_MM

ROOM_RATIO = 1.02
"""How much rounder than the cutter an inside corner is drawn: it then rolls through instead of stopping dead."""

DEEPEST_CORNER_MM = 3.2
"""Wood that may fill an inside corner: what the stoutest cutter leaves in one of 60 degrees, R (1 / sin 30 - 1) = R."""
LEAST_NOTCH_MM, MOST_OF_A_HOLLOW = 1.4, 0.5
"""A hollow of which more than half would be filled is lost, if it is deeper than what that cutter leaves in a square
corner, 0.41 R (derived here)."""

TRIES = 12
"""Halvings in the search for the thickest cutter that gets in: to a few microns."""
LEAST_TRIES, TRIED_CORNERS = 3, 40_000
"""An outline of very many corners gets fewer, for each try goes round all of them."""

LEAST_NAMED_MM = 0.5
"""Thinner end mills are not worth naming: nobody sells them for wood (common practice)."""

SEAM_MM = 1e-6
"""Far below what is cut: closes the seams between the outline and what fills its corners."""


class Left(Struct, frozen=True, kw_only=True):
    """What a cutter leaves of an outline's inside corners: `edge` as it comes out, the parts that fill corners, how
    deep each is, and whether one of them is a notch rather than a corner."""

    edge: Polygon
    depths_mm: tuple[float, ...] = ()
    notch_at_mm: tuple[float, float] | None = None

    @property
    def deepest_mm(self) -> float:
        return max(self.depths_mm, default=0.0)


def edge_of(spec: SignSpec) -> tuple[Polygon, tuple[Message, ...]]:
    """The border's outline with the wood that the edge's cutter leaves in its inside corners, and a warning when
    there is so much of it that a check would see it. The cutter is the stoutest that gets into every notch.

    Raises: CannotMakeError when none does that may be taken, with the thickest that would.
    """
    chord = spec.tolerances.chord_mm
    outline = spec.border.outline(spec.width_mm, spec.height_mm, chord)
    mills = edge_mills(spec)
    if spec.edge == "none" or not mills or outline.convex_hull.area - outline.area <= SEAM_MM:
        return outline, ()
    for mill in mills:
        left = left_by(outline, mill.diameter_mm, chord)
        if left.notch_at_mm is None:
            return left.edge, _warnings(left, mill.diameter_mm)
    raise CannotMakeError(_no_way_in(spec, outline, mills[-1], left))


def left_by(outline: Polygon, cutter_mm: float, chord_mm: float) -> Left:
    """What a cutter leaves of an outline that it runs round outside.

    A cutter of radius R leaves the outline grown by R and shrunk by R again. Source: mathematical morphology's closing;
    for one corner the gap is R (1 / sin(a / 2) - 1), plane geometry.
    """
    radius = ROOM_RATIO * cutter_mm / 2
    reached = inward(area_of(outward(outline, radius, chord_mm)), radius, chord_mm)
    fill = [
        part
        for part in polygons(shapely.difference(area_of(reached), outline))
        if not part.buffer(-2 * chord_mm, quad_segs=1).is_empty
    ]
    if not fill:
        return Left(edge=outline)
    whole = shapely.union_all([outline, *(part.buffer(SEAM_MM, join_style="mitre") for part in fill)])
    (rounded,) = polygons(Polygon(polygons(whole)[0].exterior))
    depths = _depths_mm(fill, rounded)
    hollows = shapely.STRtree(polygons(shapely.difference(outline.convex_hull, outline)))
    notches = [(depth, part) for depth, part in zip(depths, fill, strict=True) if _is_notch(depth, part, hollows)]
    at = max(notches, key=lambda each: each[0])[1].representative_point() if notches else None
    return Left(edge=rounded, depths_mm=tuple(depths), notch_at_mm=(at.x, at.y) if at else None)


def follows(edge: Polygon, cutter_mm: float) -> bool:
    """Whether a cutter comes round a drawn edge as it is drawn."""
    if edge.convex_hull.area - edge.area <= SEAM_MM:
        return True
    return left_by(edge, cutter_mm / ROOM_RATIO, CHECK_MM / 10).deepest_mm <= CHECK_MM


def _is_notch(depth_mm: float, fill: Polygon, hollows: shapely.STRtree) -> bool:
    """Whether what is filled is more than the bottom of a corner: deeper than any corner's, or most of a hollow."""
    if depth_mm > DEEPEST_CORNER_MM:
        return True
    if depth_mm <= LEAST_NOTCH_MM:
        return False
    near = hollows.geometries.take(hollows.query(fill))
    if not len(near):
        return True  # a hollow of its own
    own = near[int(shapely.area(shapely.intersection(near, fill)).argmax())]
    return bool(fill.area > MOST_OF_A_HOLLOW * own.area)


def _no_way_in(spec: SignSpec, outline: Polygon, mill: Tool, left: Left) -> Problem:
    """Names the notch, and a cutter that would get in: found by trying."""
    assert left.notch_at_mm is not None
    x, y = left.notch_at_mm
    chord = spec.tolerances.chord_mm
    low, high = 0.0, mill.diameter_mm
    for _ in range(max(LEAST_TRIES, min(TRIES, TRIED_CORNERS // len(outline.exterior.coords)))):
        middle = (low + high) / 2
        gets_in = left_by(outline, middle, chord).notch_at_mm is None
        low, high = (middle, high) if gets_in else (low, middle)
    largest = math.floor(100 * low) / 100
    reach = spec.thickness_mm + spec.breakthrough_mm
    ready = [
        tool
        for tool in spec.shop.tools
        if tool.kind == "end-mill" and tool.diameter_mm <= largest and tool.cutting_length_mm >= reach
    ]
    best = max(ready, key=lambda tool: tool.diameter_mm, default=None)
    if best:
        remedy = Message("edge.name_the_thinner", cutter=Mm(best.diameter_mm), largest=Mm(largest))
    elif largest >= LEAST_NAMED_MM:
        remedy = Message("edge.name_a_thinner", largest=Mm(largest), reach=Mm(reach))
    else:
        remedy = Message("edge.wider")
    return Problem(
        where="end-mill" if spec.end_mill else "border",
        what=Message(
            "edge.notch_lost",
            cutter=Mm(mill.diameter_mm),
            x=Num(x, 1),
            y=Num(y, 1),
            deep=Mm(round(left.deepest_mm, 2)),
        ),
        remedy=remedy,
    )


def _warnings(left: Left, cutter_mm: float) -> tuple[Message, ...]:
    """A sentence when somebody could see or measure the difference."""
    count = sum(depth > CHECK_MM for depth in left.depths_mm)
    if not count:
        return ()
    return (
        Message(
            "drawing.cutter_leaves_corner_round" if count == 1 else "drawing.cutter_leaves_corners_round",
            cutter=Mm(cutter_mm),
            count=count,
            most=Mm(math.ceil(left.deepest_mm * 100) / 100),
        ),
    )


def _depths_mm(parts: Sequence[Polygon], edge: Polygon) -> list[float]:
    """How deep the wood is that fills each corner: from the bottom of the corner to the drawn edge."""
    corners, owner = shapely.get_coordinates(shapely.get_exterior_ring(parts), return_index=True)
    ring = shapely.get_coordinates(edge.exterior)
    sides = shapely.STRtree(shapely.linestrings(np.stack([ring[:-1], ring[1:]], axis=1)))
    (at, _), away = sides.query_nearest(shapely.points(corners), return_distance=True, all_matches=False)
    depths = np.zeros(len(parts))
    np.maximum.at(depths, owner[at], away)
    return [float(depth) for depth in depths]
