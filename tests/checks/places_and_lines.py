"""A law of findings: line and place belong together, that is, the motion of the line comes by the place."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckReport, Finding
from signgen.geometry.distance import distance_to_segments

NOT_BY_THE_CUTTER = frozenset(["C124", "C119"])
"""Clamps and screws are named by their own middle, and met by the collet's nut too; a loose piece by its middle, with
the last line that cut round it."""

HOLE_MM = 14.0
"""The widest hole that the sabotaged plate draws: what is wrong with a hole is shown at its middle."""


def apart(case: Case, report: CheckReport) -> list[tuple[str, int | None, str]]:
    """(code, line, message) of the findings whose line leads nowhere near their place."""
    reach = max(program.tool.radius_mm for program in case.programs) + HOLE_MM / 2
    return [
        (result.code, finding.line, str(finding.message))
        for result, finding in report.findings()
        if result.code not in NOT_BY_THE_CUTTER and finding.line is not None and finding.place_mm is not None
        if _away_mm(case, finding) > reach
    ]


def _away_mm(case: Case, finding: Finding) -> float:
    """How far from the finding's place the motions of its line stay, over all programs of its file."""
    nearest = np.inf
    for number, program in enumerate(case.programs):
        for way in (case.cuts[number], case.rapids[number]):
            before = way.line[way.line <= (finding.line or 0)]
            # A word that moves nothing stands after the motion that led there.
            own = way.where(way.line == before.max(initial=0))
            if program.file == finding.file and len(own):
                place = np.array([finding.place_mm])
                nearest = min(nearest, float(distance_to_segments(place, own.plan_mm, 1000.0)[0]))
    return nearest
