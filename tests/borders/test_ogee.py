"""An S of two equal quarter circles halves its square, so each corner takes s^2 / 2 off the rectangle."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.borders.ogee import Ogee
from signgen.errors import CannotMakeError


@given(cut=st.floats(1, 20), width=st.floats(50, 500), height=st.floats(50, 500))
def test_area_and_perimeter_agree_with_the_formulas(cut, width, height):
    outline = Ogee(cut_mm=cut).outline(width, height, 1e-4)
    assert outline.area == pytest.approx(width * height - 2 * cut**2, rel=1e-5)
    # Four pairs of quarter circles of radius s / 2.
    assert outline.length == pytest.approx(2 * (width + height) - 8 * cut + 2 * math.pi * cut, rel=1e-4)


def test_leaves_the_bottom_edge_without_a_bend_and_meets_the_sides_square():
    points = list(Ogee(cut_mm=20).outline(220, 140, 0.001).exterior.coords)
    low = points.index((200, 0))
    side = points.index((220, 20))
    heading = [math.degrees(math.atan2(q[1] - p[1], q[0] - p[0])) for p, q in pairwise(points)]
    assert heading[low] == pytest.approx(0, abs=2)
    assert heading[side - 1] == pytest.approx(0, abs=2)
    assert heading[side] == pytest.approx(90)


def test_refuses_corners_that_leave_no_side():
    with pytest.raises(CannotMakeError, match=r"^corner-cut: 30 mm do not fit .* Use at most 27 mm\.$"):
        Ogee(cut_mm=30).outline(120, 60, 0.01)
