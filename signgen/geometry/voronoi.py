"""The Voronoi diagram of line segments: the only door to pyvoronoi (Boost.Polygon)."""

from __future__ import annotations

import gc
from itertools import chain
from operator import attrgetter
from typing import Any

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray

IntArray = NDArray[np.int64]

_START_POINT, _END_POINT = 1, 2
"""Boost.Polygon's source categories of a cell whose site is an end of a segment; the rest are segments."""


class Diagram(Struct, frozen=True, kw_only=True):
    """The diagram of m segments between n points, one row for each edge (Boost's half edges in pairs).

    vertices (v, 2), in the unit of the input. starts, ends (e,): rows of `vertices`, -1 at infinity. left,
    right (e,): the sites on both sides of the edge: i < m is segment i, m + j is point j.
    """

    vertices: FloatArray
    starts: IntArray
    ends: IntArray
    left: IntArray
    right: IntArray


def segment_voronoi(points: IntArray, segments: IntArray) -> Diagram:
    """The diagram of `segments` (m, 2), rows of `points` (n, 2), integers below 2^31.

    The segments may share ends and must not touch otherwise; the caller sees to that, for the library returns
    a wrong diagram without saying so.
    """
    import pyvoronoi

    # The library makes an object of every cell and vertex; looking for garbage among them again and again would take a
    # tenth of the time.
    is_collecting = gc.isenabled()
    gc.disable()
    try:
        return _diagram(pyvoronoi.Pyvoronoi(1), points, segments)
    finally:
        if is_collecting:
            gc.enable()


def _diagram(builder: Any, points: IntArray, segments: IntArray) -> Diagram:
    for segment in points[segments].tolist():
        builder.AddSegment(segment)
    builder.Construct()
    # Cells carry the whole topology: reading edges as well would make an object of every half edge, a third
    # of the time.
    cells = builder.GetCells()
    vertices = np.array(list(map(attrgetter("X", "Y"), builder.GetVertices())), dtype=np.float64).reshape(-1, 2)
    sites = np.array(list(map(attrgetter("site", "source_category"), cells)), dtype=np.int64).reshape(-1, 2)
    m = len(segments)
    index, category = sites[:, 0], sites[:, 1]
    site = np.where(
        category == _START_POINT,
        m + segments[index, 0],
        np.where(category == _END_POINT, m + segments[index, 1], index),
    )

    edges_of = [cell.edges for cell in cells]
    counts = np.fromiter(map(len, edges_of), np.int64, len(cells))
    total = int(counts.sum())
    half = np.fromiter(chain.from_iterable(edges_of), np.int64, total)
    # A cell's vertices run once more through the first: edge k goes from vertex k to vertex k + 1.
    walked = np.fromiter(chain.from_iterable(cell.vertices for cell in cells), np.int64, total + len(cells))
    at = np.arange(total) + np.repeat(np.arange(len(cells)), counts)
    size = builder.CountEdges()
    start, end, cell_of = (np.full(size, -1, np.int64) for _ in range(3))
    start[half], end[half] = walked[at], walked[at + 1]
    cell_of[half] = np.repeat(site, counts)
    if total != size:
        raise ArithmeticError(f"{total} of {size} half edges belong to a cell")
    return Diagram(vertices=vertices, starts=start[::2], ends=end[::2], left=cell_of[::2], right=cell_of[1::2])
