"""Where Z is set: a place that a program has cut by then refuses the job, and the sign that showed it passes now."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.checks.paper_followed import PaperFollowed
from signgen.checks.touched_off import TouchedOff
from signgen.pipeline import prove, read_sign
from signgen.proving.judge_sides import judged_sides
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.spec.sign_spec import SignSpec
from tests.asking import spec_of

RAISED = {
    "text": ["RAISED"],
    "size": "220x120",
    "thickness": "12",
    "finish": "raised",
    "sharp-corners": True,
    "holes": "corners",
    "hole-diameter": "5",
    "inset": "18",
    "z-zero": "top",
    "panel": "5",
}


def raised() -> SignSpec:
    return read_sign(RAISED)


def test_the_middle_of_a_sunk_board_is_no_place_to_set_z() -> None:
    """Derived here: the ground is 3 mm deep, so a cutter that is set on it works 3 mm too low."""
    spec = raised()
    (side,) = sides_of(spec)
    made = written(side)
    (judged,) = judged_sides([made])
    case = judged.case
    assert case.told is not None
    assert PaperFollowed().run(case).passed
    steps = tuple(replace(step, sets_z=(replace(step.sets_z[0], x_mm=110.0, y_mm=20.0),)) for step in case.told.steps)
    middle = replace(case, told=replace(case.told, steps=steps))
    findings = TouchedOff().run(middle).findings
    # The first cutter still finds the face; those after the floors are cleared do not.
    files = [program.file for program in case.programs]
    assert {finding.file for finding in findings} <= set(files[1:])
    assert any("3.00 mm deep by then" in str(finding.message) for finding in findings)
    assert any("Z0 comes to lie 3.00 mm too low" in str(finding.message) for finding in findings)
    told = [str(finding.message) for finding in PaperFollowed().run(middle).findings]
    assert f"Who follows the sheet: {files[-1]} runs 3.00 mm too low." in told
    # What really comes of it: the whole groove of the edge 3 mm deeper, the table cut into.
    assert any("the board comes out 3.00 mm otherwise" in message for message in told)


@pytest.mark.parametrize("dialect", ["plain", "inch", "one-file", "changer"])
def test_programs_and_pauses_say_where_z_is_set(dialect: str) -> None:
    facts = prove(spec_of(z_zero="top", dialect=dialect))
    (touch,) = facts.set_up.steps[0].sets_z
    assert touch.on == "face"
    assert not touch.plus_thickness
    told = f"X{touch.x_mm:g} Y{touch.y_mm:g}"
    if dialect == "inch":
        told = f"X{touch.x_mm / 25.4:.4f}".rstrip("0")
    for program in facts.programs:
        assert f"Set Z on the face at {told}" in program.text
    if dialect == "one-file":
        assert f"(MSG, set Z on the face at {told})" in facts.programs[0].text
