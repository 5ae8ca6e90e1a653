"""C105: the spindle turns the right way, at speed before it cuts, and stands still at the end."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.checks.way import Way


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
        speeds: list[str] = []
        waits: list[float] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            findings += _findings(case, program, cuts)
            motions = program.replay.motions
            used = np.unique(cuts.motion[cuts.low_z_mm < case.stock.thickness_mm - 1e-6])
            if len(used):
                low, high = motions.spindle_rpm[used].min(), motions.spindle_rpm[used].max()
                speeds.append(f"{low:,.0f}" if low == high else f"{low:,.0f} to {high:,.0f}")
                waits.append(float(motions.spindle_s[used].min()))
        wait = f"{min(waits):g} s before the first cut" if waits else "nothing is cut"
        detail = f"{' / '.join(speeds) or 'no'} rpm, {wait}, {case.machine.spindle_start_s:g} s needed"
        return verdict(self, findings, detail)


def _findings(case: Case, program: ProgramUnderTest, cuts: Way) -> list[Finding]:
    """The first move of each kind of fault."""
    motions, machine = program.replay.motions, case.machine
    used = np.unique(cuts.motion[cuts.low_z_mm < case.stock.thickness_mm - 1e-6])
    rpm, waited = motions.spindle_rpm[used], motions.spindle_s[used]
    least, most = machine.spindle_min_rpm, machine.spindle_max_rpm
    faults = (
        (
            rpm == 0,
            "The cutter moves into the board and the spindle stands still.",
            "Start it (M3 S...) before.",
            False,
        ),
        (rpm < 0, "The spindle turns backwards in the cut (M4).", "Use M3: the cutters turn clockwise.", False),
        (
            (rpm > 0) & (waited < machine.spindle_start_s - 1e-6),
            f"The cut begins before the spindle is at speed: it needs {machine.spindle_start_s:g} s.",
            f"Dwell {machine.spindle_start_s:g} s or longer (G4) after each start of the spindle.",
            not case.drawn,
        ),
        (
            (rpm > 0) & ((rpm < least - 0.5) | (rpm > most + 0.5)),
            f"The spindle's speed is outside the machine's {least:,.0f} to {most:,.0f} rpm.",
            "Write a speed that the machine has.",
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
                message="The spindle still turns when the program ends.",
                file=program.file,
                line=program.replay.line_count,
                remedy="Stop it with M5 before M2 or M30.",
                warns=not case.drawn,
            )
        )
    return found
