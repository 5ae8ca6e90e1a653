"""A regular hexagon of side s: area 3 sqrt 3 / 2 s^2 (plane geometry)."""

import math
from itertools import pairwise

import pytest

from signgen.borders.hexagon import Hexagon
from signgen.errors import CannotMakeError


@pytest.mark.parametrize("turned", [False, True])
def test_is_regular_in_a_regular_hexagons_size(turned):
    side = 60.0
    size = (math.sqrt(3) * side, 2 * side) if turned else (2 * side, math.sqrt(3) * side)
    outline = Hexagon.from_options("", {}, *size).outline(*size, 0.01)
    points = list(outline.exterior.coords)
    assert [math.dist(p, q) for p, q in pairwise(points)] == pytest.approx([side] * 6)
    assert outline.area == pytest.approx(3 * math.sqrt(3) / 2 * side**2)


def test_a_longer_one_keeps_its_angles():
    outline = Hexagon.from_options("", {}, 300, 100).outline(300, 100, 0.01)
    points = list(outline.exterior.coords)[:-1]
    for before, here, after in zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True):
        turn = math.atan2(after[1] - here[1], after[0] - here[0]) - math.atan2(here[1] - before[1], here[0] - before[0])
        assert math.degrees(turn) % 360 == pytest.approx(60)


def test_points_that_meet_make_a_diamond():
    assert len(Hexagon(point_mm=60).outline(120, 80, 0.01).exterior.coords) == 5


def test_refuses_points_longer_than_the_sign():
    with pytest.raises(CannotMakeError, match=r"^point-length: 61 mm do not fit .* Use at most 60 mm\.$"):
        Hexagon(point_mm=61).outline(120, 80, 0.01)
