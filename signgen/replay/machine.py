"""The state of a machine that carries out a program, and what its lines are made of: to be somewhere, to move, to turn,
to wait, and to note what happens.

Source: NIST IR 6556, sections 3.4 to 3.8.
"""

from __future__ import annotations

from msgspec import Struct

from signgen.messages import Message
from signgen.replay.expressions import Parameters
from signgen.replay.motion import RAPID, Event, EventKind, Fault
from signgen.replay.record import Recorder
from signgen.replay.words import Line

NOWHERE = float("nan")
"""A coordinate that the text does not tell."""
_STRAIGHT_CENTRE = (NOWHERE, NOWHERE)
_MOST_NOTES = 100


class Sticky(Struct):
    """What a cycle leaves for the next line: its numbers as written, and the height at which the series
    began."""

    code: int
    plane: int
    bottom: float
    retract: float
    p: float | None
    q: float | None
    old_mm: float


class MachineState:
    """State of the interpreter. Positions are millimetres in the frame of the zero that the operator set; NaN
    where unknown.

    `shift[axis]` is what a coordinate of the program is short of that frame by; `factor` millimetres for one
    unit; `feed` and `speed` are as written. `motion` is the motion code in force, times ten.
    """

    def __init__(self, start_mm: tuple[float, float, float] | None, lengths_mm: dict[int, float]) -> None:
        self.recorder = Recorder()
        self.parameters = Parameters()
        self.notes: dict[Message, Fault] = {}
        self.events: list[Event] = []
        self.line_number = 0
        self.at: list[float] = [NOWHERE, NOWHERE, NOWHERE] if start_mm is None else [float(v) for v in start_mm]
        self.lengths_mm, self.length_mm = lengths_mm, 0.0
        self.motion, self.plane, self.factor = 800, 170, 1.0
        self.incremental = self.inverse_time = self.compensating = self.return_to_r = False
        self.cycle: Sticky | None = None
        self.expanded = 0
        self.feed = self.speed = 0.0
        self.feed_refused = False
        self.rpm = self.dwelt_s = self.dwell_s = 0.0
        self.direction = 0
        self.tool = self.selected = 0
        self.tool_numbers: list[int] = []
        self.zeros: dict[int, list[float]] = {}
        self.zero_code = 540
        self.offset, self.kept_offset = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
        self.shift = [0.0, 0.0, 0.0]
        self.modes: set[str] = set()
        self.modes_before_motion: frozenset[str] | None = None
        self.ended = False

    def note(self, words: str, message: Message, *, followed: bool = True) -> None:
        """Keeps the first of every kind of note."""
        if message not in self.notes and len(self.notes) < _MOST_NOTES:
            self.notes[message] = Fault(line=self.line_number, words=words, message=message, followed=followed)

    def happened(self, kind: EventKind, words: str, value: float) -> None:
        """Keeps an event, at the place where the machine is."""
        x, y, z = self.at
        self.events.append(
            Event(
                kind=kind,
                line=self.line_number,
                words=words,
                value=value,
                motion=self.recorder.count,
                at_mm=(x, y, z),
                rpm=self.rpm,
            )
        )

    def turn(self, direction: int) -> None:
        """Turns the spindle clockwise (1), backwards (-1) or stops it (0) at the speed in force."""
        rpm = direction * self.speed
        if rpm == 0 or rpm * self.rpm <= 0:
            self.dwelt_s = 0.0
        self.direction, self.rpm = direction, rpm

    def dwell(self, seconds: float) -> None:
        self.dwell_s += seconds
        if self.rpm:
            self.dwelt_s += seconds

    def assume_placed(self, axis: int) -> None:
        """Where the program reckons from a place that it never gave, that place is taken as 0."""
        if self.at[axis] != self.at[axis]:
            self.note("XYZ"[axis], Message("reader.program_reckons_from_where_before", axis="XYZ"[axis]))
            self.put(axis, 0.0)

    def put(self, axis: int, place: float) -> None:
        """Says where the tool is along one axis; nothing moves."""
        # A new list: the old one stands in the record as the end of the last motion.
        self.at = [*self.at[:axis], place, *self.at[axis + 1 :]]

    def target(self, line: Line, axes: tuple[int, ...]) -> list[float]:
        """Where the axis words of the line lead, of the given axes; the others stay."""
        end = list(self.at)
        for axis in axes:
            value = line.values.get("XYZ"[axis])
            if value is not None:
                if self.incremental:
                    self.assume_placed(axis)
                    end[axis] = self.at[axis] + value * self.factor
                else:
                    end[axis] = value * self.factor + self.shift[axis]
        return end

    def straight(self, kind: int, end: list[float], feed_mm: float | None = None) -> None:
        """A straight motion from where the machine is."""
        if feed_mm is None:
            feed_mm = 0.0 if kind == RAPID else self.feed * self.factor
        self.record(kind, end, _STRAIGHT_CENTRE, feed_mm)

    def record(self, kind: int, end: list[float], centre: tuple[float, float], feed_mm: float) -> None:
        if self.modes_before_motion is None:
            self.modes_before_motion = frozenset(self.modes)
        row = (
            kind,
            self.plane // 10,
            self.tool,
            self.line_number,
            self.at,
            end,
            centre,
            feed_mm,
            self.rpm,
            self.dwelt_s,
        )
        self.recorder.add(row)
        self.at = end
