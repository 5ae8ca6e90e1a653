"""`signgen feeds`."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.errors import AskError


def said(*words: str) -> str:
    result = CliRunner().invoke(group, ["feeds", *words])
    assert result.exit_code == 0, result.output
    return result.output


def test_shows_every_step_and_what_comes_of_it() -> None:
    text = said("end-mill-6", "birch-plywood")
    assert "0.015 x 6 = 0.09" in text
    assert "11100 x 2 x 0.09 = 1998" in text
    assert "-> 1990 mm/min" in text
    assert "W (the spindle has" in text


def test_says_what_to_change_live_and_where_the_figures_come_from() -> None:
    text = " ".join(said("down-cut-6", "acrylic").split())
    assert "A tenth less speed or a tenth more feed" in text
    assert "presses them down" in text
    assert "a tenth slower" in text
    assert "local law come first" in text
    assert "specific-force: from memory" in text


def test_a_cutter_of_ones_own_and_a_cut_of_ones_own() -> None:
    text = said("end-mill 3.175", "hardwood", "--width", "1/64in", "--depth", "2mm", "--machine", "bench-router")
    assert text.startswith("3.175 mm end mill in Hardwood")
    assert "on Bench router" in text
    assert "Thin chip" in text
    assert "2 x 0.396875 x" in text


def test_a_cut_that_asks_too_much_is_warned_about_with_figures() -> None:
    text = " ".join(said("end-mill-3", "brass", "--depth", "3").split())
    assert "warning: The 3 mm end mill bends by about 0.27 mm under 138 N" in text


@pytest.mark.parametrize(
    ("words", "where"),
    [
        (("end-mil-6", "mdf"), "tool"),
        (("end-mill-6", "mfd"), "material"),
        (("drill-5", "mdf", "--machine", "x"), "machine"),
    ],
)
def test_unknown_names_are_told_by_their_word(words: tuple[str, ...], where: str) -> None:
    result = CliRunner().invoke(group, ["feeds", *words])
    assert isinstance(result.exception, AskError)
    assert [problem.where for problem in result.exception.problems] == [where]


def test_says_every_problem_at_once() -> None:
    result = CliRunner().invoke(group, ["feeds", "end-mill-99x", "brasss", "--machine", "foo", "--width", "-2"])
    assert isinstance(result.exception, AskError)
    assert [problem.where for problem in result.exception.problems] == ["tool", "material", "machine", "width"]


def test_a_pass_deeper_than_the_cutter_reaches_is_refused() -> None:
    result = CliRunner().invoke(group, ["feeds", "end-mill-3", "mdf", "--depth", "9"])
    assert str(result.exception).startswith("depth: The 3 mm end mill reaches 8 mm deep, not 9 mm.")
