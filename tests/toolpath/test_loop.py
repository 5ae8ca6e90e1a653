"""Walking round a closed path."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.geometry.paths import CCW, CW, LINE, Path
from signgen.toolpath.loop import Loop


def stadium(straight_mm: float = 40.0, radius_mm: float = 5.0) -> Path:
    """Two straights and two half circles, counter-clockwise from (0, 0)."""
    a, r = straight_mm, radius_mm
    return Path(
        points_mm=np.array([[0, 0, 0], [a, 0, 0], [a, 2 * r, 0], [0, 2 * r, 0], [0, 0, 0]], dtype=float),
        kinds=np.array([LINE, CCW, LINE, CCW], dtype=np.uint8),
        centres_mm=np.array([[np.nan, np.nan], [a, r], [np.nan, np.nan], [0, r]]),
    )


def test_length_is_the_stadiums_perimeter() -> None:
    # Source: plane geometry, derived here, stadium with straight 40 and radius 5: perimeter 111.416.
    assert Loop.of(stadium()).length_mm == pytest.approx(111.416, abs=5e-4)


def test_an_open_path_is_no_loop() -> None:
    with pytest.raises(ValueError, match="ends where it starts"):
        Loop.of(
            Path(
                points_mm=np.zeros((2, 3)) + [[0], [1]], kinds=np.zeros(1, np.uint8), centres_mm=np.full((1, 2), np.nan)
            )
        )


def test_places_on_an_arc_lie_on_its_circle() -> None:
    loop = Loop.of(stadium())
    x, y = loop.at(40 + math.pi * 5 / 2)
    assert (x, y) == pytest.approx((45.0, 5.0))


def test_the_nearest_place_to_a_point_beside_the_path() -> None:
    loop = Loop.of(stadium())
    assert loop.nearest(17.3, -4.0) == pytest.approx(17.3, abs=1e-3)


@given(st.floats(-200, 200), st.floats(0.01, 300))
def test_a_walk_is_as_long_as_the_distance_gone(start: float, gone: float) -> None:
    path = Loop.of(stadium()).walk([(start, 3.0), (start + gone, 3.0)])
    assert path.length_mm == pytest.approx(gone, rel=1e-9, abs=1e-7)


@given(st.floats(-200, 200), st.floats(0.01, 300))
def test_walking_back_is_the_same_way(start: float, gone: float) -> None:
    loop = Loop.of(stadium())
    there = loop.walk([(start, 3.0), (start + gone, 1.0)])
    back = loop.walk([(start + gone, 1.0), (start, 3.0)])
    assert np.allclose(there.reversed().points_mm, back.points_mm, atol=1e-9)
    assert np.array_equal(there.reversed().kinds, back.kinds)


def test_height_changes_evenly_along_the_way() -> None:
    path = Loop.of(stadium()).walk([(30.0, 10.0), (50.0, 8.0)])
    assert path.points_mm[0, 2] == 10.0
    assert path.points_mm[-1, 2] == pytest.approx(8.0)
    assert path.points_mm[1, 2] == pytest.approx(9.0)  # after 10 of 20 mm, at the end of the straight
    assert path.kinds.tolist() == [LINE, CCW]


def test_arcs_turn_the_other_way_when_walked_backwards() -> None:
    path = Loop.of(stadium()).walk([(50.0, 0.0), (30.0, 0.0)])
    assert path.kinds.tolist() == [CW, LINE]


def test_standing_still_goes_straight_up() -> None:
    path = Loop.of(stadium()).walk([(10.0, -0.3), (10.0, 1.5)])
    assert path.points_mm.tolist() == [[10.0, 0.0, -0.3], [10.0, 0.0, 1.5]]
