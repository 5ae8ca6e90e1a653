"""Laws that every hole pattern keeps, and how their names are read."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.holes import PATTERNS, pattern_named
from signgen.option import read_option
from tests.asking import read_holes

ASKED = {"at": "at:20,15;200,15.5", "grid": "grid:4x2"}
OPTIONS = {option.name: option for pattern in PATTERNS for option in pattern.options}


def test_names_are_unique_and_every_pattern_says_what_it_is():
    assert len({pattern.name for pattern in PATTERNS}) == len(PATTERNS)
    assert all(pattern.summary.endswith(".") for pattern in PATTERNS)


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: pattern.name)
@given(width=st.floats(80, 1000), height=st.floats(80, 1000), diameter=st.floats(1, 8))
def test_holes_lie_on_the_sign_and_bear_unique_names(pattern, width, height, diameter):
    name = {"at": "at:20,15;70,15.5", "grid": "grid:3x2"}.get(pattern.name, pattern.name)
    holes = read_holes(name, {"hole-diameter": diameter}, width, height)
    centres = holes.centres(width, height)
    assert len({hole[0] for hole in centres}) == len(centres)
    for _, x, y in centres:
        assert diameter / 2 < x < width - diameter / 2
        assert diameter / 2 < y < height - diameter / 2
    if pattern.name != "keyholes":  # which are as wide as their screw wants
        assert (holes.diameter_mm == diameter) == bool(centres)


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda pattern: pattern.name)
def test_asked_gives_an_equal_pattern(pattern):
    made = read_holes(ASKED.get(pattern.name, pattern.name), {}, 220, 140)
    asked = made.asked()
    values = {name: read_option(OPTIONS[name], raw) for name, raw in asked.items() if name != "holes"}
    assert read_holes(asked["holes"], values, 220, 140) == made


@pytest.mark.parametrize(
    ("asked", "message"),
    [
        ("corner", "There is no hole pattern 'corner'. Did you mean corners"),
        ("hexagonal", "There is no hole pattern 'hexagonal'. Choose from: none, corners,"),
        ("at", "'at' says too little. Write at:X,Y;X,Y."),
        ("at:", "'at' says too little."),
        ("corners:4", "'corners:4' says too much. Write corners alone."),
        ("at:1", "'1' is not a point."),
        ("at:1,2;1,3", "Points 1 and 2 are 1 mm apart: holes of 5 mm run together."),
        ("at:" + ";".join(f"{10 * i},5" for i in range(201)), "201 holes are too many."),
    ],
)
def test_refuses_a_pattern_that_makes_no_sense(asked, message):
    with pytest.raises(AskError) as caught:
        read_holes(asked, {}, 220, 140)
    assert str(caught.value).startswith(f"holes: {message}")


def test_ignores_case_in_names():
    assert pattern_named("Top-Pair")[0].name == "top-pair"
