"""Areas grown, shrunk and smoothed by a disc, and what a round cutter can and cannot reach.

Everything leaves this module as a tuple of polygons, or an area made of them, with shells counter-clockwise
and holes clockwise; shapely alone promises neither (`buffer` answers clockwise, or with nothing, or with
several).
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

Area = Polygon | MultiPolygon


def _polygonal_parts(geometry: BaseGeometry) -> Iterator[Polygon]:
    if isinstance(geometry, Polygon):
        if not geometry.is_empty:
            yield geometry
    elif hasattr(geometry, "geoms"):
        for part in geometry.geoms:
            yield from _polygonal_parts(part)


def polygons(geometry: BaseGeometry) -> tuple[Polygon, ...]:
    """The polygons of any geometry, shells counter-clockwise and holes clockwise; () when there is none.

    Lines and points, which overlays leave where areas merely touch, are dropped.
    """
    return tuple(orient(part, 1.0) for part in _polygonal_parts(geometry))


def area_of(parts: tuple[Polygon, ...]) -> Area:
    """One polygon as itself, several (or none) as a MultiPolygon. The parts must not overlap."""
    return parts[0] if len(parts) == 1 else MultiPolygon(parts)


def quad_segs(radius_mm: float, tolerance_mm: float) -> int:
    """Chords for a quarter circle so that none strays further than the tolerance from it.

    Source: chord error R (1 - cos(pi / 4n)) <= tolerance, so n >= pi / (4 acos(1 - tolerance / R));
    check-values 15.4.
    """
    if not tolerance_mm > 0:
        raise ValueError(f"tolerance must be positive, not {tolerance_mm}")
    if radius_mm <= tolerance_mm:
        return 1
    return max(1, math.ceil(math.pi / (4 * math.acos(1 - tolerance_mm / radius_mm))))


def _buffered(area: BaseGeometry, distance_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    segments = quad_segs(abs(distance_mm), tolerance_mm)
    return polygons(shapely.buffer(area, distance_mm, quad_segs=segments, join_style="round"))


def inward(area: BaseGeometry, distance_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """What is left of an area at least `distance_mm` >= 0 away from its outline; () when nothing is.

    Arcs (around reflex corners) are chords whose ends lie on the true offset, so the result may reach outside
    it by the tolerance at most, never by more, and never leaves it short on straight walls.
    """
    return _buffered(area, -abs(distance_mm), tolerance_mm)


def outward(area: BaseGeometry, distance_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """An area grown by `distance_mm` >= 0 with round corners.

    It falls short of the true offset by the tolerance at most and never exceeds it.
    """
    return _buffered(area, abs(distance_mm), tolerance_mm)


def opening(area: BaseGeometry, radius_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """What a disc of this radius can sweep without leaving the area: all that a round cutter can cut."""
    return outward(area_of(inward(area, radius_mm, tolerance_mm)), radius_mm, tolerance_mm)


def unreachable(area: BaseGeometry, radius_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """What a disc of this radius cannot sweep: corners and narrow places. The rest of `opening`.

    Along curved walls the two disagree by up to the tolerance, which leaves slivers; those thinner than that
    are dropped.
    """
    rest = shapely.difference(area, area_of(opening(area, radius_mm, tolerance_mm)))
    return tuple(
        part for part in polygons(rest) if not shapely.buffer(part, -tolerance_mm, quad_segs=1).is_empty
    )
