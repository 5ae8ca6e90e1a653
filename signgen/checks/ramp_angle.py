"""C114: cutters that cannot cut straight down are led in gently."""

from __future__ import annotations

import numpy as np

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.feeds_sane import STEEP_DEG
from signgen.checks.places import at
from signgen.messages import Message, Num

SLACK_DEG = 0.5
"""For decimals of short ramps."""

GRAZE_MM = 0.05
"""A steeper way down that takes no more than this is none."""


POINTED = ("v-bit", "drill")


class RampAngle:
    code = "C114"
    name = "ramp_angle"
    severity: Severity = "error"
    needs_drawing = False
    explanation = """\
A cutter whose edges do not reach its middle (can-plunge = false in its data) can only go down along a ramp or a
helix: every descending feed move that takes wood must be no steeper than the material's entry angle. An end mill that
can plunge may also go straight down, but not along a way in between, where it is pushed aside while it hangs on its
bottom edges. V-bits and drills are not looked at: they go down by their shape.

A failure means that the cutter's blunt middle is pressed on the wood until something gives, or that a round of a
helix is missing.

What to do: make the programs again, with a cutter that can plunge if the ramp has no room.

Least error seen: half a degree, 0.05 mm of wood."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        steepest = 0.0
        looked_at = 0
        limit = case.material.entry_deg
        for program, cuts, engagement in zip(case.programs, case.cuts, case.engagement, strict=True):
            tool = program.tool
            if tool.kind in POINTED or not len(engagement.piece):
                continue
            looked_at += 1
            step = cuts.end_mm - cuts.start_mm
            slope = np.degrees(np.arctan2(-step[:, 2], np.hypot(step[:, 0], step[:, 1])))[engagement.piece]
            slope = np.where(engagement.depth_mm > GRAZE_MM, slope, 0.0)
            if tool.can_plunge:
                slope = np.where(slope > STEEP_DEG, 0.0, slope)
            steepest = max(steepest, float(slope.max()))
            bad = slope > limit + SLACK_DEG
            if bad.any():
                piece = engagement.piece[int(np.argmax(bad))]
                place = (float(cuts.end_mm[piece, 0]), float(cuts.end_mm[piece, 1]))
                findings.append(
                    Finding(
                        message=Message(
                            "ramp_angle.too_steep" if tool.can_plunge else "ramp_angle.cannot_plunge",
                            tool=tool.name,
                            slope=Num(slope[bad][0], 0),
                            place=at(*place),
                            limit=Num(limit),
                            material=case.material.label,
                        ),
                        file=program.file,
                        line=int(cuts.line[piece]),
                        place_mm=place,
                        remedy=Message("ramp_angle.lead_in_along_ramp_take"),
                        warns=not case.drawn and tool.can_plunge,
                    )
                )
        if not looked_at:
            return verdict(self, [], Message("ramp_angle.no_end_mill_takes_wood"))
        return verdict(
            self,
            findings,
            Message("ramp_angle.steepest_way_into_wood_degrees", steepest=Num(steepest, 1), limit=Num(limit)),
        )
