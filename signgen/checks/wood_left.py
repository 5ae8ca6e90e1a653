"""C115: enough wood is left under the engraving."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, deepest_line

LEAST_RATIO = 0.25
LEAST_MM = 2.0
"""Wood under a groove, as a share of the board and in any case: less warps, shows through or breaks (common
practice)."""


class WoodLeft:
    code = "C115"
    name = "wood_left"
    severity: Severity = "warning"
    needs_drawing = True
    explanation = """\
How much of the board is left under the deepest place of each letter, on the virtual board. Less than a quarter of the
thickness, or less than 2 mm, draws a warning (common practice): the sign may warp, crack along the line or show it
from behind. Through cuts (holes, the edge) do not count.

What to do: limit the depth (--depth), take a wider V-bit or a thicker board.

Least difference seen: 0.01 mm, in patches of one cell."""

    def run(self, case: Case) -> CheckResult:
        ideal, thickness = case.ideal, case.stock.thickness_mm
        if not len(ideal.groove_cell):
            return verdict(self, [], "no letters or ornament drawn")
        least = max(LEAST_MM, LEAST_RATIO * thickness)
        left = case.boards[-1].z_mm.ravel()[ideal.groove_cell].astype(np.float64)
        findings = []
        for number in np.unique(ideal.groove_of[left < least - 0.01]):
            own = np.flatnonzero(ideal.groove_of == number)
            k = own[int(left[own].argmin())]
            x, y = (float(value) for value in ideal.grid.centres_mm(ideal.groove_cell[k : k + 1])[0])
            file, line = deepest_line(case, x, y)
            findings.append(
                Finding(
                    message=f"{case.drawing.grooves[number].name}: only {left[k]:.2f} mm of the {thickness:g} mm board "
                    f"is left at {at(x, y)}; {least:.1f} mm is advised.",
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy="Limit the depth (--depth), take a wider V-bit or a thicker board.",
                )
            )
        return verdict(self, findings, f"least wood under a groove {left.min():.2f} mm, {least:.1f} mm advised")
