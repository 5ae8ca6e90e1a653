"""How wide strokes are, against shapes drawn with known widths."""

from __future__ import annotations

import math

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon, box

from signgen.geometry.medial import medial_axis
from signgen.geometry.strokes import strokes_of, widest_place
from signgen.tolerances import Tolerances
from tests.geometry.test_medial import L_SHAPE, PLUS, T_SHAPE

TOLERANCES = Tolerances()
NEAR = 2 * TOLERANCES.total_mm


def widths_mm(shape: Polygon) -> tuple[float, float]:
    """(narrowest, widest)"""
    axis = medial_axis(shape, TOLERANCES)
    return 2 * float(strokes_of(axis, NEAR)[:, 2].min()), 2 * float(widest_place(axis)[2])


@pytest.mark.parametrize("shape", [L_SHAPE, T_SHAPE, PLUS, box(0, 0, 30, 10)])
def test_square_ends_say_nothing_about_a_strokes_width(shape: Polygon) -> None:
    assert widths_mm(shape)[0] == pytest.approx(10.0, abs=NEAR)


def test_a_stroke_that_narrows_in_the_middle_is_as_narrow_as_its_waist() -> None:
    waist = Polygon([(0, 0), (20, 3), (40, 0), (40, 10), (20, 7), (0, 10)])
    # Between reflex corners 4 mm apart.
    assert widths_mm(waist)[0] == pytest.approx(4.0, abs=NEAR)


def test_a_slanting_end_is_an_end() -> None:
    slanting = Polygon([(0, 0), (40, 0), (34, 4), (6, 4)])
    assert widths_mm(slanting)[0] == pytest.approx(4.0, abs=NEAR)


def test_a_hairline_that_runs_into_a_stem_counts() -> None:
    letter = shapely.union_all([box(0, 0, 6, 30), box(5, 14.5, 25, 15.5)])
    assert widths_mm(letter)[0] == pytest.approx(1.0, abs=NEAR)


def test_a_needle_whose_sides_hardly_spread_is_a_stroke_and_not_a_point() -> None:
    # Full angle 2 x atan(0.025 / 2): clearance grows by 0.0125 a millimetre, far less than TAPER_RATIO; blunt end 1 mm.
    needle = Polygon([(0, -0.5), (40, -1.0), (40, 1.0), (0, 0.5)])
    assert widths_mm(needle)[0] == pytest.approx(1.0, abs=0.05)


def test_a_triangle_has_nothing_but_ends_and_is_as_wide_as_it_gets() -> None:
    # Plane geometry: inradius of an equilateral triangle a / (2 sqrt(3)).
    side = 20.0
    triangle = Polygon([(0, 0), (side, 0), (side / 2, side * math.sqrt(3) / 2)])
    assert widths_mm(triangle) == pytest.approx((side / math.sqrt(3), side / math.sqrt(3)), abs=NEAR)


def test_a_dot_is_as_wide_as_its_diameter() -> None:
    dot = shapely.Point(3, 4).buffer(2.5, quad_segs=100)
    assert widths_mm(dot) == pytest.approx((5.0, 5.0), abs=NEAR)


@settings(max_examples=30)
@given(st.floats(0.5, 6), st.floats(-180, 180), st.lists(st.floats(-15, 15), min_size=1, max_size=4))
def test_a_line_drawn_with_a_pen_is_as_wide_as_the_pen(pen_mm: float, degrees: float, heights: list[float]) -> None:
    way = LineString([(40 * i, y) for i, y in enumerate([0.0, *heights])])
    stroke = affinity.rotate(way.buffer(pen_mm / 2, cap_style="flat", join_style="round", quad_segs=64), degrees)
    narrowest, _ = widths_mm(stroke)
    assert narrowest == pytest.approx(pen_mm, abs=NEAR)
