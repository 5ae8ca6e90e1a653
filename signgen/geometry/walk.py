"""Runs along branches that hang on closed rings: each ring walked once round, its own way, with the branches
as excursions."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np
from msgspec import Struct

from signgen.geometry.clip import AxisPart
from signgen.geometry.paths import FloatArray
from signgen.geometry.trace import trace


class WalkPiece(Struct, frozen=True):
    """A stretch (k, 3) of a run; `again` when it runs where a piece before it has run already."""

    points: FloatArray
    again: bool


Run = tuple[WalkPiece, ...]


class WalkRing(Struct, frozen=True):
    """A closed chain (k, 3), its first point repeated at the end, to be walked in its own direction. `stops`
    are (row, node): the rows of it where nodes of the branches lie, ascending."""

    points: FloatArray
    stops: tuple[tuple[int, int], ...]


def length_of(points: FloatArray) -> float:
    """Length of a chain across XY."""
    step = np.diff(points[:, :2], axis=0)
    return float(np.hypot(step[:, 0], step[:, 1]).sum())


def runs_along(part: AxisPart, rings: Sequence[WalkRing], lift_mm: float) -> tuple[Run, ...]:
    """Runs that cover every branch and every ring, few of them; `lift_mm` is the walking that a lift is
    worth.

    Where there are no rings the walking is as `trace` finds it; with rings each excursion returns the way it
    came.
    """
    ringed = {node for ring in rings for _, node in ring.stops}
    groups = _groups(part)
    free = [row for nodes, rows in groups if not nodes & ringed for row in rows]
    runs = _traced(part, free, lift_mm)
    runs += [(WalkPiece(part.nodes[node][None, :], False),) for node in part.lone]
    if rings:
        tied = [row for nodes, rows in groups if nodes & ringed for row in rows]
        runs += _RingWalk(part, rings, tied, lift_mm).runs()
    return tuple(runs)


def _traced(part: AxisPart, rows: list[int], lift_mm: float) -> list[Run]:
    steps = trace(
        [part.ends[row] for row in rows],
        [length_of(part.branches[row]) for row in rows],
        part.nodes[:, 2],
        lift_mm,
    )
    return [
        tuple(
            WalkPiece(part.branches[rows[row]] if ahead else part.branches[rows[row]][::-1], not first)
            for row, ahead, first in run
        )
        for run in steps
    ]


def _groups(part: AxisPart) -> list[tuple[set[int], list[int]]]:
    """Connected sets of branches: (nodes, branch rows)."""
    group_of: dict[int, int] = {}
    groups: dict[int, tuple[set[int], list[int]]] = {}
    for row, (a, b) in enumerate(part.ends):
        found = sorted({group_of[node] for node in (a, b) if node in group_of})
        keep = found[0] if found else row
        nodes, rows = groups.setdefault(keep, (set(), []))
        for other in found[1:]:
            more_nodes, more_rows = groups.pop(other)
            nodes |= more_nodes
            rows += more_rows
        nodes |= {a, b}
        rows.append(row)
        group_of.update(dict.fromkeys(nodes, keep))
    return list(groups.values())


Walk = Iterator["WalkPiece | Walk"]
"""Pieces and, in their place, further walks: instead of recursion, which a long chain of letters could exhaust."""


def _unfolded(walk: Walk) -> Iterator[WalkPiece]:
    stack = [walk]
    while stack:
        item = next(stack[-1], None)
        if item is None:
            stack.pop()
        elif isinstance(item, WalkPiece):
            yield item
        else:
            stack.append(item)


class _RingWalk:
    """One walk over branches and rings. Rings count as places: reaching one at any stop means walking it
    round at once."""

    def __init__(self, part: AxisPart, rings: Sequence[WalkRing], rows: list[int], lift_mm: float) -> None:
        self.part, self.rings, self.lift_mm = part, rings, lift_mm
        self.around: dict[int, list[int]] = defaultdict(list)
        for row in rows:
            for node in set(part.ends[row]):
                self.around[node].append(row)
        self.ring_of = {node: number for number, ring in enumerate(rings) for _, node in ring.stops}
        self.seen_rows: set[int] = set()
        self.seen_rings: set[int] = set()
        self.seen_nodes: set[int] = set()

    def runs(self) -> list[Run]:
        runs: list[Run] = []
        free_ends = [node for node, rows in self.around.items() if len(rows) == 1 and node not in self.ring_of]
        for node in sorted(free_ends, key=lambda node: (float(self.part.nodes[node][2]), node)):
            if node not in self.seen_nodes:
                runs += self._divided(_unfolded(self._from_node(node)))
        for number in range(len(self.rings)):
            if number not in self.seen_rings:
                runs += self._divided(_unfolded(self._from_ring(number, None)))
        for node in self.around:
            if node not in self.seen_nodes:
                runs += self._divided(_unfolded(self._from_node(node)))
        return runs

    def _from_node(self, start: int) -> Walk:
        """Everything that can be reached from a node, returning to it in the end."""
        number = self.ring_of.get(start)
        if number is not None and number not in self.seen_rings:
            yield self._from_ring(number, start)
        else:
            yield self._excursions(start)

    def _excursions(self, node: int) -> Walk:
        self.seen_nodes.add(node)
        for row in self.around[node]:
            if row in self.seen_rows:
                continue
            self.seen_rows.add(row)
            a, b = self.part.ends[row]
            way = self.part.branches[row] if a == node else self.part.branches[row][::-1]
            far = b if a == node else a
            yield WalkPiece(way, False)
            if far == node:
                continue
            if far not in self.seen_nodes:
                yield self._from_node(far)
            yield WalkPiece(way[::-1], True)

    def _from_ring(self, number: int, start: int | None) -> Walk:
        """Once round the ring from a stop (or its first point), with the excursions at each stop."""
        self.seen_rings.add(number)
        ring = self.rings[number]
        at = next((i for i, (_, node) in enumerate(ring.stops) if node == start), 0)
        stops = [*ring.stops[at:], *ring.stops[:at]]
        if not stops:
            yield WalkPiece(ring.points, False)
            return
        closing = len(ring.points) - 1
        gone = [(row - stops[0][0]) % closing for row, _ in stops]
        for (row, node), begin, end in zip(stops, gone, [*gone[1:], closing], strict=True):
            if node not in self.seen_nodes:
                yield self._excursions(node)
            if end > begin:
                yield WalkPiece(ring.points[np.arange(row, row + end - begin + 1) % closing], False)

    def _divided(self, pieces: Iterator[WalkPiece]) -> list[Run]:
        """The walk without its last way back, and lifted wherever walking back costs more than a lift."""
        runs: list[Run] = []
        run: list[WalkPiece] = []
        back: list[WalkPiece] = []
        for piece in pieces:
            if piece.again:
                back.append(piece)
                continue
            if run and back and sum(length_of(piece.points) for piece in back) > self.lift_mm:
                runs.append(tuple(run))
                run, back = [], []
            run += [*back, piece] if run else [piece]
            back = []
        if run:
            runs.append(tuple(run))
        return runs
