"""The reference as a page that loads nothing."""

from __future__ import annotations

from collections.abc import Sequence
from importlib.resources import files

from signgen.guide.reference.choices import choices_chapter, shop_chapter
from signgen.guide.reference.options import commands_chapter, options_chapter, recipes_chapter, sign_file_chapter
from signgen.guide.reference.parts import CommandHelp, chapter, contents
from signgen.guide.reference.words import (
    checks_chapter,
    files_chapter,
    formats_chapter,
    questions_chapter,
    words_chapter,
)
from signgen.markup.markup import el
from signgen.markup.page import page
from signgen.version import __version__
from signgen.words.words import words_in


def reference_page(commands: Sequence[CommandHelp]) -> str:
    """The whole page. `commands`: what the command line says of itself."""
    chapters = [
        commands_chapter(commands),
        recipes_chapter(),
        options_chapter(),
        choices_chapter(),
        shop_chapter(),
        sign_file_chapter(),
        files_chapter(),
        questions_chapter(),
        words_chapter(),
        checks_chapter(),
        formats_chapter(),
    ]
    head = el(
        "header",
        el("h1", "signgen: reference"),
        el("p", f"Version {__version__}. Made by signgen explain --all from what this version knows."),
        el("p", words_in("en")("summary.care"), cls="care"),
    )
    style = files("signgen.guide.reference").joinpath("reference.css").read_text("utf-8")
    body = [chapter(number, each) for number, each in enumerate(chapters, 1)]
    return page("signgen: reference", style, el("main", head, contents(chapters), *body), language="en")
