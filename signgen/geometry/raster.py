"""Which cells of a grid have their centre inside an area."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from signgen.geometry.distance import FloatArray, IntArray, segments_of


class Grid(Struct, frozen=True, kw_only=True):
    """Cells nx by ny; the centre of cell (i, j) lies at (x0 + i cell, y0 + j cell). Arrays over it are (ny, nx)."""

    nx: int
    ny: int
    x0_mm: float
    y0_mm: float
    cell_mm: float

    def centres_mm(self, flat: IntArray) -> FloatArray:
        """(k, 2) centres of cells given by their flat index j nx + i."""
        row, column = np.divmod(flat, self.nx)
        return np.stack([self.x0_mm + column * self.cell_mm, self.y0_mm + row * self.cell_mm], axis=1)


def cells_inside(area: BaseGeometry, grid: Grid) -> IntArray:
    """Ascending flat indices of the cells whose centre lies in a valid area (even-odd, so holes stay out).

    A centre exactly on an outline may fall on either side.
    """
    segments = segments_of(area)
    if not len(segments):
        return np.zeros(0, np.intp)
    start, count = _spans(segments, grid)
    owner = np.repeat(np.arange(len(start)), count)
    return start[owner] + np.arange(len(owner), dtype=np.intp) - (np.cumsum(count) - count)[owner]


def fill(flat: NDArray[np.generic], area: BaseGeometry, grid: Grid, value: int | bool) -> None:
    """Writes a value into the cells of a flat (ny nx,) array whose centre lies in a valid area."""
    segments = segments_of(area)
    if len(segments):
        start, count = _spans(segments, grid)
        for first, last in zip(start.tolist(), (start + count).tolist(), strict=True):
            flat[first:last] = value


def _spans(segments: FloatArray, grid: Grid) -> tuple[IntArray, IntArray]:
    """(start, count) of runs of inside cells, from the crossings of the outline with the rows' centre lines."""
    x0, y0, x1, y1 = ((segments - [grid.x0_mm, grid.y0_mm] * 2) / grid.cell_mm).T
    # A row j is crossed when low <= j < high: half open, so that a corner on a row counts once or twice.
    low = np.clip(np.ceil(np.minimum(y0, y1)), 0, grid.ny).astype(np.intp)
    high = np.clip(np.ceil(np.maximum(y0, y1)), 0, grid.ny).astype(np.intp)
    rows = high - low
    owner = np.repeat(np.arange(len(segments)), rows)
    row = low[owner] + np.arange(len(owner)) - (np.cumsum(rows) - rows)[owner]
    slope = (x1 - x0)[owner] / (y1 - y0)[owner]
    crossing = x0[owner] + (row - y0[owner]) * slope
    column = np.clip(np.ceil(crossing), 0, grid.nx).astype(np.intp)
    # Rounding keeps the order of crossings in a row, so pairs may be made after it; integers sort fastest.
    key = np.sort(row * (grid.nx + 1) + column)
    row, column = np.divmod(key, grid.nx + 1)
    start = row[::2] * grid.nx + column[::2]
    return start, column[1::2] - column[::2]
