"""Good programs pass, however they are written; a check that cries wolf is worse than none."""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from typing import Any

import pytest
from msgspec.structs import replace

from signgen.checks import judge
from signgen.features.groove import Groove
from signgen.features.tab import Tab
from signgen.pipeline import prove
from signgen.shop.stock import WorkZero
from tests.asking import spec_of
from tests.checks.plate import CUT_OUT, DRAWING, ENGRAVE, STOCK, V_BIT, Plate
from tests.checks.random_signs import outcome_of

GOOD = Plate()

BATCHES, SIGNS_IN_BATCH = 20, 25
MOST_REFUSED = 6
"""Of the signs beside those: a fifth. Measured: 4 % of all."""
SEEDS_APART = 1000


def rewritten(text: str, change: Callable[[str, float], str]) -> str:
    """The text with every number of X, Y, Z, I, J and F changed; comments and other words stay."""
    lines = [
        line
        if line.startswith("(")
        else re.sub(r"([XYZIJF])(-?[\d.]+)", lambda match: change(match.group(1), float(match.group(2))), line)
        for line in text.splitlines()
    ]
    return "\n".join(lines) + "\n"


def both(plate: Plate, change: Callable[[str, float], str], **other: Any) -> Plate:
    return replace(plate, engrave=rewritten(ENGRAVE, change), cut_out=rewritten(CUT_OUT, change), **other)


def moved(**by: float) -> Callable[[str, float], str]:
    return lambda letter, value: f"{letter}{value + by.get(letter, 0):.4f}"


def inches(plate: Plate) -> Plate:
    spoken = both(plate, lambda letter, value: f"{letter}{value / 25.4:.5f}")
    return replace(spoken, engrave=spoken.engrave.replace("G21", "G20"), cut_out=spoken.cut_out.replace("G21", "G20"))


def engraved(angle_deg: float, tip_mm: float, depth_mm: float, reach: float) -> Plate:
    """The square groove by another bit: tip `depth_mm` deep in its middle, starting `reach` inside each corner."""
    (groove,) = DRAWING.of(Groove)
    z = f"Z{9 - depth_mm:.4f}"
    text = ENGRAVE.replace("Z6.5", z)
    for corner, inside in (
        ("X10 Y15", f"X{10 + reach:g} Y{15 + reach:g}"),
        ("X15 Y20", f"X{15 - reach:g} Y{20 - reach:g}"),
        ("X15 Y15", f"X{15 - reach:g} Y{15 + reach:g}"),
        ("X10 Y20", f"X{10 + reach:g} Y{20 - reach:g}"),
    ):
        text = text.replace(corner, inside)
    bit = replace(V_BIT, angle_deg=angle_deg, tip_mm=tip_mm, cutting_length_mm=10)
    drawn = replace(groove, angle_deg=angle_deg, tip_mm=tip_mm, max_depth_mm=5)
    return replace(
        GOOD, engrave=text, tools=(bit, GOOD.tools[1]), drawing=DRAWING.having(Groove, (drawn,)), v_step_mm=5
    )


GOOD_PLATES = {
    "as written": GOOD,
    "in inches": inches(GOOD),
    "Z zero at the top": both(GOOD, moved(Z=-9), zero=WorkZero(x_mm=0, y_mm=0, z_mm=9)),
    "zero at the board's corner": both(GOOD, moved(X=12, Y=12), zero=WorkZero(x_mm=-12, y_mm=-12, z_mm=0)),
    "with line numbers": replace(
        GOOD, engrave="\n".join(f"N{n * 10} {line}" for n, line in enumerate(ENGRAVE.splitlines(), 1)) + "\n"
    ),
    "in lower case with spaces": replace(GOOD, cut_out=CUT_OUT.lower().replace("x", " x ")),
    "a bit of 60 degrees": engraved(60, 0, 2.5 * 3**0.5, 0),
    "a bit of 120 degrees": engraved(120, 0, 2.5 / 3**0.5, 0),
    "a flat tip": engraved(90, 0.4, 2.3, 0.2),
    "a larger board": replace(GOOD, stock=replace(STOCK, width_mm=200, height_mm=90)),
    "coarse cells": replace(GOOD, extra={"cell_mm": 0.4}),
    "through by nothing but decimals": replace(GOOD, cut_out=CUT_OUT.replace("Z-0.3", "Z0.0004")),
    "without tabs": replace(
        GOOD,
        drawing=DRAWING.having(Tab, ()),
        cut_out="\n".join(line for line in CUT_OUT.splitlines() if line not in ("G1 Z1.5 F300", "G1 Z-0.3 F300"))
        + "\n",
    ),
}


