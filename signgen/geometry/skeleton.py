"""From the segment Voronoi diagram of a polygon to the inner edges that make its medial axis, each with its
two sites."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from signgen.geometry.paths import FloatArray
from signgen.geometry.voronoi import IntArray, segment_voronoi


class OpenDiagramError(ArithmeticError):
    """The diagram has a defect: its inner edges do not form the axis of the polygon."""


class Skeleton(Struct, frozen=True, kw_only=True):
    """The medial axis as it comes out of the diagram: n nodes and e edges, in the unit of the input.

    nodes (n, 3): x, y and the clearance r. ends (e, 2) rows of `nodes`. focus (e, 2) the point site of an
    edge between a point and a segment or between two points, NaN between two segments. along (e, 2) the unit
    direction in which such an edge's parameter grows: along the segment, or across the line between the two
    points. reach (e,) the least clearance on the edge's whole curve: the focus's distance to the segment over
    2, or half the distance between the points. bent (e,) 0 straight, 1 parabola, 2 straight with a hyperbolic
    clearance.
    """

    nodes: FloatArray
    ends: IntArray
    focus: FloatArray
    along: FloatArray
    reach: FloatArray
    bent: IntArray


def inner_skeleton(points: IntArray, following: IntArray) -> Skeleton:
    """The medial axis of the polygon whose rings run from each of `points` (n, 2) to point `following[i]`,
    inside on the left.

    Raises: OpenDiagramError when the diagram's inner edges are not what a closed polygon has.
    """
    n = len(points)
    diagram = segment_voronoi(points, np.column_stack([np.arange(n), following]))
    # A diagram has a segment for each point, so segment i runs from point i, and site n + j is point j.
    low, high = np.minimum(diagram.left, diagram.right), np.maximum(diagram.left, diagram.right)
    pair = (low >= n).astype(np.int64)
    mixed = (low < n) & (high >= n)
    # An edge between a segment and its own end is no part of the axis.
    own = mixed & ((high - n == low) | (high - n == following[np.minimum(low, n - 1)]))
    primary = ~own
    finite = (diagram.starts >= 0) & (diagram.ends >= 0)

    step = (points[following] - points).astype(np.float64)
    unit = step / np.hypot(step[:, 0], step[:, 1])[:, None]
    before = np.empty(n, np.int64)
    before[following] = np.arange(n)
    back = points - points[before]
    ahead = points[following] - points
    reflex = back[:, 0] * ahead[:, 1] - back[:, 1] * ahead[:, 0] < 0

    def clearance(edges: IntArray, vertices: IntArray) -> FloatArray:
        """Signed distance to the edge's segment (positive inside), or the distance to its point."""
        site = low[edges]
        on_segment = site < n
        anchor = points[np.where(on_segment, site, site - n)]
        away = diagram.vertices[vertices] - anchor
        way = unit[np.minimum(site, n - 1)]
        return np.where(on_segment, way[:, 0] * away[:, 1] - way[:, 1] * away[:, 0], np.hypot(away[:, 0], away[:, 1]))

    inside_pair = (pair == 1) & reflex[np.maximum(low - n, 0)] & reflex[np.maximum(high - n, 0)]
    whole = np.flatnonzero(primary & finite & ((pair == 0) | inside_pair))
    first, last = clearance(whole, diagram.starts[whole]), clearance(whole, diagram.ends[whole])
    kept = first + last > 0
    inner, first, last = whole[kept], first[kept], last[kept]

    endless = np.flatnonzero(primary & ~finite)
    known = np.maximum(diagram.starts[endless], diagram.ends[endless])
    if np.any(inside_pair[endless]) or np.any((pair[endless] == 0) & (known >= 0) & (clearance(endless, known) > 1.0)):
        raise OpenDiagramError("an edge of the medial axis runs to infinity")

    used, ends = np.unique(np.concatenate([diagram.starts[inner], diagram.ends[inner]]), return_inverse=True)
    radius = np.zeros(len(used))
    radius[ends] = np.concatenate([first, last])
    ends = ends.reshape(2, -1).T
    nodes = np.column_stack([diagram.vertices[used], np.maximum(radius, 0.0)])

    is_pair, is_mixed = pair[inner] == 1, mixed[inner]
    focus = np.full((len(inner), 2), np.nan)
    along = np.zeros((len(inner), 2))
    reach = np.zeros(len(inner))
    other = points[np.maximum(high[inner] - n, 0)].astype(np.float64)
    bent = np.where(is_pair, 2, np.where(is_mixed, 1, 0))
    curved = is_pair | is_mixed
    focus[curved] = other[curved]
    rows = np.flatnonzero(is_mixed)
    segment = low[inner[rows]]
    way = unit[segment]
    away = other[rows] - points[segment]
    along[rows] = way
    reach[rows] = (way[:, 0] * away[:, 1] - way[:, 1] * away[:, 0]) / 2
    rows = np.flatnonzero(is_pair)
    gap = other[rows] - points[low[inner[rows]] - n]
    span = np.hypot(gap[:, 0], gap[:, 1])
    along[rows] = np.column_stack([-gap[:, 1], gap[:, 0]]) / span[:, None]
    reach[rows] = span / 2
    return Skeleton(nodes=nodes, ends=ends, focus=focus, along=along, reach=reach, bent=bent)
