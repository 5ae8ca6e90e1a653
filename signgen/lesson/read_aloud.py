"""A program line by line, as text, as data and as a page."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

import numpy as np

from signgen.errors import AskError
from signgen.lesson.line_facts import LineFacts, facts_of, way_lengths_mm
from signgen.lesson.line_words import told
from signgen.markup.markup import el, raw
from signgen.markup.page import page
from signgen.messages import Message, Mm
from signgen.messages.wording import Wording
from signgen.replay.motion import RAPID
from signgen.replay.steps import Trace, trace

WIDTH = 100
"""Characters of a line on a terminal: explanations are longer than what else is printed."""
FORMAT, VERSION = "signgen-lines", 1


def read_aloud(file: str, text: str, line: int | None, wording: Wording) -> str:
    """Every line of a program with what it does, or one. Raises: AskError when there is no such line."""
    found = trace(text)
    facts = _chosen(facts_of(found), line)
    head = [] if line else [wording(_head(file, found)), ""]
    return "\n".join([*head, *(text for each in facts for text in _lines(each, wording))])


def lines_data(file: str, text: str, line: int | None, wording: Wording) -> dict[str, object]:
    """The same as data, millimetres and seconds. Raises: as `read_aloud`."""
    rows = _chosen(facts_of(trace(text)), line)
    return {
        "format": FORMAT,
        "version": VERSION,
        "file": file,
        "lines": [
            {
                "line": row.step.number,
                "text": row.step.text,
                "does": [wording(sentence) for sentence in told(row)],
                "from_mm": row.start_mm,
                "to_mm": row.end_mm,
                "centre_mm": row.arc.centre_mm if row.arc else None,
                "radius_mm": row.arc.radius_mm if row.arc else None,
                "turned_deg": row.arc.turned_deg if row.arc else None,
                "length_mm": row.length_mm,
                "feed_mm_per_min": row.feed_mm_per_min,
                "seconds": row.seconds,
                "under": row.under,
                "pass": row.pass_number,
                "passes": row.passes,
                "modal": row.step.modal,
            }
            for row in rows
        ],
    }


def lines_page(file: str, text: str, wording: Wording) -> str:
    """The same as a page that loads nothing."""
    found = trace(text)
    columns = ("line", "text", "does", "modal")
    head = el("tr", *(el("th", wording(Message(f"line.column_{name}")), scope="col") for name in columns))
    rows = [
        el(
            "tr",
            el("td", str(row.step.number), id=f"line-{row.step.number}"),
            el("td", el("code", row.step.text)),
            el("td", " ".join(wording(sentence) for sentence in told(row))),
            el("td", el("code", _modal(row) if row.step.words else "")),
        )
        for row in facts_of(found)
    ]
    title = wording(Message("line.page_title", file=file))
    return page(
        title, STYLE, el("main", el("h1", title), el("p", wording(_head(file, found))),
        el("table", el("thead", head), el("tbody", *rows))),
        language=wording.language.code, policy="default-src 'none'; style-src 'unsafe-inline'",
    )  # fmt: skip


STYLE = raw(
    "body{font:15px/1.4 system-ui,sans-serif;margin:1rem;color:#111;background:#fff}h1{font-size:1.3rem}"
    "table{border-collapse:collapse;width:100%}td,th{text-align:left;vertical-align:top;padding:.2rem .6rem;"
    "border-bottom:1px solid #bbb}td:first-child{text-align:right;color:#444}code{font-size:.93em}"
    "td:nth-child(2) code{white-space:pre-wrap}td:nth-child(4){font-size:.85em;min-width:9rem}"
    "thead th{position:sticky;top:0;background:#fff}@media print{thead th{position:static}tr{break-inside:avoid}}"
)


def _head(file: str, found: Trace) -> Message:
    cut = float(way_lengths_mm(found.motions)[np.asarray(found.motions.kind) != RAPID].sum())
    return Message(
        "line.head", file=file, lines=len(found.steps), motions=len(found.motions), length=Mm(cut, 0)
    )  # fmt: skip


def _chosen(facts: tuple[LineFacts, ...], line: int | None) -> tuple[LineFacts, ...]:
    if line is None:
        return facts
    if not 1 <= line <= len(facts):
        raise AskError.at(
            "line",
            Message("line.no_such", line=line, lines=len(facts)),
            Message("line.say_line", lines=len(facts)),
        )
    return facts[line - 1 : line]


def _modal(row: LineFacts) -> str:
    return " ".join(row.step.modal)


def _lines(row: LineFacts, wording: Wording) -> Iterator[str]:
    yield f"{row.step.number:>5}  {row.step.text}"
    for sentence in told(row):
        yield from _indented(wording(sentence))
    if row.step.words:
        yield from _indented(wording(Message("line.modal", words=_in_force(row))))


def _in_force(row: LineFacts) -> str:
    step = row.step
    return " ".join(
        [*step.modal, *([f"F{step.feed:g}"] if step.feed else []), *([f"S{step.speed:g}"] if step.speed else [])]
    )


def _indented(text: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=" " * 7, subsequent_indent=" " * 9, break_on_hyphens=False, break_long_words=False
    )  # fmt: skip
