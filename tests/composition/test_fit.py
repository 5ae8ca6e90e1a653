"""As large as fits."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon, box

from signgen.composition.fit import STEP_MM, first_place, largest_size, lying_within, quads_within, room_beside

MIDDLE = np.array([[0.0, 0.0]])


def bar(height):
    """A line four times as wide as high."""
    return [(-2 * height, -height / 2, 2 * height, height / 2)]


def bars_in(room):
    return lambda height, middles: lying_within(room, bar(height), middles)


@given(width=st.floats(20, 400), height=st.floats(10, 400))
def test_a_bar_fills_its_room_to_a_step(width, height):
    room = box(-width / 2, -height / 2, width / 2, height / 2)
    found, middle = largest_size(bars_in(room), MIDDLE, 3, height)
    exact = min(width / 4, height)
    assert exact - STEP_MM - 0.006 <= found <= exact + 1e-6
    assert middle == (0, 0)


def test_takes_the_place_with_the_most_room_and_the_first_of_equal_ones():
    room = box(0, 0, 100, 10).union(box(200, 0, 300, 20))
    places = np.array([[50.0, 5.0], [250.0, 10.0], [251.0, 10.0]])
    found, middle = largest_size(bars_in(room), places, 3, 20)
    assert found == pytest.approx(20, abs=STEP_MM + 0.001)
    assert middle == (250, 10)
    assert largest_size(bars_in(room), places[:1], 3, 20)[0] == pytest.approx(10, abs=STEP_MM + 0.001)


@pytest.mark.parametrize("room", [Polygon(), box(-5, -5, 5, 5)], ids=["none", "too small"])
def test_finds_nothing_when_not_even_the_least_size_fits(room):
    assert largest_size(bars_in(room), MIDDLE, 3, 10) is None
    assert largest_size(bars_in(room), MIDDLE, 3, 10, steady=False) is None


def test_a_larger_size_may_fit_although_a_smaller_one_does_not():
    """As a text does that is broken into more lines when it grows."""

    def places(size, middles):
        return middles if size <= 10 or 20 <= size <= 31.02 else middles[:0]

    assert largest_size(places, MIDDLE, 3, 80, steady=False) == (31.0, (0.0, 0.0))


def test_a_height_asked_for_goes_where_it_fits_or_to_the_natural_place():
    room = box(0, 0, 100, 100)
    places = np.array([[-10.0, 50.0], [50.0, 50.0], [60.0, 50.0]])
    for within, height, place in ((room, 10, (50, 50)), (room, 90, (-10, 50)), (Polygon(), 10, (-10, 50))):
        assert first_place(lying_within(within, bar(height), places), places) == place


def test_turned_boxes_must_lie_within_by_their_corners():
    diamond = np.array([[[0.0, -5.0], [5.0, 0.0], [0.0, 5.0], [-5.0, 0.0]]])
    places = np.array([[0.0, 0.0], [3.0, 0.0]])
    assert quads_within(Point(0, 0).buffer(6), diamond, places).tolist() == [[0, 0]]
    assert len(quads_within(Polygon(), diamond, places)) == 0


def test_a_box_moves_aside_until_it_meets_a_hole_or_the_end_of_the_room():
    room = box(0, 0, 100, 40).difference(box(20, 10, 30, 20))
    for bounds, left, right in (((50, 12, 60, 15), 20, 40), ((50, 22, 60, 35), 50, 40), ((5, 5, 15, 12), 5, 5)):
        assert room_beside(room, bounds, "left") == pytest.approx(left)
        assert room_beside(room, bounds, "right") == pytest.approx(right)
