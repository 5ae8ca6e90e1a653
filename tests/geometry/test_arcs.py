"""Lines and arcs stay by their chain, in both directions and in (x, y, w), and obey the law of arc centres."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry import arcs
from signgen.geometry.arcs import MAX_RADIUS_MM, MIN_RADIUS_MM, fit, fit_all, fit_ring, fit_rings
from signgen.geometry.paths import CCW, CW, LINE

TOLERANCE = 0.005
STEP_MM = 0.002


def walked(path, step_mm=STEP_MM):
    """Points along a path, arcs by their angle: written here apart from the code under test."""
    out = [path.points_mm[:1]]
    for i, kind in enumerate(path.kinds):
        a, b = path.points_mm[i], path.points_mm[i + 1]
        if kind == LINE:
            n = max(2, int(np.linalg.norm(b - a) / step_mm))
            t = np.arange(1, n + 1)[:, None] / n
            out.append(a + t * (b - a))
            continue
        c = path.centres_mm[i]
        radius = math.dist(a[:2], c)
        from_, to = math.atan2(*(a[:2] - c)[::-1]), math.atan2(*(b[:2] - c)[::-1])
        sweep = (to - from_) % (2 * math.pi) if kind == CCW else -((from_ - to) % (2 * math.pi))
        n = max(2, int(math.hypot(sweep * radius, b[2] - a[2]) / step_mm))
        t = np.arange(1, n + 1) / n
        turned = from_ + sweep * t
        w = a[2] + t * (b[2] - a[2])
        out.append(np.stack([c[0] + radius * np.cos(turned), c[1] + radius * np.sin(turned), w], axis=1))
    return np.concatenate(out)


def densified(points, step_mm=STEP_MM):
    size = np.maximum(1, np.ceil(np.linalg.norm(np.diff(points, axis=0), axis=1) / step_mm)).astype(int)
    pieces = [a + np.arange(n)[:, None] / n * (b - a) for a, b, n in zip(points, points[1:], size, strict=False)]
    return np.concatenate([*pieces, points[-1:]])


def farthest(of, from_):
    """The greatest |XY| + |w| distance of samples from the nearest others, by the 1-norm over (|XY|, w)."""
    from scipy.spatial import cKDTree

    near = cKDTree(from_).query(of, k=24)[1]
    apart = np.abs(from_[near] - of[:, None])
    return (np.hypot(apart[..., 0], apart[..., 1]) + apart[..., 2]).min(axis=1).max()


def wavy(seed, n=400, size=20.0):
    """A smooth chain with a few true corners, w varying slowly as radii along a letter do."""
    random = np.random.default_rng(seed)
    s = np.linspace(0, 1, n)
    x, y = size * s, np.zeros(n)
    for frequency in (2, 5, 9):
        x += random.normal(0, size / frequency**1.6 / 8) * np.sin(2 * np.pi * frequency * s + random.uniform(0, 7))
        y += random.normal(0, size / frequency**1.6 / 2) * np.sin(2 * np.pi * frequency * s + random.uniform(0, 7))
    for at in random.uniform(0.2, 0.8, random.integers(0, 3)):
        y += random.uniform(5, 30) * np.abs(s - at)
    w = random.uniform(0, 1) * np.sin(random.uniform(1, 12) * s)
    return np.stack([x, y, w], axis=1)


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10**6), st.sampled_from([0.002, 0.005, 0.02]))
def test_the_path_and_the_chain_stay_within_the_tolerance_of_each_other(seed, tolerance):
    chain = wavy(seed)
    path = fit(chain, tolerance)
    cut, design = walked(path), densified(chain)
    assert farthest(design, cut) <= tolerance + STEP_MM * math.sqrt(0.5)
    assert farthest(cut, design) <= tolerance + STEP_MM * math.sqrt(0.5)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10**6))
def test_arcs_are_lawful_after_rounding_to_four_decimals(seed):
    """Source: NIST IR 6556 allows 0.002 mm between the radii at both ends."""
    path = fit(wavy(seed), TOLERANCE)
    bent = path.kinds != LINE
    assert np.all(np.abs(path.sweeps_rad[bent]) <= math.pi + 1e-9)
    start, end = np.round(path.points_mm[:-1, :2], 4)[bent], np.round(path.points_mm[1:, :2], 4)[bent]
    toward = np.round(path.centres_mm[bent] - start, 4)
    radius = np.hypot(*toward.T)
    assert np.all(np.abs(radius - np.hypot(*(start + toward - end).T)) <= 0.001)
    assert np.all((radius >= MIN_RADIUS_MM - 1e-4) & (radius <= MAX_RADIUS_MM + 1e-4))


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10**6))
def test_ends_are_points_of_the_chain_in_order_and_corners_are_kept(seed):
    chain = wavy(seed)
    path = fit(chain, TOLERANCE)
    index = [int(np.flatnonzero((chain == point).all(axis=1))[0]) for point in path.points_mm]
    assert index[0] == 0
    assert index[-1] == len(chain) - 1
    assert index == sorted(index)
    step = np.diff(chain[:, :2], axis=0)
    heading = np.arctan2(step[:, 1], step[:, 0])
    turn = np.abs((np.diff(heading) + np.pi) % (2 * np.pi) - np.pi)
    assert set(np.flatnonzero(turn > math.radians(20)) + 1) <= set(index)


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10**6), st.floats(0, 6.28), st.floats(-300, 300), st.booleans())
def test_turning_moving_and_mirroring_change_nothing(seed, turn, shift, mirror):
    chain = wavy(seed)
    c, s = math.cos(turn), math.sin(turn)
    flip = -1 if mirror else 1
    moved = chain @ np.array([[c, s, 0], [-s * flip, c * flip, 0], [0, 0, 1]]) + [shift, -shift, 0]
    before, after = fit(chain, TOLERANCE), fit(moved, TOLERANCE)
    # Rounding may decide a close call differently, here and there.
    assert abs(len(before) - len(after)) <= 1 + len(before) // 20


@settings(max_examples=20, deadline=None)
@given(st.integers(0, 10**6))
def test_many_runners_need_hardly_more_than_one_alone(seed):
    chain = wavy(seed, n=1500, size=60)
    many = fit(chain, TOLERANCE)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(arcs, "_TRACK_SEGMENTS", 10**9)
        one = fit(chain, TOLERANCE)
    assert abs(len(many) - len(one)) <= 2 + len(one) // 30


def test_chains_together_give_what_they_give_alone():
    chains = [wavy(seed, n=10 + 40 * seed) for seed in range(6)]
    for together, chain in zip(fit_all(chains, TOLERANCE), chains, strict=True):
        alone = fit(chain, TOLERANCE)
        np.testing.assert_array_equal(together.points_mm, alone.points_mm)
        np.testing.assert_array_equal(together.centres_mm, alone.centres_mm)


def circle(radius, n, start=0.0, turn=2 * math.pi, rise=0.0):
    t = np.linspace(0, 1, n + 1)
    angle = start + turn * t
    return np.stack([radius * np.cos(angle), radius * np.sin(angle), rise * t], axis=1)


def test_a_circle_is_two_half_turns_that_close_exactly():
    path = fit_ring(circle(10, 400), 0.004)
    assert path.kinds.tolist() == [CCW, CCW]
    np.testing.assert_array_equal(path.points_mm[0], path.points_mm[-1])
    # The chords lie up to R (1 - cos(pi / 400)) = 0.0003 inside the circle; the arcs run midway.
    np.testing.assert_allclose(path.sweeps_rad, math.pi, atol=1e-4)
    np.testing.assert_allclose(path.centres_mm, 0, atol=2e-4)


def test_a_quarter_turn_that_falls_is_one_clockwise_helix():
    path = fit(circle(25, 90, start=1.0, turn=-math.pi / 2, rise=-3), 0.005)
    assert path.kinds.tolist() == [CW]
    assert path.length_mm == pytest.approx(math.hypot(25 * math.pi / 2, 3), abs=0.005)


def test_a_fall_that_speeds_up_breaks_the_helix():
    chain = circle(25, 90, turn=math.pi / 2)
    chain[:, 2] = np.linspace(0, 1, 91) ** 2
    assert len(fit(chain, 0.005)) > 3
    assert len(fit(chain, 0.3)) == 1  # t^2 strays from t by 1/4


def test_a_straight_chain_is_one_line():
    chain = np.stack([np.linspace(0, 50, 40), np.linspace(0, 20, 40), np.linspace(1, 2, 40)], axis=1)
    path = fit(chain, 0.001)
    assert (len(path), path.kinds[0]) == (1, LINE)


def test_a_rounded_rectangle_is_four_lines_and_four_arcs():
    corner = circle(8, 60, turn=math.pi / 2)[:, :2]
    turned = [corner @ np.linalg.matrix_power([[0, 1], [-1, 0]], quarter) for quarter in range(4)]
    shift = [(42, 22), (-42, 22), (-42, -22), (42, -22)]
    ring = np.concatenate([arc + to for arc, to in zip(turned, shift, strict=True)])
    path = fit_ring(np.column_stack([ring, np.zeros(len(ring))]), 0.005)
    assert path.kinds.tolist() == [LINE, CCW] * 4
    assert np.hypot(*(path.points_mm[1] - path.points_mm[0])[:2]) == pytest.approx(84, abs=0.5)
    np.testing.assert_allclose(np.hypot(*(path.points_mm[1:-1:2, :2] - path.centres_mm[1::2]).T), 8, atol=0.005)


def test_a_ring_with_corners_starts_at_the_sharpest():
    triangle = np.array([[0, 0, 0], [30, 0, 0], [0, 10, 0]], dtype=float)
    path = fit_ring(triangle, 0.005)
    assert path.points_mm[0].tolist() == path.points_mm[-1].tolist() == [30, 0, 0]
    assert len(path) == 3


def test_a_curve_flatter_than_the_greatest_radius_is_lines():
    assert set(fit(circle(3000, 200, turn=0.05), 0.004).kinds) == {LINE}


def test_no_arc_is_tighter_than_the_least_radius():
    path = fit(circle(0.08, 40, turn=3.0), 0.002, corner_deg=60)
    bent = path.kinds != LINE
    assert np.all(np.hypot(*(path.points_mm[:-1, :2] - path.centres_mm)[bent].T) >= MIN_RADIUS_MM - 1e-9)
    assert not bent.all()


def test_way_straight_down_stays():
    path = fit([[0, 0, 5], [0, 0, 0], [10, 0, 0]], 0.005)
    assert path.points_mm.tolist() == [[0, 0, 5], [0, 0, 0], [10, 0, 0]]


def test_a_chain_that_doubles_back_is_not_cut_short():
    path = fit([[0, 0, 0], [10, 0, 0], [4, 0, 0], [12, 0, 0]], 0.005, corner_deg=180)
    assert path.length_mm == pytest.approx(10 + 6 + 8)


def test_one_point_is_a_place_to_plunge_and_repeats_are_dropped():
    assert len(fit([[1, 2, 3]], 0.005)) == 0
    assert fit([[1, 2, 3], [1, 2, 3]], 0.005).points_mm.tolist() == [[1, 2, 3]]
    assert len(fit([[0, 0, 0], [1, 0, 0], [1, 0, 0], [2, 0, 0]], 0.005)) == 1


def test_no_chains_give_no_paths():
    assert fit_all([], 0.005) == fit_rings([], 0.005) == []


@pytest.mark.parametrize(
    ("chain", "tolerance"), [([[0, 0]], 0.01), (np.empty((0, 3)), 0.01), ([[0, 0, math.nan]], 0.01), ([[0, 0, 0]], 0.0)]
)
def test_nonsense_is_refused(chain, tolerance):
    with pytest.raises(ValueError):
        fit(chain, tolerance)
