"""Every language says everything, in its own words, and no text of the sheet stands outside the tables."""

from __future__ import annotations

import ast
import html
import importlib
import json
import re
from pathlib import Path

import pytest
from msgspec.structs import replace

from signgen.checks import EVERY_CHECK
from signgen.job.facts import JobFacts
from signgen.job.summary import summary_text
from signgen.job.title import title
from signgen.markup.markup import el
from signgen.messages import Message
from signgen.messages.language import LANGUAGES, Language
from signgen.messages.language import language as language_of
from signgen.pages import part_after, part_board, part_checks, part_head, part_programs
from signgen.pages.nested_page import PIECES_CSS
from signgen.pages.setup_sheet import setup_html
from signgen.pipeline import gather, make_job, read_sign
from signgen.playback.preview_html import POLICY, preview_html
from signgen.shop.load import load_shop
from signgen.shop.tools import Tool
from signgen.template.template import STYLE
from signgen.words.words import Words, words_in
from tests.asking import spec_of
from tests.golden.golden import EXAMPLES, ROOT

ROOMS = Path(part_head.__file__).parents[1]
OTHERS = tuple(language for language in LANGUAGES if language != "en")
WRITTEN_WITH_WORDS = (
    *sorted(ROOMS.glob("pages/part_*.py")),
    *(ROOMS / "pages" / f"{name}.py" for name in ("setup_sheet", "nested_page")),
    *(ROOMS / "pictures" / f"{name}.py" for name in ("board_svg", "cutter_svg", "drawing_svg", "nested_plan")),
    *(ROOMS / "job" / f"{name}.py" for name in ("finishes", "summary", "tally", "title")),
    *(ROOMS / "template" / f"{name}.py" for name in ("template", "marks")),
    ROOMS / "playback" / "preview_html.py",
)
SAME_IN_BOTH = {"span.s", "span.min", "span.min_s", "span.h", "span.h_min", "head.about", "zero.height"}
"""Units and signs."""


def sheet_table(language: str) -> dict[str, str]:
    """The words of the papers alone; `tests/messages` watches the others."""
    return importlib.import_module(f"signgen.messages.{language}.sheet").WORDS


@pytest.mark.parametrize("language", OTHERS)
def test_messages_are_translated(language: str) -> None:
    english, other = sheet_table("en"), sheet_table(language)
    plain = {key for key, text in english.items() if re.search("[A-Za-z]{3}", re.sub(r"\{.*?\}", "", text))}
    assert {key for key in plain - SAME_IN_BOTH if english[key] == other[key]} == set()


def asked_keys() -> set[str]:
    """Every key that the code names, and every beginning of one that it completes."""
    found: set[str] = set()
    for path in (
        *WRITTEN_WITH_WORDS,
        *ROOMS.glob("features/*.py"),
        *(
            ROOMS / name
            for name in ("words/words.py", "pictures/preview.py", "pictures/steps.py", "pages/back_sheet.py")
        ),
    ):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.add(node.value)
            if isinstance(node, ast.JoinedStr) and isinstance(node.values[0], ast.Constant):
                found.add(str(node.values[0].value))
    script = "".join(path.read_text("utf-8") for path in ROOMS.glob("playback/script/*.js"))
    return found | {f"play.{key}" for key in re.findall(r'"(\w+)"', script)}


def test_no_message_is_there_for_nothing() -> None:
    asked = asked_keys()
    groups = ("keys.", "key.", "page.hint", "stage.", "check.")

    def used(key: str) -> bool:
        bare = re.sub(r"\.(one|many)$", "", key)
        stems = {bare[:i] for i, letter in enumerate(bare) if letter in "._"}
        stems |= {f"{stem}{bare[len(stem)]}" for stem in stems}
        return key in asked or bare in asked or bool(stems & asked) or key.startswith(groups)

    assert [key for key in sheet_table("en") if not used(key)] == []


@pytest.mark.parametrize("path", WRITTEN_WITH_WORDS, ids=lambda path: path.name)
def test_no_text_for_readers_stands_in_the_code(path: Path) -> None:
    """Constants of more than one word, other than docstrings, style and code."""
    tree = ast.parse(path.read_text("utf-8"))
    docs = {
        id(node.value)
        for parent in ast.walk(tree)
        if isinstance(parent, ast.Module | ast.FunctionDef | ast.ClassDef)
        for node in parent.body
        if isinstance(node, ast.Expr)
    }
    markup = {
        "width=device-width, initial-scale=1",
        "<!doctype html>",
        '"use strict";',
        POLICY,
        STYLE.strip(),
        PIECES_CSS.strip(),
    }
    code = {"signgen explain CODE", "signgen make --from sign.toml"}
    classes = {"two plan", "verdict failed", "dense densest", "ticks across", "plain columns"}
    allowed = code | markup | classes
    texts = [
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs
    ]
    assert [text for text in texts if re.search(r"[A-Za-z]{2,} [A-Za-z]", text) and text.strip() not in allowed] == []


