"""As large as fits."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from signgen.drawing.fit import STEP_MM, first_fitting, fitted_cap_height
from signgen.errors import CannotMakeError

MIDDLE = np.array([[0.0, 0.0]])


def bar(height):
    """A line four times as wide as high."""
    return [(-2 * height, -height / 2, 2 * height, height / 2)]


@given(width=st.floats(20, 400), height=st.floats(10, 400))
def test_a_bar_fills_its_room_to_a_step(width, height):
    found, middle = fitted_cap_height(bar, box(-width / 2, -height / 2, width / 2, height / 2), MIDDLE)
    exact = min(width / 4, height)
    assert exact - STEP_MM - 0.006 <= found <= exact + 1e-6
    assert middle == (0, 0)


def test_takes_the_place_with_the_most_room_and_the_first_of_equal_ones():
    room = box(0, 0, 100, 10).union(box(200, 0, 300, 20))
    places = np.array([[50.0, 5.0], [250.0, 10.0], [251.0, 10.0]])
    found, middle = fitted_cap_height(bar, room, places)
    assert found == pytest.approx(20, abs=STEP_MM + 0.001)
    assert middle == (250, 10)
    assert fitted_cap_height(bar, room, places[:1])[0] == pytest.approx(10, abs=STEP_MM + 0.001)


@pytest.mark.parametrize("room", [Polygon(), box(-5, -5, 5, 5)], ids=["none", "too small"])
def test_says_when_not_even_the_least_height_fits(room):
    with pytest.raises(CannotMakeError, match=r"^text: The text does not fit"):
        fitted_cap_height(bar, room, MIDDLE)


def test_a_height_asked_for_goes_where_it_fits_or_to_the_natural_place():
    room = box(0, 0, 100, 100)
    places = np.array([[-10.0, 50.0], [50.0, 50.0], [60.0, 50.0]])
    assert first_fitting(bar(10), room, places) == (50, 50)
    assert first_fitting(bar(90), room, places) == (-10, 50)
    assert first_fitting(bar(10), Polygon(), places) == (-10, 50)
