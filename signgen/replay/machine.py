"""A machine that executes one line after the other and notes down what moves.

Source: NIST IR 6556, sections 3.4 to 3.8 (order of execution: Table 8), as restated in check-values.md 1.5 to
1.12.
"""

from __future__ import annotations

from signgen.replay.codes import (
    AXIS_USERS,
    G_GROUPS,
    MOTION,
    NON_MODAL,
    RADIUS_COMP,
    WORD_USERS,
    WORK_ZERO,
    code_name,
)
from signgen.replay.cycles import Sticky
from signgen.replay.expressions import Parameters, integer
from signgen.replay.motion import RAPID, Event, EventKind, Fault
from signgen.replay.record import Recorder
from signgen.replay.refusal import RefusedError
from signgen.replay.travel import move
from signgen.replay.words import Line
from signgen.replay.zeros import (
    NOWHERE,
    at_least_0,
    go_home,
    reckon,
    set_compensation,
    set_length,
    set_offset,
    set_zero,
)

INCH_MM = 25.4
_STRAIGHT_CENTRE = (NOWHERE, NOWHERE)
_MOST_NOTES = 100


class Machine:
    """State of the interpreter. Positions are millimetres in the frame of the zero that the operator set; NaN
    where unknown.

    `shift[axis]` is what a coordinate of the program is short of that frame by; `factor` millimetres for one
    unit; `feed` and `speed` are as written. `motion` is the motion code in force, times ten.
    """

    def __init__(self, start_mm: tuple[float, float, float] | None, lengths_mm: dict[int, float]) -> None:
        self.recorder = Recorder()
        self.parameters = Parameters()
        self.notes: dict[str, Fault] = {}
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

    def note(self, words: str, message: str) -> None:
        """Keeps the first of every kind of note."""
        if message not in self.notes and len(self.notes) < _MOST_NOTES:
            self.notes[message] = Fault(line=self.line_number, words=words, message=message)

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

    def execute(self, line: Line) -> None:
        """Runs one line in the order of Table 8. Raises: RefusedError; what comes before the refused word has
        then taken effect."""
        groups = {G_GROUPS[code]: code for code in line.g}
        motion = self._motion_of(line, groups)
        self._refuse_words_without_user(line, motion)
        if line.skippable:
            self.note(line.text, "Whether a line that begins with / runs depends on a switch; it is taken to run.")
        for index in sorted(self.parameters.unset):
            self.note(f"#{index}", f"Parameter {index} holds what the machine has stored; it is taken as 0.")
        self.parameters.unset.clear()
        self.parameters.values.update(line.settings)
        for index in line.settings:
            self.happened("stored", f"#{index}", index)
        self._feed_speed_and_tool(line, groups)
        self._spindle(line)
        if 40 in line.g:
            seconds = at_least_0(line, "P", "G4 needs P, seconds of 0 or more.")
            self.dwell(seconds)
            self.happened("dwell", line.say("G4", "P"), seconds)
        self._modes(line, groups)
        non_modal = groups.get(NON_MODAL)
        if non_modal in (280, 300):
            go_home(self, line, code_name(non_modal))
        elif non_modal == 100:
            set_zero(self, line)
        elif non_modal is not None and non_modal >= 920:
            set_offset(self, line, non_modal)
        if motion is not None:
            move(self, line, motion, non_modal == 530)
        elif non_modal == 530:
            raise RefusedError(line.text, "G53 needs G0 or G1 and a place to go to.")
        for code in (0, 1, 60):
            if code in line.m:
                self.happened("stop", f"M{code}", code)
        self.ended = 2 in line.m or 30 in line.m

    def _motion_of(self, line: Line, groups: dict[int, int]) -> int | None:
        """The motion code that acts on this line (800 for an explicit G80), or None."""
        axes = line.values.keys() & {"X", "Y", "Z", "A", "B", "C"}
        taken = groups.get(NON_MODAL) in AXIS_USERS
        explicit = groups.get(MOTION)
        if explicit == 800:
            if axes and not taken:
                raise RefusedError(line.say("G80", "X", "Y", "Z", "A", "B", "C"), "G80 ends motion; it moves no axis.")
            return explicit
        if explicit is not None:
            if taken:
                words = line.say(code_name(explicit), *(code_name(code) for code in line.g))
                raise RefusedError(words, "Two codes of this line both want its axis words.")
            if not axes:
                raise RefusedError(line.say(code_name(explicit)), "The motion code has no axis word to move to.")
            return explicit
        if taken or not axes:
            return None
        if self.motion == 800:
            raise RefusedError(
                line.say("X", "Y", "Z", "A", "B", "C"), "No motion code is in force for these axis words."
            )
        return self.motion

    def _refuse_words_without_user(self, line: Line, motion: int | None) -> None:
        active = {*line.g, motion}
        for letter in line.values:
            users = WORD_USERS.get(letter)
            if users is not None and not users & active:
                raise RefusedError(line.spelled[letter], f"Nothing on this line gives {letter} a meaning.")

    def _feed_speed_and_tool(self, line: Line, groups: dict[int, int]) -> None:
        mode = groups.get(5)
        if mode is not None:
            self.inverse_time = mode == 930
        for letter in "FST":
            if line.values.get(letter, 0.0) < 0:
                raise RefusedError(line.spelled[letter], f"{letter} may not be negative.")
        if "F" in line.values:
            self.feed, self.feed_refused = line.values["F"], False
        if "S" in line.values:
            self.speed = line.values["S"]
            self.turn(self.direction)
        if "T" in line.values:
            self.selected = integer(line.values["T"], line.spelled["T"], "T")
            if not self.tool_numbers or self.tool_numbers[-1] != self.selected:
                self.tool_numbers.append(self.selected)
        if 6 in line.m:
            self.turn(0)
            self.tool = self.selected
            self.happened("change", line.say("T", "M6"), self.tool)

    def _spindle(self, line: Line) -> None:
        for code, direction in ((3, 1), (4, -1), (5, 0)):
            if code in line.m:
                self.turn(direction)
                self.happened("spindle", line.say("S", f"M{code}"), self.rpm)
        for code in (7, 8, 9):
            if code in line.m:
                self.happened("coolant", f"M{code}", code)

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

    def _modes(self, line: Line, groups: dict[int, int]) -> None:
        for group, code in groups.items():
            if group not in (NON_MODAL, MOTION) or code == 800:
                self.modes.add(code_name(code))
        plane, units, comp = groups.get(2), groups.get(6), groups.get(RADIUS_COMP)
        if plane is not None:
            self.plane = plane
        if units is not None:
            factor = INCH_MM if units == 200 else 1.0
            if factor != self.factor and (self.recorder.count or self.feed):
                self.note(
                    line.say(code_name(units)),
                    "Units change after a feed rate or a motion; the feed's number stays as it was.",
                )
            self.factor = factor
        if comp is not None:
            set_compensation(self, line, comp)
        length = groups.get(8)
        if length is not None:
            set_length(self, line, length)
        zero = groups.get(WORK_ZERO)
        if zero is not None:
            if zero != 540:
                name = code_name(zero)
                self.note(name, f"Only the machine knows where the zero of {name} lies; it is taken to be that of G54.")
            self.zero_code = zero
            reckon(self)
        distance, cycle_return = groups.get(3), groups.get(10)
        if distance is not None:
            self.incremental = distance == 910
        if cycle_return is not None:
            self.return_to_r = cycle_return == 990

    def assume_placed(self, axis: int) -> None:
        """Where the program reckons from a place that it never gave, that place is taken as 0."""
        if self.at[axis] != self.at[axis]:
            self.note(
                "XYZ"[axis], f"The program reckons from where {'XYZ'[axis]} is before it has said so; it is taken as 0."
            )
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
