"""Single lines of a pupil's own program, spoilt so that one look at the rules finds it."""

from __future__ import annotations

import re

from msgspec import Struct

from signgen.lesson.line_facts import LineFacts
from signgen.lesson.slips import is_readable
from signgen.lesson.source import Source

MOST_LINES = 4


class SpoiltLine(Struct, frozen=True, kw_only=True):
    """`spoilt` as the pupil sees it, `right` as it stands in the program."""

    file: str
    line: int
    spoilt: str
    right: str


def spoilt_lines(source: Source) -> tuple[SpoiltLine, ...]:
    """A letter for a digit, a comma for a point, a centre on the wrong side, a letter without its number: each from
    another line, and each in its own way refused or wrong."""
    found: list[SpoiltLine] = []
    used: set[tuple[str, int]] = set()
    for change in (_letter, _comma, _centre, _number):
        for program in source.programs:
            row = next(
                (row for row in program.lines if row.count_of_words > 2 and (program.file, row.step.number) not in used
                 and change(row) not in ("", row.step.text)), None,
            )  # fmt: skip
            if row is not None:
                used.add((program.file, row.step.number))
                found.append(
                    SpoiltLine(file=program.file, line=row.step.number, spoilt=change(row), right=row.step.text)
                )  # fmt: skip
                break
    return tuple(found[:MOST_LINES])


def _letter(row: LineFacts) -> str:
    text = re.sub(r"(?<=\d)0(?=[\d. ])", "O", row.step.text, count=1)
    return "" if is_readable(text) else text


def _comma(row: LineFacts) -> str:
    return re.sub(r"(?<=\d)\.(?=\d)", ",", row.step.text, count=1)


def _centre(row: LineFacts) -> str:
    if row.arc is None or abs(row.step.values.get("I", 0.0)) < 1:
        return ""
    return re.sub(r"I(-?)([\d.]+)", lambda m: f"I{'' if m.group(1) else '-'}{m.group(2)}", row.step.text, count=1)


def _number(row: LineFacts) -> str:
    return re.sub(r"Y-?[\d.]+", "Y", row.step.text, count=1) if {"X", "Y"} <= row.step.values.keys() else ""
