"""No default makes a sign fail: what new users typed in a trial, and what is chosen where the usual will not do."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.drawing.draw import draw
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.messages import Message
from signgen.operations.plan import make_plan
from signgen.pipeline import prove, read_sign
from signgen.proving.settled import can_be_made
from tests.asking import HOUSE_NUMBER
from tests.golden.composed import asked_of

TRIAL = (Path(__file__).parent / "trial.txt").read_text().splitlines()

RAISED = {**HOUSE_NUMBER, "layout": "composed", "finish": "raised", "holes": None, "hole-diameter": None, "inset": None}


@pytest.mark.parametrize("command", TRIAL)
def test_what_was_typed_in_the_trial_can_be_made_as_it_is(command: str) -> None:
    assert can_be_made(read_sign(asked_of(command)))


@pytest.mark.sweep
@pytest.mark.parametrize("command", TRIAL)
def test_what_was_typed_in_the_trial_passes_all_checks(command: str) -> None:
    assert prove(read_sign(asked_of(command))).checks.passed


def test_narrow_places_between_raised_letters_are_left_to_the_v_bit() -> None:
    spec = read_sign(RAISED)
    assert spec.sharp_corners
    plan = make_plan(draw(spec), spec)
    assert any(isinstance(said, Message) and said.key == "cut.v_bit_makes_narrow_places" for said in plan.remarks)


def test_nothing_is_chosen_otherwise_where_the_usual_will_do() -> None:
    large = {**RAISED, "text": ["17"]}
    assert not read_sign(large).sharp_corners


def test_what_is_stated_is_not_touched() -> None:
    spec = read_sign({**RAISED, "sharp-corners": "false"})
    assert not spec.sharp_corners
    assert not can_be_made(spec)


def test_insides_of_letters_that_are_cut_through_get_bridges() -> None:
    spec = read_sign(asked_of('"OFFICE" --size 240x80 --thickness 6 --finish through'))
    assert spec.bridges is not None
    assert spec.bridges.count == 2


def test_holes_keep_off_the_wall_of_a_panel() -> None:
    """With room for a screw's head, twice the hole, on the ground."""
    spec = read_sign({**RAISED, "holes": "corners"})
    assert spec.panel is not None
    holes = draw(spec).of(Hole)
    ground = next(recess for recess in draw(spec).of(Recess) if recess.name == "ground")
    assert all(ground.area.buffer(5).covers(hole.footprint.buffer(hole.diameter_mm / 2)) for hole in holes)


@pytest.mark.parametrize(
    ("screw", "thickness", "diameter_mm"),
    [
        ("#4", "12", 3.0),  # 7/64 in: nobody has that drill; the shop's next is 3 mm
        ("#6", "12", 4.0),
        ("M3", "18", 4.0),
        ("#8", "12", 4.3656),  # 11/64 in, which a 4 mm end mill bores
        ("M5", "12", 5.5),
    ],
)
def test_a_screw_gets_the_next_hole_that_the_shop_can_make(screw: str, thickness: str, diameter_mm: float) -> None:
    spec = read_sign({"text": ["9"], "size": "200x120", "thickness": thickness, "holes": "corners", "screw": screw})
    assert spec.holes.diameter_mm == pytest.approx(diameter_mm, abs=1e-3)
    assert can_be_made(spec)


@pytest.mark.parametrize(
    ("size", "machine"),
    [("300x200", "desktop-router"), ("600x200", "bench-router"), ("1200x300", "sheet-router")],
)
def test_the_first_machine_that_goes_round_the_sign_is_taken(size: str, machine: str) -> None:
    assert read_sign({"text": ["9"], "size": size, "thickness": "12"}).machine.name == machine
