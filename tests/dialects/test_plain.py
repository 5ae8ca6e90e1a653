"""The text of a program."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.dialects.plain import PLAIN
from signgen.dialects.words import comment, decimal
from signgen.geometry.paths import CCW, LINE, Path, joined, polyline
from signgen.program.assemble import assemble
from signgen.program.blocks import ToolProgram
from signgen.program.travel import Travel
from signgen.shop.manner import USUAL
from signgen.shop.materials import CuttingData
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut, Toolpath

MILL = Tool(
    name="end-mill-6",
    kind="end-mill",
    diameter_mm=6.0,
    shank_mm=6.0,
    cutting_length_mm=22.0,
    flutes=2,
    stickout_mm=28.0,
    source="test",
)
CUTTING = CuttingData(
    spindle_rpm=16000.0,
    chip_load_mm=0.06,
    feed_mm_per_min=2000.0,
    plunge_mm_per_min=500.0,
    ramp_mm_per_min=1000.0,
    stepdown_mm=3.0,
    stepover_mm=2.4,
    entry_deg=5.0,
)


def program(*paths: Path, zero: WorkZero | None = None) -> ToolProgram:
    cuts = tuple(
        Cut(path=path, feeds_mm_per_min=np.full(len(path), 2000.0), feature=f"feature {i}", stage=0)
        for i, path in enumerate(paths)
    )
    return assemble(
        heading=("Sign: 17",),
        toolpaths=[Toolpath(operation="test", tool=MILL, cuts=cuts)],
        cutting=CUTTING,
        spindle_start_s=4.0,
        zero=zero or WorkZero(x_mm=0.0, y_mm=0.0, z_mm=0.0),
        travel=Travel(top_mm=12.0, safe_mm=22.0),
        top_z_feed_mm_per_min=2000.0,
        park_xy_mm=(0.0, 160.0),
    )


def written(one: ToolProgram) -> str:
    (text,) = PLAIN.write([one], USUAL)
    return text


def test_a_small_program_in_full() -> None:
    text = written(program(polyline([(1, 2, 12), (5.00004, 2, 11.5), (5, 8, 11.5)])))
    assert text.splitlines() == [
        "(Sign: 17)",
        "G17 G21 G40 G49 G54 G80 G90 G94",
        "G0 Z43",
        "S16000 M3",
        "G4 P4",
        "(feature 0)",
        "G0 X1 Y2",
        "G0 Z13",
        "G1 Z12 F500",
        "G1 X5 Z11.5 F2000",
        "G1 Y8",
        "G0 Z43",
        "G0 X0 Y160",
        "M5",
        "M2",
    ]


def test_the_zero_shifts_every_place_and_no_offset_of_a_centre() -> None:
    arc = Path(
        points_mm=np.array([[10.0, 0, 12], [-10, 0, 12]]),
        kinds=np.array([CCW], np.uint8),
        centres_mm=np.array([[0.0, 0.0]]),
    )
    text = written(program(arc, zero=WorkZero(x_mm=-20.0, y_mm=-30.0, z_mm=12.0)))
    assert "G0 X30 Y30" in text
    assert "G3 X10 Y30 I-10 J0 F2000" in text
    assert "G1 Z0 F500" in text


def test_an_arc_that_rounding_closes_never_becomes_a_full_circle() -> None:
    tiny = Path(
        points_mm=np.array([[10.0, 0, 12], [10.00001, 0.00002, 12], [20, 0, 12]]),
        kinds=np.array([CCW, LINE], np.uint8),
        centres_mm=np.array([[0.0, 0.0], [np.nan, np.nan]]),
    )
    text = written(program(tiny))
    assert not re.search(r"^G[23] ", text, re.MULTILINE)
    assert "G1 X20 F2000" in text


def test_a_full_circle_repeats_its_end() -> None:
    # Source: NIST IR 6556 section 3.5.3: a full circle must state X or Y again.
    circle = Path(
        points_mm=np.array([[10.0, 0, 12], [10, 0, 12]]),
        kinds=np.array([CCW], np.uint8),
        centres_mm=np.array([[0.0, 0.0]]),
    )
    assert "G3 X10 Y0 I-10 J0 F2000" in written(program(circle))


@given(
    st.lists(
        st.tuples(st.floats(-300, 300), st.floats(0.1, 500), st.floats(0.01, math.pi), st.floats(-math.pi, math.pi)),
        min_size=1,
        max_size=20,
    )
)
def test_four_decimals_keep_every_arc_within_the_standards_tolerance(
    arcs: list[tuple[float, float, float, float]],
) -> None:
    # Source: NIST IR 6556: the two radii may differ by 0.002 mm.
    at, paths = np.array([0.0, 0.0]), []
    for _, radius, turn, heading in arcs:
        centre = at + radius * np.array([math.cos(heading), math.sin(heading)])
        spoke = at - centre
        end = centre + [
            spoke[0] * math.cos(turn) - spoke[1] * math.sin(turn),
            spoke[0] * math.sin(turn) + spoke[1] * math.cos(turn),
        ]
        paths.append(
            Path(
                points_mm=np.array([[*at, 11.0], [*end, 11.0]]),
                kinds=np.array([CCW], np.uint8),
                centres_mm=centre[None, :],
            )
        )
        at = end
    x = y = 0.0
    for line in written(program(joined(paths))).splitlines():
        words = {word[0]: float(word[1:]) for word in line.split() if word[0] in "XYZIJ"} if line[0] == "G" else {}
        if "I" in words:
            cx, cy = x + words["I"], y + words["J"]
            assert abs(math.hypot(x - cx, y - cy) - math.hypot(words["X"] - cx, words["Y"] - cy)) <= 0.002
        x, y = words.get("X", x), words.get("Y", y)


@pytest.mark.parametrize(
    ("units", "text"),
    [(0, "0"), (125000, "12.5"), (-3000, "-0.3"), (-1, "-0.0001"), (10000, "1"), (-120000, "-12"), (100, "0.01")],
)
def test_numbers_without_a_tail(units: int, text: str) -> None:
    assert decimal(units, 4) == text


@given(st.text())
def test_any_text_makes_a_legal_comment(text: str) -> None:
    # Source: NIST IR 6556 section 3.3.4.
    line = comment(text)
    assert line.isascii()
    assert line.isprintable()
    assert len(line) <= 256
    assert line.count("(") == 1
    assert line.count(")") == 1
    assert not re.match(r"\(\s*m\s*s\s*g\s*,", line, re.IGNORECASE)


def test_accents_are_dropped_and_brackets_replaced() -> None:
    assert comment("Café (door 2) 東") == "(Cafe [door 2] _)"


def test_no_character_passes_that_a_control_acts_on_at_once() -> None:
    # Common practice: ';' begins another comment; '!', '~' and '?' hold, go on and ask as they come in.
    assert comment("Stop! Who? ~now; go") == "(Stop_ Who_ _now, go)"
    assert comment("wait?", message=True) == "(MSG, wait_)"
