"""A circular segment of radius R and angle t: area R^2 (t - sin t) / 2 (plane geometry)."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.borders.arched import Arched
from signgen.errors import CannotMakeError


@given(width=st.floats(40, 400), height=st.floats(60, 400), share=st.floats(0.02, 1))
def test_area_is_the_rectangle_and_the_segment(width, height, share):
    rise = share * min(width / 2, height - 10)
    outline = Arched(rise_mm=rise).outline(width, height, 0.001)
    radius = (width**2 / 4 + rise**2) / (2 * rise)
    turn = 2 * math.asin(min(1, width / 2 / radius))
    area = width * (height - rise) + radius**2 * (turn - math.sin(turn)) / 2
    assert area - 0.001 * 2 * width <= outline.area <= area + 1e-6


def test_a_rise_of_half_the_width_makes_a_half_circle():
    outline = Arched(rise_mm=60).outline(120, 200, 0.001)
    top = [p for p in outline.exterior.coords if p[1] >= 140]
    assert len(top) > 100
    for p in top:
        assert math.dist(p, (60, 140)) == pytest.approx(60)


@pytest.mark.parametrize(("size", "most"), [((120, 200), "60"), ((300, 100), "100")])
def test_refuses_to_rise_more_than_a_half_circle_or_the_sign(size, most):
    with pytest.raises(CannotMakeError, match=rf"^arch-rise: 101 mm do not fit .* Use at most {most} mm\.$"):
        Arched(rise_mm=101).outline(*size, 0.01)
