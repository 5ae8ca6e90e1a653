"""Curves through points that were drawn as chords."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.geometry.arcs import fit_all
from signgen.geometry.smooth import chained, smoothed


def ring(corners: int, radius: float = 10.0) -> np.ndarray:
    angles = np.linspace(0, 2 * math.pi, corners + 1)
    points = radius * np.column_stack([np.cos(angles), np.sin(angles)])
    points[-1] = points[0]
    return points


@pytest.mark.parametrize("corners", [8, 12, 16])
def test_a_regular_polygon_becomes_its_circle(corners: int) -> None:
    curve = smoothed(ring(corners), 1e-4)
    assert np.hypot(*curve.T) == pytest.approx(10.0, abs=1e-9)
    assert np.array_equal(curve[0], curve[-1])


@given(st.integers(5, 20), st.floats(0.5, 1.2), st.floats(0, 6))
def test_the_curve_goes_through_every_point_of_an_arc_and_stays_on_it(count: int, turn: float, start: float) -> None:
    angles = start + np.linspace(0, turn * math.pi, count)
    points = np.column_stack([np.cos(angles), np.sin(angles)])
    if turn * 180 / (count - 1) > 55:
        return
    curve = smoothed(points, 1e-5)
    for point in points:
        assert np.hypot(*(curve - point).T).min() < 1e-9
    # The ends have but one neighbour: there too the mirrored direction is that of the circle.
    assert np.hypot(*curve.T) == pytest.approx(1.0, abs=1e-6)


def test_corners_and_straight_lines_stay() -> None:
    square = np.array([(0, 0), (10, 0), (10, 10), (0, 10), (0, 0)], dtype=float)
    assert np.array_equal(smoothed(square, 1e-3), square)


def test_a_straight_line_runs_into_a_curve_without_a_kink() -> None:
    # A stem with a hook: the curve leaves along the stem.
    hook = np.array([(0, 20), (0, 4), (1, 1), (3, 0), (5, 0)], dtype=float)
    curve = smoothed(hook, 1e-4)
    assert np.array_equal(curve[:2], hook[:2])
    first = curve[2] - curve[1]
    assert math.degrees(math.atan2(first[0], -first[1])) < 2


def test_a_curve_becomes_arcs_and_not_facets() -> None:
    curve = smoothed(ring(12), 1e-4)
    (path,) = fit_all([np.column_stack([curve, np.zeros(len(curve))])], 0.005)
    assert len(path) <= 4
    assert (path.kinds != 0).all()


def test_lines_that_meet_are_one_and_forks_stay_apart() -> None:
    a, b, c = np.array([(0.0, 5), (0, 0)]), np.array([(5.0, 0), (0, 0)]), np.array([(5.0, 0), (9, 9)])
    (one,) = chained([a, b, c])
    assert one.tolist() == [[0, 5], [0, 0], [5, 0], [9, 9]]
    fork = np.array([(0.0, 0), (-5, 0)])
    assert len(chained([a, b, fork])) == 3
    assert len(chained([ring(8), np.array([(10.0, 0), (20, 0)])])) == 2
