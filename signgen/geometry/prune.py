"""Taking away, leaf by leaf, what the chords of a flattened curve added to its medial axis, with a bound on
the loss."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray
from signgen.geometry.voronoi import IntArray


def pruned(radius: FloatArray, ends: IntArray, length: FloatArray, limit: float) -> NDArray[np.bool_]:
    """Which of the edges `ends` (e, 2) between nodes of clearance `radius` (n,) stay.

    A leaf edge goes when no disc of what it carried away reaches further than `limit` beyond the disc of the
    node where it hung. A disc at the end of a walk of length s reaches at most s + r from the walk's start;
    the greatest such sum, `far`, is carried from the leaves inwards, so the bound holds for the whole of what
    has been pruned, not for one edge alone. Of a tree that goes entirely, its last node stays without an
    edge.
    """
    far = radius.copy()
    stays = np.ones(len(ends), bool)
    degree = np.bincount(ends.ravel(), minlength=len(radius))
    alive = np.arange(len(ends))
    while len(alive):
        a, b = ends[alive, 0], ends[alive, 1]
        leaf_a, leaf_b = degree[a] == 1, degree[b] == 1
        # Where both ends are free the smaller disc is the leaf.
        flip = leaf_b & (~leaf_a | (radius[b] < radius[a]))
        leaf, node = np.where(flip, b, a), np.where(flip, a, b)
        reach = far[leaf] + length[alive]
        gone = (leaf_a | leaf_b) & (reach - radius[node] <= limit)
        if not gone.any():
            break
        np.maximum.at(far, node[gone], reach[gone])
        stays[alive[gone]] = False
        degree -= np.bincount(ends[alive[gone]].ravel(), minlength=len(degree))
        alive = alive[~gone]
    return stays
