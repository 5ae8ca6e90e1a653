"""C108: every letter and ornament is cut as deep as drawn."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import across_mm, at, nearest_line, top_mm
from signgen.messages import Message, Mm, Mm2
from signgen.tolerances import CHECK_MM

REMEDY = Message("letters_made.make_programs_again_if_they")

RIDGE_SLACK_MM = 0.01
"""Over the ridges that were asked for: decimals of the lines, and of the floor's depth."""


class LettersMade:
    code = "C108"
    name = "letters_made"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The virtual board, after all programs, is compared with the drawing at every cell inside a letter or ornament: nowhere
may more than 0.05 mm of wood stand above the drawn surface (with very pointed bits, the job's tolerance on their
steep walls). With a flat-tipped bit the ridge between two walls is blunt by half the tip; that much is allowed, and
on flat floors the ridges that were asked for (--ridge).

A failure means that a part of a letter is missing, too thin or too shallow.

What to do: make the programs again. If the letter is narrower than the bit's tip, choose a smaller tip or larger
letters.

Least error seen: 0.05 mm in depth, a patch of one cell (0.1 to 0.25 mm); C116 sees 0.02 mm at the outlines."""

    def run(self, case: Case) -> CheckResult:
        ideal, top = case.ideal, case.stock.thickness_mm
        heights = case.boards[-1].z_mm.ravel()
        findings: list[Finding] = []
        worst, worst_cell, compared, features = -np.inf, 0, 0, 0
        for number, drawn in enumerate(ideal.drawn):
            # What goes right through, and what a round cutter leaves in corners, is for the exact checks.
            own = np.flatnonzero(ideal.own(number) & (drawn.least_mm < top))
            if not len(own):
                continue
            cells, least = drawn.cell[own], drawn.least_mm[own]
            short = least - (top_mm(case, cells) - heights[cells].astype(np.float64))
            # Not both: a floor that is too high by what is allowed may not carry ridges as well.
            ridge = np.where(least >= drawn.feature.deepest_floor_mm, case.cusp_height_mm + RIDGE_SLACK_MM, 0.0)
            bad = np.flatnonzero(short > np.maximum(drawn.feature.limit_mm(CHECK_MM, across_mm(case)), ridge))
            k = int(short.argmax())
            compared, features = compared + len(own), features + 1
            if short[k] > worst:
                worst, worst_cell = float(short[k]), int(cells[k])
            if len(bad):
                k = int(bad[short[bad].argmax()])
                x, y = (float(value) for value in ideal.grid.centres_mm(cells[k : k + 1])[0])
                file, line = nearest_line(case, x, y)
                area = len(bad) * ideal.grid.cell_mm**2
                findings.append(
                    Finding(
                        message=Message(
                            "letters_made.wood_stands_above_drawn_surface",
                            feature=drawn.feature.called,
                            short=Mm(short[k], 3),
                            place=at(x, y),
                            area=Mm2(area, 2),
                        ),
                        file=file,
                        line=line,
                        place_mm=(x, y),
                        remedy=REMEDY,
                    )
                )
        if not compared:
            return verdict(self, [], Message("checks.no_letters_ornament_drawn"))
        x, y = ideal.grid.centres_mm(np.array([worst_cell]))[0]
        return verdict(
            self,
            findings,
            Message(
                "letters_made.worst_uncut_cells_compared_cell",
                worst=Mm(max(0.0, worst), 3),
                place=at(x, y),
                compared=compared,
                cell=Mm(ideal.grid.cell_mm, 2),
                features=features,
            ),
        )
