"""The page of a whole sheet of signs, in both languages, and its moving picture."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from msgspec.structs import replace

from signgen.pipeline import MadeJob
from signgen.whole_sheet import PieceAsked, SheetAsked, make_sheet
from tests.pages.test_print import CHROMIUM, printed
from tests.pages.test_setup_sheet import read

SIGN = {"size": "60x30", "thickness": "6", "font": "atkinson", "holes": "none", "material": "mdf"}


def made(language: str, **more: str) -> MadeJob:
    signs = [{**SIGN, "language": language, "text": [text], **more} for text in ("A", "B")]
    pieces = tuple(
        PieceAsked(name=str(n), row=n + 1, asked=sign, x_mm=70.0 * n - 50, y_mm=20.0, turned=False)
        for n, sign in enumerate(signs, 1)
    )
    return make_sheet(SheetAsked(number=1, count=3, size_mm=(200.0, 90.0), pieces=pieces, hole_sizes=()))


@pytest.fixture(scope="module")
def english() -> MadeJob:
    return made("en")


@pytest.fixture(scope="module")
def german() -> MadeJob:
    return made("de")


def test_it_says_what_lies_where_and_what_is_proved_first(english: MadeJob) -> None:
    under = read(english.files["setup.html"].decode()).under
    assert under["sign"] == "Sheet 1 of 3: 2 signs"
    assert "A sheet of 200 × 90 mm" in under["board-size"].replace("\u00a0", " ")
    assert "0-outline.nc" in under["zero-proof"]
    assert [piece.strip() for piece in re.findall(r"\d (\w) row", under["pieces"])] == ["A", "B"]


def test_every_file_that_it_names_is_there() -> None:
    pytest.importorskip("weasyprint")
    job = made("en", **{"sheet-format": "both", "steps": "true"})
    named = re.findall(r"[\w-]+\.(?:nc|html|pdf|png|svg|json)", read(job.files["setup.html"].decode()).under["files"])
    assert {"setup.pdf", "steps.png", "sheet.json"} <= set(named) <= set(job.files)


def test_in_german_every_passage_differs_and_no_english_sentence_stays(english: MadeJob, german: MadeJob) -> None:
    ours, theirs = (read(job.files["setup.html"].decode()) for job in (english, german))
    assert set(ours.ids) == set(theirs.ids)
    assert theirs.under["sign"] == "Platte 1 von 3: 2 Schilder"
    told = ("zero-xy", "zero-proof", "board-size", "pieces", "sheet-plan", "bring", "screws", "finishing", "cautions")
    assert [name for name in told if ours.under[name] == theirs.under[name]] == []
    text = " ".join(theirs.under[name] for name in ("board", "zero", "pieces", "sheet-plan", "programs", "finishing"))
    assert re.findall(r"\b(?:the|and|with|sheet|from|row|waste|grain)\b", text) == []


def test_the_moving_picture_is_there_and_named_in_its_language(english: MadeJob, german: MadeJob) -> None:
    assert "<h1>Sheet 1 of 3: 2 signs</h1>" in english.files["preview.html"].decode()
    assert "<h1>Platte 1 von 3: 2 Schilder</h1>" in german.files["preview.html"].decode()


def test_one_signs_own_words_are_never_translated(english: MadeJob) -> None:
    from signgen.job.title import title

    spec = replace(
        english.facts.spec, language="de", text=replace(english.facts.spec.text, lines=("Sheet 1 of 3: 1 sign",))
    )
    assert title(replace(english.facts, spec=spec, pieces=())) == "Sheet 1 of 3: 1 sign"


@pytest.mark.skipif(CHROMIUM is None, reason="chromium is not installed")
@pytest.mark.parametrize("paper", ["A4", "letter"])
@pytest.mark.parametrize("language", ["en", "de"])
def test_a_sheet_of_four_signs_prints_on_two_sides(language: str, paper: str, tmp_path: Path) -> None:
    sign = {**SIGN, "size": "160x50", "holes": "side-pair", "language": language}
    pieces = tuple(
        PieceAsked(name=str(n), row=n + 1, asked={**sign, "text": [text]}, x_mm=x, y_mm=y, turned=False)
        for n, (text, x, y) in enumerate(
            [("Store", 19, 80), ("Stage", 190, 80), ("Kitchen", 19, 19), ("Meeting Room", 190, 19)], 1
        )
    )
    job = make_sheet(SheetAsked(number=1, count=1, size_mm=(400.0, 300.0), pieces=pieces, hole_sizes=((5.0, False),)))
    page = job.files["setup.html"].decode()
    assert "@page { " in page
    assert printed(tmp_path, page.replace("@page { ", f"@page {{ size: {paper}; ")) == 2
