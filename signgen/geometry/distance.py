"""Exact distances from many points to many segments, or to the discs that travel along them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.intp]

POINTS_PER_BUCKET = 12
"""About as many points share one short list of segments; found by trial, and flat between 8 and 40."""

COARSE = 8
"""Buckets along each side of a coarse bucket: the first of two rounds that shorten the lists."""


def segments_of(geometry: BaseGeometry) -> FloatArray:
    """(m, 4) x0, y0, x1, y1 of every straight piece of every ring or line of a geometry; empty for an empty one."""
    polygonal = geometry.geom_type in ("Polygon", "MultiPolygon")
    lines = shapely.get_rings(shapely.get_parts(geometry)) if polygonal else shapely.get_parts(geometry)
    points, ring = shapely.get_coordinates(lines, return_index=True)
    same = ring[1:] == ring[:-1]
    return np.hstack([points[:-1][same], points[1:][same]])


def distance_to_segments(points: FloatArray, segments: FloatArray, limit: float = np.inf) -> FloatArray:
    """(n,) distance of each of (n, 2) points from the nearest of (m, 4) segments, exact up to `limit`, which stands
    for everything farther (and for all of it when there is no segment)."""
    return nearest_segment(points, segments, limit)[0]


def nearest_segment(
    points: FloatArray, segments: FloatArray, limit: float = np.inf, radii: FloatArray | None = None
) -> tuple[FloatArray, IntArray]:
    """Distances as `distance_to_segments` gives them, and the (n,) index of the segment, -1 beyond the limit.

    With `radii` (m, 2), a disc travels along each segment and its radius goes evenly from the first to the second: the
    distance is then that from the nearest rim, negative inside. Neither kind of distance changes faster than the point
    moves, and the search rests on that alone: points are gathered in square buckets, and a segment can only be the
    nearest to a point of a bucket when it lies no farther from the bucket's centre than the nearest one does, plus the
    bucket's diagonal. Coarse buckets shorten the list of segments for fine ones, fine ones for their points.
    """
    found = np.full(len(points), float(limit))
    which = np.full(len(points), -1, dtype=np.intp)
    if not len(points) or not len(segments):
        return found, which
    pencils = _Pencils(segments, radii)
    low = points.min(axis=0)
    spread = np.maximum(points.max(axis=0) - low, 1e-9)
    size = max(np.sqrt(spread[0] * spread[1] * POINTS_PER_BUCKET / len(points)), spread.max() / 2000, 1e-6)
    cell = np.floor((points - low) / size).astype(np.intp)
    fine, owner = np.unique(cell[:, 0] * 4096 + cell[:, 1], return_inverse=True)
    fine_at = np.stack([fine // 4096, fine % 4096], axis=1)
    coarse_cell = fine_at // COARSE
    coarse, parent = np.unique(coarse_cell[:, 0] * 4096 + coarse_cell[:, 1], return_inverse=True)
    coarse_at = np.stack([coarse // 4096, coarse % 4096], axis=1)

    whole = _Lists(
        start=np.zeros(1, np.intp),
        count=np.array([len(segments)], np.intp),
        candidate=np.arange(len(segments), dtype=np.intp),
    )
    ancestor = np.zeros(len(coarse), np.intp)
    lists = _shorter(low + (coarse_at + 0.5) * size * COARSE, ancestor, size * COARSE, whole, pencils, limit)
    lists = _shorter(low + (fine_at + 0.5) * size, parent, size, lists, pencils, limit)

    order = np.argsort(-lists.count[owner], kind="stable")
    count, first = lists.count[owner][order], lists.start[owner][order]
    x, y = points[order, 0], points[order, 1]
    best, best_which = found.copy(), which.copy()
    for k in range(int(count[0])):
        active = int(np.searchsorted(-count, -k, side="left"))
        candidate = lists.candidate[first[:active] + k]
        away = pencils.distance(x[:active], y[:active], candidate)
        nearer = np.flatnonzero(away < best[:active])
        best[nearer] = away[nearer]
        best_which[nearer] = candidate[nearer]
    found[order] = best
    which[order] = best_which
    return found, which


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lists:
    """For bucket i the candidates [start[i] : start[i] + count[i]]."""

    start: IntArray
    count: IntArray
    candidate: IntArray


class _Pencils:
    """Segments, or the discs that travel along them, ready to be measured from many points."""

    __slots__ = ("column", "flare")

    def __init__(self, segments: FloatArray, radii: FloatArray | None) -> None:
        dx, dy = segments[:, 2] - segments[:, 0], segments[:, 3] - segments[:, 1]
        length = np.hypot(dx, dy)
        safe = np.where(length > 0, length, 1.0)
        dx = np.where(length > 0, dx, 1.0)  # a segment of no length still needs a direction
        self.column = np.stack([segments[:, 0], segments[:, 1], dx / safe, dy / safe, length], axis=1)
        self.flare: FloatArray | None = None
        if radii is not None:
            point = length == 0
            start = np.where(point, radii.max(axis=1), radii[:, 0])
            grow = np.where(point, 0.0, radii[:, 1] - radii[:, 0]) / safe
            # Where one end's disc covers the other's there is no tangent: the nearest rim is the larger disc's, and a
            # lead without end brings the search there.
            nested = np.abs(grow) >= 1
            lead = np.where(nested, np.sign(grow) * 1e30, grow / np.sqrt(np.where(nested, 1.0, 1 - grow * grow)))
            self.flare = np.stack([start, grow, lead], axis=1)

    def distance(self, x: FloatArray, y: FloatArray, which: IntArray) -> FloatArray:
        """Distance of point i from segment which[i], less the disc's radius there."""
        ax, ay, ux, uy, length = self.column[which].T
        x, y = x - ax, y - ay
        along, across = x * ux + y * uy, x * uy - y * ux
        if self.flare is None:
            along -= np.minimum(np.maximum(along, 0.0), length)
            return np.asarray(np.sqrt(across * across + along * along))
        start, grow, lead = self.flare[which].T
        # d/ds (sqrt((along - s)^2 + across^2) - start - grow s) = 0 where s = along + |across| grow / sqrt(1 - grow^2).
        at = np.minimum(np.maximum(along + (np.abs(across) + 1e-12) * lead, 0.0), length)
        along -= at
        return np.asarray(np.sqrt(across * across + along * along) - start - grow * at)


def _shorter(
    centre: FloatArray, parent: IntArray, size: float, lists: _Lists, pencils: _Pencils, limit: float
) -> _Lists:
    """For each square bucket, those of its parent's candidates that may be the nearest somewhere in it."""
    own_count = lists.count[parent]
    owner = np.repeat(np.arange(len(centre), dtype=np.intp), own_count)
    own_start = np.cumsum(own_count) - own_count
    within = np.arange(len(owner), dtype=np.intp) - own_start[owner]
    mine = lists.candidate[lists.start[parent][owner] + within]
    away = pencils.distance(centre[owner, 0], centre[owner, 1], mine)
    nearest = np.full(len(centre), np.inf)
    some = own_count > 0
    if some.any():
        nearest[some] = np.minimum.reduceat(away, own_start[some])
    diagonal = size * np.sqrt(2) + 1e-9
    keep = (away <= nearest[owner] + diagonal) & (away <= limit + diagonal / 2)
    kept = np.bincount(owner[keep], minlength=len(centre)).astype(np.intp)
    return _Lists(start=np.cumsum(kept) - kept, count=kept, candidate=mine[keep])
