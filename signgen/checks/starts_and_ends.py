"""C141: the head comes from wherever it stands without meeting anything, and ends clear of the work."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.rapids_clear import CLEARANCE_MM
from signgen.messages import Message, Mm, Num, Typed
from signgen.shop.stock import CLAMP_STANDS_MM

HAIR_MM = 1e-6


class StartsAndEnds:
    code = "C141"
    name = "starts_and_ends"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
No text can tell where the head is parked before the first line, nor where it is left after a cutter was changed by
hand. So the first motion of every cutter goes straight along Z, and to a height over every clamp (30 mm over the
board, or as high as the machine goes): coming from below it rises, coming from above it stops before it meets
anything. Only then may it go across. After the last motion the tip must be clear of the board, in a program of a sign
as high again, for hands and the next program's zero.

Programs from elsewhere often begin with a lower Z: that is a warning, and a reminder where to park the head. One that
ends with its tip in the board is stopped.

A failure means a cutter that comes down as a rapid on a clamp, a screw or a hand, or that is dragged through the work
by the next move after the end.

What to do: make the programs again; begin by hand with the head over the board and no higher than the program's
first Z.

Least error seen: 0.001 mm in height, one move."""

    def run(self, case: Case) -> CheckResult:
        high = over_everything_mm(case)
        findings: list[Finding] = []
        firsts: list[float] = []
        lasts: list[float] = []
        for program in case.programs:
            if not len(program.replay.motions):
                continue
            first, last = _first_and_last_mm(case, program)
            findings += (_start_of_sign if case.drawn else _start_elsewhere)(case, program, first, high)
            findings += _end(case, program, last, high)
            firsts.append(first)
            lasts.append(last)
        top = case.stock.thickness_mm
        said = (
            Message(
                "starts_and_ends.first_z_last_z_over", firsts=Num(min(firsts) - top, 2), lasts=Mm(min(lasts) - top, 2)
            )
            if firsts
            else "none"
        )
        return verdict(
            self, findings, Message("starts_and_ends.nothing_stands_higher_than", said=said, high=Mm(high - top, 2))
        )


def over_everything_mm(case: Case) -> float:
    """The height (sign coordinates) over which nothing stands on the board, or as high as the machine goes."""
    lowest = min((float(cuts.low_z_mm.min()) for cuts in case.cuts if len(cuts)), default=0.0)
    reached = case.machine.travel_mm[2] + min(lowest, -case.breakthrough_mm)
    return min(case.stock.thickness_mm + CLAMP_STANDS_MM, reached)


def _first_and_last_mm(case: Case, program: ProgramUnderTest) -> tuple[float, float]:
    """Z after the first motion, and after the last (sign coordinates)."""
    ends = program.replay.motions.end_mm[:, 2] + case.zero.z_mm
    return float(ends[0]), float(ends[-1])


def _start_of_sign(case: Case, program: ProgramUnderTest, first: float, high: float) -> list[Finding]:
    motions = program.replay.motions
    line = int(motions.line[0])
    across = bool(np.any(motions.start_mm[0, :2] != motions.end_mm[0, :2]))
    # A place that is said for the first time shows as known at the next motion only.
    across |= bool(len(motions) > 1 and np.any(motions.start_known[1, :2] & ~motions.start_known[0, :2]))
    if across:
        what = Message("starts_and_ends.first_motion_goes_across_nobody")
        return [
            Finding(
                message=what, file=program.file, line=line, remedy=Message("starts_and_ends.go_straight_up_first_g0")
            )
        ]
    if first < high - 1e-3:
        return [
            Finding(
                message=Message(
                    "starts_and_ends.first_motion_ends_over_board", first=Mm(first - case.stock.thickness_mm, 2)
                ),
                file=program.file,
                line=line,
                remedy=Message("starts_and_ends.go_z_higher_first", high=Typed(float(f"{high - case.zero.z_mm:.4g}"))),
            )
        ]
    return []


def _start_elsewhere(case: Case, program: ProgramUnderTest, first: float, high: float) -> list[Finding]:
    """A first Z that may be a dive: where the place is not known either, and the head was not sent home before."""
    motions = program.replay.motions
    known = motions.start_known
    blind = np.flatnonzero(~known[:, 2])
    if not len(blind) or blind[0] != 0:
        return []
    # The motion that says Z first is the last at whose start it is unknown.
    k = int(np.flatnonzero(np.append(known[1:, 2], True))[0])
    homed = any(event.kind == "home" and event.line <= motions.line[k] for event in program.replay.events)
    z = float(motions.end_mm[k, 2]) + case.zero.z_mm
    if homed or known[k, :2].all() or z >= high - 1e-3:
        return []
    return [
        Finding(
            message=Message("starts_and_ends.first_z_over_board_wherever", z=Mm(z - case.stock.thickness_mm, 2)),
            file=program.file,
            line=int(motions.line[k]),
            remedy=Message("starts_and_ends.park_head_lower_than_that"),
            warns=True,
        )
    ]


def _end(case: Case, program: ProgramUnderTest, last: float, high: float) -> list[Finding]:
    motions, top = program.replay.motions, case.stock.thickness_mm
    if any(event.kind == "home" and event.line >= motions.line[-1] for event in program.replay.events):
        return []
    wanted = high - 1e-3 if case.drawn else top + CLEARANCE_MM
    if last >= wanted - HAIR_MM:
        return []
    x, y, _ = (motions.end_mm[-1] + [case.zero.x_mm, case.zero.y_mm, case.zero.z_mm]).tolist()
    within = case.stock.bounds_mm
    reach = program.tool.radius_mm
    over = within[0] - reach < x < within[2] + reach and within[1] - reach < y < within[3] + reach
    if last < top - HAIR_MM and over:
        what = Message("starts_and_ends.program_ends_with_cutter_deep", top=Mm(top - last, 2))
    else:
        what = Message("starts_and_ends.program_ends_over_board_s", last=Mm(last - top, 2))
    return [
        Finding(
            message=what,
            file=program.file,
            line=int(motions.line[-1]),
            place_mm=(x, y),
            remedy=Message("starts_and_ends.retract_end_before_spindle_stops"),
            warns=not case.drawn and not (last < top - HAIR_MM and over),
        )
    ]