@pytest.mark.parametrize("language", OTHERS)
def test_everything_in_the_shop_and_every_check_has_a_name(language: str) -> None:
    table, shop = language_of(language).table, load_shop()
    wanted = {f"material.{material.name}" for material in shop.materials}
    wanted |= {f"machine.{machine.name}" for machine in shop.machines}
    wanted |= {f"check.{check.name}" for check in EVERY_CHECK}
    assert wanted - set(table) == set()
    assert {key for key in table if key.startswith(("material.", "machine.", "check."))} == wanted
    cautions = {caution for material in shop.materials for caution in material.cautions}
    assert {caution.key for caution in cautions if isinstance(caution, Message)} <= set(table)
    assert [caution for caution in cautions if not isinstance(caution, Message)] == []


def test_english_calls_cutters_as_the_rest_of_the_program_does() -> None:
    words = words_in("en")
    tip = Tool(
        name="x", kind="v-bit", diameter_mm=12.7, shank_mm=6.35, cutting_length_mm=10, flutes=2, angle_deg=60,
        tip_mm=0.2, stickout_mm=20, source="test",
    )  # fmt: skip
    straight = replace(next(tool for tool in load_shop().tools if tool.kind == "end-mill"), cut="straight")
    for tool in (*load_shop().tools, tip, straight):
        assert words.tool(tool).replace("\u00a0", " ") == tool.label


def page_words(page: str) -> str:
    """What is read on a page, without what says itself that it is in another language."""
    page = re.sub(r"<(style|script)\b.*?</\1>", " ", page, flags=re.DOTALL)
    page = re.sub(r"<code\b.*?</code>", " ", page, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]+>", " ", page))


def german(example: str) -> JobFacts:
    return make_job(read_sign(gather({"language": "de"}, ROOT / "examples" / f"{example}.toml"))).facts


ENGLISH = re.compile(r"\b(the|and|with|of|is|are|not|board|cutter|cuts?|from|at least|holes?|tabs?|letters)\b")


@pytest.mark.parametrize("example", EXAMPLES)
def test_a_german_job_has_no_english_left_but_in_findings(example: str) -> None:
    facts = german(example)
    own = " ".join(facts.spec.text.lines)
    for page in (setup_html(facts), preview_html(facts)):
        assert '<html lang="de">' in page
        unmarked = re.sub(r'<span lang="en">.*?</span>', " ", page, flags=re.DOTALL)
        text = page_words(unmarked).replace(own, "")
        assert ENGLISH.findall(text) == []
    data = json.loads(re.findall(r'<script type="application/json" id="job">(.*?)</script>', page)[0])
    assert data["language"] == "de"
    assert ENGLISH.findall(" ".join(data["words"].values())) == []


def test_a_german_summary_fits_the_terminal() -> None:
    text = summary_text(make_job(spec_of(language="de")).facts, "out/17")
    assert "Birkensperrholz" in text
    assert "V-Fräser 90 Grad" in text
    assert "Prüfungen bestanden" in text
    assert max(len(row) for row in text.split("\n")) <= 80


def test_figures_to_read_have_a_comma_in_german_and_places_to_type_a_point() -> None:
    page = page_words(part_board_and_more(make_job(spec_of(language="de", thickness="12.5")).facts))
    assert "12,5\u00a0mm" in page
    assert re.search(r"X-12\.\d Y-12\.\d", page)
    assert not re.search(r"(?<![XY-])\b\d+\.\d+\u00a0mm", page)


def part_board_and_more(facts: JobFacts) -> str:
    from signgen.fastening.fastening import fastening_of
    from signgen.pages.part_fastening import holding

    parts = (part_board.board, part_programs.programs, part_after.finishing, part_checks.files)
    top = part_head.head(facts, part_head.sign_size(facts), title(facts))
    return top + "".join(part(facts) for part in parts) + holding(facts, fastening_of(facts))


def test_a_message_with_markup_escapes_everything_else() -> None:
    words = Words(Language(code="en", table={"x": "<b>{a}</b> & {b}"}))
    assert words.html("x", a="<i>", b=None) == "&lt;b&gt;&lt;i&gt;&lt;/b&gt; &amp; "


@pytest.mark.parametrize(("minutes", "said"), [(0.1, "10 s"), (3.2, "3 min 20 s"), (75.0, "1 h 15 min"), (60, "1 h")])
def test_times_are_said_in_whole_units(minutes: float, said: str) -> None:
    assert words_in("en").span(minutes) == said


TEN_WORDS = Language(
    code="eo",
    table={
        "head.title": "Preparfolio: {sign}",
        "board.heading": "La tabulo",
        "board.size": "Grando",
        "head.bring": "Alportu",
        "head.bring.board": "la tabulon",
        "summary.sign": "ŝildo",
        "summary.board": "tabulo",
        "material.mdf": "MDF",
        "check.edge_size": "ekstera grando",
        "does.cuts_sign_out": "eltranĉas la ŝildon",
    },
)


def test_a_page_in_a_language_of_ten_words_marks_all_else_as_english() -> None:
    words = Words(TEN_WORDS)
    own = el("p", words("board.heading"), words.told(Message("does.cuts_sign_out")))
    assert own == "<p>La tabuloeltranĉas la ŝildon</p>"
    assert el("p", words("hold.heading")) == '<p><span lang="en">Hold it down</span></p>'
    assert words.told(Message("does.cuts_through")) == '<span lang="en">cuts the letters right through</span>'
    assert words.html("head.read_first") == '<span lang="en">Read first:</span>'
    assert words.wording.lacking == {"hold.heading", "does.cuts_through", "head.read_first"}
