"""C123: units and zero are likely those that were meant."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from msgspec import Struct

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.tip_path import TipPath
from signgen.geometry.distance import FloatArray
from signgen.messages import Message, Mm, MmPerMin, Num, Sentence, Sides, Typed
from signgen.shop.feeds import cutting_data

INCH_MM = 25.4

SMALL_RATIO = 1 / 15
"""A cut smaller than this share of the board, on both its sides, may be meant in inches."""

SLOW_RATIO = 1 / 8
"""A feed below this share of the shop's data may be meant in inches, or by the second."""

SLACK_MM = 0.5
"""For breakthroughs of other people's choice."""


class UnitsPlausible:
    code = "C123"
    name = "units_plausible"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Where the programs' numbers lie, beside the board as it is said to lie. Do they cut it at all? If they miss it, or go
deeper than they may, would they fit with Z zero at its other face, with X0 Y0 at another corner or in the middle, or
in the other unit? Is a cut tiny and its feed slow, as inches read as millimetres are, or only the feed, as one in
inches or by the second is?

A failure names what would fit. A suspicion that nothing else confirms is only a warning.

What to do: look where the program was meant to have its zero and which unit it is in, and say so (--zero, --z-zero),
or set the zero at the machine where the first lines or the setup sheet say.

Least error seen: nothing small; a factor of 25.4, or a zero at another corner or face of the board."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        said: list[Message] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            if not len(cuts):
                findings.append(
                    Finding(
                        message=Message("units_plausible.moves_no_feed_so_cuts"),
                        file=program.file,
                        remedy=Message("units_plausible.look_whether_right_file"),
                        warns=not case.drawn,
                    )
                )
                continue
            numbers = _Numbers.of(case, cuts)
            found = [*_of_height(case, program, cuts, numbers), *_of_place(case, program, cuts, numbers)]
            findings += found or _of_units(case, program, cuts, numbers)
            said.append(Message("units_plausible.said", file=program.file, said=numbers.said(case)))
        return verdict(
            self, findings, Message("units_plausible.feeds_program_counts", said=tuple(said) or Message("list.none"))
        )


class _Numbers(Struct, frozen=True, kw_only=True):
    """Where feed moves go (sign coordinates): lowest and highest Z; low and high (2,) of what is cut, or of all feeds
    when nothing is; whether anything is cut."""

    z_mm: tuple[float, float]
    low_mm: FloatArray
    high_mm: FloatArray
    touches: bool

    @classmethod
    def of(cls, case: Case, cuts: TipPath) -> _Numbers:
        top = case.stock.thickness_mm
        heights = np.concatenate([cuts.start_mm[:, 2], cuts.end_mm[:, 2]])
        sunk = cuts.below(top - 1e-6)
        places = sunk if len(sunk) else cuts
        ends = np.concatenate([places.start_mm[:, :2], places.end_mm[:, :2]])
        low, high = ends.min(axis=0), ends.max(axis=0)
        return cls(z_mm=(float(heights.min()), float(heights.max())), low_mm=low, high_mm=high, touches=len(sunk) > 0)

    def said(self, case: Case) -> Message:
        zero = case.zero
        x0, y0 = self.low_mm - [zero.x_mm, zero.y_mm]
        x1, y1 = self.high_mm - [zero.x_mm, zero.y_mm]
        z0, z1 = (z - zero.z_mm for z in self.z_mm)
        return Message(
            "units_plausible.x_y_z",
            x0=Num(x0, 1),
            x1=Num(x1, 1),
            y0=Num(y0, 1),
            y1=Num(y1, 1),
            z0=Num(z0, 1),
            z1=Num(z1, 1),
        )


