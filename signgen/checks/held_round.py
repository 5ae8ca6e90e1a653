"""C132: what holds a piece does so from opposite sides."""

from __future__ import annotations

import numpy as np
from shapely.geometry import MultiPoint, Polygon

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.features.edge import Edge
from signgen.features.tab import Tab
from signgen.messages import Message, Mm

OFF_RATIO = 0.25
"""How far the middle of a piece may lie outside the tabs' own outline, over the piece's shorter side: two tabs opposite
each other are seldom exactly so."""


class HeldRound:
    code = "C132"
    name = "held_round"
    severity: Severity = "warning"
    needs_drawing = True
    explanation = """\
The tabs of each piece, which C112 has seen standing, must hold it on opposite sides: the middle of the piece lies
within the outline that they span, or near the line between two of them. Otherwise it hangs like a flag, and the cutter
shakes and lifts its free side.

What to do: ask for more tabs (--tabs), or for tape under the sign as well.

Least error seen: a quarter of the piece's shorter side."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        looked_at = 0
        for edge in case.drawing.of(Edge):
            outline = edge.area
            tabs = [(tab.x_mm, tab.y_mm) for tab in case.drawing.of(Tab) if tab.piece == edge.piece]
            if not tabs:
                continue
            looked_at += 1
            away = float(MultiPoint(tabs).convex_hull.distance(outline.centroid))
            if away > OFF_RATIO * _shorter_side(outline):
                place = (float(outline.centroid.x), float(outline.centroid.y))
                findings.append(
                    Finding(
                        message=Message(
                            "held_round.tab_piece_about_on_one",
                            count=len(tabs),
                            place=at(*place),
                            away=Mm(away, 0),
                        ),
                        place_mm=place,
                        remedy=Message("held_round.ask_more_tabs_stick_piece"),
                    )
                )
        said = (
            Message("held_round.pieces_held_from_opposite_sides", held=looked_at - len(findings), count=looked_at)
            if looked_at
            else Message("checks.no_tabs_drawn")
        )
        return verdict(self, findings, said)


def _shorter_side(outline: Polygon) -> float:
    box = np.array(outline.bounds)
    return float((box[2:] - box[:2]).min())
