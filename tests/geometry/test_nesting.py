"""Contours fill by the non-zero rule, whatever way they wind."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry.nesting import fill_nonzero, winding_numbers


def square(x, y, side):
    return np.array([[x, y], [x + side, y], [x + side, y + side], [x, y + side]], dtype=float)


def test_a_counter_that_winds_the_other_way_is_a_hole():
    assert fill_nonzero([square(0, 0, 10), square(2, 2, 3)[::-1]]).area == 91


def test_mirrored_winding_gives_the_same_area():
    assert fill_nonzero([square(0, 0, 10)[::-1], square(2, 2, 3)]).area == 91


def test_a_contour_inside_that_winds_the_same_way_changes_nothing():
    assert fill_nonzero([square(0, 0, 10), square(2, 2, 3)]).area == 100


def test_overlapping_contours_are_one_area_without_seam():
    filled = fill_nonzero([square(0, 0, 10), square(5, 5, 10)])
    assert (filled.area, filled.geom_type, len(filled.interiors)) == (175, "Polygon", 0)


def test_overlap_of_opposite_windings_cancels():
    assert fill_nonzero([square(0, 0, 10), square(5, 5, 10)[::-1]]).area == 150


def test_a_bow_tie_is_two_triangles():
    filled = fill_nonzero([[(0, 0), (10, 10), (10, 0), (0, 10)]])
    assert (filled.area, filled.geom_type) == (50, "MultiPolygon")


def test_a_pentagram_keeps_its_middle_which_is_wound_twice():
    # Even-odd would cut the inner pentagon out. Area of the star with unit circumradius, by the shoelace of
    # its ten corners: 5 R^2 sin(36) q with q = sin(18) / cos(36) = (3 - sqrt 5) / 2.
    corners = [(math.sin(4 * math.pi * k / 5), math.cos(4 * math.pi * k / 5)) for k in range(5)]
    expected = 5 * math.sin(math.radians(36)) * (3 - math.sqrt(5)) / 2
    assert fill_nonzero([corners]).area == pytest.approx(expected, rel=1e-12)


def test_an_island_in_a_hole_is_a_second_polygon():
    filled = fill_nonzero([square(0, 0, 20), square(4, 4, 12)[::-1], square(8, 8, 4)])
    assert filled.area == 400 - 144 + 16
    assert sorted(len(part.interiors) for part in filled.geoms) == [0, 1]


def test_each_hole_goes_to_the_innermost_shell_around_it():
    rings = [square(0, 0, 40), square(5, 5, 30)[::-1], square(10, 10, 20), square(15, 15, 10)[::-1]]
    assert fill_nonzero(rings).area == 1600 - 900 + 400 - 100


def test_contours_that_share_an_edge_merge():
    assert fill_nonzero([square(0, 0, 10), square(10, 0, 10)]).geom_type == "Polygon"


def test_a_contour_drawn_twice_is_filled_once():
    assert fill_nonzero([square(0, 0, 10), square(0, 0, 10)]).area == 100


def test_shells_come_out_counter_clockwise_and_holes_clockwise():
    filled = fill_nonzero([square(0, 0, 10)[::-1], square(2, 2, 3)])
    assert filled.exterior.is_ccw
    assert not filled.interiors[0].is_ccw


def test_repeated_and_closing_points_do_no_harm():
    ring = np.vstack([square(0, 0, 10), [[0, 10], [0, 0]]])
    assert fill_nonzero([ring]).area == 100


@pytest.mark.parametrize("contours", [[], [[(0, 0), (1, 1)]], [[(0, 0), (5, 0), (2, 0)]], [[(1, 1)] * 4]])
def test_contours_that_enclose_nothing_are_empty(contours):
    assert fill_nonzero(contours).is_empty


def test_a_coordinate_that_is_no_number_is_refused():
    with pytest.raises(ValueError):
        fill_nonzero([[(0, 0), (1, math.nan), (1, 1)]])


@settings(max_examples=60, deadline=None)
@given(st.integers(0, 10_000))
def test_a_random_point_is_filled_when_the_contours_wind_around_it(seed):
    random = np.random.default_rng(seed)
    contours = [
        random.uniform(0, 10, (random.integers(3, 9), 2)) + random.uniform(0, 8, 2)
        for _ in range(random.integers(1, 5))
    ]
    filled = fill_nonzero(contours)
    assert filled.is_valid
    at = random.uniform(0, 18, (200, 2))
    edges = shapely.union_all([shapely.linearrings(contour) for contour in contours])
    clear = shapely.distance(shapely.points(at), edges) > 1e-6
    inside = shapely.contains_xy(filled, at)
    np.testing.assert_array_equal(inside[clear], (winding_by_angle(at, contours) != 0)[clear])


def winding_by_angle(at, contours):
    """The definition: the angle that a contour sweeps as seen from the point, over a full turn."""
    total = np.zeros(len(at))
    for contour in contours:
        seen = np.arctan2(contour[:, 1] - at[:, 1:2], contour[:, 0] - at[:, 0:1])
        turn = np.diff(np.hstack([seen, seen[:, :1]]), axis=1)
        total += ((turn + np.pi) % (2 * np.pi) - np.pi).sum(axis=1)
    return np.rint(total / (2 * np.pi)).astype(int)


def test_winding_numbers_count_turns_and_their_sense():
    once, twice = square(0, 0, 10), [square(0, 0, 10), square(1, 1, 8)]
    assert winding_numbers([[5, 5], [11, 5]], [once]).tolist() == [1, 0]
    assert winding_numbers([[5, 5], [0.5, 5]], twice).tolist() == [2, 1]
    assert winding_numbers([[5, 5]], [once[::-1]]).tolist() == [-1]
