"""The part of a medial axis whose clearance lies between two limits, as branches between numbered nodes."""

from __future__ import annotations

import numpy as np
from msgspec import Struct, field

from signgen.geometry.medial import MedialAxis
from signgen.geometry.paths import FloatArray

Pair = tuple[int, int]


class AxisPart(Struct, frozen=True):
    """Branches (k, 3) of x, y, clearance, between nodes (n, 3): branch i runs from node ends[i][0] to node
    ends[i][1]. `lone` are nodes without a branch: dots."""

    nodes: FloatArray
    branches: tuple[FloatArray, ...]
    ends: tuple[Pair, ...]
    lone: tuple[int, ...]


class _Growing(Struct):
    nodes: list[FloatArray]
    branches: list[FloatArray] = field(default_factory=list)
    ends: list[Pair] = field(default_factory=list)

    def node(self, place: FloatArray) -> int:
        self.nodes.append(place)
        return len(self.nodes) - 1


def clipped(axis: MedialAxis, low_mm: float, high_mm: float) -> AxisPart:
    """The axis where low < r < high: branches are cut exactly where r equals a limit, and get a node there.

    Pieces that merely touch a limit from outside vanish. Where r is constant at a limit over a whole stretch,
    that stretch counts as inside.
    """
    out = _Growing(nodes=list(axis.nodes_mm))
    for branch, (first, last) in zip(axis.branches, axis.ends.tolist(), strict=True):
        radius = branch[:, 2]
        if radius.min() >= low_mm and radius.max() <= high_mm:
            out.branches.append(branch)
            out.ends.append((first, last))
        else:
            _clip(branch, (first, last), low_mm, high_mm, out)
    touched = {node for pair in axis.ends.tolist() for node in pair}
    lone = tuple(
        node for node, place in enumerate(axis.nodes_mm) if node not in touched and low_mm < place[2] <= high_mm
    )
    return AxisPart(
        nodes=np.array(out.nodes).reshape(-1, 3), branches=tuple(out.branches), ends=tuple(out.ends), lone=lone
    )


def _clip(branch: FloatArray, ends: Pair, low: float, high: float, out: _Growing) -> None:
    rows = _with_crossings(branch, (low, high))
    middle = (rows[:-1, 2] + rows[1:, 2]) / 2
    inside = (middle >= low) & (middle <= high)
    change = np.flatnonzero(np.diff(inside.astype(np.int8))) + 1
    starts = np.concatenate([[0], change])
    stops = np.concatenate([change, [len(inside)]])
    for start, stop in zip(starts.tolist(), stops.tolist(), strict=True):
        if not inside[start]:
            continue
        piece = rows[start : stop + 1]
        if len(piece) < 2 or not np.any(np.ptp(piece[:, :2], axis=0) > 0):
            continue
        head = ends[0] if start == 0 else out.node(piece[0])
        tail = ends[1] if stop == len(inside) else out.node(piece[-1])
        out.branches.append(piece)
        out.ends.append((head, tail))


def _with_crossings(branch: FloatArray, levels: tuple[float, ...]) -> FloatArray:
    """The branch with a point of exactly each level wherever it crosses one."""
    rows = branch
    for level in levels:
        above = rows[:, 2] > level
        at = np.flatnonzero((above[1:] != above[:-1]) & (rows[1:, 2] != level) & (rows[:-1, 2] != level))
        if not len(at):
            continue
        a, b = rows[at], rows[at + 1]
        share = (level - a[:, 2]) / (b[:, 2] - a[:, 2])
        new = a + share[:, None] * (b - a)
        new[:, 2] = level
        rows = np.insert(rows, at + 1, new, axis=0)
    return rows
