"""C107: nothing goes deeper than it may."""

from __future__ import annotations

import numpy as np
import shapely

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.checks.tip_path import TipPath, joined
from signgen.geometry.distance import FloatArray
from signgen.messages import Message, Mm
from signgen.messages.wording import Value
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

SLACK_MM = 0.002
"""For decimals of the program."""


class DepthLimit:
    code = "C107"
    name = "depth_limit"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
No tip may go further below the board than the break-through allowed for through cuts (and, of a drill, its point,
which leads its full width), for under the spoilboard is the machine's table; and no V-bit deeper than the greatest
depth drawn for letters, ornament and countersinks, nor outside an edge that it bevels more than 0.2 mm below the
bevel.

A failure often means that Z zero was taken at the wrong face: the programs say in their first lines where it lies.

What to do: set Z zero as the setup sheet says; allow more depth (--depth) if the letters should be deeper.

Least error seen: 0.002 mm through the board, the job's tolerance for V-bits."""

    def run(self, case: Case) -> CheckResult:
        top = case.stock.thickness_mm
        findings: list[Finding] = []
        lows: list[Message] = []
        for program, cuts, rapids in zip(case.programs, case.cuts, case.rapids, strict=True):
            pieces = joined([cuts, rapids])
            if not len(pieces):
                continue
            tool = program.tool
            k = int(pieces.low_z_mm.argmin())
            low = float(pieces.low_z_mm[k])
            lows.append(Message("depth_limit.in", low=Mm(low, 3), file=program.file))
            wrong = ""
            floor = -case.breakthrough_mm - tool.point_length_mm
            values: dict[str, Value] = {}
            if low < floor - SLACK_MM:
                wrong = "tip_goes_below_board_allowed"
                values = {"low": Mm(-low, 3), "floor": Mm(float(f"{-floor:.3g}"))}
            elif case.drawn and (allowed := _allowed_mm(case, pieces, tool)).min() < top:
                over = top - pieces.low_z_mm - allowed
                k = int(over.argmax())
                if over[k] > _floor_slack_mm(case, tool):
                    wrong = "goes_deep_drawing_allows"
                    values = {"tool": tool.called, "deep": Mm(top - pieces.low_z_mm[k], 3), "allowed": Mm(allowed[k])}
            if wrong:
                end = pieces.end_mm[k] if pieces.end_mm[k, 2] <= pieces.start_mm[k, 2] else pieces.start_mm[k]
                place = (float(end[0]), float(end[1]))
                message = Message(f"depth_limit.{wrong}", place=at(*place), **values)
                findings.append(
                    Finding(
                        message=message,
                        file=program.file,
                        line=int(pieces.line[k]),
                        place_mm=place,
                        remedy=Message("depth_limit.look_z_zero_board_s"),
                    )
                )
        return verdict(
            self,
            findings,
            Message(
                "depth_limit.lowest_point_allowed_down",
                lows=tuple(lows) or Message("list.none"),
                breakthrough=Mm(-case.breakthrough_mm),
            ),
        )


def _allowed_mm(case: Case, pieces: TipPath, tool: Tool) -> FloatArray:
    """(k,) how deep the cutter may go along each piece for what is drawn: outside an edge that is bevelled only as deep
    as that needs."""
    features = case.drawing.upward
    outside = max((each.deepest_mm(tool) for each in features if each.is_outside), default=0.0)
    within = max((each.deepest_mm(tool) for each in features if not each.is_outside), default=0.0)
    allowed = np.full(len(pieces), within)
    if outside:
        sign = case.drawing.edge.buffer(-CHECK_MM)
        shapely.prepare(sign)
        ends = [shapely.contains_xy(sign, end[:, 0], end[:, 1]) for end in (pieces.start_mm, pieces.end_mm)]
        allowed[~ends[0] & ~ends[1]] = outside
    return allowed


def _floor_slack_mm(case: Case, tool: Tool) -> float:
    """What the job's tolerance, which is measured across the board, makes of a depth."""
    return max(SLACK_MM, case.tolerance_mm, case.tolerance_mm / tool.slope if tool.kind == "v-bit" else 0.0)
