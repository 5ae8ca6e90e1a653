"""What a program makes the machine do, as arrays."""

from __future__ import annotations

from typing import Literal

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.messages import Sentence

FloatArray = NDArray[np.float64]
RAPID, FEED, ARC_CW, ARC_CCW = 0, 1, 2, 3


class Motions(Struct, frozen=True, kw_only=True):
    """n motions in the order of execution, always in millimetres, in program coordinates.

    kind (n,) uint8; start_mm, end_mm (n, 3); centre_mm (n, 2): centre in the arc's plane, NaN for straight
    ones; plane (n,) 17, 18 or 19; feed_mm_per_min (n,): 0 for rapids; spindle_rpm (n,): 0 when the spindle
    stands still, negative when it turns backwards (M4); spindle_s (n,): seconds that the program has dwelt
    before this motion since the spindle was last started; line (n,): 1-based line number; tool (n,): number
    of the tool that an M6 put in, 0 before any.

    centre_mm is (x, y) in plane 17, (x, z) in 18, (y, z) in 19. Clockwise is as seen from the positive end of
    the axis that stands upright on the plane. An arc whose ends agree in its plane is a full circle.

    start_known (n, 3) bool: False where the program has not yet said where that axis is (at its start, and
    after a move to a place that only the machine knows). Such coordinates hold the first value that the
    program gives afterwards, so that a first `G0 Z20` is a motion of no length; whether the tool really is
    there, nobody can tell from the text.
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
    tool: NDArray[np.int32]
    start_known: NDArray[np.bool_]

    def __post_init__(self) -> None:
        for name in self.__struct_fields__:
            getattr(self, name).setflags(write=False)

    def __len__(self) -> int:
        return len(self.kind)


class Fault(Struct, frozen=True, kw_only=True):
    """Something in the text that the published rules refuse: the line (1-based), the words that caused it,
    and why. `followed`: the reader does what the words ask all the same, or nothing has to be done."""

    line: int
    words: str
    message: Sentence
    followed: bool = True


EventKind = Literal["spindle", "coolant", "dwell", "stop", "change", "length", "home", "stored"]


class Event(Struct, frozen=True, kw_only=True):
    """Something that a line makes happen beside motion, and where: `at_mm` is where the tip stands then (NaN where the
    program has not said), `rpm` how the spindle turns after it.

    `value` is, by `kind`: "spindle" the speed in rpm, negative backwards, 0 for a stop; "coolant" the M code; "dwell"
    the seconds; "stop" the M code of a program stop; "change" the number of the tool that M6 puts in; "length" the H of
    G43, or -1 for G49; "home" the G code of a way to a place that only the machine knows, where Z goes there too;
    "stored" the number of a parameter that the line sets. `motion` motions went before it.
    """

    kind: EventKind
    line: int
    words: str
    value: float
    motion: int
    at_mm: tuple[float, float, float]
    rpm: float


class Replay(Struct, frozen=True, kw_only=True):
    """A program read back. `faults` empty means that the text is legal throughout; after the first fault the
    reader goes on with the next line where it can, so motions are then only an indication.

    `notes` name what is legal but whose effect the text alone does not settle (places that only the machine
    knows, a block that a switch may skip, compensation that this reader does not follow), once for each kind.
    `fault_count` counts faults beyond those kept. `ended`: an M2 or M30 was reached, or the second of two %
    lines. `modes_before_motion`: names of the modal codes ("G17", "G80", "G59.1") in effect by a word of the
    program before or on the line of its first motion. `tool_numbers`: T words in order, repeats left out.
    `spindle_on_at_end`: still turning by the program's own words; that M2 stops it too (section 3.6.1) does
    not count, since not every controller does that. `events` is what happens beside motions, in order. `dwell_s`: all
    dwells. `line_count`: lines of the text,
    whether run or not. `bad_end`: one of the faults (the last) is about how the text ends and nothing else.
    """

    motions: Motions
    faults: tuple[Fault, ...]
    ended: bool
    spindle_on_at_end: bool
    units_stated: bool
    modes_before_motion: frozenset[str]
    tool_numbers: tuple[int, ...]
    line_count: int
    notes: tuple[Fault, ...] = ()
    events: tuple[Event, ...] = ()
    fault_count: int = 0
    dwell_s: float = 0.0
    bad_end: bool = False
