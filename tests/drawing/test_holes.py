"""Holes and the wood around them."""

import math

import numpy as np
import pytest
from msgspec.structs import replace
from shapely.geometry import box

from signgen.drawing.draw import draw
from signgen.drawing.holes import holes_of, seat, wall_warnings
from signgen.drawing.spacing import apart_mm, close_pairs, inside_mm
from signgen.drawing.walls import wall_problems
from signgen.errors import CannotMakeError
from signgen.features.edge import Edge
from signgen.features.groove import Groove
from signgen.features.hole import Countersink, Hole
from signgen.holes.screws import Head
from tests.asking import english, spec_of

EDGE = box(0, 0, 100, 60)
SIGN = Edge(name="edge", area=EDGE)
SPEC = spec_of()


def problems(holes, edge=EDGE):
    return list(wall_problems(SPEC, (Edge(name="edge", area=edge), *holes)))


def wall_mm(hole):
    return inside_mm(hole, SIGN)


def hole(x, y, diameter=6, name="hole 1"):
    return Hole(name=name, x_mm=x, y_mm=y, diameter_mm=diameter)


@pytest.mark.parametrize(
    ("place", "wall"), [((50, 30), 27), ((10, 30), 7), ((3, 30), 0), ((-5, 30), -8), ((0, 30), -3)]
)
def test_the_wall_is_what_stays_to_the_edge(place, wall):
    assert wall_mm(hole(*place)) == pytest.approx(wall)


def test_refuses_holes_over_the_edge_and_over_each_other_all_at_once():
    found = problems((hole(3.9, 30), hole(50, 30, name="hole 2"), hole(56, 30, name="hole 3")))
    assert [problem.where for problem in found] == ["holes", "holes"]
    assert "hole 1" in str(found[0].what)
    assert "hole 2 and hole 3 run into each other: their middles are 6 mm apart" in str(found[1].what)
    assert not (problems((hole(4, 30), hole(50, 30), hole(57, 30))))


def test_an_eye_that_runs_over_the_edge_is_blamed_on_its_own_option():
    with pytest.raises(CannotMakeError, match=r"^eye-inset: eye \(8 mm at 4, 70\) does not lie inside"):
        draw(spec_of(border="tag", eye_diameter="8", eye_inset="4", holes="none", hole_diameter=None, inset=None))


def test_the_border_brings_its_eye_and_the_pattern_its_holes():
    names = [each.name for each in holes_of(spec_of(border="tag", holes="at:200,20", inset=None))]
    assert names == ["eye", "hole 1"]


def test_warns_of_walls_thinner_than_the_hole_is_wide():
    assert not list(english(wall_warnings(SIGN, (hole(9, 30),), ())))
    (said,) = english(wall_warnings(SIGN, (hole(8.5, 30),), ()))
    assert said.startswith("Only 5.5 mm of wood stay between hole 1 and the sign's edge: it may break out.")
    (said,) = english(wall_warnings(SIGN, (hole(8, 30), hole(18, 30, name="hole 2")), ()))
    assert said.startswith("Only 4.0 mm of wood stay between hole 1 and hole 2 (2 walls are thinner")


def test_warns_of_a_letter_close_to_a_hole():
    letter = Groove(
        name="line 1 letter 1 'I'",
        source="text",
        text="I",
        area=box(54.5, 20, 58, 40),
        angle_deg=90,
        tip_mm=0,
        max_depth_mm=3,
    )
    (said,) = english(wall_warnings(SIGN, (hole(50, 30),), (letter,)))
    assert said == "Only 1.5 mm of wood stay between hole 1 and line 1 letter 1 'I': it may break out."


def test_what_the_drawing_warns_of_is_in_the_drawing():
    assert english(draw(spec_of(inset="9")).warnings)
    assert not english(draw(spec_of(inset="14")).warnings)


def test_a_slot_is_measured_from_its_whole_length():
    slot = Hole(name="slot 1", x_mm=50, y_mm=30, diameter_mm=6, span_mm=14, angle_deg=0)
    assert slot.ends_mm == ((43, 30), (57, 30))
    assert wall_mm(slot) == pytest.approx(27)
    upright = replace(slot, angle_deg=90)
    assert wall_mm(upright) == pytest.approx(20)
    assert wall_mm(replace(slot, x_mm=8)) == pytest.approx(-2)
    (problem,) = problems((slot, hole(63.5, 30)))
    assert "slot 1 and hole 1 run into each other" in str(problem.what)
    assert not (problems((upright, hole(58, 30))))


