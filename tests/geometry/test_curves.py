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


def test_chords_of_a_parabola_stray_evenly_and_are_fewer_than_evenly_spread_ones():
    # y = x^2 over 0..10 from its control points. Its chord over x to x + h strays by h^2 / 4 downwards, which is
    # h^2 / 4 / sqrt(1 + (2x + h)^2) across, so long chords do where it is steep. Evenly spread, sqrt(100 / 4 / 0.01) =
    # 50 of them would be needed; the integral of the root of the stray gives 19.4.
    points, _ = flatten_quadratics([0, 0], [5, 0], [10, 100], 0.01)
    x = np.append(0.0, points[:, 0])
    stray = np.diff(x) ** 2 / 4 / np.sqrt(1 + (x[:-1] + x[1:]) ** 2)
    t = np.linspace(0, 10, 10001)
    best = np.trapezoid((1 + 4 * t**2) ** -0.25, t) / np.sqrt(4 * 0.01)
    assert np.ceil(best) <= len(points) <= np.ceil(best) + 1 < 50 / 2
    assert 0.7 * 0.01 < stray.min() <= stray.max() <= 0.01 * (1 + 1e-9)


@given(arrays(float, (4, 2), elements=CONTROL), st.floats(0.005, 1))
def test_a_cubic_never_takes_more_chords_than_evenly_spread_ones(p, tolerance):
    # Linear interpolation over a step h errs by h^2 / 8 times the second derivative (any text on numerical analysis).
    worst = 6 * max(np.hypot(*(p[0] - 2 * p[1] + p[2])), np.hypot(*(p[1] - 2 * p[2] + p[3])))
    points, _ = flatten_cubics(p[0], p[1], p[2], p[3], tolerance)
    assert len(points) <= max(1, np.ceil(np.sqrt(worst / 8 / tolerance) * (1 + 1e-12)))


def test_a_curve_that_turns_back_reaches_its_furthest_point():
    # Straight, out to 5 and back: the points do not stray from a chord, but the curve goes beyond it.
    points, _ = flatten_quadratics([0, 0], [10, 0], [0, 0.001], 0.01)
    assert 5 - 0.01 <= points[:, 0].max() <= 5


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
