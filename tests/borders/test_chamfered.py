"""Cut corners against plane geometry: each takes a right isosceles triangle of c^2 / 2 off the rectangle."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.borders.chamfered import Chamfered
from signgen.errors import CannotMakeError


@given(cut=st.floats(0.1, 20), width=st.floats(41, 500), height=st.floats(41, 500))
def test_area_and_perimeter_agree_with_the_formulas(cut, width, height):
    outline = Chamfered(cut_mm=cut).outline(width, height, 0.01)
    assert outline.area == pytest.approx(width * height - 2 * cut**2)
    assert outline.length == pytest.approx(2 * (width + height) - (8 - 4 * math.sqrt(2)) * cut)


def test_cuts_that_meet_make_a_diamond():
    outline = Chamfered(cut_mm=50).outline(100, 100, 0.01)
    assert list(outline.exterior.coords)[:-1] == [(50, 0), (100, 50), (50, 100), (0, 50)]


def test_refuses_cuts_that_do_not_fit():
    with pytest.raises(CannotMakeError) as caught:
        Chamfered(cut_mm=40).outline(120, 60, 0.01)
    assert str(caught.value) == "corner-cut: 40 mm do not fit a sign 120 x 60 mm. Use at most 30 mm."
