"""A program as motions of one tool, before any controller's way of writing it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool

RAPID = 3
"""Kind of a move beside geometry.paths' LINE 0, CW 1, CCW 2: as fast as the machine goes, never in the work."""

WRITTEN_MM = 1e-4
"""Grid of a program's numbers. With three decimals, rounding alone can break the 0.002 mm that the standard allows an
arc's radius; with four it never does (Source: check-values 1.8, derived)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Moves:
    """n moves. kinds (n,); ends_mm (n, 3) where each ends, in program coordinates; centres_mm (n, 2), NaN unless an
    arc; feeds_mm_per_min (n,), 0 for rapids. The first move goes straight up to the safe height from wherever the
    cutter is, the second across to its X and Y: where the first starts is unknown, so its X and Y are those of the
    second."""

    kinds: NDArray[np.uint8]
    ends_mm: FloatArray
    centres_mm: FloatArray
    feeds_mm_per_min: FloatArray

    def __len__(self) -> int:
        return len(self.kinds)


@dataclass(frozen=True, slots=True, kw_only=True)
class Program:
    """One tool's program. `heading` lines become comments at its top; `notes` maps a move's index to the comment
    before it."""

    heading: tuple[str, ...]
    tool: Tool
    cutting: CuttingData
    spindle_start_s: float
    moves: Moves
    notes: tuple[tuple[int, str], ...]
    features: tuple[str, ...]
