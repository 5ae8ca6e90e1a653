"""A program as motions of one tool, before any controller's way of writing it."""

from __future__ import annotations

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray
from signgen.messages import Message, Sentence
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import HAIR_CHORD_MM

RAPID = 3
"""Kind of a move beside geometry.paths' LINE 0, CW 1, CCW 2: as fast as the machine goes, never in the work."""

WRITTEN_MM = 1e-4
"""Grid of a program's numbers. With three decimals, rounding alone can break the 0.002 mm that the standard allows an
arc's radius; with four it never does (NIST IR 6556, 3.5.3; derived here)."""

TRAVEL, ENTRY, CUTTING = 0, 1, 2
"""What a move is for: getting somewhere through the air, getting down into the work, cutting."""


class Moves(Struct, frozen=True, kw_only=True):
    """n moves. kinds (n,); ends_mm (n, 3) where each ends, in program coordinates; centres_mm (n, 2), NaN unless an
    arc; feeds_mm_per_min (n,), 0 for rapids. The first move goes straight to the height over everything that may
    stand on the board, from wherever the cutter is, the second across to its X and Y: where the first starts is
    unknown, so its X and Y are those of the second."""

    kinds: NDArray[np.uint8]
    ends_mm: FloatArray
    centres_mm: FloatArray
    feeds_mm_per_min: FloatArray

    def __len__(self) -> int:
        return len(self.kinds)


class Drilled(Struct, frozen=True, kw_only=True):
    """A hole that is drilled by the moves `first` to `last` (indices, both among them), in program coordinates.

    From `clear_mm` above the board down to `bottom_mm` in pecks of `peck_mm`, out to `clear_mm` after each; the last
    move comes out too. With one peck it goes down and out.
    """

    first: int
    last: int
    x_mm: float
    y_mm: float
    clear_mm: float
    bottom_mm: float
    peck_mm: float
    feed_mm_per_min: float

    @property
    def in_one_go(self) -> bool:
        return self.clear_mm - self.bottom_mm <= self.peck_mm + WRITTEN_MM / 2


class ToolProgram(Struct, frozen=True, kw_only=True):
    """One tool's program, the `number`th of its job. `heading` lines become comments at its top, of
    which `own_heading` are about its cutter alone; comments are in a `language`. `notes` maps a move's
    index to the comment before it. `grid_mm` is the step of its numbers, on which every place lies; `arc_chord_mm` how
    far chords may stray from arcs that a control does not know.

    `operations` are the names of what it does; `owners` (n,) the operation of each move, `roles` (n,) what the move is
    for. `turning`: its spindle runs. `pauses`: after a move (its index) the program waits for the operator, with words
    for the comment. `remarks`: before a move (its index), what every pass, ramp and tab is, for programs that are to
    explain themselves. `set_at`: where Z is set for its cutter, for the operator.
    """

    heading: tuple[str, ...]
    own_heading: tuple[str, ...] = ()
    language: str = "en"
    number: int = 1
    tool: Tool
    cutting: CuttingData
    spindle_start_s: float
    spindle_least_rpm: float = 0.0
    grid_mm: float = WRITTEN_MM
    arc_chord_mm: float = HAIR_CHORD_MM
    moves: Moves
    notes: tuple[tuple[int, Sentence], ...]
    operations: tuple[Sentence, ...]
    owners: NDArray[np.intp]
    roles: NDArray[np.uint8]
    drilled: tuple[Drilled, ...] = ()
    turning: bool = True
    pauses: tuple[tuple[int, Sentence], ...] = ()
    remarks: tuple[tuple[int, Message], ...] = ()
    set_at: Sentence = ""
