"""What a cutter leaves of the board: a height map."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray


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
