"""C117: the cutter is long enough for its cuts."""

from __future__ import annotations

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at

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
        depths: list[str] = []
        for program, cuts in zip(case.programs, case.cuts, strict=True):
            if not len(cuts):
                continue
            k, (x, y, low) = cuts.lowest()
            depth = max(0.0, top - low)
            tool = program.tool
            depths.append(f"{depth:.2f} of {tool.reach_mm:g} mm in {program.file}")
            what = ""
            if depth > tool.reach_mm + SLACK_MM:
                part = "its cone" if tool.kind == "v-bit" else "its edges"
                what = f"{part} reach{'es' if tool.kind == 'v-bit' else ''} {tool.reach_mm:g} mm"
            elif depth > tool.stickout_mm - NUT_CLEARANCE_MM + SLACK_MM:
                what = f"it stands {tool.stickout_mm:g} mm out of the collet and the nut needs {NUT_CLEARANCE_MM:g} mm"
            if what:
                findings.append(
                    Finding(
                        message=f"{tool.name} goes {depth:.2f} mm deep at {at(x, y)}, but {what}.",
                        file=program.file,
                        line=int(cuts.line[k]),
                        place_mm=(x, y),
                        remedy="Take a longer cutter or a thinner board.",
                    )
                )
        return verdict(self, findings, f"deepest: {', '.join(depths) or 'nothing is cut'}")
