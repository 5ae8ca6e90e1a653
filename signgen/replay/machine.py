"""A machine that executes one line after the other and notes down what moves.

Source: NIST IR 6556, sections 3.4 to 3.8 (order of execution: Table 8), as restated in check-values.md 1.5 to
1.12.
"""

from __future__ import annotations

import math

from signgen.replay.arcs import PLANE_AXES, arc_centre
from signgen.replay.codes import (
    AXIS_USERS,
    CYCLES,
    G_GROUPS,
    MOTION,
    NON_MODAL,
    RADIUS_COMP,
    WORD_USERS,
    WORK_ZERO,
    code_name,
)
from signgen.replay.cycles import Sticky, run_cycle
from signgen.replay.expressions import Parameters, integer
from signgen.replay.measure import arc_sweep_rad
from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, RAPID, Fault
from signgen.replay.record import Recorder
from signgen.replay.refusal import RefusedError
from signgen.replay.words import Line

INCH_MM = 25.4
_NAN = float("nan")
_STRAIGHT_CENTRE = (_NAN, _NAN)
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
        self.line_number = 0
        self.at: list[float] = [_NAN, _NAN, _NAN] if start_mm is None else [float(v) for v in start_mm]
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

    # -- what a line does ---------------------------------------------------------------------------------------------

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
        self._feed_speed_and_tool(line, groups)
        self._spindle(line)
        if 40 in line.g:
            self.dwell(_at_least_0(line, "P", "G4 needs P, seconds of 0 or more."))
        self._modes(line, groups)
        non_modal = groups.get(NON_MODAL)
        if non_modal in (280, 300):
            self._go_home(line, code_name(non_modal))
        elif non_modal == 100:
            self._set_zero(line)
        elif non_modal is not None and non_modal >= 920:
            self._offset(line, non_modal)
        if motion is not None:
            self._move(line, motion, non_modal == 530)
        elif non_modal == 530:
            raise RefusedError(line.text, "G53 needs G0 or G1 and a place to go to.")
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

    def _spindle(self, line: Line) -> None:
        for code, direction in ((3, 1), (4, -1), (5, 0)):
            if code in line.m:
                self.turn(direction)

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
            self._compensate(line, comp)
        length = groups.get(8)
        if length is not None:
            self._length(line, length)
        zero = groups.get(WORK_ZERO)
        if zero is not None:
            if zero != 540:
                name = code_name(zero)
                self.note(name, f"Only the machine knows where the zero of {name} lies; it is taken to be that of G54.")
            self.zero_code = zero
            self._reckon()
        distance, cycle_return = groups.get(3), groups.get(10)
        if distance is not None:
            self.incremental = distance == 910
        if cycle_return is not None:
            self.return_to_r = cycle_return == 990

    def _compensate(self, line: Line, code: int) -> None:
        if code != 400:
            said = line.say(code_name(code), "D")
            if self.plane != 170:
                raise RefusedError(said, "Cutter compensation works in the plane of G17 only.")
            if self.compensating:
                raise RefusedError(said, "Cutter compensation is on already; it must be off to be turned on.")
            _at_least_0(line, "D", "D must be the number of a tool.", needed=False)
            self.note(said, "Cutter compensation is not followed; the path is taken as written.")
        self.compensating = code != 400

    def _length(self, line: Line, code: int) -> None:
        length = 0.0
        if code == 430:
            tool = integer(_at_least_0(line, "H", "G43 needs H, the number of a tool length."), line.say("H"), "H")
            length = self.lengths_mm.get(tool, 0.0)
            if tool and tool not in self.lengths_mm:
                self.note(
                    line.say("G43", "H"),
                    "Only the machine knows the tool's length; Z is taken as its tip all the same.",
                )
        self._put(2, self.at[2] - (length - self.length_mm))
        self.length_mm = length

    # -- zeros and homes ----------------------------------------------------------------------------------------------

    def _reckon(self) -> None:
        zero = self.zeros.get(self.zero_code, (0.0, 0.0, 0.0))
        self.shift = [zero[axis] + self.offset[axis] for axis in range(3)]

    def _set_zero(self, line: Line) -> None:
        said = line.say("G10", "L", "P")
        if line.values.get("L") != 2 or "P" not in line.values:
            raise RefusedError(said or line.text, "G10 needs L2 and P, the number of a work zero.")
        number = integer(line.values["P"], line.spelled["P"], "P")
        if not 1 <= number <= 9:
            raise RefusedError(said, "Work zeros are numbered from 1 to 9.")
        self.note(
            said,
            "G10 moves a work zero measured from a place that only the machine knows; it is taken to be that of G54.",
        )
        code = 530 + 10 * number if number <= 6 else 584 + number
        zero = self.zeros.setdefault(code, [0.0, 0.0, 0.0])
        for axis, letter in enumerate("XYZ"):
            if letter in line.values:
                zero[axis] = line.values[letter] * self.factor
        self._reckon()

    def _offset(self, line: Line, code: int) -> None:
        if code == 920:
            if not line.values.keys() & {"X", "Y", "Z", "A", "B", "C"}:
                raise RefusedError(line.say("G92"), "G92 needs an axis word.")
            for axis, letter in enumerate("XYZ"):
                if letter in line.values:
                    self.assume_placed(axis)
                    here = self.at[axis] - self.shift[axis] + self.offset[axis]
                    self.offset[axis] = here - line.values[letter] * self.factor
            self.kept_offset = list(self.offset)
        elif code == 923:
            self.offset = list(self.kept_offset)
        else:
            self.offset = [0.0, 0.0, 0.0]
            if code == 921:
                self.kept_offset = [0.0, 0.0, 0.0]
        self._reckon()

    def _go_home(self, line: Line, name: str) -> None:
        if line.values.keys() & {"X", "Y", "Z"}:
            self.straight(RAPID, self.target(line, (0, 1, 2)))
        self.note(name, f"Only the machine knows where {name} goes; that move is left out.")
        self.at = [_NAN, _NAN, _NAN]

    # -- motion -------------------------------------------------------------------------------------------------------

    def assume_placed(self, axis: int) -> None:
        """Where the program reckons from a place that it never gave, that place is taken as 0."""
        if self.at[axis] != self.at[axis]:
            self.note(
                "XYZ"[axis], f"The program reckons from where {'XYZ'[axis]} is before it has said so; it is taken as 0."
            )
            self._put(axis, 0.0)

    def _put(self, axis: int, place: float) -> None:
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
        self._record(kind, end, _STRAIGHT_CENTRE, feed_mm)

    def _record(self, kind: int, end: list[float], centre: tuple[float, float], feed_mm: float) -> None:
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

    def _move(self, line: Line, motion: int, in_machine_places: bool) -> None:
        if in_machine_places and motion not in (0, 10):
            raise RefusedError(line.text, "G53 works with G0 and G1 only.")
        if motion not in CYCLES:
            self.cycle = None
        self.motion = motion
        if motion == 800:
            return
        if motion in CYCLES:
            run_cycle(self, line, motion)
            return
        name = code_name(motion)
        if line.values.keys() & {"A", "B", "C"}:
            self.note(line.say("A", "B", "C"), "Turning axes are not followed.")
        if in_machine_places:
            if self.compensating:
                raise RefusedError(line.say("G53"), "G53 may not be used while G41 or G42 is on.")
            self.note(line.say("G53"), "Only the machine knows where G53 leads; that move is left out.")
            for axis, letter in enumerate("XYZ"):
                if letter in line.values:
                    self._put(axis, _NAN)
            return
        end = self.target(line, (0, 1, 2))
        if motion in (20, 30):
            self._arc(line, motion, end)
            return
        if not line.values.keys() & {"X", "Y", "Z"}:
            return
        if motion == 0:
            self.straight(RAPID, end)
            return
        if motion == 382:
            self.note(name, "A probe stops where it touches; it is taken to go all the way.")
        self.straight(FEED, end, self._feed_mm(line, name, end, math.dist(self.at, end)))

    def _arc(self, line: Line, motion: int, end: list[float]) -> None:
        name, clockwise = code_name(motion), motion == 20
        first, second, third = PLANE_AXES[self.plane]
        for axis in (first, second):
            self.assume_placed(axis)
            if end[axis] != end[axis]:
                end[axis] = self.at[axis]
        try:
            centre = arc_centre(line, clockwise, self.plane, self.at, end, self.factor, name)
            p = (self.at[first] - centre[0], self.at[second] - centre[1])
            q = (end[first] - centre[0], end[second] - centre[1])
            turned = abs(arc_sweep_rad(p, q, clockwise)) * math.hypot(*p)
            feed_mm = self._feed_mm(line, name, end, math.hypot(turned, _or_0(end[third] - self.at[third])))
        except RefusedError:
            # The next line reckons from the arc's end: else one wrong arc would make those after it look wrong too.
            self.at = end
            raise
        if first > second:
            centre = (centre[1], centre[0])
        self._record(ARC_CW if clockwise else ARC_CCW, end, centre, feed_mm)

    def _feed_mm(self, line: Line, name: str, end: list[float], length_mm: float) -> float:
        """Feed in mm/min. Raises: RefusedError where there is none; the machine is then at the end all the
        same. What is missing is missing from every line that follows: only the first is refused, the others
        move at 0."""
        said = line.say(name, "X", "Y", "Z") or name
        if self.inverse_time:
            if line.values.get("F", 0.0) <= 0:
                self.at = end
                raise RefusedError(said, "In inverse time (G93) every feed move needs its own F, greater than 0.")
            return _or_0(length_mm) * self.feed
        if self.feed <= 0 and not self.feed_refused:
            self.at, self.feed_refused = end, True
            raise RefusedError(said, "The line moves at a feed rate, and none greater than 0 has been given.")
        return self.feed * self.factor


def _or_0(value: float) -> float:
    return value if value == value else 0.0


def _at_least_0(line: Line, letter: str, message: str, needed: bool = True) -> float:
    value = line.values.get(letter)
    if value is None and not needed:
        return 0.0
    if value is None or value < 0:
        raise RefusedError(line.say(letter) or line.text, message)
    return value
