"""A graph of branches walked in the fewest runs: what is walked twice costs its length, a new run costs a
lift."""

from __future__ import annotations

import itertools
from collections import defaultdict
from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

Step = tuple[int, bool, bool]
"""(branch, forwards, first time)."""


def trace(ends: ArrayLike, lengths: ArrayLike, heights: ArrayLike, lift: float) -> tuple[tuple[Step, ...], ...]:
    """Runs that walk every branch at least once; each run is a row of steps, each ending where the next one
    starts.

    ends (b, 2) node numbers, lengths (b,), heights (n,) how costly it is to start a run at a node (the
    clearance there: a run starts at a node of least height among those that cost no further walking). `lift`
    is the length whose walking costs as much as lifting out and entering again. Components come in the order
    of their first branch.
    """
    pairs = [(int(a), int(b)) for a, b in np.asarray(ends, dtype=np.int64).reshape(-1, 2)]
    costs = [float(length) for length in np.asarray(lengths, dtype=np.float64).ravel()]
    height = [float(value) for value in np.asarray(heights, dtype=np.float64).ravel()]
    runs: list[tuple[Step, ...]] = []
    for branches in _components(pairs):
        runs += _runs_of_component(branches, pairs, costs, height, lift)
    return tuple(runs)


def _components(pairs: Sequence[tuple[int, int]]) -> list[list[int]]:
    around = defaultdict(list)
    for row, (a, b) in enumerate(pairs):
        around[a].append(row)
        around[b].append(row)
    seen = bytearray(len(pairs))
    components = []
    for row in range(len(pairs)):
        if seen[row]:
            continue
        seen[row] = 1
        stack, members = [row], []
        while stack:
            at = stack.pop()
            members.append(at)
            for node in pairs[at]:
                for other in around[node]:
                    if not seen[other]:
                        seen[other] = 1
                        stack.append(other)
        components.append(sorted(members))
    return components


def _runs_of_component(
    branches: list[int],
    pairs: Sequence[tuple[int, int]],
    costs: Sequence[float],
    height: Sequence[float],
    lift: float,
) -> list[tuple[Step, ...]]:
    parent, order = _shortest_tree(branches, pairs, costs)
    degree: dict[int, int] = defaultdict(int)
    for row in branches:
        for node in pairs[row]:
            degree[node] += 1
    odd = {node for node, count in degree.items() if count % 2}
    doubled = _doubled(odd, parent, order)
    terminals: list[tuple[int, int]] = []
    while odd:
        gain, low_end, start, finish = _best_way(odd, doubled, parent, order, costs, height)
        if terminals and gain <= lift:
            break
        for node in (start, finish):
            odd.discard(node)
        _toggle(start, finish, doubled, parent)
        terminals.append((start, finish) if low_end == start else (finish, start))
    if not terminals:
        lowest = min(degree, key=lambda node: (height[node], node))
        terminals.append((lowest, lowest))
    return _euler_runs(branches, doubled, terminals, pairs)


Parents = dict[int, tuple[int, int]]
"""node -> (branch to its parent, parent)."""


def _shortest_tree(
    branches: list[int], pairs: Sequence[tuple[int, int]], costs: Sequence[float]
) -> tuple[Parents, list[int]]:
    """A spanning tree of least length (Kruskal), rooted: (parents, nodes from the root outwards)."""
    leader: dict[int, int] = {}

    def find(node: int) -> int:
        leader.setdefault(node, node)
        while leader[node] != node:
            leader[node] = leader[leader[node]]
            node = leader[node]
        return node

    around: dict[int, list[tuple[int, int]]] = defaultdict(list)
    for row in sorted(branches, key=lambda row: (costs[row], row)):
        a, b = pairs[row]
        top_a, top_b = find(a), find(b)
        if top_a != top_b:
            leader[top_a] = top_b
            around[a].append((row, b))
            around[b].append((row, a))
    root = pairs[branches[0]][0]
    parent: Parents = {}
    order = [root]
    for node in order:
        for row, other in around[node]:
            if other != root and other not in parent:
                parent[other] = (row, node)
                order.append(other)
    return parent, order


