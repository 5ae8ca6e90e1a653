"""The holes of the sign, and whether enough wood stays around them."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator

import shapely
from shapely.geometry import Point, Polygon

from signgen.drawing.drawing import Groove, Hole
from signgen.errors import Problem
from signgen.spec.sign_spec import SignSpec
from signgen.units import plain

LEAST_WALL_MM = 1.0
"""Wood that must stay between a hole and the edge, another hole or a letter; less breaks out (common practice)."""

THIN_WALL_RATIO = 1.5
"""From a hole's middle to the edge, over its diameter: less is a thin wall. Half way between the bare 1.0 of a hole
that only just has wood and the two diameters that check-values section 12 calls usual (common practice)."""

EYE = "eye"


def holes_of(spec: SignSpec) -> tuple[Hole, ...]:
    """The border's own holes, then the pattern's."""
    eyes = tuple(
        Hole(name=name, x_mm=x, y_mm=y, diameter_mm=diameter)
        for name, x, y, diameter in spec.border.eyes(spec.width_mm, spec.height_mm)
    )
    pattern = tuple(
        Hole(name=f"hole {name}", x_mm=x, y_mm=y, diameter_mm=spec.holes.diameter_mm)
        for name, x, y in spec.holes.centres(spec.width_mm, spec.height_mm)
    )
    return (*eyes, *pattern)


def disc(hole: Hole) -> Polygon:
    """A hole's area, its chords a little inside the circle."""
    area: Polygon = Point(hole.x_mm, hole.y_mm).buffer(hole.diameter_mm / 2, quad_segs=32)
    return area


def wall_mm(edge: Polygon, hole: Hole) -> float:
    """Wood between a hole's rim and the sign's edge; negative where the hole runs over it."""
    middle = Point(hole.x_mm, hole.y_mm)
    away = float(edge.exterior.distance(middle))
    return (away if edge.contains(middle) else -away) - hole.diameter_mm / 2


def hole_problems(edge: Polygon, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    """Every hole that runs over the edge or into another one, or leaves less than the least wall."""
    for hole in holes:
        if wall_mm(edge, hole) < LEAST_WALL_MM:
            yield Problem(
                where="eye-inset" if hole.name == EYE else "holes",
                what=f"{hole.name} ({plain(hole.diameter_mm)} mm at {plain(hole.x_mm)}, {plain(hole.y_mm)}) does not "
                f"lie inside the sign with {LEAST_WALL_MM:g} mm of wood around it.",
                remedy="Use a larger inset or a smaller hole.",
            )
    for one, other in itertools.combinations(holes, 2):
        apart = math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm)
        if apart < (one.diameter_mm + other.diameter_mm) / 2 + LEAST_WALL_MM:
            yield Problem(
                where="holes",
                what=f"{one.name} and {other.name} run into each other: their centres are {apart:.4g} mm apart.",
                remedy="Use smaller holes, fewer of them, or another inset.",
            )


def wall_warnings(edge: Polygon, holes: Iterable[Hole], grooves: Iterable[Groove]) -> Iterator[str]:
    """A sentence when walls between holes and the edge, another hole or a letter are thin, with the thinnest of each
    kind."""
    holes, grooves = tuple(holes), tuple(grooves)
    if not holes:
        return
    found: list[tuple[float, str, str]] = []
    for hole in holes:
        least = (THIN_WALL_RATIO - 0.5) * hole.diameter_mm
        found += [(wall_mm(edge, hole), hole.name, "the sign's edge")] if wall_mm(edge, hole) < least else []
    for one, other in itertools.combinations(holes, 2):
        wall = math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm) - (one.diameter_mm + other.diameter_mm) / 2
        if wall < (THIN_WALL_RATIO - 0.5) * min(one.diameter_mm, other.diameter_mm):
            found.append((wall, one.name, other.name))
    if found:
        wall, one_name, other_name = min(found)
        more = f" ({len(found)} walls are as thin as their hole is wide, or thinner)" if len(found) > 1 else ""
        yield (
            f"Only {wall:.1f} mm of wood stay between {one_name} and {other_name}{more}: it may break out. "
            "A larger inset or a smaller hole leaves more."
        )
    # Letters are grooves, so wood stays below them; what is thin is the wall at the surface.
    close = [
        (float(shapely.distance(groove.area, disc(hole))), hole.name, groove.name)
        for hole in holes
        for groove in grooves
    ]
    thin = [each for each in close if each[0] < 2 * LEAST_WALL_MM]
    if thin:
        wall, hole_name, groove_name = min(thin)
        yield f"Only {wall:.1f} mm of wood stay between {hole_name} and {groove_name}: it may break out."
