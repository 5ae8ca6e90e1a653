"""How much wood a cutter takes at once, along its way."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.checks.tip_path import TipPath
from signgen.geometry.distance import FloatArray, IntArray
from signgen.replay.heights import HeightMap
from signgen.shop.tools import Tool

STEP_MM = 0.4
"""Distance between the places looked at along a way."""

TIP_SQUARE_MM = 0.5
"""Places in one square of this size, or in one beside it, count as one place: so ways that are walked twice meet."""

DISC_SQUARE_RATIO = 0.5
"""The same for what the disc of a flat cutter has covered beside its way: a square's side over its radius."""

MOST_SQUARES = 4_000_000
"""Of a square metre. On larger boards a list of all of them costs more than it saves."""

LAG_SQUARES = 3.0
"""What was cut less than this far back along the way belongs to the same bite: farther than a square and its
neighbours reach."""

STRETCH = 4
"""A bite across the board must last over this many places in a row: where a way turns back on itself, the lag hides
for a moment that the pass before has just been there."""

APART_MM = 100.0
"""What a rapid or a lift counts for: after it nothing is the same bite."""


class Engagement(Struct, frozen=True, kw_only=True):
    """At n places along a program's feed moves: piece (n,) of its `TipPath`, xy_mm (n, 2), z_mm (n,) of the tip, and
    depth_mm (n,), how far the tip is below what the tips of earlier passes (of this program, and the programs before)
    left at that very place."""

    piece: IntArray
    xy_mm: FloatArray
    z_mm: FloatArray
    depth_mm: FloatArray


def engagement_of(cuts: TipPath, tool: Tool, before: HeightMap) -> Engagement:
    """The engagement of a program that starts on a board; 0 where the tip is above everything."""
    cuts, owner = cuts.within(_bounds(before))
    place, piece, travelled, upright = _places(cuts)
    if not len(piece):
        empty = np.zeros(0)
        return Engagement(piece=piece, xy_mm=np.zeros((0, 2)), z_mm=empty, depth_mm=empty)
    left = np.minimum(_level_before(before, place), _cut_earlier(place, travelled, TIP_SQUARE_MM))
    if tool.kind == "end-mill":
        size = max(TIP_SQUARE_MM, DISC_SQUARE_RATIO * tool.radius_mm)
        left = np.minimum(left, _cut_earlier(place, travelled, size))
    # Where the tip goes straight down, all is gone above the place that it started from.
    left = np.minimum(left, _straight_down_from(cuts)[piece])
    depth = np.maximum(left - place[:, 2], 0.0)
    across = np.flatnonzero(~upright)
    if len(across):
        window = np.minimum(np.arange(len(across))[:, None] + np.arange(STRETCH), len(across) - 1)
        depth[across] = depth[across[window]].min(axis=1)
    return Engagement(piece=owner[piece], xy_mm=place[:, :2], z_mm=place[:, 2], depth_mm=depth)


def _cut_earlier(place: FloatArray, travelled: FloatArray, size_mm: float) -> FloatArray:
    """(n,) the lowest height of the tip in or beside each place's square, longer ago than the lag; else infinite."""
    cell = np.floor((place[:, :2] - place[:, :2].min(axis=0)) / size_mm + 1.37).astype(np.int64)
    width = int(cell[:, 0].max()) + 3
    home = cell[:, 1] * width + cell[:, 0]
    beside = np.array([row * width + column for row in (-1, 0, 1) for column in (-1, 0, 1)])
    covered = (home[:, None] + beside).ravel()
    # Places come in the order in which they are reached, and stay in it within each square.
    order = np.argsort(_small(covered), kind="stable")
    covered, visitor = covered[order], order // len(beside)
    low, when = place[visitor, 2], travelled[visitor]
    # The lowest so far within each square: squares are set apart by more than any height, so that one running minimum
    # over all of them starts anew in each.
    rank = np.concatenate([[0], np.cumsum(covered[1:] != covered[:-1])])
    so_far = np.minimum.accumulate(low - rank * 1e4) + rank * 1e4
    lag = LAG_SQUARES * size_mm
    stride = float(when.max()) + 2 * lag + 1.0
    start = np.searchsorted(covered, home)
    found = np.searchsorted(rank * stride + when, rank[start] * stride + travelled - lag, "right")
    return np.where(found > start, so_far[np.maximum(found - 1, 0)], np.inf)


