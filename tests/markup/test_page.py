"""The frame that every page stands in."""

from __future__ import annotations

from signgen.markup.markup import el
from signgen.markup.page import page, work_sheet


def test_a_page_says_its_language_and_its_title_and_escapes_what_was_typed() -> None:
    text = page("Oak & <Elm>", "p { margin: 0; }", el("p", "a < b"), language="de")
    assert text.startswith('<!doctype html>\n<html lang="de">')
    assert "<title>Oak &amp; &lt;Elm&gt;</title>" in text
    assert "<style>p { margin: 0; }</style>" in text
    assert "<body><p>a &lt; b</p></body>" in text
    assert "Content-Security-Policy" not in text


def test_a_policy_stands_before_anything_that_could_be_loaded() -> None:
    text = page("Oak", "", language="en", policy="default-src 'none'")
    assert text.index("Content-Security-Policy") < text.index("<style>")


def test_the_sides_of_a_work_sheet_follow_each_other_and_keep_figures_with_their_signs() -> None:
    sides = (el("div", "80 % of it", cls="page"), el("div", "the rest", cls="page"))
    text = work_sheet("Oak", *sides, language="en", density="dense", style="#own { color: red; }")
    assert "#own { color: red; }</style>" in text
    assert '<main class="dense"><div class="page">80\N{NO-BREAK SPACE}% of it</div><div class="page">' in text
