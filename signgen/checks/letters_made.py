"""C108: every letter and ornament is cut as deep as drawn."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import across_mm, at, nearest_line, top_mm
from signgen.tolerances import CHECK_MM

REMEDY = "Make the programs again; if they are as made, report it: the engraving does not reach this place."

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
            ridge = np.where(least >= drawn.feature.deepest_floor_mm, case.ridge_mm + RIDGE_SLACK_MM, 0.0)
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
                        message=f"{drawn.feature.name}: {short[k]:.3f} mm of wood stands above the drawn surface at "
                        f"{at(x, y)}, and {area:.2f} mm2 in all are too shallow.",
                        file=file,
                        line=line,
                        place_mm=(x, y),
                        remedy=REMEDY,
                    )
                )
        if not compared:
            return verdict(self, [], "no letters or ornament drawn")
        x, y = ideal.grid.centres_mm(np.array([worst_cell]))[0]
        return verdict(
            self,
            findings,
            f"worst uncut {max(0.0, worst):.3f} mm at {at(x, y)}, {compared:,} cells compared, "
            f"cell {ideal.grid.cell_mm:.2f} mm, {features} letters and ornaments",
        )
