"""Going down is never steeper than the angle, goes all the way, and leaves no slope behind."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.geometry.arcs import fit
from signgen.geometry.paths import CCW, CW, joined, polyline
from signgen.toolpath.entry import beginning, helix_into, ramp_into

ANGLE = st.floats(0.5, 45)


def steepest_deg(path):
    down = -np.diff(path.points_mm[:, 2])
    level = np.sqrt(np.maximum(path.lengths_mm**2 - down**2, 0))
    return float(np.degrees(np.arctan2(down, level)).max())


def bent():
    """An open path of a line, a quarter turn and a line: 20 + 5 pi + 10 long."""
    quarter = np.linspace(0, math.pi / 2, 100)
    corner = np.stack([20 + 10 * np.sin(quarter), 10 - 10 * np.cos(quarter), 0 * quarter], axis=1)
    return joined([polyline([(0, 0, 0), (20, 0, 0)]), fit(corner, 0.001), polyline([(30, 10, 0), (30, 20, 0)])])


SQUARE = polyline([(0, 0, 0), (10, 0, 0), (10, 10, 0), (0, 10, 0), (0, 0, 0)])


def test_a_helix_of_known_pitch():
    # Source: hole 10, tool 6, pitch 1: path radius 2, angle 4.550 degrees, 12.606 mm a turn (plane geometry).
    path = helix_into(5, 7, 2, 3, 0, math.degrees(math.atan(1 / (4 * math.pi))))
    assert len(path) == 6 + 2
    assert path.lengths_mm[:2].sum() == pytest.approx(12.606, abs=5e-4)
    assert steepest_deg(path) == pytest.approx(4.550, abs=5e-4)
    assert set(path.kinds) == {CCW}
    assert path.points_mm[0].tolist() == [7, 7, 3]
    assert path.points_mm[-1].tolist() == [7, 7, 0]


@given(st.floats(0.2, 20), st.floats(0, 12), ANGLE, st.booleans())
def test_a_helix_is_never_too_steep_and_ends_with_a_full_turn(radius, drop, angle, clockwise):
    path = helix_into(0, 0, radius, drop, 0, angle, clockwise=clockwise)
    assert steepest_deg(path) <= angle * (1 + 1e-6)
    assert path.points_mm[-3:, 2].tolist() == [0, 0, 0]
    assert set(path.kinds) == {CW if clockwise else CCW}
    np.testing.assert_allclose(np.abs(path.sweeps_rad), math.pi)
    # Equal half turns: no more of them than the angle needs, but for making whole turns.
    assert len(path) - 2 <= math.ceil(drop / math.tan(math.radians(angle)) / (math.pi * radius)) + 1


@given(st.floats(0.01, 12), ANGLE)
def test_a_ramp_round_a_loop_keeps_its_direction_and_ends_where_the_loop_starts(drop, angle):
    path = ramp_into(SQUARE, drop, 0, angle)
    run = drop / math.tan(math.radians(angle))
    assert steepest_deg(path) == pytest.approx(angle, rel=1e-6)
    assert path.points_mm[-1].tolist() == [0, 0, 0]
    flat = path.points_mm[:, 2] == 0
    assert np.hypot(*np.diff(path.points_mm[flat][:, :2], axis=0).T).sum() == pytest.approx(40)
    assert np.hypot(*np.diff(path.points_mm[:, :2], axis=0).T).sum() == pytest.approx(40 + run)
    step = np.diff(path.points_mm[:, :2], axis=0)
    middle = (path.points_mm[1:, :2] + path.points_mm[:-1, :2]) / 2 - 5
    assert np.all(middle[:, 0] * step[:, 1] - middle[:, 1] * step[:, 0] > 0)


@given(st.floats(0.01, 12), ANGLE)
def test_a_ramp_along_an_open_path_zigzags_and_then_goes_all_the_way(drop, angle):
    path = ramp_into(bent(), drop, 0, angle)
    assert steepest_deg(path) <= angle * (1 + 1e-6)
    assert path.points_mm[0].tolist() == [0, 0, drop]
    assert path.points_mm[-1].tolist() == [30, 20, 0]
    whole = path.points_mm[-len(bent().points_mm) :]
    np.testing.assert_allclose(whole[:, :2], bent().points_mm[:, :2])
    assert np.all(whole[:, 2] == 0)
    assert np.all(np.diff(path.points_mm[:, 2]) <= 0)


def test_a_short_slot_is_ramped_in_many_legs():
    path = ramp_into(polyline([(0, 0, 0), (2, 0, 0)]), 1, 0, 5)
    # 1 / tan 5 = 11.43 mm of way on 2 mm of slot: six legs, then the slot.
    assert len(path) == 6 + 1
    assert steepest_deg(path) == pytest.approx(5)


def test_nothing_to_go_down_is_the_path_alone():
    assert len(ramp_into(SQUARE, 2, 2, 3)) == 4


def test_the_beginning_of_a_path_may_end_within_an_arc():
    part = beginning(bent(), 20 + 2.5 * math.pi)
    assert part.length_mm == pytest.approx(20 + 2.5 * math.pi, abs=1e-3)
    assert part.points_mm[-1, :2] == pytest.approx((20 + 10 * math.sqrt(0.5), 10 - 10 * math.sqrt(0.5)), abs=2e-3)


@pytest.mark.parametrize(("z_from", "z_to", "angle"), [(0, 1, 3), (1, 0, 0), (1, 0, 90), (1, 0, math.nan)])
def test_nonsense_is_refused(z_from, z_to, angle):
    with pytest.raises(ValueError):
        helix_into(0, 0, 1, z_from, z_to, angle)
    with pytest.raises(ValueError):
        ramp_into(SQUARE, z_from, z_to, angle)


def test_a_helix_or_ramp_without_room_is_refused():
    with pytest.raises(ValueError):
        helix_into(0, 0, 0, 1, 0, 3)
    with pytest.raises(ValueError):
        ramp_into(polyline([(1, 1, 0)]), 1, 0, 3)
