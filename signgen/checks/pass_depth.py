"""C118: no pass takes more than the cutter can bear."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.engagement import APART_MM, LAG_SQUARES, TIP_SQUARE_MM, Engagement
from signgen.checks.places import at, heights_at
from signgen.checks.tip_path import TipPath
from signgen.geometry.distance import FloatArray, IntArray
from signgen.messages import Message, Mm, Num
from signgen.shop.feeds import stepdown_mm
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

SPARE = 1.1
"""What is allowed over the data's depth: the fall of a ramp that turns back on itself counts twice."""

FAR_TOO_MUCH = 2.0
"""Programs from elsewhere are made with data of their own, which differ by about that much (common practice); up to
this many times the depth is a warning in them."""


IN_ONE_GO_RATIO = 3.0
"""Diameters that a drill may go in one go in programs from elsewhere: holes of two to three diameters are usually
drilled without pecks (common practice)."""


MOST_DOUBTS = 2000
"""Places of a V-bit at which its flank is looked at as well; where there are more, a pass is missing."""


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
        said: list[Message] = []
        for program, cuts, engagement in zip(case.programs, case.cuts, case.engagement, strict=True):
            if not len(engagement.piece):
                continue
            most = stepdown_mm(program.tool, case.material)
            if program.tool.kind == "drill" and not case.drawn:
                most = max(most, IN_ONE_GO_RATIO * program.tool.diameter_mm)
            depth = engagement.depth_mm.copy()
            if program.tool.kind == "v-bit":
                doubtful = np.flatnonzero(depth > SPARE * most + CHECK_MM)[:MOST_DOUBTS]
                depth[doubtful] = _under_flanks(cuts, program.tool, engagement, doubtful, case.stock.thickness_mm)
            said.append(Message("pass_depth.in", depth=Num(depth.max(), 2), most=Mm(most, 2), file=program.file))
            bad = depth > SPARE * most + CHECK_MM
            if not bad.any():
                continue
            k = int(np.argmax(bad))
            worst = float(depth.max())
            piece = engagement.piece[k]
            place = (float(cuts.end_mm[piece, 0]), float(cuts.end_mm[piece, 1]))
            findings.append(
                Finding(
                    message=Message(
                        "pass_depth.takes_up_once_first_most",
                        tool=program.tool.name,
                        worst=Mm(worst, 2),
                        place=at(*place),
                        most=Mm(most, 2),
                        material=case.material.label,
                    ),
                    file=program.file,
                    line=int(cuts.line[piece]),
                    place_mm=place,
                    remedy=Message("pass_depth.cut_in_more_passes"),
                    warns=not case.drawn and worst <= FAR_TOO_MUCH * most,
                )
            )
        return verdict(self, findings, Message("pass_depth.deepest_bite", said=tuple(said) or Message("list.none")))


def _under_flanks(cuts: TipPath, tool: Tool, engagement: Engagement, chosen: IntArray, top_mm: float) -> FloatArray:
    """(len(chosen),) the depths of some of a V-bit, less what its own flank had cut there before: in rings of a
    countersink the tip comes down where the wider ring's flank has been. What was cut so little before that the bit
    was still in the same bite does not count: its flank reaches as far as its tip is deep."""
    step = cuts.end_mm - cuts.start_mm
    length = np.hypot(step[:, 0], step[:, 1])
    lifted = (length == 0) & (step[:, 2] > 0)
    lifted[1:] |= cuts.motion[1:] > cuts.motion[:-1] + 1
    gone = np.cumsum(length) + APART_MM * np.cumsum(lifted)
    depths = engagement.depth_mm[chosen].copy()
    for n, k in enumerate(chosen.tolist()):
        piece, z, place = engagement.piece[k], engagement.z_mm[k], engagement.xy_mm[k]
        reach = (top_mm - z) * tool.slope + tool.tip_mm / 2
        before = int(np.searchsorted(gone, gone[piece] - length[piece] - reach - LAG_SQUARES * TIP_SQUARE_MM, "right"))
        low = np.minimum(cuts.start_mm[:before, :2], cuts.end_mm[:before, :2]) - tool.radius_mm
        high = np.maximum(cuts.start_mm[:before, :2], cuts.end_mm[:before, :2]) + tool.radius_mm
        near = cuts.where(np.flatnonzero(np.all((low <= place) & (place <= high), axis=1)))
        if len(near):
            depths[n] = min(depths[n], max(0.0, float(heights_at(near, tool, place).min()) - z))
    return depths
