"""C101: everything stays within the machine's travel."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.messages import Message, Mm, Num
from signgen.replay.measure import bounding_points

AXES = "XYZ"
SLACK_MM = 1e-6
"""For sums of decimals."""


class InsideTravel:
    code = "C101"
    name = "inside_travel"
    severity: Severity = "error"
    needs_drawing = False
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
        spans = [0.0, 0.0, 0.0]
        for program in case.programs:
            points, owners = bounding_points(program.replay.motions)
            lines = program.replay.motions.line[owners]
            low[2], high[2] = np.inf, -np.inf
            for axis in range(3 if len(points) else 0):
                values = points[:, axis]
                beyond = (values < low[axis]) | (values > high[axis])
                low[axis], high[axis] = min(low[axis], values.min()), max(high[axis], values.max())
                span = float(high[axis] - low[axis])
                if span > max(travel[axis], spans[axis]) + SLACK_MM:
                    # The span grows to its greatest where the later of its two ends is first reached.
                    ends = [lines[beyond & (values == end)] for end in (low[axis], high[axis])]
                    line = max(int(own.min()) for own in ends if len(own))
                    findings.append(
                        _finding(axis, float(low[axis]), float(high[axis]), travel[axis], program.file, line)
                    )
                spans[axis] = max(spans[axis], span)
        ways = tuple(
            Message("inside_travel.said", axes=AXES[axis], spans=Num(spans[axis], 1), travel=Mm(travel[axis]))
            for axis in range(3)
        )
        return verdict(self, findings, Message("list.plain", these=ways))


def _finding(axis: int, low: float, high: float, travel: float, file: str, line: int) -> Finding:
    return Finding(
        message=Message(
            "inside_travel.tip_goes_along_from_machine",
            high=Mm(high - low, 1),
            axes=AXES[axis],
            low=Num(low, 1),
            to=Num(high, 1),
            travel=Mm(travel),
        ),
        file=file,
        line=line,
        remedy=Message("inside_travel.choose_larger_machine_smaller_sign"),
    )
