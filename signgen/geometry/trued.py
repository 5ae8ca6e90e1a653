"""Offset areas corrected where they are further from the outline than they should be.

Before it makes an offset GEOS drops points of shallow hollows, up to a hundredth of the distance deep. Where a long
edge and a tiny one meet in a corner that is the corner itself, and the long edge's offset comes out askew: 0.03 mm at
3 mm, more than a wall may be wrong. An edge by itself has no hollows; so near the edges that came out wrong the offset
is made again from single edges of the outline.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.geometry.paths import FloatArray

_SHARES = np.array([0.5, 0.03, 0.97])
"""Where on an edge of the offset its distance is looked at: the middle, and the ends of those longer than this:"""
_LONG_MM = 0.3

_HOLLOW_RATIO = 0.01
"""Depth over distance of what GEOS drops (BufferInputLineSimplifier's default)."""


def trued(
    area: BaseGeometry, parts: Sequence[Polygon], distance_mm: float, tolerance_mm: float, quad_segs: int
) -> BaseGeometry:
    """An area's offset by `distance_mm`, positive outwards, as GEOS made it, put right to within the tolerance."""
    away = abs(distance_mm)
    result = MultiPolygon(parts)
    outline = area.boundary
    shapely.prepare(outline)
    wrong = _too_far(result, outline, away + tolerance_mm / 2)
    if not len(wrong):
        return result
    edges = shapely.linestrings(_edges(outline))
    doubtful = shapely.buffer(shapely.linestrings(wrong), 1.2 * _HOLLOW_RATIO * away, quad_segs=2)
    near = np.unique(shapely.STRtree(edges).query(doubtful, predicate="dwithin", distance=away)[1])
    band = shapely.union_all(shapely.buffer(edges[near], away, quad_segs=quad_segs))
    beyond = shapely.difference(shapely.union_all(doubtful), band)
    if distance_mm < 0:
        mended: BaseGeometry = shapely.union(result, shapely.intersection(beyond, area))
    else:
        mended = shapely.difference(result, shapely.difference(beyond, area))
    return mended


def _edges(lines: BaseGeometry) -> FloatArray:
    """(n, 2, 2) the straight edges of lines or of polygons' outlines."""
    parts = shapely.get_parts(lines)
    points, owner = shapely.get_coordinates(parts, return_index=True)
    first = np.flatnonzero(owner[:-1] == owner[1:])
    return np.stack([points[first], points[first + 1]], axis=1)


def _too_far(result: MultiPolygon, outline: BaseGeometry, limit: float) -> FloatArray:
    """(k, 2, 2) edges of the result that have a point further than this from the (prepared) outline."""
    edges = _edges(result.boundary)
    if not len(edges):
        return edges
    start, step = edges[:, 0], edges[:, 1] - edges[:, 0]
    long = np.hypot(step[:, 0], step[:, 1]) > _LONG_MM
    far = np.zeros(len(edges), dtype=bool)
    for share in _SHARES:
        index = np.flatnonzero(~far & (long | (share == _SHARES[0])))
        far[index] = ~shapely.dwithin(outline, shapely.points(start[index] + share * step[index]), limit)
    return edges[far]
