"""Middle lines of strokes of even width."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.affinity import rotate
from shapely.geometry import LineString, MultiLineString, Point, Polygon

from signgen.geometry.centreline import CentreLines, centrelines
from signgen.tolerances import Tolerances

HALF = 3.0
FINE = Tolerances(total_mm=0.02)


def bar(*points: tuple[float, float]) -> Polygon:
    """A stroke with square ends and sharp corners along a polyline."""
    stroke = LineString(points).buffer(HALF, cap_style="square", join_style="mitre", mitre_limit=20)
    assert isinstance(stroke, Polygon)
    return stroke


def middle(shape: Polygon) -> CentreLines:
    return centrelines(shapely.orient_polygons(shape), HALF, FINE)


def lines(found: CentreLines) -> MultiLineString:
    return MultiLineString([line for line in found.lines if len(line) > 1])


def apart(found: CentreLines, drawn: MultiLineString | LineString) -> float:
    """How far the lines found and those drawn are from each other at the most."""
    return float(shapely.hausdorff_distance(lines(found), drawn, densify=0.05))


@given(angle=st.floats(0, 180))
@settings(max_examples=20, deadline=None)
def test_a_bar_has_its_middle_line_and_no_branches_into_its_corners(angle: float) -> None:
    found = middle(rotate(bar((0, 0), (40, 0)), angle, origin=(0, 0)))
    assert len(found.lines) == 1
    assert apart(found, rotate(LineString([(0, 0), (40, 0)]), angle, origin=(0, 0))) < 0.06
    assert found.half_widths_mm == pytest.approx(HALF, abs=0.01)


@pytest.mark.parametrize("angle", [40, 60, 90, 120])
def test_a_corner_is_where_the_strokes_meet_and_not_rounded(angle: int) -> None:
    turn = math.radians(angle)
    way = LineString([(40, 0), (0, 0), (40 * math.cos(turn), 40 * math.sin(turn))])
    found = middle(bar(*way.coords))
    assert len(found.lines) == 1
    # Rounded as the axis is, it would stay 0.6 mm and more away.
    assert Point(0, 0).distance(lines(found)) < (0.01 if angle >= 90 else 0.4)
    assert apart(found, way) < 0.5


def test_a_t_keeps_its_bar_straight() -> None:
    shape = shapely.union(bar((-30, 0), (30, 0)), bar((0, 0), (0, -40)))
    found = middle(shape)
    assert apart(found, MultiLineString([[(-30, 0), (30, 0)], [(0, 0), (0, -40)]])) < 0.06


def test_a_crossing_is_two_straight_lines() -> None:
    shape = shapely.union(bar((-30, -30), (30, 30)), bar((-30, 30), (30, -30)))
    found = middle(shape)
    assert apart(found, MultiLineString([[(-30, -30), (30, 30)], [(-30, 30), (30, -30)]])) < 0.06


def test_a_ring_is_one_closed_line_on_its_circle() -> None:
    ring = Point(0, 0).buffer(20 + HALF, quad_segs=64).difference(Point(0, 0).buffer(20 - HALF, quad_segs=64))
    found = middle(ring)
    (line,) = found.lines
    assert np.array_equal(line[0], line[-1])
    assert np.hypot(*line.T) == pytest.approx(20, abs=0.06)


def test_a_curve_stays_smooth() -> None:
    angles = np.linspace(0, math.pi, 60)
    half_circle = LineString(np.column_stack([20 * np.cos(angles), 20 * np.sin(angles)]))
    stroke = half_circle.buffer(HALF, cap_style="flat", quad_segs=64)
    (line,) = middle(stroke).lines
    assert np.hypot(*line.T) == pytest.approx(20, abs=0.06)


def test_a_dot_is_a_little_circle_in_it() -> None:
    (line,) = middle(Point(5, 5).buffer(4, quad_segs=32)).lines
    assert np.array_equal(line[0], line[-1])
    assert np.hypot(*(line - (5, 5)).T) == pytest.approx(0.4 * 4, abs=0.02)
