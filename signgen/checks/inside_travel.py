"""C101: everything stays within the machine's travel."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.replay.measure import bounding_points

AXES = "XYZ"
SLACK_MM = 1e-6
"""For sums of decimals."""


class InsideTravel:
    code = "C101"
    name = "inside_travel"
    severity: Severity = "error"
    explanation = """\
The way of the tip along X, Y and Z, from one end to the other over all programs of the job (they share one zero; Z is
set again for each cutter and counts for each program), must be no longer than the machine's travel.
A failure means that the machine would run into its stops, lose its place and spoil the rest.
What to do: choose a larger machine (--machine), a smaller sign, or lay the sign the other way round.
Least error seen: 0.0001 mm, from the programs alone."""

    def run(self, case: Case) -> CheckResult:
        travel = case.machine.travel_mm
        findings: list[Finding] = []
        low, high = np.full(3, np.inf), np.full(3, -np.inf)
        last: list[tuple[str, int] | None] = [None, None, None]
        deepest_span = 0.0
        for program in case.programs:
            points, owners = bounding_points(program.replay.motions)
            if not len(points):
                continue
            lines = program.replay.motions.line[owners]
            for axis in range(3):
                values = points[:, axis]
                before = high[axis] - low[axis] if axis < 2 else 0.0
                if axis == 2:
                    low[2], high[2] = np.inf, -np.inf
                for k in (int(values.argmin()), int(values.argmax())):
                    if values[k] < low[axis] or values[k] > high[axis]:
                        low[axis], high[axis] = min(low[axis], values[k]), max(high[axis], values[k])
                        last[axis] = (program.file, int(lines[k]))
                span = high[axis] - low[axis]
                if axis == 2:
                    deepest_span = max(deepest_span, float(span))
                if span > max(travel[axis] + SLACK_MM, before):
                    findings.append(_finding(axis, float(low[axis]), float(high[axis]), travel[axis], last[axis]))
        spans = (*(max(0.0, float(high[axis] - low[axis])) for axis in range(2)), deepest_span)
        detail = ", ".join(f"{AXES[axis]} {spans[axis]:.1f} of {travel[axis]:g} mm" for axis in range(3))
        return verdict(self, findings, detail)


def _finding(axis: int, low: float, high: float, travel: float, where: tuple[str, int] | None) -> Finding:
    file, line = where or ("", None)
    return Finding(
        message=f"The tip goes {high - low:.1f} mm along {AXES[axis]}, from {low:.1f} to {high:.1f}; "
        f"the machine has {travel:g} mm.",
        file=file,
        line=line,
        remedy="Choose a larger machine or a smaller sign, or lay the sign the other way round.",
    )
