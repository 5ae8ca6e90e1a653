"""C117: the cutter is long enough for its cuts."""

from __future__ import annotations

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.messages import Message, Mm, Num, Sentence

NUT_CLEARANCE_MM = 1.0
"""Air kept between the collet nut and the board's top (common practice)."""

SLACK_MM = 0.02


class CutterReach:
    code = "C117"
    name = "cutter_reach"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
How deep each cutter goes below the board's top, beside what it has: its edges must be as long as the cut is deep, or
its shank rubs and burns against the wall; a V-bit may sink in no further than its cone is high; and 1 mm of air must
stay between the collet nut and the board.

A failure means a burnt wall, a broken cutter or a spindle that presses on the board.

What to do: take a longer cutter, or a thinner board.

Least error seen: 0.02 mm."""

    def run(self, case: Case) -> CheckResult:
        top = case.stock.thickness_mm
        findings: list[Finding] = []
        depths: list[Message] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            if not len(cuts):
                continue
            k, (x, y, low) = cuts.lowest()
            depth = max(0.0, top - low)
            tool = program.tool
            depths.append(Message("cutter_reach.in", depth=Num(depth, 2), reach=Mm(tool.reach_mm), file=program.file))
            what: Sentence = ""
            if depth > tool.reach_mm + SLACK_MM:
                what = Message(
                    "cutter_reach.cone_reaches" if tool.kind == "v-bit" else "cutter_reach.edges_reach",
                    reach=Mm(tool.reach_mm),
                )
            elif depth > tool.stickout_mm - NUT_CLEARANCE_MM + SLACK_MM:
                what = Message(
                    "cutter_reach.stands_out_collet_nut_needs",
                    stick_out=Mm(tool.stickout_mm),
                    nut=Mm(NUT_CLEARANCE_MM),
                )
            if what:
                findings.append(
                    Finding(
                        message=Message(
                            "cutter_reach.goes_deep_but", tool=tool.name, depth=Mm(depth, 2), place=at(x, y), what=what
                        ),
                        file=program.file,
                        line=int(cuts.line[k]),
                        place_mm=(x, y),
                        remedy=Message("cutter_reach.take_longer_cutter_thinner_board"),
                    )
                )
        return verdict(
            self, findings, Message("cutter_reach.deepest", depths=tuple(depths) or Message("checks.nothing_cut"))
        )
