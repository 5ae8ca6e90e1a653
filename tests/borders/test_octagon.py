"""A regular octagon across flats S: area 2 (sqrt 2 - 1) S^2, side (sqrt 2 - 1) S (plane geometry)."""

import math
from itertools import pairwise

import pytest

from signgen.borders.octagon import Octagon


def test_is_regular_on_a_square():
    outline = Octagon().outline(100, 100, 0.01)
    assert outline.area == pytest.approx(2 * (math.sqrt(2) - 1) * 100**2)
    points = list(outline.exterior.coords)
    sides = [math.dist(p, q) for p, q in pairwise(points)]
    assert sides == pytest.approx([100 * (math.sqrt(2) - 1)] * 8)


def test_a_longer_one_has_two_longer_sides():
    points = list(Octagon().outline(200, 100, 0.01).exterior.coords)
    sides = sorted(math.dist(p, q) for p, q in pairwise(points))
    assert sides[:6] == pytest.approx([100 * (math.sqrt(2) - 1)] * 6)
    assert sides[6:] == pytest.approx([100 + 100 * (math.sqrt(2) - 1)] * 2)
