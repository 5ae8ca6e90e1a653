"""Sides that run into arcs: a half circle below when the pointed part is half as high as wide."""

import math
from itertools import pairwise

import pytest

from signgen.borders.shield import Shield
from signgen.errors import CannotMakeError


def test_arcs_of_a_slender_shield_have_their_centres_level_with_their_starts():
    """120 wide, 120 below the bend: R = (120^2 / 4 + 120^2) / 120 = 150 by Pythagoras."""
    outline = Shield(side_mm=60).outline(120, 180, 0.001)
    bent = [p for p in outline.exterior.coords if p[1] < 120]
    assert len(bent) > 40
    for x, y in bent:
        centre = (150, 120) if x < 60 else (-30, 120)
        assert x == 60 or math.dist((x, y), centre) == pytest.approx(150)
    assert (60, 0) in outline.exterior.coords


@pytest.mark.parametrize("size", [(120, 180), (220, 140), (300, 60), (30, 30)])
@pytest.mark.parametrize("share", [0.0, 1 / 3, 0.6])
def test_sides_run_into_their_arcs_without_a_bend_and_end_in_a_point(size, share):
    width, height = size
    outline = Shield(side_mm=share * height).outline(width, height, 1e-5)
    points = list(outline.exterior.coords)[:-1]
    low = points.index(min(points, key=lambda p: p[1]))
    assert points[low] == pytest.approx((width / 2, 0), abs=1e-6)
    right = [*points[low:], *points[:low]]
    slopes = [math.degrees(math.atan2(q[1] - p[1], q[0] - p[0])) for p, q in pairwise(right)]
    assert slopes[0] > 2
    end = next(i for i, p in enumerate(right) if p[0] == width)
    assert right[end][1] == pytest.approx(height - share * height)
    assert slopes[end - 1] == pytest.approx(90, abs=0.5)
    assert slopes[:end] == sorted(slopes[:end])


def test_refuses_sides_that_leave_nothing_to_bend():
    with pytest.raises(CannotMakeError, match=r"^side-length: Sides of 140 mm leave nothing of 140 mm to bend\."):
        Shield(side_mm=140).outline(220, 140, 0.01)
