"""How long a program takes."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry.paths import CCW
from signgen.program.blocks import RAPID, Moves
from signgen.program.estimate import estimate
from signgen.shop.materials import Machine

MACHINE = Machine(
    name="test",
    label="test",
    travel_mm=(600.0, 400.0, 100.0),
    top_feed_mm_per_min=(6000.0, 6000.0, 1500.0),
    rapid_mm_per_min=(6000.0, 6000.0, 3000.0),
    acceleration_mm_per_s2=(200.0, 200.0, 100.0),
    corner_tolerance_mm=0.02,
    spindle_min_rpm=8000.0,
    spindle_max_rpm=24000.0,
    spindle_start_s=4.0,
    collet_series=11,
    source="test",
)


def moves(points: list[tuple[float, float, float]], feed: float, kind: int = 0) -> Moves:
    n = len(points)
    return Moves(
        kinds=np.full(n, kind, np.uint8),
        ends_mm=np.array(points, dtype=float),
        centres_mm=np.full((n, 2), np.nan),
        feeds_mm_per_min=np.full(n, feed if kind != RAPID else 0.0),
    )


def seconds(program: Moves) -> float:
    return estimate(program, MACHINE, (0.0, 0.0, 0.0), 0.0).minutes * 60


def test_a_long_line_speeds_up_runs_and_slows_down() -> None:
    # v = 20 mm/s, a = 200: 0.1 s and 1 mm each for speeding up and slowing down, 98 mm at 20 mm/s between.
    assert seconds(moves([(100, 0, 0)], 1200.0)) == pytest.approx(0.2 + 98 / 20)


def test_a_short_line_never_reaches_its_feed() -> None:
    # Triangle: s = a t^2 / 4, so t = 2 sqrt(s / a).
    assert seconds(moves([(0.5, 0, 0)], 6000.0)) == pytest.approx(2 * math.sqrt(0.5 / 200))


def test_a_line_in_two_halves_takes_no_longer() -> None:
    assert seconds(moves([(30, 0, 0), (100, 0, 0)], 1200.0)) == pytest.approx(seconds(moves([(100, 0, 0)], 1200.0)))


def test_a_turn_back_stops_in_between() -> None:
    there_and_back = seconds(moves([(50, 0, 0), (0, 0, 0)], 1200.0))
    assert there_and_back == pytest.approx(2 * seconds(moves([(50, 0, 0)], 1200.0)))


def test_a_right_angle_is_passed_at_the_touching_circles_speed() -> None:
    # v^2 = a d s / (1 - s), s = sin 45 degrees: 200 x 0.02 x 2.4142 = 9.657.
    corner = math.sqrt(200 * 0.02 * math.sin(math.pi / 4) / (1 - math.sin(math.pi / 4)))
    half = (20 - corner) / 200 + 0.1 + (50 - (400 - corner**2) / 400 - 1) / 20
    assert seconds(moves([(50, 0, 0), (50, 50, 0)], 1200.0)) == pytest.approx(2 * half)


def test_a_rapid_ignores_feeds_and_the_slow_axis_rules() -> None:
    # Straight up 100 mm: 50 mm/s, a = 100: 0.5 s and 12.5 mm at both ends, 75 mm between.
    assert seconds(moves([(0, 0, 100)], 0.0, RAPID)) == pytest.approx(1.0 + 75 / 50)


def test_lengths_are_of_cutting_and_of_travel() -> None:
    circle = Moves(
        kinds=np.array([RAPID, CCW], np.uint8),
        ends_mm=np.array([[10.0, 0, 0], [10.0, 0, 0]]),
        centres_mm=np.array([[np.nan, np.nan], [0.0, 0.0]]),
        feeds_mm_per_min=np.array([0.0, 1200.0]),
    )
    found = estimate(circle, MACHINE, (0.0, 0.0, 0.0), 3.0)
    assert found.travel_length_mm == pytest.approx(10.0)
    assert found.cut_length_mm == pytest.approx(20 * math.pi)


def stepped(points: list[tuple[float, float]], feed: float) -> float:
    """The same limits integrated at 1 ms, forwards with an eye on every stop ahead: an independent reference."""
    a, dt = 200.0, 1e-3
    nodes = np.vstack([[0.0, 0.0], points])
    steps = np.diff(nodes, axis=0)
    length = np.hypot(*steps.T)
    units = steps / length[:, None]
    limit = [0.0]
    for one, other in itertools.pairwise(units):
        s = math.sqrt(max(0.0, (1 + float(one @ other)) / 2))
        accel = min(a / np.abs(one).max(), a / np.abs(other).max())
        limit.append(min(feed, math.sqrt(accel * 0.02 * s / max(1 - s, 1e-9))))
    limit.append(0.0)
    ends = np.cumsum(length)
    at = v = t = 0.0
    i = 0
    while i < len(length):
        own = a / np.abs(units[i]).max()
        allowed = feed
        brake = 0.0
        for j in range(i, min(i + 12, len(length))):  # the fastest now from which every later limit can still be met
            accel = a / np.abs(units[j]).max()
            brake += 2 * accel * (ends[j] - (at if j == i else ends[j - 1]))
            allowed = min(allowed, math.sqrt(max(0.0, limit[j + 1] ** 2 + brake)))
        v = max(min(v + own * dt, allowed), 1e-3)
        at += v * dt
        t += dt
        while i < len(length) and at >= ends[i] - 1e-6:
            i += 1
    return t


@settings(max_examples=40)
@given(
    st.lists(st.tuples(st.floats(0.5, 30), st.floats(-2.8, 2.8)), min_size=1, max_size=8),
    st.sampled_from([600.0, 1500.0]),
)
def test_agrees_with_an_integration_at_one_millisecond(legs: list[tuple[float, float]], feed: float) -> None:
    at, heading, points = np.zeros(2), 0.0, []
    for leg, turn in legs:
        heading += turn
        at = at + leg * np.array([math.cos(heading), math.sin(heading)])
        points.append((float(at[0]), float(at[1])))
    found = seconds(moves([(x, y, 0.0) for x, y in points], feed))
    assert found == pytest.approx(stepped(points, feed / 60), rel=0.02, abs=0.02)
