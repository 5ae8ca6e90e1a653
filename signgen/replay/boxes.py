"""Which cells each straight piece of a cutter's way can reach: boxes of the grid, and the piece in single precision."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.raster import Grid
from signgen.replay.motion import FloatArray
from signgen.replay.pieces import Pieces, clipped, split
from signgen.replay.swept import Block, Profile, SweptMoves

_MOST_CELLS_OF_BOX = 1 << 18
_PIECE_COST_CELLS = 600
"""What one more piece costs, in cells: lines are split where that saves more."""
_MANY_PIECES = 2000
_STILL_MM = 1e-6
"""A move shorter than this across the board goes straight up or down."""


class Boxes(Struct, frozen=True, kw_only=True):
    """n pieces, each with its box of cells: first (n, 2) the column and row where it begins, size (n, 2) its width and
    height; level (n,) whether the piece neither rises nor falls, or goes straight up or down."""

    pieces: Pieces
    first: NDArray[np.intp]
    size: NDArray[np.intp]
    level: NDArray[np.bool_]

    @property
    def cells(self) -> int:
        """Of all boxes together."""
        return int(self.size.prod(axis=1).sum())

    def from_start_mm(self, grid: Grid, which: NDArray[np.intp]) -> tuple[FloatArray, FloatArray]:
        """(k,) x and (k,) y of the first cell of some boxes, seen from their pieces' starts."""
        start, first = self.pieces.start_mm[which], self.first[which]
        return (
            grid.x0_mm + grid.cell_mm * first[:, 0] - start[:, 0],
            grid.y0_mm + grid.cell_mm * first[:, 1] - start[:, 1],
        )

    def moves(self, which: NDArray[np.intp]) -> SweptMoves:
        """Some of the pieces in single precision: what follows is measured from their starts, and small enough."""
        start = self.pieces.start_mm[which]
        way = self.pieces.end_mm[which] - start
        length = np.hypot(way[:, 0], way[:, 1])
        still = length < _STILL_MM
        safe = np.where(still, 1.0, length)
        return SweptMoves(
            tx=_column(np.where(still, 1.0, way[:, 0] / safe)),
            ty=_column(np.where(still, 0.0, way[:, 1] / safe)),
            length=_column(np.where(still, 0.0, length)),
            z=_column(np.where(still, np.minimum(start[:, 2], start[:, 2] + way[:, 2]), start[:, 2])),
            rise=_column(np.where(still, 0.0, way[:, 2] / safe)),
        )


def boxes_of(grid: Grid, pieces: Pieces, profile: Profile, top_mm: float) -> Boxes:
    """The boxes of those pieces that can cut anything below `top_mm`; long slanting ones in parts."""
    nx, ny, cell = grid.nx, grid.ny, grid.cell_mm
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
    pieces, first = pieces.taken(met), first[met]
    size = np.minimum(_rounded_up(size[met]), (nx, ny))
    first = np.minimum(first, np.array([nx, ny]) - size)
    return Boxes(pieces=pieces, first=first, size=size, level=_is_level(pieces))


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
    step = 2 ** np.maximum(0, np.floor(np.log2(np.maximum(size, 1))).astype(np.intp) - finest)
    rounded: NDArray[np.intp] = -(-size // step) * step
    return rounded
