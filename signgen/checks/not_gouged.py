"""C109: nothing is removed that the drawing keeps."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.ideal import BODY, WASTE
from signgen.checks.places import across_mm, at, beside_walls, deepest_line, feature_at, top_mm, worst_apart
from signgen.messages import Message, Mm, Mm2
from signgen.tolerances import CHECK_MM

REMEDY = Message("not_gouged.make_programs_again_if_they")


class NotGouged:
    code = "C109"
    name = "not_gouged"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The virtual board, after all programs, is compared with the drawing everywhere: the face may nowhere be lower than the
board's top, a letter nowhere deeper than drawn, a hole nowhere wider, by more than 0.05 mm. Beyond the sign's edge
the board may only be cut where the cutter's way round the edge lies (1.25 diameters, or 0.6 mm beyond one, and what
a last pass leaves), for screws stand further out.

A failure names the place, what is drawn nearest to it, and the line that cuts there.

What to do: make the programs again; undo the edit if the file was edited.

Least error seen: 0.05 mm deep or wide, a patch of one cell (0.1 to 0.25 mm)."""

    def run(self, case: Case) -> CheckResult:
        ideal, top = case.ideal, case.stock.thickness_mm
        heights = case.boards[-1].z_mm.ravel()
        cut = np.flatnonzero(heights < np.float32(top - CHECK_MM))
        face = cut[(ideal.zone[cut] == BODY) | (ideal.zone[cut] == WASTE)]
        gone = top - heights[face].astype(np.float64)
        spared = beside_walls(case, face, gone)
        found, deep, worst = [face[~spared]], [gone[~spared]], float(gone[~spared].max(initial=0.0))
        for number, drawn in enumerate(ideal.drawn):
            own = ideal.own(number)
            inside = (
                top_mm(case, drawn.cell[own])
                - heights[drawn.cell[own]].astype(np.float64)
                - np.minimum(drawn.most_mm[own], top)
            )
            over = inside > drawn.feature.limit_mm(CHECK_MM, across_mm(case))
            # Through cuts go into the spoilboard, as deep as C107 allows.
            over &= drawn.most_mm[own] < top
            worst = max(worst, float(inside[drawn.most_mm[own] < top].max(initial=0.0)))
            found.append(drawn.cell[own][over])
            deep.append(inside[over])
        cells, depth = np.concatenate(found), np.concatenate(deep)
        places = ideal.grid.centres_mm(cells)
        findings = []
        for k in worst_apart(depth, places):
            x, y = float(places[k, 0]), float(places[k, 1])
            file, line = deepest_line(case, x, y)
            findings.append(
                Finding(
                    message=Message(
                        "not_gouged.too_much_removed",
                        depth=Mm(depth[k], 3),
                        place=at(x, y),
                        what=feature_at(case.drawing, x, y),
                    ),
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy=REMEDY,
                )
            )
        area = len(cells) * ideal.grid.cell_mm**2
        return verdict(
            self,
            findings,
            Message(
                "not_gouged.worst_gouge_over_mm_cells",
                worst=Mm(worst, 3),
                area=Mm2(area, 2),
                check=Mm(CHECK_MM),
                size=heights.size,
                cell=Mm(ideal.grid.cell_mm, 2),
            ),
        )
