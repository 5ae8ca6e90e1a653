"""Hollow corners: each takes a quarter of a disc off the rectangle."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from signgen.borders.scalloped import Scalloped
from signgen.errors import CannotMakeError


@given(radius=st.floats(0.5, 20), width=st.floats(50, 500), height=st.floats(50, 500))
def test_area_and_perimeter_agree_with_the_formulas(radius, width, height):
    outline = Scalloped(radius_mm=radius).outline(width, height, 0.001)
    area = width * height - math.pi * radius**2
    # Chords of a hollow lie on the waste's side of it: the sign is larger by at most 0.001 mm along them.
    assert area - 1e-6 <= outline.area <= area + 0.001 * 2 * math.pi * radius
    assert outline.length == pytest.approx(2 * (width + height) - 8 * radius + 2 * math.pi * radius, rel=1e-4)


def test_corners_of_the_rectangle_are_the_centres():
    outline = Scalloped(radius_mm=15).outline(220, 140, 0.001)
    for corner in ((0, 0), (220, 0), (220, 140), (0, 140)):
        assert outline.distance(Point(corner)) == pytest.approx(15, abs=1e-3)


def test_refuses_hollows_that_leave_no_side():
    with pytest.raises(CannotMakeError, match=r"^corner-radius: 30 mm do not fit .* Use at most 27 mm\.$"):
        Scalloped(radius_mm=30).outline(120, 60, 0.01)
