"""Laws that every border keeps, whatever its options."""

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Point

from signgen.borders import BORDERS, border_named
from signgen.errors import AskError
from signgen.option import read_option
from tests.asking import read_border

CHORD = 0.0025
DRAWN = [border for border in BORDERS if not border.argument]


def made(border, width, height):
    return border.from_options("", {}, width, height)


def test_names_are_unique_and_every_border_says_what_it_is():
    assert len({border.name for border in BORDERS}) == len(BORDERS)
    assert all(border.summary.endswith(".") for border in BORDERS)


@pytest.mark.parametrize("border", DRAWN, ids=lambda border: border.name)
@settings(max_examples=40)
@given(width=st.floats(20, 1000), height=st.floats(20, 1000))
def test_touches_all_four_sides_and_runs_counter_clockwise(border, width, height):
    if border.name == "circle":
        height = width
    outline = made(border, width, height).outline(width, height, CHORD)
    assert outline.is_valid
    assert not outline.interiors
    assert outline.exterior.is_ccw
    assert outline.bounds == pytest.approx((0, 0, width, height), abs=1e-8)
    points = list(outline.exterior.coords)[:-1]
    assert min(math.dist(p, q) for p, q in zip(points, points[1:] + points[:1], strict=True)) > 1e-7


@pytest.mark.parametrize("border", DRAWN, ids=lambda border: border.name)
@pytest.mark.parametrize("chord", [0.2, 0.01])
def test_chords_stay_within_the_tolerance_of_a_far_finer_outline(border, chord):
    for width, height in ((220, 220), (90, 90)) if border.name == "circle" else ((220, 140), (35, 90)):
        fine = made(border, width, height).outline(width, height, 1e-4)
        coarse = made(border, width, height).outline(width, height, chord)
        places = shapely.points(shapely.get_coordinates(shapely.segmentize(coarse.exterior, 0.5)))
        assert shapely.distance(fine.exterior, places).max() <= chord + 1e-4


@pytest.mark.parametrize("border", DRAWN, ids=lambda border: border.name)
@pytest.mark.parametrize("size", [(220.0, 140.0), (150.0, 150.0), (120.0, 200.0)], ids=str)
def test_asked_gives_an_equal_border(border, size):
    first = made(border, *size)
    options = {option.name: option for option in border.options}
    asked = first.asked()
    values = {name: read_option(options[name], raw) for name, raw in asked.items() if name != "border"}
    assert set(values) == set(options)
    assert read_border(asked["border"], values, *size) == first


@pytest.mark.parametrize("border", DRAWN, ids=lambda border: border.name)
def test_an_eye_lies_inside(border):
    for width, height in ((220, 140), (150, 150), (120, 200), (40, 25)):
        if border.name == "circle":
            height = width
        outline = made(border, width, height).outline(width, height, CHORD)
        for name, x, y, diameter in made(border, width, height).eyes(width, height):
            assert name
            assert outline.contains(Point(x, y).buffer(diameter / 2))


def test_offers_close_names():
    assert border_named("Rounded")[0].name == "rounded"
    with pytest.raises(AskError, match=r"^border: There is no border 'roundd'\. Did you mean rounded\?$"):
        read_border("roundd", {}, 220, 140)


def test_refuses_an_argument_that_nothing_reads():
    with pytest.raises(AskError, match=r"^border: 'rounded:5' says too much\. Write rounded alone\.$"):
        border_named("rounded:5")
