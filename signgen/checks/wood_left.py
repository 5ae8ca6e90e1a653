"""C115: enough wood is left under the engraving."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, deepest_line
from signgen.messages import Message, Mm

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
How much of the board is left under the deepest place of each letter and floor, on the virtual board. Less than a
quarter of the thickness, or less than 2 mm, draws a warning (common practice): the sign may warp, crack along the line
or show it from behind. Through cuts (holes, the edge, letters that are cut through) do not count.

What to do: limit the depth (--depth), take a wider V-bit or a thicker board.

Least difference seen: 0.01 mm, in patches of one cell."""

    def run(self, case: Case) -> CheckResult:
        ideal, thickness = case.ideal, case.stock.thickness_mm
        places = [
            (drawn.feature.called, drawn.cell[ideal.own(number)])
            for number, drawn in enumerate(ideal.drawn)
            if not (drawn.most_mm >= thickness).any()
        ]
        places = [(name, cells) for name, cells in places if len(cells)]
        if not places:
            return verdict(self, [], Message("wood_left.no_letters_ornament_drawn_that"))
        least = max(LEAST_MM, LEAST_RATIO * thickness)
        findings, all_left = [], []
        for name, cells in places:
            left = case.boards[-1].z_mm.ravel()[cells].astype(np.float64)
            all_left.append(float(left.min()))
            if left.min() >= least - 0.01:
                continue
            k = int(left.argmin())
            x, y = (float(value) for value in ideal.grid.centres_mm(cells[k : k + 1])[0])
            file, line = deepest_line(case, x, y)
            findings.append(
                Finding(
                    message=Message(
                        "wood_left.only_board_left_advised",
                        name=name,
                        left=Mm(left[k], 2),
                        thickness=Mm(thickness),
                        place=at(x, y),
                        least=Mm(least, 1),
                    ),
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy=Message("wood_left.limit_depth_depth_take_wider"),
                )
            )
        return verdict(
            self,
            findings,
            Message("wood_left.least_wood_under_letter_advised", all_left=Mm(min(all_left), 2), least=Mm(least, 1)),
        )
