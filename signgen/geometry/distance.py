"""Exact distances from many points to many segments, or to the discs that travel along them."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import shapely
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.intp]

POINTS_PER_BUCKET = 12
"""About as many points share one short list of segments; found by trial, and flat between 8 and 40."""

COARSE = 4
"""Buckets along each side of a bucket of the next coarser level."""

WIDTH = 1 << 10
"""Most squares along one side of a level."""

MEASURED_AT_ONCE = 1 << 20
"""Distances: their arrays take some hundred megabytes."""

ONE_BY_ONE = 40
"""Lists up to this long are gone through in step, all points at once; the rest of longer ones point by point."""


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
    nearest to a point of a bucket when it lies no farther from the bucket's centre than the nearest one does, plus
    twice the bucket's reach. Coarse buckets shorten the list of segments for finer ones, the finest for their points.
    """
    found = np.full(len(points), float(limit))
    which = np.full(len(points), -1, dtype=np.intp)
    if not len(points) or not len(segments):
        return found, which
    pencils = _Pencils(segments, radii)
    levels = _levels(points)
    owner = levels[0].owner
    lists = _Lists(
        start=np.zeros(1, np.intp),
        count=np.array([len(segments)], np.intp),
        candidate=np.arange(len(segments), dtype=np.intp),
    )
    parent = np.zeros(len(levels[-1].reach), np.intp)
    for level, above in zip(reversed(levels), [None, *reversed(levels)], strict=False):
        lists = _shorter(level, parent if above is None else above.owner, lists, pencils, limit)

    order = np.argsort(-lists.count[owner], kind="stable")
    count, first = lists.count[owner][order], lists.start[owner][order]
    x, y = points[order, 0], points[order, 1]
    best, best_which = found.copy(), which.copy()
    for k in range(min(int(count[0]), ONE_BY_ONE)):
        active = int(np.searchsorted(-count, -k, side="left"))
        candidate = lists.candidate[first[:active] + k]
        _keep_nearer(best, best_which, pencils.distance(x[:active], y[:active], candidate), candidate)
    # A point at the middle of an arc is as near to all of its chords: few points, with long lists.
    many = int(np.searchsorted(-count, -ONE_BY_ONE, side="left"))
    for part in _bearable(count[:many] - ONE_BY_ONE):
        rest = count[part] - ONE_BY_ONE
        start = np.cumsum(rest) - rest
        point = np.repeat(np.arange(len(rest)), rest)
        candidate = lists.candidate[first[part][point] + ONE_BY_ONE + np.arange(len(point)) - start[point]]
        away = pencils.distance(x[part][point], y[part][point], candidate)
        least = np.minimum.reduceat(away, start)
        at = np.flatnonzero(away == least[point])
        own = at[np.searchsorted(point[at], np.arange(len(rest)))]
        _keep_nearer(best[part], best_which[part], away[own], candidate[own])
    found[order] = best
    which[order] = best_which
    return found, which


def _keep_nearer(best: FloatArray, best_which: IntArray, away: FloatArray, candidate: IntArray) -> None:
    """Writes into the first places of `best` and `best_which` what is nearer than they are."""
    nearer = np.flatnonzero(away < best[: len(away)])
    best[nearer] = away[nearer]
    best_which[nearer] = candidate[nearer]


class _Level(Struct, frozen=True, kw_only=True):
    """Buckets of one size: low, high (b, 2) bound what is in each, centre (b, 2) and reach (b,) are the disc around
    that; owner: in which bucket each point (or each bucket of the next finer level) lies."""

    low: FloatArray
    high: FloatArray
    centre: FloatArray
    reach: FloatArray
    owner: IntArray


