"""The reference names everything, shows what there is to choose from, and what it tells to type is so."""

from __future__ import annotations

import re
import shlex
import tomllib
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

import pytest
from click.testing import CliRunner
from msgspec import Struct, field

import signgen
from signgen.borders import BORDERS
from signgen.checks import EVERY_CHECK
from signgen.cli import COMMANDS, group
from signgen.dialects import DIALECTS
from signgen.errors import AskError
from signgen.guide.files_made import OF_A_BATCH, OF_A_SIGN
from signgen.guide.glossary import terms
from signgen.guide.recipes import RECIPES
from signgen.guide.reference.parts import anchor
from signgen.guide.topics import TOPICS
from signgen.holes import PATTERNS
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.messages.wording import Wording
from signgen.option import read_option
from signgen.pipeline import read_sign
from signgen.schemas.formats import NAMES
from signgen.shop.load import load_shop
from signgen.spec.keys import KEY_BY_NAME, KEYS
from signgen.spec.keys.lettering import LINE_KEYS
from signgen.units import length_mm

VOID = {"meta", "img", "br", "input"}


class Node(Struct):
    """An element: its tag, attributes, and all text below it."""

    tag: str
    attributes: dict[str, str | None]
    text: str = ""
    below: Counter[str] = field(default_factory=Counter)


