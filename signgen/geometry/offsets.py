"""Areas grown, shrunk and smoothed by a disc, and what a round cutter can and cannot reach.

Everything leaves this module as a tuple of polygons, or an area made of them, with shells counter-clockwise
and holes clockwise; shapely alone promises neither (`buffer` answers clockwise, or with nothing, or with
several).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from signgen.geometry.trued import trued

Area = Polygon | MultiPolygon

_MORE_CHORDS = 1.5
"""GEOS rounds the number of chords of an arc, so that one may turn by half as much again as was asked for."""

_LOOKED_AT = 16
"""One in so many points of an offset is compared with the outline; what GEOS leaves standing is whole rings."""


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
    plane geometry.
    """
    if not tolerance_mm > 0:
        raise ValueError(f"tolerance must be positive, not {tolerance_mm}")
    if radius_mm <= tolerance_mm:
        return 1
    return max(1, math.ceil(math.pi / (4 * math.acos(1 - tolerance_mm / radius_mm))))


def _offset(
    area: BaseGeometry, distance_mm: float, tolerance_mm: float, *, roughly: bool = False
) -> tuple[Polygon, ...]:
    """The offset area, positive distances outwards.

    Raises: ArithmeticError when no way gives a sound result.
    """
    segments = math.ceil(_MORE_CHORDS * quad_segs(abs(distance_mm), tolerance_mm))
    parts = _sound_buffer(area, distance_mm, segments, tolerance_mm, 0 if roughly else _LOOKED_AT)
    if roughly or distance_mm == 0:
        return parts
    return polygons(trued(area, parts, distance_mm, tolerance_mm, segments))


def _sound_buffer(
    area: BaseGeometry, distance_mm: float, segments: int, tolerance_mm: float, every: int
) -> tuple[Polygon, ...]:
    """The buffer, looked at (one point of each ring, and one in `every` if that is not 0), and made in another way if
    it is wrong.

    Now and then GEOS leaves loops of the raw offset curve standing in the middle of the area, for one number of chords
    and not for the next (seen in GEOS 3.14). They are nearer to the outline than the distance, and are taken away.
    """
    if area.is_empty or distance_mm == 0:
        return polygons(area)
    outline = area.boundary
    shapely.prepare(outline)
    # Chords of the result lie nearer by the tolerance at most.
    apart = abs(distance_mm) - 1.5 * tolerance_mm
    join = shapely.difference if distance_mm < 0 else shapely.union
    for by_band, count in ((False, segments), (True, segments), (True, 2 * segments + 1)):
        if by_band:
            made = join(area, shapely.buffer(outline, abs(distance_mm), quad_segs=count))
        else:
            made = shapely.buffer(area, distance_mm, quad_segs=count)
        parts = _without_loops(polygons(made), outline, apart)
        if _is_sound(area, parts, distance_mm < 0, outline, apart, every):
            return parts
    raise ArithmeticError(f"no sound offset by {distance_mm} of an area of {area.area:.6g} mm2")


def _without_loops(parts: tuple[Polygon, ...], outline: BaseGeometry, apart: float) -> tuple[Polygon, ...]:
    """The parts and holes that do not begin nearer than `apart` to the outline."""
    if apart <= 0 or not parts:
        return parts
    rings = shapely.get_rings(np.array(parts, dtype=object))
    loop = shapely.dwithin(outline, shapely.get_point(rings, 0), apart)
    if not loop.any():
        return parts
    kept, first = [], 0
    for part in parts:
        holes = len(part.interiors)
        if not loop[first]:
            bad = loop[first + 1 : first + 1 + holes]
            kept.append(
                Polygon(part.exterior, [hole for hole, is_loop in zip(part.interiors, bad, strict=True) if not is_loop])
            )
        first += 1 + holes
    return tuple(kept)


def _is_sound(
    area: BaseGeometry, parts: Sequence[Polygon], shrunk: bool, outline: BaseGeometry, apart: float, every: int
) -> bool:
    """Whether no point looked at on either outline is nearer to the other than it should be."""
    if apart <= 0:
        return True
    result = MultiPolygon(parts)
    if every and shapely.dwithin(outline, _some_points(result, every), apart).any():
        return False
    # Was a hole or a part forgotten? Then the area's own outline comes too near to what is left, or out of it.
    if not shrunk:
        return bool(shapely.covers(result, _some_points(area, every)).all())
    shapely.prepare(result)
    return not shapely.dwithin(result, _some_points(area, every), apart).any()


def _some_points(geometry: BaseGeometry, every: int) -> NDArray[np.object_]:
    """One point of every ring, and one in `every` of all if that is not 0."""
    rings = shapely.get_rings(shapely.get_parts(geometry))
    first: NDArray[np.object_] = shapely.get_point(rings, 0)
    return np.concatenate([first, shapely.points(shapely.get_coordinates(rings)[::every])]) if every else first


def inward(
    area: BaseGeometry, distance_mm: float, tolerance_mm: float, *, roughly: bool = False
) -> tuple[Polygon, ...]:
    """What is left of an area at least `distance_mm` >= 0 away from its outline; () when nothing is.

    Every point of its outline is within the tolerance of the true offset; `roughly` it may be further inside by a
    hundredth of the distance, which is quicker.
    """
    return _offset(area, -abs(distance_mm), tolerance_mm, roughly=roughly)


def outward(area: BaseGeometry, distance_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """An area grown by `distance_mm` >= 0 with round corners.

    Every point of its outline is within the tolerance of the true offset.
    """
    return _offset(area, abs(distance_mm), tolerance_mm)


def opening(area: BaseGeometry, radius_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """What a disc of this radius can sweep without leaving the area: all that a round cutter can cut."""
    return outward(area_of(inward(area, radius_mm, tolerance_mm)), radius_mm, tolerance_mm)


def unreachable(area: BaseGeometry, radius_mm: float, tolerance_mm: float) -> tuple[Polygon, ...]:
    """What a disc of this radius cannot sweep: corners and narrow places. The rest of `opening`.

    Along curved walls the two disagree by up to the tolerance, which leaves slivers; those thinner than that
    are dropped.
    """
    rest = shapely.difference(area, area_of(opening(area, radius_mm, tolerance_mm)))
    return tuple(part for part in polygons(rest) if not shapely.buffer(part, -tolerance_mm, quad_segs=1).is_empty)