def _levels(points: FloatArray) -> list[_Level]:
    """Buckets of the points, finest first, each level COARSE times larger, until few are left."""
    low = points.min(axis=0)
    spread = np.maximum(points.max(axis=0) - low, 1e-9)
    least = max(float(spread.max()) / (WIDTH - 1), 1e-6)
    size = max(float(np.sqrt(spread[0] * spread[1] * POINTS_PER_BUCKET / len(points))), least)
    at = np.floor((points - low) / size).astype(np.intp)
    owner, used = _numbered(at[:, 0] * WIDTH + at[:, 1])
    # Points along lines fill few of the squares: smaller ones, until they are as many as was meant.
    while len(points) > 2 * POINTS_PER_BUCKET * len(used) and size > 2 * least:
        size /= 2
        at = np.floor((points - low) / size).astype(np.intp)
        owner, used = _numbered(at[:, 0] * WIDTH + at[:, 1])
    levels = [_gathered(points, points, owner, len(used))]
    while len(used) > 2 * COARSE:
        owner, used = _numbered(used // WIDTH // COARSE * WIDTH + used % WIDTH // COARSE)
        levels.append(_gathered(levels[-1].low, levels[-1].high, owner, len(used)))
    return levels


def _numbered(squares: IntArray) -> tuple[IntArray, IntArray]:
    """(number of each square among those in use, the squares in use), as `np.unique` would, without sorting."""
    in_use = np.zeros(int(squares.max()) + 1, dtype=np.bool_)
    in_use[squares] = True
    number = np.cumsum(in_use, dtype=np.intp) - 1
    return number[squares], np.flatnonzero(in_use)


def _gathered(low: FloatArray, high: FloatArray, owner: IntArray, count: int) -> _Level:
    """The level whose buckets hold boxes (low, high) by their owners."""
    order = np.argsort(owner, kind="stable")
    starts = np.searchsorted(owner[order], np.arange(count))
    low, high = np.minimum.reduceat(low[order], starts), np.maximum.reduceat(high[order], starts)
    reach = np.hypot(*(high - low).T) / 2 + 1e-9
    return _Level(low=low, high=high, centre=(low + high) / 2, reach=reach, owner=owner)


class _Lists(Struct, frozen=True, kw_only=True):
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
        self.column = np.stack([segments[:, 0], segments[:, 1], dx / safe, dy / safe, length])
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
        column = self.column
        along, across = x - column[0].take(which), y - column[1].take(which)
        ux, uy = column[2].take(which), column[3].take(which)
        along, across = along * ux + across * uy, along * uy - across * ux
        length = column[4].take(which)
        if self.flare is None:
            along -= np.minimum(np.maximum(along, 0.0), length)
            along *= along
            across *= across
            across += along
            return np.asarray(np.sqrt(across, out=across))
        start, grow, lead = self.flare[which].T
        # d/ds (sqrt((along - s)^2 + across^2) - start - grow s) = 0 where s = along + |across| grow / sqrt(1 -
        # grow^2).
        at = np.minimum(np.maximum(along + (np.abs(across) + 1e-12) * lead, 0.0), length)
        along -= at
        return np.asarray(np.sqrt(across * across + along * along) - start - grow * at)


def _bearable(count: IntArray) -> Iterator[slice]:
    """Lists of these lengths, one after the other, in groups whose sum bears measuring at once."""
    sums = np.cumsum(count)
    at = 0
    while at < len(count):
        end = int(np.searchsorted(sums, (sums[at - 1] if at else 0) + MEASURED_AT_ONCE, side="right"))
        yield slice(at, max(end, at + 1))
        at = max(end, at + 1)


def _shorter(level: _Level, parent: IntArray, lists: _Lists, pencils: _Pencils, limit: float) -> _Lists:
    """For each bucket, those of its parent's candidates that may be the nearest somewhere in it."""
    kept, candidates = [], []
    for part in _bearable(lists.count[parent]):
        own_count = lists.count[parent[part]]
        owner = np.repeat(np.arange(len(own_count), dtype=np.intp), own_count)
        own_start = np.cumsum(own_count) - own_count
        within = np.arange(len(owner), dtype=np.intp) - own_start[owner]
        mine = lists.candidate[lists.start[parent[part]][owner] + within]
        centre = level.centre[part]
        away = pencils.distance(centre[owner, 0], centre[owner, 1], mine)
        nearest = np.full(len(own_count), np.inf)
        some = own_count > 0
        if some.any():
            nearest[some] = np.minimum.reduceat(away, own_start[some])
        reach = level.reach[part]
        keep = away <= np.minimum(nearest + 2 * reach, limit + reach)[owner]
        kept.append(np.bincount(owner[keep], minlength=len(own_count)).astype(np.intp))
        candidates.append(mine[keep])
    count = np.concatenate(kept)
    return _Lists(start=np.cumsum(count) - count, count=count, candidate=np.concatenate(candidates))
