"""C105: the spindle turns the right way, at speed before it cuts, and stands still at the end."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.tip_path import TipPath
from signgen.messages import Message, Num, Sentence


class SpindleReady:
    code = "C105"
    name = "spindle_ready"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Every feed move below the board's top needs a spindle that turns clockwise (M3), within the machine's speeds, and that
has been given the time that it needs to reach speed: a dwell (G4) no shorter than the machine's starting time after
each start. At the program's end the spindle must be off.

A failure means a broken cutter and a board torn from its clamps, or a cutter that still turns when a hand reaches in.

What to do: make the programs again; if the machine starts more slowly than its data say, mend the data (spindle-
start).

Least error seen: one move, 0.001 s."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        speeds: list[Sentence] = []
        waits: list[float] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            findings += _findings(case, program, cuts)
            motions = program.replay.motions
            used = np.unique(cuts.motion[cuts.low_z_mm < case.stock.thickness_mm - 1e-6])
            if len(used):
                low, high = motions.spindle_rpm[used].min(), motions.spindle_rpm[used].max()
                speeds.append(
                    Message("spindle_ready.at", speed=round(low))
                    if low == high
                    else Message("spindle_ready.said", low=round(low), high=round(high))
                )
                waits.append(float(motions.spindle_s[used].min()))
        wait = (
            Message("spindle_ready.s_before_first_cut", waits=Num(min(waits)))
            if waits
            else Message("checks.nothing_cut")
        )
        detail = Message(
            "spindle_ready.rpm_s_needed",
            speeds=tuple(speeds) or Message("list.none"),
            wait=wait,
            spindle_start_s=Num(case.machine.spindle_start_s),
        )
        return verdict(self, findings, detail)


def _findings(case: Case, program: ProgramUnderTest, cuts: TipPath) -> list[Finding]:
    """The first move of each kind of fault."""
    motions, machine = program.replay.motions, case.machine
    used = np.unique(cuts.motion[cuts.low_z_mm < case.stock.thickness_mm - 1e-6])
    rpm, waited = motions.spindle_rpm[used], motions.spindle_s[used]
    least, most = machine.spindle_min_rpm, machine.spindle_max_rpm
    faults = (
        (
            rpm == 0,
            Message("spindle_ready.cutter_moves_into_board_spindle"),
            Message("spindle_ready.start_m3_s_before"),
            False,
        ),
        (
            rpm < 0,
            Message("spindle_ready.spindle_turns_backwards_in_cut"),
            Message("spindle_ready.use_m3_cutters_turn_clockwise"),
            False,
        ),
        (
            (rpm > 0) & (waited < machine.spindle_start_s - 1e-6),
            Message("spindle_ready.cut_begins_before_spindle_speed", spindle_start_s=Num(machine.spindle_start_s)),
            Message("spindle_ready.dwell_s_longer_g4_after", spindle_start_s=Num(machine.spindle_start_s)),
            not case.drawn,
        ),
        (
            (rpm > 0) & ((rpm < least - 0.5) | (rpm > most + 0.5)),
            Message("spindle_ready.spindle_s_speed_outside_machine", least=round(least), most=round(most)),
            Message("spindle_ready.write_speed_that_machine_has"),
            False,
        ),
    )
    found = []
    for bad, message, remedy, warns in faults:
        if bad.any():
            line = int(motions.line[used[int(np.argmax(bad))]])
            found.append(Finding(message=message, file=program.file, line=line, remedy=remedy, warns=warns))
    if program.replay.spindle_on_at_end:
        found.append(
            Finding(
                message=Message("spindle_ready.spindle_still_turns_when_program"),
                file=program.file,
                line=program.replay.line_count,
                remedy=Message("spindle_ready.stop_with_m5_before_m2"),
                warns=not case.drawn,
            )
        )
    return found
