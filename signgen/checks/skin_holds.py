"""C131: where a skin holds the sign, it is as thick as asked, all round."""

from __future__ import annotations

import numpy as np
import shapely

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.messages import Message, Mm
from signgen.tolerances import CHECK_MM


class SkinHolds:
    code = "C131"
    name = "skin_holds"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
A sign without tabs may be held by a skin: the outside cut stops a little above the board's bottom, all round. From the
motions outside the sign: none may go lower than the skin is thick. That the edge is cut down to the skin everywhere is
C111's matter.

A failure means that the skin is thinner than asked or cut through, and the sign may come loose under the cutter.

What to do: make the programs again; if the board is thinner than measured, ask for a thicker skin (--onion-skin).

Least error seen: 0.05 mm."""

    def run(self, case: Case) -> CheckResult:
        skin = case.drawing.skin_mm
        if not skin:
            return verdict(self, [], Message("skin_holds.no_skin_asked"))
        findings: list[Finding] = []
        lowest = np.inf
        edge = case.drawing.edge
        shapely.prepare(edge)
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            outside = ~shapely.contains_xy(edge, cuts.end_mm[:, :2])
            low = np.where(outside, cuts.low_z_mm, np.inf)
            if not len(low):
                continue
            lowest = min(lowest, float(low.min()))
            k = int(low.argmin())
            if low[k] < skin - CHECK_MM:
                end = cuts.end_mm[k] if cuts.end_mm[k, 2] <= cuts.start_mm[k, 2] else cuts.start_mm[k]
                place = (float(end[0]), float(end[1]))
                findings.append(
                    Finding(
                        message=Message(
                            "skin_holds.skin_thick_asked",
                            thickness=Mm(max(low[k], 0.0), 2),
                            place=at(*place),
                            skin=Mm(skin),
                        ),
                        file=program.file,
                        line=int(cuts.line[k]),
                        place_mm=place,
                        remedy=Message("checks.make_programs_again"),
                    )
                )
        return verdict(self, findings, Message("skin_holds.thinnest_asked", lowest=Mm(lowest, 2), skin=Mm(skin)))
