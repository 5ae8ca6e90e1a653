"""What a cutter leaves of the board: a height map."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from signgen.replay import swept
from signgen.replay.motion import RAPID, FloatArray, Motions
from signgen.replay.pieces import Pieces, clipped, split, straight_pieces
from signgen.replay.swept import Block, Moves, Profile
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool

FIRST_CELL_RATIO = (0.3819660, 0.4142136)
"""Where the first cell's centre lies, in cells from the board's edge. Odd on purpose: edges of a design at
round numbers would otherwise run along cell centres and flip whole rows."""
_CELLS_AT_ONCE = 1 << 17
"""Of one batch: few enough for its arrays to stay in the processor's cache."""
_MOST_CELLS_OF_BOX = 1 << 18
_PIECE_COST_CELLS = 600
"""What one more piece costs, in cells: lines are split where that saves more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HeightMap:
    """Heights z_mm (ny, nx) float32 of what is left of the board, at the cell centres x0 + i cell, y0 + j
    cell (sign coordinates).

    Z 0 is the stock's bottom; where the cutter went through, the height is that of its lowest pass (negative:
    into the spoilboard).
    """

    z_mm: NDArray[np.float32]
    x0_mm: float
    y0_mm: float
    cell_mm: float

    @property
    def x_mm(self) -> FloatArray:
        """(nx,) cell centres."""
        return self.x0_mm + self.cell_mm * np.arange(self.z_mm.shape[1], dtype=np.float64)

    @property
    def y_mm(self) -> FloatArray:
        """(ny,) cell centres."""
        return self.y0_mm + self.cell_mm * np.arange(self.z_mm.shape[0], dtype=np.float64)


def board(stock: Stock, cell_mm: float) -> HeightMap:
    """The uncut board. Every cell centre lies on it. Raises: ValueError when not even one does."""
    x0, y0, x1, y1 = stock.bounds_mm
    first_x, first_y = (ratio * cell_mm for ratio in FIRST_CELL_RATIO)
    nx, ny = (math.floor((span - first) / cell_mm) + 1 for span, first in ((x1 - x0, first_x), (y1 - y0, first_y)))
    if nx < 1 or ny < 1:
        raise ValueError(f"cells of {cell_mm} mm are too large for a board of {x1 - x0} x {y1 - y0} mm")
    z = np.full((ny, nx), stock.thickness_mm, np.float32)
    z.setflags(write=False)
    return HeightMap(z_mm=z, x0_mm=x0 + first_x, y0_mm=y0 + first_y, cell_mm=cell_mm)


def cut(
    heights: HeightMap,
    motions: Motions,
    tool: Tool,
    zero: WorkZero,
    select: NDArray[np.bool_] | None = None,
    *,
    rapids: bool = False,
) -> HeightMap:
    """What is left after the motions (of a program whose zero lies at `zero`): exactly, at each cell's
    centre, but for arcs replaced by chords that stray by 0.002 mm.

    Only motions in `select` (n,) when given. Rapids cut only when `rapids` is true. The order of motions does
    not matter.
    """
    z = heights.z_mm.copy()
    chosen = np.ones(len(motions), bool) if select is None else np.array(select, bool)
    if not rapids:
        chosen &= motions.kind != RAPID
    carve(z, heights, motions, np.nonzero(chosen)[0], tool, zero, float(z.max(initial=-math.inf)))
    z.setflags(write=False)
    return HeightMap(z_mm=z, x0_mm=heights.x0_mm, y0_mm=heights.y0_mm, cell_mm=heights.cell_mm)


def carve(
    z: NDArray[np.float32],
    grid: HeightMap,
    motions: Motions,
    chosen: NDArray[np.intp],
    tool: Tool,
    zero: WorkZero,
    top_mm: float,
) -> None:
    """Lowers `z` (on the grid of `grid`, nowhere above `top_mm`) in place by the chosen motions, rapids among
    them included."""
    for swaths in sweeps(grid, motions, chosen, tool, zero, top_mm):
        h, w = swaths.z_mm.shape[1:]
        for block, j, i in zip(swaths.z_mm, swaths.row.tolist(), swaths.column.tolist(), strict=True):
            here = z[j : j + h, i : i + w]
            np.minimum(here, block, out=here)


@dataclass(frozen=True, slots=True, kw_only=True)
class Swaths:
    """n boxes of one size: z_mm (n, h, w) how low a piece of a motion cuts (infinite where it does not); row,
    column (n,) of the grid where each box begins; owner (n,) the motion."""

    z_mm: Block
    row: NDArray[np.intp]
    column: NDArray[np.intp]
    owner: NDArray[np.intp]


def sweeps(
    grid: HeightMap, motions: Motions, chosen: NDArray[np.intp], tool: Tool, zero: WorkZero, top_mm: float
) -> Iterator[Swaths]:
    """How low the chosen motions cut, box by box; what they do above `top_mm` is left out."""
    profile = Profile.of(tool)
    offset = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    for pieces in straight_pieces(motions, chosen, offset):
        yield from _swaths(grid, pieces, profile, top_mm)


def _swaths(grid: HeightMap, pieces: Pieces, profile: Profile, top_mm: float) -> Iterator[Swaths]:
    ny, nx = grid.z_mm.shape
    cell = grid.cell_mm
    pieces = pieces.taken(np.minimum(pieces.start_mm[:, 2], pieces.end_mm[:, 2]) < top_mm)
    reach = _reach(pieces, profile, top_mm)[:, None]
    corner = np.array([grid.x0_mm, grid.y0_mm])
    far = corner + cell * np.array([nx - 1, ny - 1])
    pieces = clipped(pieces, corner - reach, far + reach)
    reach = _reach(pieces, profile, top_mm)
    pieces, which = split(pieces, _parts(pieces, reach, cell))
    reach = reach[which][:, None]

    low = np.minimum(pieces.start_mm[:, :2], pieces.end_mm[:, :2]) - reach
    high = np.maximum(pieces.start_mm[:, :2], pieces.end_mm[:, :2]) + reach
    first = np.clip(np.ceil((low - corner) / cell), 0, (nx, ny)).astype(np.intp)
    last = np.clip(np.floor((high - corner) / cell), -1, (nx - 1, ny - 1)).astype(np.intp)
    size = last - first + 1
    met = np.nonzero((size > 0).all(axis=1))[0]
    if not len(met):
        return
    pieces, first = pieces.taken(met), first[met]
    size = np.minimum(_rounded_up(size[met]), (nx, ny))
    first = np.minimum(first, np.array([nx, ny]) - size)
    is_level = _is_level(pieces)
    key = (size[:, 1] * (nx + 1) + size[:, 0]) * 2 + is_level
    order = np.argsort(key, kind="stable")
    breaks = np.concatenate(([0], np.nonzero(np.diff(key[order]))[0] + 1, [len(order)]))
    for a, b in zip(breaks[:-1].tolist(), breaks[1:].tolist(), strict=True):
        w, h = size[order[a]].tolist()
        kernel = swept.level if is_level[order[a]] else swept.sloped
        step = max(1, _CELLS_AT_ONCE // (w * h))
        for at in range(a, b, step):
            yield _box(grid, pieces, first, order[at : min(at + step, b)], (h, w), profile, kernel)


def _box(
    grid: HeightMap,
    pieces: Pieces,
    first: NDArray[np.intp],
    which: NDArray[np.intp],
    shape: tuple[int, int],
    profile: Profile,
    kernel: swept.Kernel,
) -> Swaths:
    """The swaths of pieces whose boxes have one shape. Distances are taken in double precision from each
    piece's start; what follows is small enough for single precision."""
    start, way = pieces.start_mm[which], pieces.end_mm[which] - pieces.start_mm[which]
    length = np.hypot(way[:, 0], way[:, 1])
    still = length < _STILL_MM
    safe = np.where(still, 1.0, length)
    dx = (grid.x0_mm + grid.cell_mm * first[which, 0] - start[:, 0])[:, None] + grid.cell_mm * np.arange(shape[1])
    dy = (grid.y0_mm + grid.cell_mm * first[which, 1] - start[:, 1])[:, None] + grid.cell_mm * np.arange(shape[0])
    moves = Moves(
        tx=_column(np.where(still, 1.0, way[:, 0] / safe)),
        ty=_column(np.where(still, 0.0, way[:, 1] / safe)),
        length=_column(np.where(still, 0.0, length)),
        z=_column(np.where(still, np.minimum(start[:, 2], start[:, 2] + way[:, 2]), start[:, 2])),
        rise=_column(np.where(still, 0.0, way[:, 2] / safe)),
    )
    z = kernel(profile, moves, dx.astype(np.float32)[:, None, :], dy.astype(np.float32)[:, :, None])
    return Swaths(z_mm=z, row=first[which, 1], column=first[which, 0], owner=pieces.owner[which])


