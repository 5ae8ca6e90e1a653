"""From closed contours to filled areas by the non-zero rule, whatever way they wind and however they overlap.

Outlines of letters come as bare contours: TrueType and CFF wind opposite ways, overlapping contours are
legal, and a contour may cross itself. A point belongs to the letter when the contours wind around it a number
of times that is not 0.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from numpy.typing import ArrayLike, NDArray
from shapely.geometry import MultiPolygon, Polygon

from signgen.geometry.offsets import Area, area_of, polygons
from signgen.geometry.paths import FloatArray

HAIR_RATIO = 1e-9
"""Faces thinner than this part of the drawing's extent are noise of floating-point noding, not design."""

_BLOCK = 2_000_000
"""Edges x points held in memory at once while winding numbers are counted."""


def winding_numbers(points: ArrayLike, contours: Sequence[FloatArray]) -> NDArray[np.int64]:
    """(k,) how often the closed contours wind around each of (k, 2) points, counter-clockwise positive.

    Points on an edge may fall to either side. Contours are (n, 2), the last point need not repeat the first.

    Source: Hormann and Agathos 2001, "The point in polygon problem for arbitrary polygons" (signed ray
    crossings).
    """
    at = np.asarray(points, dtype=np.float64).reshape(-1, 2)
    total = np.zeros(len(at), dtype=np.int64)
    if not len(contours):
        return total
    start = np.concatenate(list(contours))
    end = np.concatenate([np.roll(contour, -1, axis=0) for contour in contours])
    dx, dy = (end - start).T
    step = max(1, _BLOCK // max(1, len(start)))
    for first in range(0, len(at), step):
        x, y = at[first : first + step, 0:1], at[first : first + step, 1:2]
        upward = (start[:, 1] <= y) & (end[:, 1] > y)
        downward = (start[:, 1] > y) & (end[:, 1] <= y)
        side = dx * (y - start[:, 1]) - dy * (x - start[:, 0])
        total[first : first + step] = np.sum(upward & (side > 0), axis=1) - np.sum(downward & (side < 0), axis=1)
    return total


def _clean(contours: Sequence[ArrayLike]) -> list[FloatArray]:
    """Contours without repeated points (nor the closing one), those of fewer than three points left out.

    Raises: ValueError for a coordinate that is not a finite number.
    """
    kept: list[FloatArray] = []
    for contour in contours:
        points = np.asarray(contour, dtype=np.float64).reshape(-1, 2)
        if not np.isfinite(points).all():
            raise ValueError("a contour has a coordinate that is not a finite number")
        points = points[np.any(points != np.roll(points, 1, axis=0), axis=1)]
        if len(points) >= 3:
            kept.append(points)
    return kept


def fill_nonzero(contours: Sequence[ArrayLike]) -> Area:
    """The area that closed contours fill by the non-zero rule: valid, shells counter-clockwise.

    Contours are (n, 2) arrays, closing point optional, any winding; they may cross and overlap themselves and
    each other. An empty MultiPolygon when they enclose nothing.

    Raises: ValueError for a coordinate that is not a finite number.
    """
    rings = _clean(contours)
    if not rings:
        return MultiPolygon()
    owner = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    loops = shapely.linearrings(np.concatenate(rings), indices=owner)
    if shapely.is_simple(loops).all() and not _touching(loops):
        return _nested(loops)
    return fill_crossing(rings, loops)


def fill_even_odd(contours: Sequence[ArrayLike]) -> Area:
    """The area that closed contours fill by the even-odd rule, otherwise as `fill_nonzero`."""
    rings = _clean(contours)
    if not rings:
        return MultiPolygon()
    owner = np.repeat(np.arange(len(rings)), [len(ring) for ring in rings])
    loops = shapely.linearrings(np.concatenate(rings), indices=owner)
    if shapely.is_simple(loops).all() and not _touching(loops):
        discs = shapely.polygons(loops)
        _, inner = shapely.STRtree(discs).query(discs, predicate="contains")
        is_shell = np.bincount(inner, minlength=len(loops)) % 2 == 1  # a disc contains itself
        return _nested(np.where(shapely.is_ccw(loops) != is_shell, shapely.reverse(loops), loops))
    return fill_crossing(rings, loops, even_odd=True)


def _touching(loops: NDArray[np.object_]) -> bool:
    """Whether any two loops have a point in common."""
    if len(loops) < 2:
        return False
    one, other = shapely.STRtree(loops).query(loops, predicate="intersects")
    return bool(np.any(one != other))


def _nested(loops: NDArray[np.object_]) -> Area:
    """Simple loops that meet nowhere: each contains another or knows nothing of it, so counting is enough."""
    if len(loops) == 1:
        return area_of(polygons(Polygon(loops[0])))
    discs = shapely.polygons(loops)
    turn = np.where(shapely.is_ccw(loops), 1, -1)
    outer, inner = shapely.STRtree(discs).query(discs, predicate="contains")
    # A disc contains itself, so the sum over all that contain it is the winding number just inside it.
    inside = np.zeros(len(loops), dtype=np.int64)
    np.add.at(inside, inner, turn[outer])
    outside = inside - turn
    shells = np.flatnonzero((inside != 0) & (outside == 0))
    sizes = shapely.area(discs)
    holes: dict[int, list[object]] = {int(shell): [] for shell in shells}
    for hole in np.flatnonzero((inside == 0) & (outside != 0)):
        around = outer[(inner == hole) & (outer != hole)]
        around = around[np.isin(around, shells)]
        holes[int(around[np.argmin(sizes[around])])].append(loops[hole])
    return area_of(tuple(part for shell in shells for part in polygons(Polygon(loops[shell], holes[int(shell)]))))


def fill_crossing(rings: Sequence[FloatArray], loops: NDArray[np.object_], *, even_odd: bool = False) -> Area:
    """The general case: cut all contours at all crossings, and keep the faces that they wind around, by the even-odd
    rule those that they wind around an odd number of times.

    `rings` without repeated points, and the same as LinearRings.
    """
    lines = shapely.union_all(loops)
    faces = shapely.get_parts(shapely.polygonize(shapely.get_parts(lines)))
    if not len(faces):
        return MultiPolygon()
    inner_points = shapely.get_coordinates(shapely.point_on_surface(faces))
    turns = winding_numbers(inner_points, rings)
    filled = faces[turns % 2 != 0 if even_odd else turns != 0]
    extent = float(np.ptp(np.concatenate(rings), axis=0).max())
    # Faces of one polygonizing share whole edges, so they unite without being noded again.
    return area_of(_without_hairs(polygons(shapely.coverage_union_all(filled)), HAIR_RATIO * extent))


def _without_hairs(parts: tuple[Polygon, ...], thickness: float) -> tuple[Polygon, ...]:
    """The parts, and their holes, thicker than `thickness` (twice the area over the outline's length)."""

    def solid(ring: Polygon) -> bool:
        return bool(2 * ring.area > thickness * ring.length)

    return tuple(
        Polygon(part.exterior, [hole for hole in part.interiors if solid(Polygon(hole))])
        for part in parts
        if solid(Polygon(part.exterior))
    )
