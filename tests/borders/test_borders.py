"""Laws that every border keeps, whatever its options."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.borders import BORDERS, border_named, read_border
from signgen.errors import AskError

CHORD = 0.0025


def test_names_are_unique_and_every_border_says_what_it_is():
    assert len({border.name for border in BORDERS}) == len(BORDERS)
    assert all(border.summary.endswith(".") for border in BORDERS)


@pytest.mark.parametrize("border", BORDERS, ids=lambda border: border.name)
@given(width=st.floats(20, 1000), height=st.floats(20, 1000))
def test_touches_all_four_sides_and_runs_counter_clockwise(border, width, height):
    outline = border.from_options({}, width, height).outline(width, height, CHORD)
    assert outline.is_valid
    assert outline.exterior.is_ccw
    assert outline.bounds == pytest.approx((0, 0, width, height), abs=1e-9)


@pytest.mark.parametrize("border", BORDERS, ids=lambda border: border.name)
def test_asked_gives_an_equal_border(border):
    made = border.from_options({}, 220, 140)
    assert read_border(border.name, made.asked(), 220, 140) == made


def test_offers_close_names():
    assert border_named("Rounded").name == "rounded"
    with pytest.raises(AskError, match=r"^border: There is no border 'roundd'\. Did you mean rounded\?$"):
        read_border("roundd", {}, 220, 140)
