"""Chords stay within their tolerance of the curve and meet it at both ends."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from signgen.geometry.curves import flatten_cubics, flatten_quadratics

CONTROL = st.floats(-100, 100, allow_nan=False, width=32)


def distance_to_chords(points, chain):
    """Of each of (k, 2) points to the nearest of the chain's chords."""
    a, b = chain[:-1], chain[1:]
    step = b - a
    squared = np.maximum((step**2).sum(axis=1), 1e-300)
    t = np.clip(((points[:, None] - a) * step).sum(axis=2) / squared, 0, 1)
    return np.sqrt((((a + t[..., None] * step) - points[:, None]) ** 2).sum(axis=2)).min(axis=1)


@given(arrays(float, (3, 2), elements=CONTROL), st.floats(0.005, 1))
def test_no_point_of_a_quadratic_is_further_from_the_chords_than_the_tolerance(p, tolerance):
    points, _ = flatten_quadratics(p[0], p[1], p[2], tolerance)
    t = np.linspace(0, 1, 301)[:, None]
    curve = (1 - t) ** 2 * p[0] + 2 * t * (1 - t) * p[1] + t**2 * p[2]
    assert distance_to_chords(curve, np.vstack([p[0], points])).max() <= tolerance + 1e-9


@given(arrays(float, (4, 2), elements=CONTROL), st.floats(0.005, 1))
def test_no_point_of_a_cubic_is_further_from_the_chords_than_the_tolerance(p, tolerance):
    points, _ = flatten_cubics(p[0], p[1], p[2], p[3], tolerance)
    t = np.linspace(0, 1, 301)[:, None]
    curve = (1 - t) ** 3 * p[0] + 3 * t * (1 - t) ** 2 * p[1] + 3 * t**2 * (1 - t) * p[2] + t**3 * p[3]
    assert distance_to_chords(curve, np.vstack([p[0], points])).max() <= tolerance + 1e-9


def test_the_parabola_through_its_known_points():
    # (0,0) (5,10) (10,0): |p0 - 2 p1 + p2| = 20, so ceil(sqrt(20 / (4 x 0.2))) = 5 chords; y = 20 t (1 - t).
    points, starts = flatten_quadratics([0, 0], [5, 10], [10, 0], 0.2)
    assert starts.tolist() == [0, 5]
    np.testing.assert_allclose(points, [[2, 3.2], [4, 4.8], [6, 4.8], [8, 3.2], [10, 0]], atol=1e-12)


def test_a_batch_gives_what_its_curves_give_alone():
    p = np.random.default_rng(7).uniform(-50, 50, (4, 20, 2))
    points, starts = flatten_cubics(*p, 0.01)
    for i in range(20):
        alone, _ = flatten_cubics(*p[:, i], 0.01)
        np.testing.assert_array_equal(points[starts[i] : starts[i + 1]], alone)


def test_a_curve_that_is_straight_is_one_chord_that_ends_exactly():
    end = [0.1 + 0.2, 1 / 3]
    points, _ = flatten_quadratics([0, 0], np.array(end) / 2, end, 0.001)
    assert points.tolist() == [end]


def test_no_curves_give_no_points():
    points, starts = flatten_quadratics(np.empty((0, 2)), np.empty((0, 2)), np.empty((0, 2)), 0.1)
    assert (points.shape, starts.tolist()) == ((0, 2), [0])


def test_a_tolerance_of_zero_is_refused():
    with pytest.raises(ValueError):
        flatten_quadratics([0, 0], [1, 1], [2, 0], 0.0)
