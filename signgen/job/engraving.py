"""What is engraved, in figures: how deep, how narrow, how wide, what an error in thickness does to it, and what to
measure before the cut."""

from __future__ import annotations

from typing import Any

from signgen.job.facts import JobFacts
from signgen.numbers import rounded
from signgen.operations.sense import Sense, Spot

MM, MINUTES = 4, 1
SLIGHT_MM = 0.1
"""The error by which the sheet and the report show what an error does: what a calliper reads with care."""

SMOOTHED_MM = 0.03

TRIAL_MM = 1.0
"""Depth of the groove in scrap that proves the bit: its width then reads the angle off, 2 mm wide at 90 degrees."""


def engraving_report(facts: JobFacts) -> dict[str, Any] | None:
    """For the report; None when the sign has nothing engraved."""
    sense = facts.sense
    if sense is None:
        return None
    # With Z zero on the board's top the depth does not hang on the thickness.
    deeper = SLIGHT_MM if facts.zero.z_mm == 0 else 0.0
    return {
        "deepest": _spot(sense.deepest),
        "narrowest_stroke": _spot(sense.narrowest),
        "widest_stroke": _spot(sense.widest),
        "wood_left_mm": rounded(sense.wood_left_mm, MM),
        "if_thicker": {
            "by_mm": SLIGHT_MM,
            "deeper_mm": rounded(deeper, MM),
            "wider_mm": rounded(deeper * sense.wider_ratio, MM),
        },
        "floors": _floors(facts),
        "measure_first": {
            "thickness_at": ["front left", "front right", "back left", "back right"],
            "trial_groove": {
                "depth_mm": TRIAL_MM,
                "width_mm": rounded(trial_width_mm(facts, sense), MM),
                "in": "scrap of the same board",
            },
        },
    }


def _floors(facts: JobFacts) -> dict[str, Any] | None:
    """How long clearing the flat floors takes, and what another end mill would save (less than 0: cost)."""
    compared = facts.compared
    if compared is None:
        return None
    return {
        "cleared_by": (compared.tool or facts.spec.v_bit).name,
        "minutes": rounded(compared.minutes, MINUTES),
        "other_cutters": [
            {
                "name": tool.name,
                "diameter_mm": rounded(tool.diameter_mm, MM),
                "minutes": rounded(minutes, MINUTES),
                "saves_minutes": rounded(compared.minutes - minutes, MINUTES),
            }
            for tool, minutes in compared.others
        ],
    }


def deepest_groove_mm(facts: JobFacts, sense: Sense) -> float:
    """As the program has it, which every place on paper states: what was planned is smoothed by a hundredth."""
    top = facts.drawing.thickness_mm - facts.zero.z_mm
    written = [top - step.lowest_z_mm for step in facts.set_up.steps if step.cutter.kind == "v-bit"]
    return next((deep for deep in written if abs(deep - sense.deepest.value_mm) < SMOOTHED_MM), sense.deepest.value_mm)


def trial_width_mm(facts: JobFacts, sense: Sense) -> float:
    """How wide a groove of TRIAL_MM is when the bit is what it says: 2 d tan(angle / 2) + tip. Source: plane
    geometry of cones."""
    return TRIAL_MM * sense.wider_ratio + facts.spec.v_bit.tip_mm


def _spot(spot: Spot) -> dict[str, Any]:
    return {
        "mm": rounded(spot.value_mm, MM),
        "at_mm": [rounded(spot.x_mm, MM), rounded(spot.y_mm, MM)],
        "feature": spot.groove.name,
        "letter": spot.groove.text or None,
    }
