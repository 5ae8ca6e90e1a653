"""C143: nothing stops or waits while the cutter stands in the wood."""

from __future__ import annotations

from collections.abc import Iterator

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.places import at
from signgen.messages import Message, Mm, Num
from signgen.replay.motion import Event

BREAK_S = 0.5
"""A drill may stand so long at the bottom of its hole: some turns, that chips break (common practice)."""

LONG_S = 60.0
"""No spindle needs longer to reach its speed; a longer wait elsewhere may be meant in milliseconds."""

SLACK_S = 1.0
HAIR_MM = 1e-6


class StopsAndWaits:
    code = "C143"
    name = "stops_and_waits"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Every dwell (G4), stop (M0, M1, M60), change of cutter and stop of the spindle, and where the cutter is then. In the
board none of them may happen: a cutter that turns on the spot burns the wood, and one that is stopped there tears it
when it starts again. Only a drill may wait half a second. A sign's programs wait no longer than the spindle needs to
start and to warm up; in programs from elsewhere a dwell of more than a minute is asked about, for some controls count
G4's P in milliseconds.

A failure means a burnt place, a broken cutter, or a machine that stands still for an hour with nobody beside it.

What to do: retract before the stop; look which unit the control's G4 has.

Least error seen: one word, half a second."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        count, longest = 0, 0.0
        for program in case.programs:
            for event in program.replay.events:
                findings += _in_the_wood(case, program, event)
                count += event.kind in ("dwell", "stop")
            longest = max([longest, *(e.value for e in program.replay.events if e.kind == "dwell")])
            findings += _too_long(case, program)
        return verdict(
            self,
            findings,
            Message("stops_and_waits.stops_waits_looked_longest_wait", count=count, longest=Num(longest)),
        )


def _in_the_wood(case: Case, program: ProgramUnderTest, event: Event) -> Iterator[Finding]:
    zero, top = case.zero, case.stock.thickness_mm
    x, y, z = event.at_mm[0] + zero.x_mm, event.at_mm[1] + zero.y_mm, event.at_mm[2] + zero.z_mm
    x0, y0, x1, y1 = case.stock.bounds_mm
    # Also False where the program has not yet said where the cutter is.
    if not (z < top - HAIR_MM and x0 < x < x1 and y0 < y < y1):
        return
    if event.kind == "dwell" and event.value > (BREAK_S if program.tool.kind == "drill" else 0.0):
        what = Message("stops_and_waits.waits_s", seconds=Num(event.value))
        warns = not case.drawn and event.value <= SLACK_S
    elif event.kind in ("stop", "change"):
        what, warns = Message("stops_and_waits.stops", words=event.words), False
    elif event.kind == "spindle" and event.rpm == 0:
        what, warns = Message("stops_and_waits.stops_spindle", words=event.words), not case.drawn
    else:
        return
    yield Finding(
        message=Message("stops_and_waits.with_cutter_deep_in_board", what=what, place=at(x, y), top=Mm(top - z, 2)),
        file=program.file,
        line=event.line,
        place_mm=(x, y),
        remedy=Message("stops_and_waits.retract_first_g0_z"),
        warns=warns,
    )


def _too_long(case: Case, program: ProgramUnderTest) -> Iterator[Finding]:
    dwells = [event for event in program.replay.events if event.kind == "dwell"]
    if not dwells:
        return
    worst = max(dwells, key=lambda event: event.value)
    if case.drawn:
        warm_up = program.stated.manner.warm_up_s if program.stated else 0.0
        most = max(case.machine.spindle_start_s, warm_up) + SLACK_S
        starts = sum(event.kind == "spindle" and event.rpm != 0 for event in program.replay.events)
        total = sum(event.value for event in dwells)
        allowed = warm_up + max(starts, 1) * case.machine.spindle_start_s + SLACK_S
        if worst.value > most or total > allowed:
            yield Finding(
                message=Message(
                    "stops_and_waits.waits_s_here_s_in",
                    seconds=Num(worst.value),
                    total=Num(total),
                    allowed=Num(allowed),
                ),
                file=program.file,
                line=worst.line,
                remedy=Message("checks.make_programs_again"),
            )
    elif worst.value > LONG_S:
        yield Finding(
            message=Message(
                "stops_and_waits.waits_s_min_s_meant",
                seconds=Num(worst.value),
                minutes=round(worst.value / 60),
                meant=Num(worst.value / 1000),
            ),
            file=program.file,
            line=worst.line,
            remedy=Message("stops_and_waits.look_which_unit_control_has"),
            warns=True,
        )
