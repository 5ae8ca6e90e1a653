"""Holes and the wood around them."""

import pytest
from shapely.geometry import box

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Groove, Hole
from signgen.drawing.holes import hole_problems, holes_of, wall_mm, wall_warnings
from signgen.errors import CannotMakeError
from tests.asking import spec_of

EDGE = box(0, 0, 100, 60)
SPEC = spec_of()


def hole(x, y, diameter=6, name="hole 1"):
    return Hole(name=name, x_mm=x, y_mm=y, diameter_mm=diameter)


@pytest.mark.parametrize(
    ("place", "wall"), [((50, 30), 27), ((10, 30), 7), ((3, 30), 0), ((-5, 30), -8), ((0, 30), -3)]
)
def test_the_wall_is_what_stays_to_the_edge(place, wall):
    assert wall_mm(EDGE, hole(*place)) == pytest.approx(wall)


def test_refuses_holes_over_the_edge_and_over_each_other_all_at_once():
    found = list(hole_problems(SPEC, EDGE, (hole(3.9, 30), hole(50, 30, name="hole 2"), hole(56, 30, name="hole 3"))))
    assert [problem.where for problem in found] == ["holes", "holes"]
    assert "hole 1" in found[0].what
    assert "hole 2 and hole 3 run into each other: their middles are 6 mm apart" in found[1].what
    assert not list(hole_problems(SPEC, EDGE, (hole(4, 30), hole(50, 30), hole(57, 30))))


def test_an_eye_that_runs_over_the_edge_is_blamed_on_its_own_option():
    with pytest.raises(CannotMakeError, match=r"^eye-inset: eye \(8 mm at 4, 70\) does not lie inside"):
        draw(spec_of(border="tag", eye_diameter="8", eye_inset="4", holes="none", hole_diameter=None, inset=None))


def test_the_border_brings_its_eye_and_the_pattern_its_holes():
    names = [each.name for each in holes_of(spec_of(border="tag", holes="at:200,20", inset=None))]
    assert names == ["eye", "hole 1"]


def test_warns_of_walls_thinner_than_the_hole_is_wide():
    assert not list(wall_warnings(EDGE, (hole(9, 30),), ()))
    (said,) = wall_warnings(EDGE, (hole(8.5, 30),), ())
    assert said.startswith("Only 5.5 mm of wood stay between hole 1 and the sign's edge: it may break out.")
    (said,) = wall_warnings(EDGE, (hole(8, 30), hole(18, 30, name="hole 2")), ())
    assert said.startswith("Only 4.0 mm of wood stay between hole 1 and hole 2 (2 walls are thinner")


def test_warns_of_a_letter_close_to_a_hole():
    letter = Groove(
        name="line 1 letter 1 'I'", text="I", area=box(54.5, 20, 58, 40), angle_deg=90, tip_mm=0, max_depth_mm=3
    )
    (said,) = wall_warnings(EDGE, (hole(50, 30),), (letter,))
    assert said == "Only 1.5 mm of wood stay between hole 1 and line 1 letter 1 'I': it may break out."


def test_what_the_drawing_warns_of_is_in_the_drawing():
    assert draw(spec_of(inset="9")).warnings
    assert not draw(spec_of(inset="14")).warnings
