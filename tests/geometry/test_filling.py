"""Many drawings filled at once give what each gives by itself."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry.filling import MOST_PAIRED, fill_each
from signgen.geometry.nesting import fill_nonzero, winding_numbers


def ring(size: float, x: float = 0.0, y: float = 0.0, ccw: bool = True) -> np.ndarray:
    square = np.array([(-1, -1), (1, -1), (1, 1), (-1, 1)], dtype=float) * size + (x, y)
    return square if ccw else square[::-1]


def fill(*drawings: list[np.ndarray]) -> tuple[shapely.Geometry, ...]:
    contours = [contour for drawing in drawings for contour in drawing]
    owners = np.repeat(np.arange(len(drawings)), [len(drawing) for drawing in drawings])
    starts = np.concatenate([[0], np.cumsum([len(contour) for contour in contours], dtype=int)])
    points = np.concatenate(contours) if contours else np.empty((0, 2))
    return fill_each(points, starts, owners, len(drawings))


def test_a_hole_is_cut_from_the_smallest_shell_around_it() -> None:
    letter_with_island = [ring(10), ring(8, ccw=False), ring(5), ring(3, ccw=False)]
    plain, empty, islands = fill([ring(1, ccw=False)], [], letter_with_island)
    assert plain.area == 4
    assert empty.is_empty
    assert sorted((part.area, len(part.interiors)) for part in islands.geoms) == [(64, 1), (144, 1)]


def test_a_second_contour_of_the_same_turn_inside_changes_nothing() -> None:
    (area,) = fill([ring(10), ring(4)])
    assert area.area == 400


def test_overlapping_and_touching_contours_become_one() -> None:
    crossing, touching = fill([ring(2), ring(2, x=3, ccw=True)], [ring(1), ring(1, x=2)])
    assert (crossing.area, crossing.geom_type) == (16 + 16 - 4, "Polygon")
    assert (touching.area, touching.geom_type) == (8, "Polygon")


@pytest.mark.parametrize("ccw", [True, False])
def test_a_hole_stays_open_but_where_another_stroke_lies_over_it(ccw: bool) -> None:
    ringed = [ring(10, ccw=ccw), ring(6, ccw=not ccw)]
    beside, across = fill([*ringed, ring(3, x=11, ccw=ccw)], [*ringed, ring(3, x=6, ccw=ccw)])
    assert beside.area == 400 - 144 + 36 - 2 * 6  # its left 2 mm lie on the frame
    assert across.area == 400 - 144 + 3 * 6  # its left half lies in the hole
    assert (len(beside.interiors), len(across.interiors)) == (1, 1)


def test_a_contour_that_crosses_itself_is_filled_by_winding() -> None:
    star = np.array([(math.cos(2 * a), math.sin(2 * a)) for a in np.arange(5) * 2 * math.pi / 5])
    (area,) = fill([star])
    assert area.contains(shapely.Point(0, 0))  # wound around twice: filled; even-odd would leave it open


def test_drawings_lie_over_each_other_without_mixing() -> None:
    one, other = fill([ring(3)], [ring(2), ring(1, ccw=False)])
    assert (one.area, other.area) == (36, 12)


def test_repeated_points_and_slivers_of_two_points_are_left_out() -> None:
    doubled = np.repeat(ring(1), 3, axis=0)
    (area,) = fill([doubled, np.array([(0.0, 0.0), (1.0, 1.0)]), np.zeros((4, 2))])
    assert area.area == 4
    assert len(area.exterior.coords) == 5


def test_more_contours_than_are_compared_in_pairs() -> None:
    many = [ring(1, x=3 * i) for i in range(MOST_PAIRED + 1)]
    (area,) = fill(many)
    assert len(area.geoms) == MOST_PAIRED + 1


def test_refuses_what_is_no_number() -> None:
    with pytest.raises(ValueError, match="finite"):
        fill([np.array([(0, 0), (1, 0), (np.nan, 1)])])


squares = st.lists(
    st.builds(
        ring,
        st.integers(1, 12).map(float),
        st.integers(-8, 8).map(float),
        st.integers(-8, 8).map(float),
        st.booleans(),
    ),
    max_size=6,
)


@settings(max_examples=150, deadline=None)
@given(drawings=st.lists(squares, min_size=1, max_size=4))
def test_is_the_same_as_one_by_one_and_as_counting_windings(drawings: list[list[np.ndarray]]) -> None:
    probes = np.random.default_rng(1).uniform(-22, 22, (60, 2))
    for drawing, area in zip(drawings, fill(*drawings), strict=True):
        assert area.is_valid
        assert area.symmetric_difference(fill_nonzero(drawing)).area < 1e-9
        for part in shapely.get_parts(area):
            assert part.exterior.is_ccw
            assert not any(hole.is_ccw for hole in part.interiors)
        expected = winding_numbers(probes, drawing) != 0 if drawing else np.zeros(60, bool)
        assert np.array_equal(shapely.contains_xy(area, probes), expected)
