"""C118: no pass takes more than the cutter can bear."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.shop.feeds import stepdown_mm
from signgen.tolerances import CHECK_MM

SPARE = 1.1
"""What is allowed over the data's depth: the fall of a ramp that turns back on itself counts twice."""

FAR_TOO_MUCH = 2.0
"""Programs from elsewhere are made with data of their own, which differ by about that much (common practice); up to
this many times the depth is a warning in them."""


class PassDepth:
    code = "C118"
    name = "pass_depth"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
Along every feed move: how far the tip is below what earlier passes left at that very place. It may not be more than
the material's data allow this cutter at once (a share of its diameter for end mills and drills, a depth for V-bits).

A failure often means that a pass was left out, or that the cutter goes straight down too far; it deflects, burns or
breaks.

What to do: make the programs again; if the board is softer than its data say, mend the data (stepdown-ratio, v-step).

Least error seen: a tenth of the depth allowed, in stretches of half a millimetre."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        said: list[str] = []
        for program, cuts, bites in zip(case.programs, case.cuts, case.bites, strict=True):
            if not len(bites.piece):
                continue
            most = stepdown_mm(program.tool, case.material)
            said.append(f"{bites.depth_mm.max():.2f} of {most:.2f} mm in {program.file}")
            bad = bites.depth_mm > SPARE * most + CHECK_MM
            if not bad.any():
                continue
            k = int(np.argmax(bad))
            worst = float(bites.depth_mm.max())
            piece = bites.piece[k]
            place = (float(cuts.end_mm[piece, 0]), float(cuts.end_mm[piece, 1]))
            findings.append(
                Finding(
                    message=f"{program.tool.name} takes up to {worst:.2f} mm at once, first at {at(*place)}; "
                    f"{most:.2f} mm is the most in {case.material.label}.",
                    file=program.file,
                    line=int(cuts.line[piece]),
                    place_mm=place,
                    remedy="Cut in more passes.",
                    warns=not case.drawn and worst <= FAR_TOO_MUCH * most,
                )
            )
        return verdict(self, findings, f"deepest bite {', '.join(said) or 'none'}")