@pytest.mark.parametrize("plate", GOOD_PLATES.values(), ids=GOOD_PLATES.keys())
def test_a_good_plate_passes(plate: Plate) -> None:
    report = judge(plate.case())
    assert [(result.code, finding.line, str(finding.message)) for result, finding in report.findings()] == []


@pytest.mark.parametrize(
    "asked",
    [
        {},
        {"font": "roboto-slab", "corner_radius": "8"},
        {"v_bit": "120", "z_zero": "top"},
        # found by random signs: walls so steep that the tolerance across the board is more than 0.05 mm of depth
        {
            "text": ["Q"],
            "size": "60x40",
            "holes": None,
            "v_bit": "26.84",
            "v_bit_diameter": "15.7",
            "v_bit_tip": "0",
            "thickness": "21.3",
            "tolerance": "0.05",
        },
        # strokes that taper, whose ends the fit left short
        {"text": ["i!j;"], "size": "120x90", "font": "rye", "depth": "1.5", "holes": None},
        # a V-bit that comes up on the very corner of a flat letter
        {
            "text": ["Öl"],
            "size": "100x60",
            "font": "atkinson",
            "finish": "recess",
            "sharp_corners": True,
            "frame": "4",
            "holes": None,
        },
        # an O, which has no corners to sharpen
        {"text": ["O"], "finish": "recess", "sharp_corners": True, "depth": "1.8"},
        # a floor in metal: no way across what the end mill clears later; and countersinks in a hard board
        {"text": ["3/4"], "size": "150x60", "thickness": "9", "material": "brass", "depth": "0.8", "holes": None},
        {
            "text": ["17"],
            "size": "100x60",
            "material": "hardwood",
            "screw": "M4",
            "countersink": True,
            "hole_diameter": None,
            "inset": None,
        },
        # tabs whose sides fall: the side after the first tab, and a corner of the edge where a tab would have stood
        {
            "text": ["17"],
            "size": "150x90",
            "border": "arrow",
            "arrow_to": "both",
            "thickness": "9",
            "holes": None,
            "tabs": "3",
            "tab_shape": "ramped",
            "tab_height": "1.33",
            "tab_width": "5.6",
            "breakthrough": "0.1",
        },
        {
            "text": ["jolly"],
            "size": "60x40",
            "border": "hexagon",
            "thickness": "9",
            "holes": None,
            "end_mill": "4.11",
            "end_mill_length": "25",
            "tab_shape": "ramped",
            "tab_height": "1.02",
            "tab_width": "5.1",
        },
    ],
)
def test_signs_as_made_pass(asked: dict[str, Any]) -> None:
    more = {"hole_diameter": None, "inset": None} if asked.get("holes", "") is None else {}
    prove(spec_of(**more, **asked))


@pytest.mark.sweep
@pytest.mark.parametrize("batch", range(BATCHES))
def test_random_signs_pass(batch: int, record_property: Callable[[str, object], None]) -> None:
    """500 signs in all, each made and passed; what is refused comes on top, with a reason, and is rare."""
    made, refused, failed = 0, list[str](), list[str]()
    for seed in itertools.count(batch * SEEDS_APART):
        outcome = outcome_of(seed)
        made += outcome.kind != "refused"
        if outcome.kind == "refused":
            assert ": " in outcome.why
            assert outcome.why.endswith(".")
            refused.append(outcome.why)
        if outcome.kind == "failed":
            failed.append(f"seed {seed}: {outcome.why}")
        if made == SIGNS_IN_BATCH or len(refused) > MOST_REFUSED:
            break
    record_property("refused", len(refused))
    assert not failed, "\n".join(failed)
    assert made == SIGNS_IN_BATCH, "\n".join(refused)
