"""Chapters of commands, options and the sign file."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signgen.guide.recipes import RECIPES
from signgen.guide.reference.parts import Chapter, CommandHelp, anchor, code, entry, paragraphs, table, to_type
from signgen.guide.sign_file import EXAMPLE, LINES_EXAMPLE, value_form
from signgen.markup.markup import Html, Part, el
from signgen.option import Option
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE_KEYS


def commands_chapter(commands: Sequence[CommandHelp]) -> Chapter:
    entries = (
        entry(
            anchor("command", each.name),
            code(each.usage),
            *paragraphs(each.about),
            table(("Option", "What it does"), [(code(words), about) for words, about in each.options])
            if each.options
            else None,
        )
        for each in commands
    )
    return Chapter(title="Commands", parts=tuple(entries))


def recipes_chapter() -> Chapter:
    parts: list[Part] = []
    for recipe in RECIPES:
        parts += [el("h3", recipe.name.capitalize()), el("p", recipe.about), to_type(f"signgen make {recipe.command}")]
    return Chapter(title="Whole commands to begin from", parts=parts)


def options_chapter() -> Chapter:
    """Every key of a sign file by its group, as an option too."""
    parts: list[Part] = [
        el("p", "Each is an option of signgen make and of signgen batch, a key of a sign file, a column of a list, and "
        "a keyword of signgen.make (with underscores). Lengths are millimetres unless a unit is written."),
    ]  # fmt: skip
    group = ""
    for key in (*keys.KEYS, keys.OUT):
        if key.group != group:
            group = key.group
            parts.append(el("h3", group))
        parts.append(_option(key))
    return Chapter(title="Options", parts=parts)


def _option(key: Option) -> Html:
    typed = f"--{key.name}/--no-{key.name}" if key.kind == "flag" else f"--{key.name} {key.metavar}"
    return entry(
        anchor("option", key.name), code("TEXT ..." if key.name == "text" else typed), *_told(key, f"{key.name} = ")
    )


def _told(key: Option, lead: str) -> Iterator[Part]:
    yield el("p", key.full_help)
    if key.choices:
        yield el("p", "One of: ", *_listed(key.choices))
    yield el("p", "In a sign file: ", code(f"{lead}{value_form(key)}"))
    if key.example and key.kind not in ("lines", "flag"):
        yield el("p", "For example: ", el("code", f"--{key.name} {key.example}", cls="example"))
    if key.needs:
        yield el("p", "It goes with ", code(f"--{key.needs}"), ".")
    if key.words:
        yield el("p", f"Also found by: {', '.join(key.words)}.", cls="soft")


def _listed(words: Sequence[str]) -> Iterator[Part]:
    for number, word in enumerate(words):
        yield ", " if number else None
        yield code(word)


def sign_file_chapter() -> Chapter:
    rows = [(code(f"+{key.name}={key.metavar}"), key.full_help) for key in LINE_KEYS if key.name != "text"]
    return Chapter(
        title="Sign files",
        parts=(
            el("p", "What make writes as sign.toml, and what you may write yourself: TOML with the options' names."),
            el("pre", el("code", EXAMPLE, cls="sign-file")),
            el("p", "Lines that are each set in its own way have tables, or words behind their text when typed:"),
            el("pre", el("code", LINES_EXAMPLE, cls="sign-file")),
            table(("Behind a line's text", "What it sets"), rows),
        ),
    )  # fmt: skip