def _small(squares: IntArray) -> NDArray[np.integer]:
    """Numbers in the same order from 0 up without gaps: two bytes hold those of most boards, which sort in no time."""
    if squares.max() > MOST_SQUARES:
        return squares
    in_use = np.zeros(int(squares.max()) + 1, np.bool_)
    in_use[squares] = True
    number = np.cumsum(in_use, dtype=np.int32)
    return number[squares].astype(np.uint16 if number[-1] < 1 << 16 else np.int32)


def _straight_down_from(cuts: TipPath) -> FloatArray:
    """(k,) for pieces that go straight down, the height where the plunge that they belong to began; infinite for
    others."""
    step = cuts.end_mm - cuts.start_mm
    down = (step[:, 0] == 0) & (step[:, 1] == 0) & (step[:, 2] <= 0)
    begins = down & ~np.concatenate([[False], down[:-1] & (cuts.motion[1:] <= cuts.motion[:-1] + 1)])
    first = np.maximum.accumulate(np.where(begins, np.arange(len(cuts)), 0))
    return np.where(down, cuts.start_mm[first, 2], np.inf)


def _places(cuts: TipPath) -> tuple[FloatArray, IntArray, FloatArray, NDArray[np.bool_]]:
    """Places along the pieces in the order of execution, STEP_MM apart, and the end of each piece that goes straight
    up or down: (n, 3), their pieces, the way across the board up to each, and whether the piece is upright. In that
    way a rapid or a lift straight up counts APART_MM, and going down nothing."""
    step = cuts.end_mm - cuts.start_mm
    length = np.hypot(step[:, 0], step[:, 1])
    gone = np.cumsum(length)
    # Multiples of the step that fall into each piece; the last one stands for the piece's end when it is upright.
    upright = length == 0
    first = np.floor((gone - length) / STEP_MM)
    count = np.where(upright, 1, np.floor(gone / STEP_MM) - first).astype(np.intp)
    piece = np.repeat(np.arange(len(cuts)), count)
    number = np.arange(len(piece)) - (np.cumsum(count) - count)[piece] + 1
    along = np.where(upright[piece], 1.0, (first[piece] + number) * STEP_MM - (gone - length)[piece])
    share = np.clip(along / np.where(upright, 1.0, length)[piece], 0.0, 1.0)
    rapid = np.concatenate([[False], cuts.motion[1:] > cuts.motion[:-1] + 1]) if len(cuts) else upright
    apart = np.cumsum(rapid | (upright & (step[:, 2] > 0)))
    travelled = (gone - length)[piece] + share * length[piece] + APART_MM * apart[piece]
    return cuts.start_mm[piece] + share[:, None] * step[piece], piece, travelled, upright[piece]


def _bounds(heights: HeightMap) -> tuple[float, float, float, float]:
    """The cells' outer edges."""
    half = heights.cell_mm / 2
    ny, nx = heights.z_mm.shape
    x1, y1 = heights.x0_mm + (nx - 1) * heights.cell_mm, heights.y0_mm + (ny - 1) * heights.cell_mm
    return heights.x0_mm - half, heights.y0_mm - half, x1 + half, y1 + half


def _level_before(before: HeightMap, place: FloatArray) -> NDArray[np.float64]:
    """(n,) height of the board under each place; -inf beside it."""
    ny, nx = before.z_mm.shape
    i = np.rint((place[:, 0] - before.x0_mm) / before.cell_mm).astype(np.intp)
    j = np.rint((place[:, 1] - before.y0_mm) / before.cell_mm).astype(np.intp)
    inside = (i >= 0) & (i < nx) & (j >= 0) & (j < ny)
    found = before.z_mm[np.clip(j, 0, ny - 1), np.clip(i, 0, nx - 1)].astype(np.float64)
    return np.where(inside, found, -np.inf)
