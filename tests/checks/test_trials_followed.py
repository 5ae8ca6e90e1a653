"""Who follows the sheet runs the outline and the air cuts too, with the cutter and the zero that are there then."""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from signgen.checks.check import Case, ProgramUnderTest
from signgen.checks.paper_followed import PaperFollowed
from signgen.replay.reader import read_program
from signgen.shop.tools import Tool
from tests.checks.plate import CUT_OUT, END_MILL, TOLD, V_BIT, Plate

GOOD = replace(Plate(), told=TOLD)
OUTLINE = """\
G17 G21 G40 G49 G54 G80 G90 G94
G0 Z40
G0 X-6 Y-6
G0 Z14
G1 X66 F2000
M0
G1 Y46
G1 X-6
G1 Y-6
G0 Z40
M2
"""
LINE = ((-40.0, -40.0), (100.0, -40.0), (100.0, 80.0), (-40.0, 80.0))
"""Far enough outside for the nut of every program."""


def tried(file: str, text: str, tool: Tool) -> ProgramUnderTest:
    replay = read_program(text)
    assert not replay.faults
    return ProgramUnderTest(file=file, text=text, tool=tool, replay=replay)


def case_of(plate: Plate = GOOD, outline: str = OUTLINE, air: str | None = None) -> Case:
    lifted = () if air is None else (tried("air-2-end-mill-6.nc", air, END_MILL),)
    return replace(plate.case(), outlines=(tried("0-outline.nc", outline, V_BIT),), lifted=lifted)


def said(case: Case) -> list[str]:
    return [f"{finding.file}: {finding.message}" for finding in PaperFollowed().run(case).findings]


def lifted(by_mm: float) -> str:
    words = [line.split(" ") for line in CUT_OUT.splitlines() if not line.startswith("(")]
    return "\n".join(" ".join(f"Z{float(w[1:]) + by_mm:g}" if w[0] == "Z" else w for w in line) for line in words)


def test_as_told_nothing_is_met() -> None:
    assert said(case_of(air=lifted(20.0) + "\n")) == []
    assert said(case_of(GOOD.holding(clamp_line_mm=LINE))) == []


@pytest.mark.parametrize(
    ("case", "words"),
    [
        (case_of(outline=OUTLINE.replace("Z14", "Z9.3")), "0-outline.nc: .*comes 0.30 mm over the board"),
        # The judge's outline is right; the sheet has Z set 6 mm too low.
        (case_of(GOOD.step(0, touch_types_mm=6.1)), "0-outline.nc: .*comes -1.00 mm over the board"),
        (case_of(GOOD.telling(datum=replace(TOLD.datum, x_mm=2.0))), "0-outline.nc: .*shows a place 4.00 mm beside"),
        (case_of(GOOD.step(0, cutter_name="end-mill-6")), "0-outline.nc: .*runs with end-mill-6"),
        (case_of(air=lifted(5.0) + "\n"), "air-2-end-mill-6.nc: .*comes -4.30 mm over the board"),
        # No program cuts there, and the outline goes there low.
        (
            case_of(GOOD.holding(clamp_line_mm=LINE), OUTLINE.replace("X-6\n", "X-42\n")),
            "0-outline.nc: .*a clamp outside the dashed line",
        ),
    ],
)
def test_what_goes_wrong_before_the_cut_is_seen(case: Case, words: str) -> None:
    findings = said(case)
    assert any(re.match(words, each) for each in findings), findings


def test_clamps_are_tried_behind_too() -> None:
    near = GOOD.holding(clamp_line_mm=((-8.0, -8.0), (68.0, -8.0), (68.0, 48.0), (-8.0, 48.0))).telling(
        board=replace(TOLD.board, face_up=False)
    )
    case = case_of(near)
    assert any("dashed line" in each for each in said(replace(case, face=case.boards[-1])))