def _of_height(case: Case, program: ProgramUnderTest, cuts: TipPath, numbers: _Numbers) -> Iterator[Finding]:
    """Z0 at the other face, or feeds that never come down to the board."""
    top, low = case.stock.thickness_mm, numbers.z_mm[0]
    in_inches = "G20" in program.replay.modes_before_motion
    floor = -case.breakthrough_mm - program.tool.point_length_mm - SLACK_MM
    at_bottom = case.zero.z_mm == 0
    line = int(cuts.line[int(cuts.low_z_mm.argmin())])
    if at_bottom and low < floor and low + top >= floor and low < 0:
        yield Finding(
            message=Message("units_plausible.cuts_down_z_below_board", low=Typed(float(f"{low:.3g}"))),
            file=program.file,
            line=line,
            remedy=Message("units_plausible.look_where_program_wants_z0"),
        )
    elif not numbers.touches:
        likely: Sentence = ""
        if in_inches and (low - case.zero.z_mm) / INCH_MM + case.zero.z_mm < top:
            likely = Message("units_plausible.in_millimetres_instead_inches_g20")
        elif not at_bottom and low - top < top:
            likely = Message("units_plausible.with_z0_board_s_bottom")
        yield Finding(
            message=Message(
                "units_plausible.never_comes_down_board_lowest", low=Mm(float(f"{low - top:.3g}")), likely=likely
            ),
            file=program.file,
            line=line,
            remedy=Message("units_plausible.look_where_program_wants_z0_2"),
            warns=not case.drawn and not likely,
        )


def _of_place(case: Case, program: ProgramUnderTest, cuts: TipPath, numbers: _Numbers) -> Iterator[Finding]:
    """A cut that is off the board, and would be on it with another zero or unit."""
    x0, y0, x1, y1 = case.stock.bounds_mm
    low, high = np.array([x0, y0]), np.array([x1, y1])
    if not numbers.touches or ((numbers.low_mm >= low) & (numbers.high_mm <= high)).all():
        return
    shift = np.array([case.zero.x_mm, case.zero.y_mm])
    for name, share in (
        (Message("units_plausible.middle"), (0.5, 0.5)),
        (Message("units_plausible.bottom_left_corner"), (0.0, 0.0)),
        (Message("units_plausible.top_left_corner"), (0.0, 1.0)),
        (Message("units_plausible.bottom_right_corner"), (1.0, 0.0)),
        (Message("units_plausible.top_right_corner"), (1.0, 1.0)),
    ):
        moved = low + np.array(share) * (high - low) - shift
        if ((numbers.low_mm + moved >= low) & (numbers.high_mm + moved <= high)).all():
            message = Message("units_plausible.cuts_beside_board_with_x0", name=name)
            remedy = Message("units_plausible.look_where_program_wants_x0")
            break
    else:
        size = (numbers.high_mm - numbers.low_mm) / INCH_MM
        if "G20" not in program.replay.modes_before_motion or (size > high - low).any():
            return
        message = Message("units_plausible.larger_than_board_in_millimetres")
        remedy = Message("units_plausible.look_which_unit_program_meant")
    outside = (numbers.low_mm > high).any() or (numbers.high_mm < low).any()
    yield Finding(
        message=message,
        file=program.file,
        line=int(cuts.line[0]),
        remedy=remedy,
        warns=not (outside or case.drawn),
    )


def _of_units(case: Case, program: ProgramUnderTest, cuts: TipPath, numbers: _Numbers) -> list[Finding]:
    """Numbers that are small and slow at once, or slow alone."""
    feeds = program.replay.motions.feed_mm_per_min[cuts.motion]
    usual = cutting_data(program.tool, case.material, case.machine).feed_mm_per_min
    fastest = float(feeds.max())
    if program.tool.kind == "drill" or fastest >= SLOW_RATIO * usual:
        return []
    x0, y0, x1, y1 = case.stock.bounds_mm
    size = numbers.high_mm - numbers.low_mm
    tiny = (size < SMALL_RATIO * np.array([x1 - x0, y1 - y0])).all()
    if (
        tiny
        and (size * INCH_MM <= np.array([x1 - x0, y1 - y0])).all()
        and "G20" not in program.replay.modes_before_motion
    ):
        what = Message(
            "units_plausible.cuts_x_these_may_inches",
            size=Sides((float(size[0]), float(size[1])), 2),
            fastest=MmPerMin(fastest, 0),
        )
    else:
        what = Message("units_plausible.fastest_feed_usual_may_in", fastest=MmPerMin(fastest, 0), usual=Num(usual, 0))
    return [
        Finding(
            message=what,
            file=program.file,
            line=int(cuts.line[int(feeds.argmax())]),
            remedy=Message("units_plausible.look_which_unit_program_meant_2"),
            warns=True,
        )
    ]
