"""Borders and holes together: where holes go when nobody says how far from the edge."""

from pathlib import Path

import pytest
from shapely.geometry import Point

from signgen.errors import AskError, CannotMakeError
from signgen.spec.read import read_spec
from tests.asking import spec_of

LEAF = Path(__file__).parents[1] / "borders" / "leaf.svg"


def inset_on(border, pattern="corners", **changes):
    spec = spec_of(border=border, holes=pattern, hole_diameter="5", inset=None, **changes)
    return spec.holes.inset_mm, spec


@pytest.mark.parametrize("border", ["rectangle", "rounded"])
def test_holes_of_a_rectangle_keep_the_usual_inset(border):
    assert inset_on(border)[0] == 10


@pytest.mark.parametrize("border", ["oval", "pill", "scalloped", "octagon", "shield", "hexagon", "arrow"])
def test_holes_move_in_until_they_have_wood_around_them_and_no_further(border):
    inset, spec = inset_on(border)
    edge = spec.border.outline(220, 140, 0.01)
    for _, x, y in spec.holes.centres(220, 140):
        assert edge.contains(Point(x, y))
        assert edge.exterior.distance(Point(x, y)) >= 7.4
    assert inset > 10
    nearer = type(spec.holes)(diameter_mm=5, inset_mm=inset - 0.5)
    assert any(
        not edge.contains(Point(x, y)) or edge.exterior.distance(Point(x, y)) < 7.6
        for _, x, y in nearer.centres(220, 140)
    )


def test_an_inset_that_was_asked_for_is_kept():
    assert spec_of(border="oval", inset="12").holes.inset_mm == 12


def test_holes_keep_clear_of_an_eye():
    inset, spec = inset_on("tag", "side-pair")
    ((_, eye_x, _, eye_mm),) = spec.border.eyes(220, 140)
    assert abs(inset - eye_x) >= (eye_mm + 5) / 2


def test_keeps_the_usual_inset_where_no_inset_helps():
    """The drawing says then what is wrong."""
    inset, _ = inset_on(f"path:{LEAF}", "column", hole_count="11", size="150x75")
    assert inset == 10


def test_a_border_that_does_not_fit_is_told_with_everything_else(house_number, shop):
    with pytest.raises(AskError) as caught:
        read_spec(house_number | {"border": "chamfered", "corner-cut": "90", "material": "cheese"}, shop)
    assert {problem.where for problem in caught.value.problems} == {"corner-cut", "material"}
    with pytest.raises(CannotMakeError, match=r"^corner-cut: 90 mm do not fit .* at most 70 mm\.$"):
        read_spec(house_number | {"border": "chamfered", "corner-cut": "90"}, shop)


@pytest.mark.parametrize(
    ("asked", "where"),
    [
        ({"countersink": True, "holes": "none"}, "countersink"),
        ({"slot-length": "12", "holes": "none"}, "slot-length"),
        ({"border": "rounded", "arch-rise": "9"}, "arch-rise"),
        ({"border": "rounded:4"}, "border"),
        ({"countersink": "perhaps", "screw": "M5"}, "countersink"),
    ],
)
def test_options_that_nothing_reads_are_refused(house_number, shop, asked, where):
    plain = {key: value for key, value in house_number.items() if key not in ("hole-diameter", "inset", "holes")}
    with pytest.raises(AskError) as caught:
        read_spec(plain | {"holes": "corners"} | asked, shop)
    assert {problem.where for problem in caught.value.problems} == {where}


def test_no_countersink_over_none_is_no_problem(house_number, shop):
    plain = {key: value for key, value in house_number.items() if key not in ("hole-diameter", "inset", "holes")}
    assert read_spec(plain | {"countersink": False}, shop).hole_form.head is None
