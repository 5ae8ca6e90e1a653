"""Round holes, slots and countersinks, and what does not go together."""

import pytest

from signgen.errors import AskError
from signgen.holes.form import FORM_OPTIONS, HoleForm
from signgen.holes.screws import Head
from signgen.option import read_option


def form(diameter=5.5, **values):
    return HoleForm.from_options({name.replace("_", "-"): value for name, value in values.items()}, diameter)


def test_holes_are_round_and_not_sunk_unasked():
    assert form() == HoleForm(slot_length_mm=None, slot_angle_deg=0, head=None)
    assert form(countersink=False) == form()


def test_a_slot_has_its_length_and_direction():
    assert form(slot_length=12.0) == HoleForm(slot_length_mm=12, slot_angle_deg=0)
    assert form(slot_length=12.0, slot_angle=90.0) == HoleForm(slot_length_mm=12, slot_angle_deg=90)


def test_the_head_is_the_screws_or_the_one_given():
    assert form(countersink=True, screw="M5").head == Head(diameter_mm=10.4, angle_deg=90)
    assert form(countersink=True, screw="M5", screw_head="iso10642").head == Head(diameter_mm=11.2, angle_deg=90)
    assert form(4.4, countersink=True, screw="#8").head == Head(diameter_mm=8.4328, angle_deg=82)
    assert form(countersink=True, screw="M5", head_diameter=9.0).head == Head(diameter_mm=9, angle_deg=90)
    assert form(countersink=True, screw="M5", head_angle=100.0).head == Head(diameter_mm=10.4, angle_deg=100)
    assert form(countersink=True, head_diameter=9.0, head_angle=82.0).head == Head(diameter_mm=9, angle_deg=82)


@pytest.mark.parametrize(
    ("values", "where", "what"),
    [
        ({"slot_angle": 90.0}, "slot-angle", "no slot"),
        ({"slot_length": 5.5}, "slot-length", "A slot 5.5 mm wide is longer than 5.5 mm"),
        ({"slot_length": 12.0, "countersink": True, "screw": "M5"}, "countersink", "Slots cannot"),
        ({"head_diameter": 9.0}, "head-diameter", "no countersink"),
        ({"head_angle": 90.0, "countersink": False}, "head-angle", "no countersink"),
        ({"screw_head": "iso10642", "screw": "M5"}, "screw-head", "no countersink"),
        ({"countersink": True}, "countersink", "not said for which head"),
        ({"countersink": True, "head_diameter": 5.0}, "head-diameter", "A head of 5 mm falls through holes of 5.5 mm"),
        ({"countersink": True, "screw": "M12"}, "countersink", "iso7046 has no head of M12"),
        ({"countersink": True, "screw": "#8", "screw_head": "iso7046"}, "screw-head", "one flat head"),
        ({"countersink": True, "screw": "M5", "screw_head": "iso7046", "head_diameter": 9.0}, "screw-head", "too"),
    ],
)
def test_refuses_what_does_not_go_together(values, where, what):
    with pytest.raises(AskError) as caught:
        form(**values)
    (problem,) = caught.value.problems
    assert problem.where == where
    assert what in str(problem.what)
    assert problem.remedy


@pytest.mark.parametrize(
    "values",
    [{}, {"slot_length": 12.0, "slot_angle": 30.0}, {"countersink": True, "screw": "M4"}],
    ids=str,
)
def test_asked_gives_an_equal_form(values):
    made = form(4.5, **values)
    options = {option.name: option for option in FORM_OPTIONS}
    asked = {name: read_option(options[name], raw) for name, raw in made.asked().items()}
    assert HoleForm.from_options(asked, 4.5) == made
