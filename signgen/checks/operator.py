"""A virtual operator, who does to the letter what the setup sheet says, on a virtual machine whose head is parked
somewhere high and whose cutters have any lengths.

The operator knows the board's corners and the sheet; the machine knows its head's place, the offsets that were typed,
and the texts. Where the programs' zero really comes to lie, and which cutter really turns, follows from that alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from signgen.checks.check import Case, ProgramUnderTest
from signgen.checks.touched_off import landing_mm
from signgen.instructions import Cutter, Datum, SetUp, Step, Touch, typed
from signgen.messages import Message, Mm, Typed
from signgen.replay.heights import HeightMap, board
from signgen.replay.sweep import cut
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool

LENGTHS_MM = (63.7, 41.2, 88.9, 52.4, 75.1)
"""From the spindle's nose to each cutter's tip, as they were never measured: any that differ would do."""

PARKED_MM = 211.3
"""How high the spindle's nose is parked over the spoilboard before the first step."""

SAME_XY_MM = 0.06
"""Lines on a board are measured and printed to a tenth of a millimetre."""

SAME_Z_MM = 0.006


class Ran(Struct, frozen=True, kw_only=True):
    """A program as it really ran: its place in the case, the cutter that was in, and where its zero lay."""

    step: int
    program: int
    tool: Tool
    zero: WorkZero


class Tried(Struct, frozen=True, kw_only=True):
    """A program that is run before the cut, the outline or an air cut, as it really ran."""

    program: ProgramUnderTest
    tool: Tool
    zero: WorkZero


class Misuse(Struct, frozen=True, kw_only=True):
    """Something that goes wrong when the sheet is followed. `step`: which of its steps, -1 before them."""

    step: int
    what: Message


class Followed(Struct, frozen=True, kw_only=True):
    """What came of it. `last`: the board afterwards."""

    ran: tuple[Ran, ...]
    tried: tuple[Tried, ...]
    faults: tuple[Misuse, ...]
    last: HeightMap


def follow(case: Case, told: SetUp, inches: bool) -> Followed:
    """Lays the board, sets zero, fits cutters and runs the files of `told`, in its order."""
    return _Operator(case, told, inches).work()


