"""The edges of a skeleton joined into branches, its curves chorded in (x, y, r)."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray
from signgen.geometry.skeleton import Skeleton
from signgen.geometry.voronoi import IntArray


def branches_of(
    skeleton: Skeleton, keep: NDArray[np.bool_], tolerance: float
) -> tuple[FloatArray, tuple[FloatArray, ...], IntArray]:
    """(nodes, branches, ends) of the kept edges, as in MedialAxis but in the skeleton's unit.

    A skeleton without kept edges (a round dot) gives its node of greatest clearance and no branch.
    """
    if not keep.any():
        best = skeleton.nodes[np.argmax(skeleton.nodes[:, 2])]
        return best[None, :].copy(), (), np.zeros((0, 2), np.int64)
    rows = np.flatnonzero(keep)
    inner, counts = _inner_points(skeleton, rows, tolerance)
    edges, forward, sizes = _chains(skeleton.ends[rows])
    ends = skeleton.ends[rows[edges]]
    tail, head = np.where(forward, ends[:, 0], ends[:, 1]), np.where(forward, ends[:, 1], ends[:, 0])

    # Every walked edge gives its first node and its inner points in walking order; every chain its last node
    # at the end.
    emitted = 1 + counts[edges]
    last_edges = np.cumsum(sizes) - 1
    emitted[last_edges] += 1
    begin = np.concatenate([[0], np.cumsum(emitted)])
    points = np.empty((begin[-1], 3))
    points[begin[:-1]] = skeleton.nodes[tail]
    points[begin[last_edges + 1] - 1] = skeleton.nodes[head[last_edges]]
    firsts = np.concatenate([[0], np.cumsum(counts)])
    order = np.repeat(np.arange(len(edges)), counts[edges])
    nth = np.arange(len(order)) - np.repeat(np.cumsum(counts[edges]) - counts[edges], counts[edges])
    source = np.where(forward[order], firsts[edges[order]] + nth, firsts[edges[order]] + counts[edges[order]] - 1 - nth)
    points[begin[order] + 1 + nth] = inner[source]

    cuts = begin[last_edges + 1]
    branches = tuple(np.split(points, cuts[:-1]))
    first_edges = np.concatenate([[0], last_edges[:-1] + 1])
    used, numbered = np.unique(np.concatenate([tail[first_edges], head[last_edges]]), return_inverse=True)
    return skeleton.nodes[used], branches, numbered.reshape(2, -1).T


def _inner_points(skeleton: Skeleton, rows: IntArray, tolerance: float) -> tuple[FloatArray, IntArray]:
    """Points between the ends of the edges `rows`, and how many each edge has, so that chords miss its curve
    by `tolerance`.

    Parabola with the focus at height p above the directrix, x along the directrix: y = r = (x^2 + p^2) / (2
    p). A chord over a step h is off by at most h^2 / (8 p) in y and by as much in r, at the same time: h = 2
    sqrt(p tolerance). Two points d from their middle: r = sqrt(t^2 + d^2) = d cosh(u) with t = d sinh(u). A
    chord over a step v of u is off in r by at most d (cosh(v / 2) - 1) cosh(...)-wise less than d v^2 / 8 x
    1.04 for v <= 1, because r'' = d^2 / r^3 falls as fast as the step grows.
    """
    bent = skeleton.bent[rows]
    counts = np.zeros(len(rows), np.int64)
    curved = np.flatnonzero(bent)
    if not len(curved):
        return np.zeros((0, 3)), counts
    edge = rows[curved]
    parabola = bent[curved] == 1
    away = skeleton.nodes[skeleton.ends[edge], :2] - skeleton.focus[edge][:, None]
    across = np.einsum("ijk,ik->ij", away, skeleton.along[edge])
    scale = np.where(parabola, 2.0, 1.0) * skeleton.reach[edge]
    parameter = np.where(parabola[:, None], across, np.arcsinh(across / scale[:, None]))
    step = np.where(parabola, 2 * np.sqrt(scale * tolerance), np.minimum(1.0, np.sqrt(8 * tolerance / (1.04 * scale))))
    pieces = np.ceil(np.abs(parameter[:, 1] - parameter[:, 0]) / step - 1e-9).astype(np.int64)
    counts[curved] = np.maximum(pieces - 1, 0)

    each = np.repeat(np.arange(len(curved)), counts[curved])
    nth = np.arange(len(each)) - np.repeat(np.cumsum(counts[curved]) - counts[curved], counts[curved]) + 1
    share = nth / (counts[curved][each] + 1)
    value = parameter[each, 0] + share * (parameter[each, 1] - parameter[each, 0])
    bow, size = parabola[each], scale[each]
    distance = np.where(bow, value, size * np.sinh(np.where(bow, 0.0, value)))
    radius = np.where(bow, (value**2 + size**2) / (2 * size), np.hypot(distance, size))
    way, focus = skeleton.along[edge][each], skeleton.focus[edge][each]
    normal = np.column_stack([-way[:, 1], way[:, 0]])
    # From the focus the parabola lies r - p along the directrix's normal; two points' middle lies half the
    # gap back from the second.
    lift = np.where(bow, radius - size, size)
    place = focus + distance[:, None] * way + lift[:, None] * normal
    return np.column_stack([place, radius]), counts


def _chains(ends: IntArray) -> tuple[IntArray, NDArray[np.bool_], IntArray]:
    """The edges (e, 2) walked from fork or end to fork or end, one chain after the other: (rows, whether forwards, how
    many each chain has). Loops without either start at their first edge.

    All chains are walked at once, a step at a time. An edge is two half edges, h and h ^ 1, there and back.
    """
    tail, head = ends.ravel(), ends[:, ::-1].ravel()
    half = np.arange(len(tail))
    degree = np.bincount(tail)
    # Of the two half edges that leave a node of degree 2, their sum less the one is the other.
    leaving = np.bincount(tail, weights=half).astype(np.int64)
    following = np.where(degree[head] == 2, leaving[head] - (half ^ 1), -1)
    starts = np.flatnonzero(degree[tail] != 2)
    numbers, at = np.arange(len(starts)), starts
    walked, owners = [], []
    last = starts.copy()
    while len(at):
        walked.append(at)
        owners.append(numbers)
        last[numbers] = at
        at = following[at]
        going = at >= 0
        numbers, at = numbers[going], at[going]
    halves = np.concatenate([np.zeros(0, np.int64), *walked])
    owner = np.concatenate([np.zeros(0, np.int64), *owners])
    # Each chain has been walked both ways: the way counts that begins at the node that comes first among the edges.
    first = np.full(len(degree), len(tail))
    np.minimum.at(first, tail, half)
    key = first[tail] * len(tail) + half
    chosen = np.flatnonzero(key[starts] <= key[last ^ 1])
    rank = np.full(len(starts), -1)
    rank[chosen[np.argsort(key[starts[chosen]])]] = np.arange(len(chosen))
    kept = np.flatnonzero(rank[owner] >= 0)
    halves = halves[kept[np.argsort(rank[owner[kept]], kind="stable")]]
    sizes = np.bincount(rank[owner[kept]], minlength=len(chosen))

    seen = np.zeros(len(ends), bool)
    seen[halves // 2] = True
    loops: list[list[int]] = []
    for row in np.flatnonzero(~seen).tolist():
        if seen[row]:
            continue
        loop = [2 * row]
        while (onward := int(following[loop[-1]])) != 2 * row:
            loop.append(onward)
        seen[np.array(loop) // 2] = True
        loops.append(loop)
    if loops:
        halves = np.concatenate([halves, *(np.array(loop) for loop in loops)])
        sizes = np.concatenate([sizes, [len(loop) for loop in loops]])
    return halves // 2, halves % 2 == 0, sizes