def _doubled(odd: set[int], parent: Parents, order: list[int]) -> set[int]:
    """The tree's branches to walk twice so that every node has an even number of them: those with an odd
    number of odd nodes beyond."""
    count = {node: int(node in odd) for node in order}
    doubled = set()
    for node in reversed(order[1:]):
        row, above = parent[node]
        if count[node] % 2:
            doubled.add(row)
        count[above] += count[node]
    return doubled


def _best_way(
    odd: set[int],
    doubled: set[int],
    parent: Parents,
    order: list[int],
    costs: Sequence[float],
    height: Sequence[float],
) -> tuple[float, int, int, int]:
    """(gain, lower end, one end, other end) of the way between two odd nodes along which walking less saves
    most.

    Along such a way doubled branches become single and single ones double. Equal gains (and all within a
    hundredth of the best) prefer an end of least height.
    """
    # Best way down from each node to an odd node in its part of the tree: (gain, -height, end).
    down: dict[int, tuple[float, float, int] | None] = {}
    best: tuple[float, float, int, int] | None = None
    for node in reversed(order):
        down[node] = (0.0, -height[node], node) if node in odd else None
    for node in reversed(order):
        mine = down[node]
        if node in parent:
            row, above = parent[node]
            if mine is not None:
                worth = costs[row] if row in doubled else -costs[row]
                here = (mine[0] + worth, mine[1], mine[2])
                other = down[above]
                if other is not None:
                    lowest = max(other[1], here[1])
                    found = (other[0] + here[0], lowest, other[2], here[2])
                    if best is None or found > best:
                        best = found
                if other is None or here > other:
                    down[above] = here
    assert best is not None, "odd nodes come in pairs"
    gain, low, start, finish = best
    return gain, (start if -height[start] >= low else finish), start, finish


def _toggle(start: int, finish: int, doubled: set[int], parent: Parents) -> None:
    def to_root(node: int) -> list[int]:
        rows = []
        while node in parent:
            row, node = parent[node]
            rows.append(row)
        return rows

    for row in set(to_root(start)) ^ set(to_root(finish)):
        doubled ^= {row}


def _euler_runs(
    branches: list[int],
    doubled: set[int],
    terminals: list[tuple[int, int]],
    pairs: Sequence[tuple[int, int]],
) -> list[tuple[Step, ...]]:
    """The branches (the doubled ones twice) walked in one trail with a lift from each run's end to the next
    one's start (Hierholzer)."""
    edges: list[tuple[int, int, int]] = [(*pairs[row], row) for row in branches]
    edges += [(*pairs[row], row) for row in sorted(doubled)]
    edges += [(finish, start, -1) for (_, finish), (start, _) in itertools.pairwise(terminals)]
    around: dict[int, list[int]] = defaultdict(list)
    for number, (a, b, _) in enumerate(edges):
        around[a].append(number)
        if a != b:
            around[b].append(number)
    used = bytearray(len(edges))
    start = terminals[0][0]
    stack: list[tuple[int, int, bool]] = [(start, -1, True)]
    trail: list[tuple[int, bool]] = []
    while stack:
        node, came, ahead = stack[-1]
        exits = around[node]
        while exits and used[exits[-1]]:
            exits.pop()
        if exits:
            number = exits.pop()
            used[number] = 1
            a, b, _ = edges[number]
            forwards = a == node
            stack.append((b if forwards else a, number, forwards))
        else:
            stack.pop()
            if came >= 0:
                trail.append((came, ahead))
    trail.reverse()
    runs: list[tuple[Step, ...]] = []
    run: list[Step] = []
    walked: set[int] = set()
    for number, forwards in trail:
        row = edges[number][2]
        if row < 0:
            runs.append(tuple(run))
            run = []
            continue
        run.append((row, forwards, row not in walked))
        walked.add(row)
    runs.append(tuple(run))
    return [run for run in runs if run]