class Page(HTMLParser):
    """Every element of a page in order; opening and closing tags must match."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.nodes: list[Node] = []
        self._open: list[Node] = []
        self.feed(text)
        self.close()
        assert not self._open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        node = Node(tag, dict(attrs))
        for above in self._open:
            above.below[tag] += 1
        self.nodes.append(node)
        if tag not in VOID:
            self._open.append(node)

    def handle_endtag(self, tag: str) -> None:
        assert self._open.pop().tag == tag

    def handle_data(self, data: str) -> None:
        for node in self._open:
            node.text += data

    def of(self, tag: str, cls: str | None = None) -> list[Node]:
        return [node for node in self.nodes if node.tag == tag and (cls is None or node.attributes.get("class") == cls)]


@pytest.fixture(scope="module")
def page(tmp_path_factory: pytest.TempPathFactory) -> Page:
    path = tmp_path_factory.mktemp("reference") / "reference.html"
    done = CliRunner().invoke(group, ["explain", "--all", "--out", str(path)])
    assert done.exit_code == 0, done.exception
    assert done.output.strip() == str(path)
    return Page(path.read_text(encoding="utf-8"))


def test_everything_has_its_entry(page: Page) -> None:
    there = {node.attributes["id"] for node in page.nodes if "id" in node.attributes}
    wanted = {anchor("option", key.name) for key in KEYS} | {anchor("check", each.code) for each in EVERY_CHECK}
    wanted |= {anchor("word", term.names(Wording())[0]) for term in terms()}
    wanted |= {anchor("command", name) for name in COMMANDS} | {anchor("format", name) for name in NAMES}
    wanted |= {anchor("question", topic.name) for topic in TOPICS}
    assert wanted - there == set()


def test_every_word_to_type_stands_there(page: Page) -> None:
    codes = {node.text for node in page.of("code")}
    shop = load_shop(None)
    wanted = {each.name for rows in (shop.tools, shop.materials, shop.machines, DIALECTS) for each in rows}
    wanted |= {each.name for each in (*catalogue(), *stroke_catalogue())}
    wanted |= {f"+{key.name}={key.metavar}" for key in LINE_KEYS if key.name != "text"}
    wanted |= {each.name for each in (*OF_A_SIGN, *OF_A_BATCH)}
    wanted |= {"0", "1", "2", "3", "4", "5", "programs[].extent.x_mm?", "sign.cap_height_mm", "rows_failed[].exit_code"}
    assert wanted - codes == set()


def test_what_there_is_to_choose_from_is_pictured(page: Page) -> None:
    figures = page.of("figure")
    finishes = KEY_BY_NAME["finish"].choices
    faces = (*catalogue(), *stroke_catalogue())
    assert len(figures) == len(BORDERS) + len(PATTERNS) + len(finishes) + len(faces)
    bare = [node.text for node in figures if not node.below["path"] and not node.below["img"]]
    assert [text for text in bare if "path:FILE.svg" not in text] == []
    assert all((node.attributes["src"] or "").startswith("data:image/jpeg;base64,") for node in page.of("img"))


def test_the_page_loads_nothing_and_its_links_lead_somewhere(page: Page) -> None:
    ids = Counter(node.attributes["id"] for node in page.nodes if "id" in node.attributes)
    assert max(ids.values()) == 1
    links = [node.attributes["href"] or "" for node in page.of("a")]
    assert len(links) == 11
    assert all(link.startswith("#") and link[1:] in ids for link in links)
    assert not page.of("script")
    assert not page.of("link")


def test_examples_of_options_can_be_typed(page: Page) -> None:
    examples = page.of("code", "example")
    assert len(examples) > 15
    for node in examples:
        name, value = node.text.removeprefix("--").split(" ", 1)
        read_option(KEY_BY_NAME[name], value)


def test_sign_files_of_the_page_are_read(page: Page) -> None:
    texts = [node.text for node in page.of("code", "sign-file")]
    assert [len(read_sign(tomllib.loads(text)).text.lines) for text in texts] == [2, 2]


def test_commands_are_the_recipes_which_are_made_elsewhere(page: Page) -> None:
    typed = [shlex.split(node.text.replace("\\\n", " ")) for node in page.of("code", "command")]
    assert typed == [["signgen", "make", *recipe.arguments] for recipe in RECIPES]


@pytest.mark.sweep
def test_commands_of_the_page_make_signs(page: Page, tmp_path: Path) -> None:
    for number, node in enumerate(page.of("code", "command")):
        words = shlex.split(node.text.replace("\\\n", " "))[1:]
        done = CliRunner().invoke(group, [*words, "--out", str(tmp_path / str(number))])
        assert done.exit_code == 0, (node.text, done.exception)


def test_every_file_that_is_written_is_on_the_page() -> None:
    job = signgen.make(
        "9", size="150x110", thickness=18, holes="keyholes", template="a4", air_cut=21, steps=True, margin=20
    )
    for name in job.files:
        found = [each.name for each in OF_A_SIGN if each.is_called(name)]
        assert len(found) == 1, f"{name} is {found or 'not'} in guide/files_made.py"
    called = {each.name for each in OF_A_SIGN for name in job.files if each.is_called(name)}
    assert {each.name for each in OF_A_SIGN} - called == {"setup.pdf", "setup-back.pdf"}


def test_every_file_of_a_batch_is_on_the_page(tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text("name\nA\nB\u0007\n")
    done = signgen.batch(
        tmp_path / "list.csv", text="{name}", out=tmp_path / "out", size="60x40", thickness=6, workers=1, quote=True
    )
    names = {path.name for path in done.folder.iterdir() if path.is_file()}
    assert names <= {each.name for each in OF_A_BATCH}, "name it in guide/files_made.py"


WRONG = [
    (["--out", "x.html"], "out: Only the whole reference is written to a file."),
    (["--all", "tab"], "all: It makes one page of everything."),
    ([], "explain: It is not said what to explain."),
]


@pytest.mark.parametrize(("words", "said"), WRONG)
def test_what_does_not_go_together_is_said(words: list[str], said: str) -> None:
    done = CliRunner().invoke(group, ["explain", *words])
    assert isinstance(done.exception, AskError)
    assert str(done.exception).startswith(said)


def test_the_page_says_lengths_in_the_way_they_are_read(page: Page) -> None:
    """The units that the chapter of commands names."""
    (unit,) = set(re.findall(r"3 1/2 in", page.of("main")[0].text))
    assert length_mm(unit, "x") == 88.9


def test_who_asks_for_another_language_is_told_that_the_page_is_english(tmp_path: Path) -> None:
    out = tmp_path / "reference.html"
    done = CliRunner().invoke(group, ["explain", "--all", "--language", "de", "--out", str(out)])
    assert done.exit_code == 0
    assert "nur auf Englisch" in done.stderr
    assert 'lang="en"' in out.read_text("utf-8")