class _Operator:
    """One go at the machine. Heights are over the spoilboard's top, places in sign coordinates: what the machine's own
    axes call them does not matter, for only differences are typed."""

    def __init__(self, case: Case, told: SetUp, inches: bool) -> None:
        self.case, self.told, self.inches = case, told, inches
        self.board = board(case.stock, case.ideal.grid.cell_mm)
        self.same = True
        self.in_hand: Cutter | None = None
        self.tool: Tool | None = None
        self.xy: tuple[float, float] | None = None
        self.offset_mm: float | None = None
        """Height of the spindle's nose at Z0, less the length that the control counts in."""
        self.nose_mm = PARKED_MM
        self.file = ""
        self.part = -1
        self.counted_mm = 0.0
        """The length that the control counts in."""
        self.has_table = any(step.begins == "changer" for step in told.steps) or any(
            event.kind == "length" and event.value > 0 for program in case.programs for event in program.replay.events
        )
        self.ran: list[Ran] = []
        self.tried: list[Tried] = []
        self.faults: list[Misuse] = []

    def work(self) -> Followed:
        for number, step in enumerate(self.told.steps):
            self._fit(number, step)
            if step.sets_xy:
                self.xy = self._datum(self.told.datum)
            self._set_z(number, step)
            if number == 0:
                self._try(number, step, [each for each in self.case.outlines if each.file == self.told.outline])
            self._try(number, step, self._air_cuts_of(step))
            self._run(number, step)
        done = {ran.program for ran in self.ran}
        for k, program in enumerate(self.case.programs):
            if k not in done:
                self._fault(len(self.told.steps) - 1, Message("operator.never_run", file=program.file))
        return Followed(
            ran=tuple(self.ran), tried=tuple(self.tried), faults=tuple(self.faults), last=self.board
        )  # fmt: skip

    def _fault(self, step: int, what: Message) -> None:
        self.faults.append(Misuse(step=step, what=what))

    def _fit(self, number: int, step: Step) -> None:
        """Takes the cutter that is told from the shelf, as far out of the collet as told."""
        shelf = {program.tool.name: program.tool for program in self.case.programs}
        self.in_hand = step.cutter
        tool = shelf.get(step.cutter.name)
        if tool is None:
            self._fault(number, Message("operator.there_no_cutter_called", cutter=step.cutter.name))
            return
        self.tool = replace(tool, stickout_mm=step.cutter.stick_out_mm)

    def _datum(self, datum: Datum) -> tuple[float, float]:
        """Where the lines that are drawn on the board cross."""
        left, front, right, _ = self.case.stock.bounds_mm
        x = left + datum.x_mm if datum.corner == "front left" else right - datum.x_mm
        return x, front + datum.y_mm

    def _length_mm(self, place: int) -> float:
        return LENGTHS_MM[place % len(LENGTHS_MM)] + place

    def _set_z(self, number: int, step: Step) -> None:
        """Tries each way that is told; they must agree, and the first counts."""
        heights = [height for touch in step.sets_z if (height := self._touch(number, step, touch)) is not None]
        if heights and max(heights) - min(heights) > SAME_Z_MM:
            self._fault(number, Message("operator.ways_set_z_differ", heights=Mm(max(heights) - min(heights), 2)))
        if heights:
            self.offset_mm = heights[0]

    def _touch(self, number: int, step: Step, touch: Touch) -> float | None:
        """What the control takes for the height of Z0 after the figure has been typed."""
        if self.xy is None or self.tool is None:
            self._fault(number, Message("operator.z_set_before_x_y"))
            return None
        at = ProgramUnderTest(file=step.file, text="", tool=self.tool, replay=self.case.programs[0].replay)
        # Places count from the zero that is really set.
        here = replace(self.case, zero=replace(self.case.zero, x_mm=self.xy[0], y_mm=self.xy[1]))
        lands, _ = landing_mm(here, at, touch, self.board)
        if lands is None:
            self._fault(
                number,
                Message(
                    "operator.cutter_does_not_come_down",
                    on=Message(f"touch.on.{touch.on}"),
                    x=Typed(touch.x_mm),
                    y=Typed(touch.y_mm),
                ),
            )
            return None
        figure = touch.types_mm + (self.told.board.thickness_mm if touch.plus_thickness else 0.0)
        unit = 25.4 if self.inches else 1.0
        figure = float(typed(figure, self.inches)) * unit
        length = self._length_mm(step.cutter.place)
        self.nose_mm = lands + touch.paper_mm + length
        # A changer's control counts the cutter's length in, the others know of none.
        return self.nose_mm - figure - (length if self.has_table else 0.0)

    def _run(self, number: int, step: Step) -> None:
        """Starts a file, or lets it go on to its next cutter."""
        self.part = self.part + 1 if step.begins != "start" else 0
        if step.begins != "start" and step.file != self.file:
            self._fault(
                number, Message("operator.running_not", running=self.file or Message("list.none"), file=step.file)
            )
            return
        if step.begins == "start" and self.file and self._rest_of(self.file, len(self._done(self.file))):
            self._fault(number, Message("operator.has_not_run_end", file=self.file))
        if step.begins == "start":
            self.counted_mm = 0.0
        self.file = step.file
        k = next(iter(self._rest_of(step.file, self.part)), None)
        if k is None:
            self._fault(number, Message("operator.has_no_part_cutter", file=step.file, part=self.part + 1))
            return
        program = self.case.programs[k]
        if k in {ran.program for ran in self.ran}:
            self._fault(number, Message("operator.run_second_time", file=step.file))
        if step.begins == "pause" and not any(event.kind == "stop" for event in program.replay.events):
            self._fault(number, Message("operator.does_not_wait_cutter", file=step.file))
        if self.tool is None or self.xy is None or self.offset_mm is None:
            self._fault(number, Message("operator.started_before_cutter_zero_are"))
            return
        self._cut(number, k, step)

    def _air_cuts_of(self, step: Step) -> Sequence[ProgramUnderTest]:
        """Of the step's own part of a file."""
        part = self.part + 1 if step.begins != "start" else 0
        return [each for each in self.case.lifted if each.file.endswith(step.file)][part : part + 1]

    def _try(self, number: int, step: Step, programs: Sequence[ProgramUnderTest]) -> None:
        """Runs programs that are to touch nothing with the cutter and the zero that are there; without them it comes
        to nothing, and neither does the step."""
        if self.tool is None or self.xy is None or self.offset_mm is None:
            return
        counted_mm = self.counted_mm
        for program in programs:
            if step.begins == "start":
                self.counted_mm = 0.0
            tool, zero = self._at_work(number, program, step, self.tool, self.xy, self.offset_mm)
            self.tried.append(Tried(program=program, tool=tool, zero=zero))
        self.counted_mm = counted_mm

    def _at_work(
        self, number: int, program: ProgramUnderTest, step: Step, tool: Tool, xy: tuple[float, float], offset_mm: float
    ) -> tuple[Tool, WorkZero]:
        """The cutter that really turns, and where its zero lies."""
        cutter = self._in_spindle(number, program, step)
        shelf = {each.tool.name: each.tool for each in self.case.programs}
        tool = replace(shelf[cutter.name], stickout_mm=cutter.stick_out_mm) if cutter.name in shelf else tool
        z = offset_mm + self.counted_mm - self._length_mm(cutter.place)
        return tool, WorkZero(x_mm=xy[0], y_mm=xy[1], z_mm=z)

    def _done(self, file: str) -> list[int]:
        return [ran.program for ran in self.ran if self.case.programs[ran.program].file == file]

    def _rest_of(self, file: str, part: int) -> Sequence[int]:
        return [k for k, program in enumerate(self.case.programs) if program.file == file][part:]

    def _cut(self, number: int, k: int, step: Step) -> None:
        program = self.case.programs[k]
        assert self.tool is not None
        assert self.xy is not None
        assert self.offset_mm is not None
        tool, zero = self._at_work(number, program, step, self.tool, self.xy, self.offset_mm)
        judged = self.case.zero
        self.ran.append(Ran(step=number, program=k, tool=tool, zero=zero))
        near = max(abs(zero.x_mm - judged.x_mm), abs(zero.y_mm - judged.y_mm)) <= SAME_XY_MM
        near &= abs(zero.z_mm - judged.z_mm) <= SAME_Z_MM
        self.same &= near and k == len(self.ran) - 1 and tool.name == program.tool.name
        # The judge has cut the same board already; only where something differs is it cut again.
        self.board = self.case.boards[k] if self.same else cut(self.board, program.replay.motions, tool, zero)

    def _in_spindle(self, number: int, program: ProgramUnderTest, step: Step) -> Cutter:
        """The cutter that really turns: a changer fetches what the text calls for. The control counts in the length
        that stands in the line of its table that the text names."""
        by_place = {each.cutter.place: each.cutter for each in self.told.steps}
        cutter = step.cutter
        for event in program.replay.events:
            if event.kind == "change" and self.has_table:
                fetched = by_place.get(int(event.value))
                if fetched is None:
                    self._fault(number, Message("operator.place_changer_empty", place=Typed(event.value)))
                else:
                    cutter = fetched
            if event.kind == "length":
                self.counted_mm = self._length_mm(int(event.value)) if int(event.value) in by_place else 0.0
        return cutter


def moved_zeros(case: Case, followed: Followed) -> Iterator[tuple[Ran, tuple[float, float, float]]]:
    """Programs whose zero came to lie elsewhere, and by how much."""
    for ran in followed.ran:
        off = (ran.zero.x_mm - case.zero.x_mm, ran.zero.y_mm - case.zero.y_mm, ran.zero.z_mm - case.zero.z_mm)
        if max(abs(off[0]), abs(off[1])) > SAME_XY_MM or abs(off[2]) > SAME_Z_MM:
            yield ran, off
