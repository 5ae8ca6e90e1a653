"""How wide the strokes of a shape are, from its medial axis."""

from __future__ import annotations

from collections import defaultdict
from typing import cast

import numpy as np

from signgen.geometry.medial import MedialAxis
from signgen.geometry.paths import FloatArray, frozen

TAPER_RATIO = 0.1
"""Where the clearance grows faster than this along the axis from a free end, the end of a stroke is meant, not the
stroke: a point with a full angle of 11.5 degrees, less than that of any serif."""


def strokes_of(axis: MedialAxis, point_mm: float) -> FloatArray:
    """The points (k, 3), k >= 1, of an axis that tell how wide strokes are: without what only leads to their ends.

    From a pointed end, one with a clearance of `point_mm` at most, the stroke begins where the clearance grows no more;
    from a blunt or slanting one where it grows by less than TAPER_RATIO. A shape that has nothing but such ends (a
    triangle) is as wide as it is at its widest.
    """
    degree = np.bincount(axis.ends.ravel(), minlength=len(axis.nodes_mm))
    around: dict[int, set[int]] = defaultdict(set)
    for row, ends in enumerate(axis.ends.tolist()):
        for node in ends:
            around[node].add(row)
    spans = [[0, len(branch)] for branch in axis.branches]
    free = np.flatnonzero(degree == 1).tolist()
    while free:
        node = free.pop()
        if len(around[node]) != 1:
            continue
        (row,) = around[node]
        a, b = axis.ends[row].tolist()
        if a == b:
            continue
        way = axis.branches[row] if a == node else axis.branches[row][::-1]
        is_point = degree[node] == 1 and way[0, 2] <= point_mm
        gone = _taper(way, 0.0 if is_point else TAPER_RATIO)
        if gone < len(way) - 1:
            spans[row][0 if a == node else 1] = gone if a == node else len(way) - gone
            continue
        # A fork of which only one branch is left is the end of that one.
        spans[row] = [0, 0]
        around[a].discard(row)
        around[b].discard(row)
        free.append(b if a == node else a)
    kept = [branch[first:last] for branch, (first, last) in zip(axis.branches, spans, strict=True) if last > first]
    return cast(FloatArray, frozen(np.concatenate(kept) if kept else widest_place(axis)[None, :]))


def widest_place(axis: MedialAxis) -> FloatArray:
    """(3,) x, y and the clearance where it is greatest."""
    points = np.concatenate([axis.nodes_mm, *axis.branches])
    return cast(FloatArray, points[points[:, 2].argmax()])


def _taper(way: FloatArray, least_ratio: float) -> int:
    """How many points of a way from a free end only lead to that end; all but the last when all of them do."""
    step = np.hypot(*np.diff(way[:, :2], axis=0).T)
    slow = np.flatnonzero(np.diff(way[:, 2]) <= least_ratio * step + 1e-9)
    return int(slow[0]) if len(slow) else len(way) - 1
