"""Cutters in words."""

from __future__ import annotations

import pytest

from signgen.errors import AskError
from signgen.shop.load import load_shop
from signgen.shop.tools import Tool
from signgen.spec.tool_words import tool_in_words

SHOP = load_shop(None)


def said(text: str) -> Tool:
    return tool_in_words(text, SHOP)


@pytest.mark.parametrize("name", [tool.name for tool in SHOP.tools])
def test_the_shops_own_names_mean_the_shops_own_cutters(name: str) -> None:
    (own,) = (tool for tool in SHOP.tools if tool.name == name)
    assert said(name) is own
    assert said(f" {name.upper()} ") is own


@pytest.mark.parametrize(
    ("text", "kind", "diameter", "angle", "tip"),
    [
        ("end-mill 6", "end-mill", 6, None, 0),
        ("end mill 1/4in", "end-mill", 6.35, None, 0),
        ("end-mill diameter 1/4 in flutes 1", "end-mill", 6.35, None, 0),
        ("v-bit 60", "v-bit", 12, 60, 0),
        ("v bit 82 diameter 19.05 tip 0.2", "v-bit", 19.05, 82, 0.2),
        ("v-bit, angle=30, diameter=3.175mm", "v-bit", 3.175, 30, 0),
        ("ball-nose 3", "ball-nose", 3, None, 0),
        ("drill 8", "drill", 8, 118, 0),
        ("drill diameter 4 angle 90", "drill", 4, 90, 0),
    ],
)
def test_kind_and_figures(text: str, kind: str, diameter: float, angle: float | None, tip: float) -> None:
    tool = said(text)
    assert (tool.kind, tool.diameter_mm, tool.angle_deg, tool.tip_mm) == (kind, diameter, angle, tip)


def test_figures_that_are_said_go_before_those_of_the_shop() -> None:
    tool = said("end-mill 6 flutes 1 cutting-length 30 shank 8 can-plunge no")
    assert (tool.flutes, tool.cutting_length_mm, tool.shank_mm, tool.can_plunge) == (1, 30, 8, False)
    assert tool.stickout_mm > 30
    assert tool.name not in {own.name for own in SHOP.tools}


def test_a_longer_stick_out_does_not_lengthen_the_edges() -> None:
    own = said("end-mill 6")
    assert said("end-mill 6 stick-out 40").cutting_length_mm == own.cutting_length_mm


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("spoon 6", "There is no cutter 'spoon 6'"),
        ("end-mil 6", "Did you mean end-mill"),
        ("end-mill", "diameter is missing"),
        ("end-mill diameter", "tool.diameter"),
        ("end-mill 6 diameter 7", "twice"),
        ("end-mill -6", "not more than zero"),
        ("end-mill 6 angle 90", "has no angle"),
        ("drill 5 tip 1", "has no tip"),
        ("v-bit 5", "too little"),
        ("v-bit 90 diameter 2 tip 3", "no less than the diameter"),
        ("end-mill 6 cutting-length 20 stick-out 15", "stick-out"),
        ("end-mill 6 flutes two", "whole number"),
    ],
)
def test_what_is_wrong_is_said(text: str, words: str) -> None:
    with pytest.raises(AskError) as error:
        said(text)
    assert words in str(error.value)
    assert all(problem.where.startswith("tool") for problem in error.value.problems)


def test_all_wrong_figures_are_said_at_once() -> None:
    with pytest.raises(AskError) as error:
        said("v-bit 500 diameter -1 flutes 99")
    assert [problem.where for problem in error.value.problems] == ["tool.angle", "tool.diameter", "tool.flutes"]
