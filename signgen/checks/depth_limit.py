"""C107: nothing goes deeper than it may."""

from __future__ import annotations

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.checks.way import joined
from signgen.shop.tools import Tool

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
depth drawn for letters, ornament and countersinks.

A failure often means that Z zero was taken at the wrong face: the programs say in their first lines where it lies.

What to do: set Z zero as the setup sheet says; allow more depth (--depth) if the letters should be deeper.

Least error seen: 0.002 mm through the board, the job's tolerance for V-bits."""

    def run(self, case: Case) -> CheckResult:
        top = case.stock.thickness_mm
        depths = [groove.max_depth_mm for groove in case.drawing.grooves]
        depths += [recess.depth_mm for recess in case.drawing.recesses if recess.sharp]
        deepest = max([*depths, *(hole.sink_depth_mm for hole in case.drawing.holes)], default=0.0)
        findings: list[Finding] = []
        lows: list[str] = []
        for program, cuts, rapids in zip(case.programs, case.cuts, case.rapids, strict=True):
            pieces = joined([cuts, rapids])
            if not len(pieces):
                continue
            tool = program.tool
            k = int(pieces.low_z_mm.argmin())
            low = float(pieces.low_z_mm[k])
            lows.append(f"{low:.3f} mm in {program.file}")
            end = pieces.end_mm[k] if pieces.end_mm[k, 2] <= pieces.start_mm[k, 2] else pieces.start_mm[k]
            place = (float(end[0]), float(end[1]))
            message = ""
            floor = -case.breakthrough_mm - tool.point_length_mm
            if low < floor - SLACK_MM:
                message = f"The tip goes to {-low:.3f} mm below the board at {at(*place)}; {-floor:.3g} mm is allowed."
            elif case.drawn and tool.kind == "v-bit" and top - low > deepest + _floor_slack_mm(case, tool):
                message = f"The V-bit goes {top - low:.3f} mm deep at {at(*place)}; the drawing allows {deepest:g} mm."
            if message:
                findings.append(
                    Finding(
                        message=message,
                        file=program.file,
                        line=int(pieces.line[k]),
                        place_mm=place,
                        remedy="Look at Z zero and the board's thickness; if both are right, make the programs again.",
                    )
                )
        return verdict(
            self, findings, f"lowest point: {', '.join(lows) or 'none'}; allowed down to {-case.breakthrough_mm:g} mm"
        )


def _floor_slack_mm(case: Case, tool: Tool) -> float:
    """What the job's tolerance, which is measured across the board, makes of a depth."""
    return max(SLACK_MM, case.tolerance_mm, case.tolerance_mm / tool.slope)
