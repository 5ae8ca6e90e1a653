"""What the sheet and the report say about the way letters are made."""

from __future__ import annotations

from typing import Any

import pytest

from signgen.job.finishes import finish_words
from signgen.job.report import report
from signgen.pages.setup_sheet import setup_html
from signgen.pipeline import prove
from signgen.words.words import words_of
from tests.asking import spec_of


def said(**changes: Any) -> tuple[str, str]:
    """The sentences about the finish, and the whole sheet."""
    facts = prove(spec_of(text=["8B"], **changes))
    return " ".join(finish_words(facts, words_of(facts))).replace("\N{NO-BREAK SPACE}", " "), setup_html(facts)


@pytest.mark.parametrize(
    ("changes", "sentence", "right"),
    [
        ({"finish": "recess", "depth": "2.5"}, "Letters sunk 2.5 mm deep, flat.", "the floors are flat and clean"),
        ({"finish": "raised"}, "Letters stand in a ground that is sunk 3 mm.", "the floors are flat and clean"),
        ({"finish": "recess", "panel": "20", "panel_depth": "1.5", "depth": "2"},
         "Letters sunk 2 mm deep, flat. Panel sunk 1.5 mm.", "the floors are flat and clean"),
        ({"finish": "through", "bridges": "2", "bridge_width": "4"},
         "Letters cut right through. 2 bridges 4 mm wide hold every inside.", "the letters show the spoilboard"),
        ({"finish": "stroke", "font": "hershey-sans"},
         "Letters of single lines, 2 mm wide and 1 mm deep.", "lines are clean and alike in width"),
        ({"finish": "recess", "sharp_corners": "true"}, "Letters sunk 3 mm deep, flat.", "cut the letters' corners"),
    ],
    ids=["recess", "raised", "panel", "through", "stroke", "sharp"],
)  # fmt: skip
def test_the_sheet_says_how_letters_are_made_and_when_it_went_right(
    changes: dict[str, Any], sentence: str, right: str
) -> None:
    sentences, sheet = said(**changes)
    assert sentences == sentence
    assert right in sheet


def test_the_sheet_says_it_in_german() -> None:
    sentences, sheet = said(finish="through", bridges="2", language="de")
    assert sentences == "Buchstaben ganz durchgeschnitten. 2 Brücken von 3 mm halten jedes Innere."
    assert "die Buchstaben die Opferplatte zeigen" in sheet


def test_grooves_need_no_words_of_their_own() -> None:
    assert said()[0] == ""


@pytest.mark.parametrize(
    ("finish", "painted"),
    [("recess", "paint the floors"), ("raised", "second colour"), ("groove", "paint the grooves")],
)
def test_painting_goes_by_the_finish(finish: str, painted: str) -> None:
    assert painted in said(finish=finish)[1]


def test_what_is_cut_through_is_not_painted() -> None:
    assert "Painted letters" not in said(finish="through", bridges="2")[1]


def test_the_report_has_every_floor() -> None:
    facts = prove(spec_of(text=["8B"], finish="recess", panel="20", panel_depth="1.5", depth="2"))
    sign = report(facts)["sign"]
    assert sign["finish"] == "recess"
    assert [(floor["name"], floor["depth_mm"], floor["through"]) for floor in sign["floors"]] == [
        ("panel", 1.5, False), ("line 1 letter 1 '8'", 3.5, False), ("line 1 letter 2 'B'", 3.5, False),
    ]  # fmt: skip
