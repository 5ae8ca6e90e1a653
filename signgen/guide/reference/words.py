"""Chapters of files, exit codes, checks, questions, words of the trade and the formats for other programs."""

from __future__ import annotations

from collections.abc import Iterable

from signgen.batching.table import ERROR_COLUMNS
from signgen.checks import EVERY_CHECK
from signgen.errors import AskError, CannotMakeError, CheckFailedError, ShopError
from signgen.guide.files_made import OF_A_BATCH, OF_A_SIGN, FileMade
from signgen.guide.glossary import terms
from signgen.guide.reference.parts import Chapter, anchor, code, entry, paragraphs, table
from signgen.guide.topics import TOPICS
from signgen.markup.markup import Html, el
from signgen.messages.wording import Wording
from signgen.schemas.formats import ABOUT, FORMATS, NAMES, schema_of
from signgen.schemas.keys import keys_of

COLUMNS = """The first row names the columns. One that is called like an option gives it for its row, copies says how
many, and any other is put where {column} stands in a text. errors.csv has """

EXIT_CODES: tuple[tuple[int, str], ...] = (
    (0, "Done."),
    (1, "Some rows of a batch failed; the others are made."),
    *((each.exit_code, (each.__doc__ or "").split(".")[0].split(":")[0] + ".")
      for each in (AskError, ShopError, CannotMakeError, CheckFailedError)),
    (130, "It was interrupted."),
)  # fmt: skip


def files_chapter() -> Chapter:
    return Chapter(
        title="Files and exit codes",
        parts=(
            el("h3", "What make writes"), _files(OF_A_SIGN),
            el("h3", "What batch writes beside its rows' folders"), _files(OF_A_BATCH),
            el("h3", "Columns of a list"),
            el("p", COLUMNS, code(", ".join(ERROR_COLUMNS)), " before them, and can be mended and run again."),
            el("h3", "Exit codes"),
            table(("Code", "What it means"), [(code(f"{number}"), about) for number, about in EXIT_CODES]),
        ),
    )  # fmt: skip


def _files(files: Iterable[FileMade]) -> Html:
    return table(("File", "What it is"), [(code(each.name), each.about) for each in files])


def checks_chapter() -> Chapter:
    entries = (
        entry(
            anchor("check", check.code),
            el("span", code(check.code), f" {check.name.replace('_', ' ')} ", el("small", check.severity)),
            *paragraphs(check.explanation),
        )
        for check in EVERY_CHECK
    )
    return Chapter(title="Checks", parts=tuple(entries))


def words_chapter() -> Chapter:
    wording = Wording()
    entries = []
    for term in terms():
        name, *also = term.names(wording)
        beside = el("p", f"Also: {', '.join(also)}.", cls="soft") if also else None
        entries.append(entry(anchor("word", name), name, *paragraphs(wording(term.meaning)), beside))
    return Chapter(title="Words of the trade", parts=entries)


def questions_chapter() -> Chapter:
    entries = (
        entry(
            anchor("question", topic.name),
            topic.name.capitalize(),
            el("p", topic.answer),
            el("p", f"See also: {', '.join(topic.see)}.", cls="soft") if topic.see else None,
        )
        for topic in TOPICS
    )
    return Chapter(title="Common questions", parts=tuple(entries))


def formats_chapter() -> Chapter:
    """Every key of every format; the sign file's are the options."""
    parts = [
        el("p", "signgen explain schema NAME prints the JSON Schema of each. A version may gain keys, and loses none. "
           "A ? stands behind keys that are not always there.")
    ]  # fmt: skip
    for name in NAMES:
        parts.append(el("h3", f"{name}: {ABOUT[name]}", id=anchor("format", name)))
        if name in FORMATS:
            rows = [
                (code(f"{key.path}{'' if key.always else '?'}"), key.kind, key.about)
                for key in keys_of(schema_of(name))
            ]
            parts.append(el("details", el("summary", f"{len(rows)} keys"), table(("Key", "Value", "What it is"), rows)))
        else:
            parts.append(el("p", "Its keys are the options."))
    return Chapter(title="Formats for other programs", parts=parts)
