"""An ellipse with half axes a and b: area pi a b, perimeter by Ramanujan's second approximation (1914)."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.borders.oval import Oval


@settings(max_examples=30)
@given(width=st.floats(20, 500), height=st.floats(20, 500))
def test_area_and_perimeter_agree_with_the_formulas(width, height):
    outline = Oval().outline(width, height, 0.001)
    a, b = width / 2, height / 2
    # Chords lie inside by at most 0.001 mm over less than the whole perimeter.
    assert math.pi * a * b - 0.001 * 4 * (a + b) <= outline.area <= math.pi * a * b
    h = (a - b) ** 2 / (a + b) ** 2
    perimeter = math.pi * (a + b) * (1 + 3 * h / (10 + math.sqrt(4 - 3 * h)))
    assert outline.length == pytest.approx(perimeter, rel=1e-3 if h > 0.5 else 1e-4)


def test_every_vertex_lies_on_the_ellipse():
    for x, y in Oval().outline(220, 140, 0.01).exterior.coords:
        assert ((x - 110) / 110) ** 2 + ((y - 70) / 70) ** 2 == pytest.approx(1)
