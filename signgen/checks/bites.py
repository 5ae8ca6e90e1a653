"""How much wood a cutter takes at once, along its way."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from signgen.checks.way import Way
from signgen.geometry.distance import FloatArray, IntArray
from signgen.replay.sweep import HeightMap
from signgen.shop.tools import Tool

POINTED_CELL_MM = 0.5
FLAT_CELL_RATIO = 0.5
"""Places in one square of this size, or in one beside it, count as one place: for a point so that ways walked twice
meet, for a flat cutter a share of its radius, so that what its disc has covered counts as cut."""

STEP_CELLS = 0.8
"""Distance between the places looked at along a way, in squares."""

LAG_CELLS = 3.0
"""What was cut less than this far back along the way belongs to the same bite: no shorter than the reach of a
square and its neighbours."""

APART_MM = 100.0
"""What a rapid or a lift counts for: after it nothing is the same bite."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bites:
    """At n places along a program's feed moves: piece (n,) of its `Way`, z_mm (n,) of the tip, and depth_mm (n,), how
    far the tip is below what earlier passes (of this program, and the programs before) left at that very place."""

    piece: IntArray
    z_mm: FloatArray
    depth_mm: FloatArray


def bites_of(cuts: Way, tool: Tool, before: HeightMap) -> Bites:
    """The bites of a program that starts on a board; 0 where the tip is above everything."""
    size = POINTED_CELL_MM
    if tool.kind == "end-mill":
        size = max(size, FLAT_CELL_RATIO * tool.radius_mm)
    lag = LAG_CELLS * size
    place, piece = _places(cuts, STEP_CELLS * size)
    if not len(piece):
        empty = np.zeros(0)
        return Bites(piece=piece, z_mm=empty, depth_mm=empty)
    level = _level_before(before, place)
    travelled = _travelled(cuts, place, piece)
    cell = np.floor((place[:, :2] - place[:, :2].min(axis=0)) / size + 1.37).astype(np.int64)
    width = int(cell[:, 0].max()) + 3
    home = cell[:, 1] * width + cell[:, 0]
    beside = [row * width + column for row in (-1, 0, 1) for column in (-1, 0, 1)]
    covered = np.concatenate([home + shift for shift in beside])
    low, when = np.tile(place[:, 2], len(beside)), np.tile(travelled, len(beside))
    order = np.lexsort((when, covered))
    covered, low, when = covered[order], low[order], when[order]
    # The lowest so far within each cell: cells are set apart by more than any height, so that one running minimum
    # over all of them starts anew in each.
    rank = np.concatenate([[0], np.cumsum(covered[1:] != covered[:-1])])
    so_far = np.minimum.accumulate(low - rank * 1e4) + rank * 1e4
    stride = float(when.max()) + 2 * lag + 1.0
    start = np.searchsorted(covered, home)
    found = np.searchsorted(rank * stride + when, rank[start] * stride + travelled - lag, "right")
    earlier = np.where(found > start, so_far[np.maximum(found - 1, 0)], np.inf)
    depth = np.maximum(np.minimum(level, earlier) - place[:, 2], 0.0)
    return Bites(piece=piece, z_mm=place[:, 2], depth_mm=depth)


def _places(cuts: Way, step_mm: float) -> tuple[FloatArray, IntArray]:
    """(n, 3) places along the pieces in the order of execution, each piece's end among them, and their pieces."""
    step = cuts.end_mm - cuts.start_mm
    count = np.maximum(np.ceil(np.hypot(step[:, 0], step[:, 1]) / step_mm), 1).astype(np.intp)
    piece = np.repeat(np.arange(len(cuts)), count)
    share = (np.arange(len(piece)) - (np.cumsum(count) - count)[piece] + 1) / count[piece]
    return cuts.start_mm[piece] + share[:, None] * step[piece], piece


def _travelled(cuts: Way, place: FloatArray, piece: IntArray) -> FloatArray:
    """(n,) way across the board up to each place; going down adds nothing, a rapid or a lift straight up adds
    APART_MM."""
    first = np.concatenate([[True], piece[1:] != piece[:-1]])
    previous = np.where(first[:, None], cuts.start_mm[piece], np.concatenate([cuts.start_mm[:1], place[:-1]]))
    gone = np.hypot(*(place - previous)[:, :2].T)
    motion = cuts.motion[piece]
    rapid = np.concatenate([[False], motion[1:] > motion[:-1] + 1])
    lift = (gone == 0) & (place[:, 2] > previous[:, 2])
    return np.asarray(np.cumsum(gone + APART_MM * (rapid | lift)))


def _level_before(before: HeightMap, place: FloatArray) -> NDArray[np.float64]:
    """(n,) height of the board under each place; -inf beside it."""
    ny, nx = before.z_mm.shape
    i = np.rint((place[:, 0] - before.x0_mm) / before.cell_mm).astype(np.intp)
    j = np.rint((place[:, 1] - before.y0_mm) / before.cell_mm).astype(np.intp)
    inside = (i >= 0) & (i < nx) & (j >= 0) & (j < ny)
    found = before.z_mm[np.clip(j, 0, ny - 1), np.clip(i, 0, nx - 1)].astype(np.float64)
    return np.where(inside, found, -np.inf)
