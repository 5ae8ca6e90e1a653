"""Drawings as areas: against closed forms, and refused by name."""

import pytest

from signgen.artwork.colours import DARK_BELOW, lightness
from signgen.artwork.picture import Picture
from signgen.artwork.svg import read_svg
from signgen.errors import AskError
from tests.artwork.nasty import REFUSED, SHOWN


def dark(rgb):
    return "dark" if lightness(rgb) < DARK_BELOW else None


def area_of(text):
    picture = Picture(file="trial.svg", items=read_svg(text.encode(), "trial.svg").items, unit_mm=1.0)
    return sum(area.area for area in picture.seen(dark, (1, 0, 0, -1, 0, 0), 0.002).values())


def test_there_are_a_hundred():
    assert len(SHOWN) + len(REFUSED) >= 130


@pytest.mark.parametrize("name", SHOWN)
def test_shows_the_area_that_its_geometry_has(name):
    text, area = SHOWN[name]
    assert area_of(text) == pytest.approx(area, rel=1e-3, abs=1e-6)


@pytest.mark.parametrize("name", REFUSED)
def test_is_refused_by_name(name):
    text, key = REFUSED[name]
    with pytest.raises(AskError) as caught:
        area_of(text)
    (problem,) = caught.value.problems
    assert problem.what.key == key
    assert problem.remedy
    assert problem.where.startswith("trial.svg")
