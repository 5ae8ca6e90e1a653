import pytest

from signgen.borders.gable import Gable
from signgen.errors import CannotMakeError


def test_is_walls_and_a_roof():
    outline = Gable(roof_mm=40).outline(120, 150, 0.01)
    assert list(outline.exterior.coords)[:-1] == [(0, 0), (120, 0), (120, 110), (60, 150), (0, 110)]


def test_a_roof_as_high_as_the_sign_makes_a_triangle():
    outline = Gable(roof_mm=150).outline(120, 150, 0.01)
    assert list(outline.exterior.coords)[:-1] == [(0, 0), (120, 0), (60, 150)]


def test_its_roof_is_in_proportion_unasked():
    assert Gable.from_options("", {}, 120, 200).roof_mm == pytest.approx(60)
    assert Gable.from_options("", {}, 220, 140).roof_mm == pytest.approx(56)


def test_refuses_a_roof_higher_than_the_sign():
    with pytest.raises(CannotMakeError, match=r"^roof-height: 151 mm do not fit .* Use at most 150 mm\.$"):
        Gable(roof_mm=151).outline(120, 150, 0.01)
