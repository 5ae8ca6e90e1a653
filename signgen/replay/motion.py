"""What a program makes the machine do, as arrays."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
RAPID, FEED, ARC_CW, ARC_CCW = 0, 1, 2, 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Motions:
    """n motions in the order of execution, always in millimetres, in program coordinates.

    kind (n,) uint8; start_mm, end_mm (n, 3); centre_mm (n, 2): centre in the arc's plane, NaN for straight ones; plane (n,) 17, 18
    or 19; feed_mm_per_min (n,): 0 for rapids; spindle_rpm (n,): 0 when the spindle stands still; spindle_s (n,): seconds that the
    spindle has been dwelt up to speed before this motion since it was last started; line (n,): 1-based line number.
    """

    kind: NDArray[np.uint8]
    start_mm: FloatArray
    end_mm: FloatArray
    centre_mm: FloatArray
    plane: NDArray[np.uint8]
    feed_mm_per_min: FloatArray
    spindle_rpm: FloatArray
    spindle_s: FloatArray
    line: NDArray[np.int64]

    def __len__(self) -> int:
        return len(self.kind)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """Something in the text that the published rules refuse."""

    line: int
    words: str
    message: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Replay:
    """A program read back. `faults` empty means that the text is legal throughout; after the first fault the reader
    goes on with the next line where it can, so motions are then only an indication."""

    motions: Motions
    faults: tuple[Fault, ...]
    ended: bool
    spindle_on_at_end: bool
    units_stated: bool
    modes_before_motion: frozenset[str]
    tool_numbers: tuple[int, ...]
    line_count: int
