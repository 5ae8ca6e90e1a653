"""A board as heights over a grid."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.raster import Grid
from signgen.replay.motion import FloatArray
from signgen.shop.stock import Stock

FIRST_CELL_RATIO = (0.3819660, 0.4142136)
"""Where the first cell's centre lies, in cells from the board's edge. Odd on purpose: edges of a design at
round numbers would otherwise run along cell centres and flip whole rows."""


class HeightMap(Struct, frozen=True, kw_only=True):
    """Heights z_mm (ny, nx) float32 of what is left of the board, at the centres of the grid's cells (sign
    coordinates).

    Z 0 is the stock's bottom; where the cutter went through, the height is that of its lowest pass (negative:
    into the spoilboard).
    """

    z_mm: NDArray[np.float32]
    grid: Grid

    @property
    def x0_mm(self) -> float:
        return self.grid.x0_mm

    @property
    def y0_mm(self) -> float:
        return self.grid.y0_mm

    @property
    def cell_mm(self) -> float:
        return self.grid.cell_mm

    @property
    def x_mm(self) -> FloatArray:
        """(nx,) cell centres."""
        return self.x0_mm + self.cell_mm * np.arange(self.grid.nx, dtype=np.float64)

    @property
    def y_mm(self) -> FloatArray:
        """(ny,) cell centres."""
        return self.y0_mm + self.cell_mm * np.arange(self.grid.ny, dtype=np.float64)


def board(stock: Stock, cell_mm: float) -> HeightMap:
    """The uncut board. Every cell centre lies on it. Raises: ValueError when not even one does."""
    x0, y0, x1, y1 = stock.bounds_mm
    first_x, first_y = (ratio * cell_mm for ratio in FIRST_CELL_RATIO)
    nx, ny = (math.floor((span - first) / cell_mm) + 1 for span, first in ((x1 - x0, first_x), (y1 - y0, first_y)))
    if nx < 1 or ny < 1:
        raise ValueError(f"cells of {cell_mm} mm are too large for a board of {x1 - x0} x {y1 - y0} mm")
    z = np.full((ny, nx), stock.thickness_mm, np.float32)
    z.setflags(write=False)
    return HeightMap(z_mm=z, grid=Grid(nx=nx, ny=ny, x0_mm=x0 + first_x, y0_mm=y0 + first_y, cell_mm=cell_mm))
