"""C113: nothing is cut any more once the sign hangs by its tabs."""

from __future__ import annotations

import re

import numpy as np
import shapely

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, feature_at
from signgen.checks.tip_path import TipPath
from signgen.geometry.distance import distance_to_segments, segments_of
from signgen.messages import Message
from signgen.tolerances import CHECK_MM

_NUMBER = re.compile(r"^(\d+)")
REMEDY = Message("programs_in_order.run_programs_in_order_their")


class ProgramsInOrder:
    code = "C113"
    name = "programs_in_order"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The programs are run in the order of the numbers that their names begin with. From the first cut of the edge that goes
through the board, nothing may be cut inside the edge: the sign is held by its tabs alone, and would shift.

A failure means that letters or holes would end up beside their places, or the sign be torn out.

What to do: run the programs in the order of their numbers.

Least error seen: one move."""

    def run(self, case: Case) -> CheckResult:
        findings = _numbers(case)
        edge = case.drawing.edge
        shapely.prepare(edge)
        first: tuple[str, int] | None = None
        order: list[Message] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            sunk = cuts.below(case.stock.thickness_mm - CHECK_MM)
            if not len(sunk):
                continue
            middle = (sunk.start_mm[:, :2] + sunk.end_mm[:, :2]) / 2
            inside = shapely.contains_xy(edge, middle[:, 0], middle[:, 1])
            begins = 0
            if first is None:
                k = _first_through(case, sunk, ~inside, program.tool.radius_mm)
                if k is not None:
                    first, begins = (program.file, int(sunk.line[k])), k
            late = np.flatnonzero(inside[begins:]) + begins if first else np.zeros(0, np.intp)
            order.append(
                Message(
                    "programs_in_order.said",
                    file=program.file,
                    how=Message("programs_in_order.letters_holes" if inside.any() else "programs_in_order.edge_only"),
                )
            )
            if first and len(late):
                x, y = (float(value) for value in middle[late[0]])
                findings.append(
                    Finding(
                        message=Message(
                            "programs_in_order.cut_after_edge_cut_through",
                            what=feature_at(case.drawing, x, y),
                            place=at(x, y),
                            first=first[0],
                            line=first[1],
                        ),
                        file=program.file,
                        line=int(sunk.line[late[0]]),
                        place_mm=(x, y),
                        remedy=REMEDY,
                    )
                )
        began = (
            Message("programs_in_order.first_cut_through_in_line", file=first[0], line=first[1])
            if first
            else Message("programs_in_order.never_cut_through")
        )
        return verdict(
            self,
            findings,
            Message("programs_in_order.edge", order=tuple(order) or Message("checks.nothing_cut"), began=began),
        )


def _first_through(case: Case, sunk: TipPath, outside: np.ndarray, reach_mm: float) -> int | None:
    """The first piece at the board's bottom that runs beside the edge."""
    low = np.flatnonzero(outside & (sunk.low_z_mm <= CHECK_MM))
    if not len(low):
        return None
    middle = (sunk.start_mm[low, :2] + sunk.end_mm[low, :2]) / 2
    away = distance_to_segments(middle, segments_of(case.drawing.edge), 2 * reach_mm + 1.0)
    beside = low[away < 1.5 * reach_mm]
    return int(beside[0]) if len(beside) else None


def _numbers(case: Case) -> list[Finding]:
    """Names whose numbers do not rise in the order in which the programs are listed."""
    found = []
    before: tuple[int, str] | None = None
    for program in case.programs:
        match = _NUMBER.match(program.file)
        if match is None:
            continue
        number = int(match.group(1))
        if before is not None and number <= before[0] and (program.cutters == 1 or program.file != before[1]):
            found.append(
                Finding(
                    message=Message("programs_in_order.run_after", file=program.file, before=before[1]),
                    file=program.file,
                    remedy=REMEDY,
                )
            )
        before = (number, program.file)
    return found