_MANY_PIECES = 2000
_STILL_MM = 1e-6
"""A move shorter than this across the board goes straight up or down."""


def _is_level(pieces: Pieces) -> NDArray[np.bool_]:
    way = pieces.end_mm - pieces.start_mm
    level: NDArray[np.bool_] = (way[:, 2] == 0) | (np.hypot(way[:, 0], way[:, 1]) < _STILL_MM)
    return level


def _column(values: FloatArray) -> Block:
    return values.astype(np.float32)[:, None, None]


def _reach(pieces: Pieces, profile: Profile, top_mm: float) -> FloatArray:
    """(n,) how far from a piece's line it can cut anything that lies below the top."""
    return profile.reach_mm(top_mm - np.minimum(pieces.start_mm[:, 2], pieces.end_mm[:, 2]))


def _parts(pieces: Pieces, reach: FloatArray, cell: float) -> NDArray[np.intp]:
    """(n,) in how many parts to take each piece, so that the boxes around them stay near what the cutter
    sweeps.

    n parts of a line w wide and h high with a margin r cost n (w / n + 2 r) (h / n + 2 r), and n times the
    cost of a piece.
    """
    w, h = np.abs(pieces.end_mm[:, :2] - pieces.start_mm[:, :2]).T
    ideal = np.sqrt(w * h / (4 * reach * reach + _PIECE_COST_CELLS * cell * cell))
    for_memory = (w + 2 * reach) * (h + 2 * reach) / (_MOST_CELLS_OF_BOX * cell * cell)
    parts: NDArray[np.intp] = np.maximum(1, np.maximum(np.round(ideal), np.floor(for_memory))).astype(np.intp)
    return parts


def _rounded_up(size: NDArray[np.intp]) -> NDArray[np.intp]:
    """Sizes (n, 2) made a little larger, so that there are few different ones: by an eighth at most, or where
    there are too few pieces for every shape to have a batch of its own, by a half."""
    finest = 3 if len(size) > _MANY_PIECES else 1
    step = 2 ** np.maximum(0, np.floor(np.log2(size)).astype(np.intp) - finest)
    rounded: NDArray[np.intp] = -(-size // step) * step
    return rounded
