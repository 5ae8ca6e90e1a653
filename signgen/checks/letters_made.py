"""C108: every letter and ornament is cut as deep as drawn."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, groove_limits_mm, nearest_line
from signgen.features.groove import Groove

REMEDY = "Make the programs again; if they are as made, report it: the engraving does not reach this place."


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
        cells = ideal.groove_cell
        if not len(cells):
            return verdict(self, [], "no letters or ornament drawn")
        short = ideal.shallowest_mm - (top - case.boards[-1].z_mm.ravel()[cells].astype(np.float64))
        floor = np.array([groove.max_depth_mm for groove in case.drawing.of(Groove)])[ideal.groove_of]
        ridge = np.where(ideal.shallowest_mm >= floor, case.ridge_mm, 0.0)
        bad = short > groove_limits_mm(case)[ideal.groove_of] + ridge
        findings = []
        for number in np.unique(ideal.groove_of[bad]):
            own = np.flatnonzero(bad & (ideal.groove_of == number))
            k = own[int(short[own].argmax())]
            x, y = (float(value) for value in ideal.grid.centres_mm(cells[k : k + 1])[0])
            file, line = nearest_line(case, x, y)
            area = len(own) * ideal.grid.cell_mm**2
            findings.append(
                Finding(
                    message=f"{case.drawing.of(Groove)[number].name}: {short[k]:.3f} mm of wood stands above the drawn "
                    f"surface at {at(x, y)}, and {area:.2f} mm2 in all are too shallow.",
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy=REMEDY,
                )
            )
        k = int(short.argmax())
        x, y = ideal.grid.centres_mm(cells[k : k + 1])[0]
        return verdict(
            self,
            findings,
            f"worst uncut {max(0.0, float(short[k])):.3f} mm at {at(x, y)}, {len(cells):,} cells compared, "
            f"cell {ideal.grid.cell_mm:.2f} mm, {len(case.drawing.of(Groove))} letters and ornaments",
        )