@pytest.mark.parametrize(
    ("bit", "angle", "wide", "deep"),
    [
        (90, 90, 10.4, 2.45),  # the cone of the head itself
        (60, 90, 10.4, 4.2435),  # a sharper one carries the rim: (10.4 - 5.5) / 2 / tan 30
        (120, 90, 13.987, 2.45),  # a blunter one is as deep at the hole: 5.5 + 4.9 x tan 60
        (90, 82, 11.1367, 2.8184),  # 5.5 + 4.9 / tan 41; (10.4 - 5.5) / 2 / tan 41
    ],
)
def test_a_head_lies_flush_whatever_the_bits_angle(bit, angle, wide, deep):
    """Hand values by plane geometry of cones. The head's cone must not stand out of the seat's anywhere below the top
    and above the hole's rim, and must touch it."""
    sink = seat(Head(diameter_mm=10.4, angle_deg=angle), 5.5, bit)
    sunk = Hole(name="hole", x_mm=0, y_mm=0, diameter_mm=5.5, sink=sink)
    assert sink.diameter_mm == pytest.approx(wide, abs=1e-3)
    assert sunk.sink_depth_mm == pytest.approx(deep, abs=1e-3)
    slope = math.tan(math.radians(angle / 2))
    room = [
        sink.diameter_mm / 2 - depth * sink.slope - (10.4 / 2 - depth * slope)
        for depth in np.linspace(0, min(deep, 2.45 / slope), 50)
    ]
    assert min(room) == pytest.approx(0, abs=1e-3)


def sunk_spec(**changes):
    return spec_of(hole_diameter=None, **{"inset": "16", "screw": "M5", "countersink": True, **changes})


def test_holes_are_sunk_for_their_screw():
    (first, *_) = draw(sunk_spec()).of(Hole)
    assert first.sink == Countersink(diameter_mm=10.4, angle_deg=90)
    assert first.face_radius_mm == 5.2


@pytest.mark.parametrize(
    ("changes", "what"),
    [
        ({"thickness": "3.2", "end_mill": "4", "depth": "1"}, "goes 2.45 mm deep into a board"),
        ({"v_bit": "90", "v_bit_diameter": "3"}, "goes 2.45 mm deep, and the V-bit reaches 1.50 mm"),
        ({"v_bit": "120", "v_bit_diameter": "20", "v_bit_tip": "5.6", "depth": "1"}, "tip is 5.6 mm wide"),
    ],
)
def test_says_when_board_or_bit_have_no_room_for_a_head(changes, what):
    with pytest.raises(CannotMakeError) as caught:
        draw(sunk_spec(**changes))
    assert [problem.where for problem in caught.value.problems] == ["countersink"]
    assert what in str(caught.value)


def test_a_head_must_not_overhang_the_edge_or_a_letter():
    with pytest.raises(CannotMakeError, match=r"hole bottom left \(5\.5 mm, sunk to 10\.4 mm at 6, 6\) does not lie"):
        draw(sunk_spec(inset="6"))


def test_warns_of_cones_that_do_not_match_and_of_thin_shoulders():
    (said,) = english(draw(sunk_spec(v_bit="60", inset="20")).warnings)
    assert said == "The V-bit cuts cones of 60 degrees and the head has 90: it lies flush, but bears by its rim only."
    said = english(draw(sunk_spec(screw="#8", inset="20")).warnings)[-1]
    assert said.endswith("the head has 82: it lies flush, but bears at the hole's rim only.")
    thin = sunk_spec(screw="M8", thickness="5.4", inset="30", text=["17"], cap_height="12", depth="2")
    assert any("wood stay under the screws' heads" in said for said in english(draw(thin).warnings))


def test_two_hundred_holes_are_looked_over_at_once():
    holes = tuple(hole(10 + 8 * (i % 20), 10 + 8 * (i // 20), 3, f"hole {i}") for i in range(200))
    edge = box(0, 0, 200, 120)
    assert not (problems(holes, edge))
    near = [apart_mm(holes[i], holes[j]) for i, j in close_pairs(holes, 5.1)]
    assert len([wall for wall in near if wall < 5.1]) == 19 * 10 + 20 * 9
