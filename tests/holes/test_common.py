"""The hole's size and its distance from the edge."""

import pytest

from signgen.errors import AskError
from signgen.holes.common import diameter_of, inset_of, must_not_cross


def test_a_screw_or_a_diameter_or_five_mm():
    assert diameter_of({"hole-diameter": 7.0}) == 7
    assert diameter_of({"screw": "M5"}) == 5.5
    assert diameter_of({"screw": "M5", "screw-fit": "coarse"}) == 5.8
    assert diameter_of({}) == 5


def test_both_are_refused():
    with pytest.raises(AskError, match=r"^screw: hole-diameter is given too"):
        diameter_of({"screw": "M5", "hole-diameter": 7.0})


def test_a_fit_without_a_screw_is_refused():
    with pytest.raises(AskError, match=r"^screw-fit: It needs a screw"):
        diameter_of({"screw-fit": "fine"})


def test_the_usual_inset_is_twice_the_diameter_and_at_least_ten():
    """Common practice."""
    assert inset_of({}, 4.0) == 10
    assert inset_of({}, 7.0) == 14
    assert inset_of({"inset": 3.0}, 7.0) == 3


def test_holes_must_keep_wood_between_them():
    must_not_cross(14, 7, 36, "high")
    with pytest.raises(AskError, match=r"^inset: 14 mm from both ends .* 35 mm high\. Use less than 14 mm\.$"):
        must_not_cross(14, 7, 35, "high")
    with pytest.raises(AskError, match=r"Make the holes smaller"):
        must_not_cross(14, 40, 35, "high")
