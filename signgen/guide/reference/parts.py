"""What the reference's chapters are built of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from msgspec import Struct

from signgen.markup.markup import Html, Part, el

WIDE = 88
"""Characters of a line to type."""

_WORD = re.compile(r"""(?:[^\s"']|"[^"]*"|'[^']*')+""")
"""A word as shells part them."""


class Chapter(Struct, frozen=True, kw_only=True):
    """A chapter: its title stands in the contents too."""

    title: str
    parts: Sequence[Part]


class CommandHelp(Struct, frozen=True, kw_only=True):
    """What the command line says of one of its commands: how it is typed, what it does in paragraphs, and its own
    options with their help."""

    name: str
    usage: str
    about: str
    options: tuple[tuple[str, str], ...]


def anchor(*words: str) -> str:
    """The id of an entry: 'option-cap-height'."""
    return re.sub(r"[^a-z0-9]+", "-", " ".join(words).casefold()).strip("-")


def chapter(number: int, told: Chapter) -> Html:
    return el("section", el("h2", f"{number}. {told.title}"), *told.parts, id=anchor(told.title))


def contents(chapters: Sequence[Chapter]) -> Html:
    links = (el("li", el("a", each.title, href=f"#{anchor(each.title)}")) for each in chapters)
    return el("nav", el("ol", *links))


def entry(identity: str, name: Part, *parts: Part) -> Html:
    """A word and what there is to say of it."""
    return el("article", el("h3", name), *parts, id=identity)


def paragraphs(text: str) -> Iterator[Html]:
    """Paragraphs of plain text, in which `this` is something to type."""
    for part in text.split("\n\n"):
        words = " ".join(part.split()).split("`")
        yield el("p", *(code(each) if number % 2 else each for number, each in enumerate(words)))


def code(text: str) -> Html:
    return el("code", text)


def to_type(command: str) -> Html:
    """A whole command that does what it says, on lines that a shell takes for one."""
    lines = [""]
    for word in _WORD.findall(command):
        if len(lines[-1]) + len(word) > WIDE:
            lines.append("    ")
        lines[-1] += f"{word} "
    return el("pre", el("code", " \\\n".join(line.rstrip() for line in lines), cls="command"))


def table(head: Sequence[str], rows: Iterable[Sequence[Part]]) -> Html:
    return el(
        "table",
        el("thead", el("tr", *(el("th", cell) for cell in head))),
        el("tbody", *(el("tr", *(el("td", cell) for cell in row)) for row in rows)),
    )


def cards(items: Iterable[tuple[Html, str, Part]]) -> Html:
    """Pictures with the word to type and what it is."""
    return el(
        "div",
        *(el("figure", picture, el("figcaption", code(name), " ", about)) for picture, name, about in items),
        cls="cards",
    )
