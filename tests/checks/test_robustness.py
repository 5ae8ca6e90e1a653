"""The judge answers whatever the text holds: no crash, no hang, and never a pass for what was garbled badly."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.checks import CHECKS, judge
from tests.checks.plate import CUT_OUT, ENGRAVE, Plate

COARSE = Plate(extra={"cell_mm": 0.5})


@settings(max_examples=60, deadline=None)
@given(
    cuts=st.lists(
        st.tuples(
            st.integers(0, len(CUT_OUT) - 1), st.integers(0, 12), st.text("GXYZIJFSM0123456789.-( \n%", max_size=6)
        ),
        min_size=1,
        max_size=4,
    )
)
def test_garbled_programs_are_judged(cuts: list[tuple[int, int, str]]) -> None:
    text = CUT_OUT
    for at, length, new in cuts:
        text = text[:at] + new + text[at + length :]
    report = judge(replace(COARSE, cut_out=text).case())
    assert [result.code for result in report.results] == [check.code for check in CHECKS]


@pytest.mark.parametrize(
    "line",
    [
        "G1 X99999999 Y5 Z5 F800",
        "G1 X-99999 Y99999 Z-99999 F800",
        "G3 X0 Y0 I-90000 J0 Z5",
        "G2 X10 Y10 R-999999",
        "G18\nG2 X20 Z5 I5 K0",
        "G0 X99999999",
    ],
)
def test_absurd_places_cost_nothing(line: str) -> None:
    lines = ENGRAVE.splitlines()
    text = "\n".join([*lines[:12], line, *lines[12:]]) + "\n"
    assert not judge(replace(COARSE, engrave=text).case()).passed


@pytest.mark.parametrize("text", ["", "\n", "%\n%\n", "M2\n", "(nothing)\nM2\n", "G0 Z5\nM2\n", "\x00\x01", "é" * 50])
def test_texts_without_a_program_do_not_pass(text: str) -> None:
    assert not judge(replace(COARSE, engrave=text, cut_out=text).case()).passed


def test_no_program_at_all_does_not_pass() -> None:
    report = judge(replace(COARSE, order=()).case())
    assert not report.passed
    assert len(report.results) == len(CHECKS)


def test_checks_have_codes_and_names_of_their_own_and_explain_themselves() -> None:
    assert len({check.code for check in CHECKS}) == len({check.name for check in CHECKS}) == len(CHECKS)
    for check in CHECKS:
        assert "What to do:" in check.explanation
        assert "seen:" in check.explanation
