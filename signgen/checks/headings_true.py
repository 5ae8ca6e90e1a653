"""C144: what the comments of a program say of cutter, board and zero is so."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import takewhile

from msgspec import Struct

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict
from signgen.messages import Message, Mm, Sides, Typed
from signgen.messages.language import LANGUAGES, language
from signgen.messages.wording import Wording, parsed

FIGURE_MM = 0.006
"""Headings say six digits; zeros and boards are set to the tenth at best."""

NUMBER = r"(-?[\d.]+(?:e-?\d+)?)"
MOST_OF_A_NAME = 70
"""Characters of a cutter's name that surely stand in one comment."""

REMEDY = Message("headings_true.remedy")

_COMMENT = re.compile(r"^\s*(?:N\d+\s*)?\(([^)]*)\)\s*$", re.IGNORECASE)
_NOTHING = re.compile(r"^\s*%?\s*$")

_DATUMS = {
    "datum_sign": ("left", "sign"),
    "datum_board": ("left", "board"),
    "datum_sign_behind": ("right", "sign"),
    "datum_board_behind": ("right", "board"),
}
"""Words for the datum: the side of the board that it is measured from, and what it is a corner of."""


class HeadingsTrue:
    code = "C144"
    name = "headings_true"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The comments in the first lines of a file, against what the file is judged with: each cutter by its name, the board's
three measures, the corner where X0 Y0 lies and how far from the board's, the face where Z0 lies, and the Z of the
board's top. In a file with changes by hand, the message before each stop must name the cutter that comes next.

A failure means that somebody who reads the file at the machine fits another cutter, or sets the zero elsewhere, than
the programs were judged with.

What to do: make the programs again.

Least error seen: one letter of a cutter's name, 0.006 mm."""

    def run(self, case: Case) -> CheckResult:
        findings: list[Finding] = []
        files: list[str] = []
        for program in (*case.outlines, *case.programs, *case.lifted):
            if program.stated is None or program.file in files:
                continue
            files.append(program.file)
            beside = (*case.programs, *case.lifted)
            cutters = [other for other in beside if other.file == program.file] or [program]
            findings += _of_file(case, program, cutters)
        return verdict(self, findings, Message("headings_true.as_said", count=len(files)))


class _Heading(Struct, frozen=True):
    """The comments at a file's top as one text, and the line on which each character of it stands."""

    text: str
    lines: tuple[int, ...]

    def line_of(self, at: int) -> int | None:
        return self.lines[min(at, len(self.lines) - 1)] if self.lines else None


def _heading(text: str) -> _Heading:
    said, lines = "", []
    for number, raw in enumerate(text.splitlines(), 1):
        comment = _COMMENT.match(raw)
        if comment is None:
            if _NOTHING.match(raw):
                continue
            break
        said += comment.group(1) + " "
        lines += [number] * (len(comment.group(1)) + 1)
    return _Heading(said, tuple(lines))


@cache
def _pattern(code: str, key: str) -> re.Pattern[str]:
    """What a line of a heading looks like in a language: its words as they stand in the table, a number for each value
    that is one; what comes behind the last number is not looked at."""
    tongue = language(code)
    found = r"(?<!\w)"
    pieces = parsed(tongue.table[f"heading.{key}"])
    if not pieces[0][1]:
        return re.compile(found + re.escape(tongue.in_ascii(pieces[0][0])) + r"(?!\w)")
    for text, name, _ in pieces:
        found += re.escape(tongue.in_ascii(text))
        if name in NAMES:
            break
        found += NUMBER if name else ""
    return re.compile(found)


NAMES = ("tool", "material")
"""Values that are no numbers: they are compared by themselves."""


def _language_of(heading: _Heading) -> str:
    """The language that the cutter is named in."""
    own = (code for code in LANGUAGES if "heading.tool" in language(code).table)
    return next((code for code in own if _pattern(code, "tool").search(heading.text)), LANGUAGES[0])


def _said(sentence: Message, code: str) -> str:
    wording = Wording(code)
    return wording.language.in_ascii(wording(sentence))


def _of_file(case: Case, program: ProgramUnderTest, cutters: Sequence[ProgramUnderTest]) -> Iterator[Finding]:
    heading = _heading(program.text)
    code = _language_of(heading)

    def wrong(at: int, message: Message) -> Finding:
        return Finding(message=message, file=program.file, line=heading.line_of(at), remedy=REMEDY)

    named = [(match.start(), match.end()) for match in _pattern(code, "tool").finditer(heading.text)]
    if len(named) != len(cutters):
        what = Message("headings_true.other_count", named=len(named), count=len(cutters))
        yield wrong(named[-1][1] if named else 0, what)
    for (start, at), cutter in zip(named, cutters, strict=False):
        line = Message("heading.tool", tool=cutter.tool.called, shank=Typed(cutter.tool.shank_mm))
        if not _plain(heading.text[start:]).startswith(_plain(_said(line, code))[:MOST_OF_A_NAME]):
            told = heading.text[at:].split("  ")[0][:50]
            yield wrong(at, Message("headings_true.other_cutter", said=told, wanted=line))
    yield from _of_board(case, heading, code, wrong)
    for cutter in cutters:
        if cutter.stated and cutter.stated.change == "pause" and cutter.stated.number > 1:
            yield from _asked_for(cutter, code)


def _of_board(case: Case, heading: _Heading, code: str, wrong: Callable[[int, Message], Finding]) -> Iterator[Finding]:
    stock, zero = case.stock, case.zero
    x0, y0, x1, _ = stock.bounds_mm
    sides = (stock.width_mm, stock.height_mm, stock.thickness_mm)
    board = _pattern(code, "board").search(heading.text)
    if board is None or not _same(board.groups(), sides):
        yield wrong(board.start() if board else 0, Message("headings_true.board", size=Sides(sides)))
    top = _pattern(code, "top").search(heading.text)
    at_z = stock.thickness_mm - zero.z_mm
    if top is None or not _same(top.groups(), (at_z,)):
        yield wrong(top.start() if top else 0, Message("headings_true.top", z=Typed(at_z)))
    wanted = "bottom" if zero.z_mm == 0 else "top"
    other = _pattern(code, "z_zero_top" if wanted == "bottom" else "z_zero_bottom").search(heading.text)
    if other is not None or not _pattern(code, f"z_zero_{wanted}").search(heading.text):
        yield wrong(other.start() if other else 0, Message(f"headings_true.z_zero_{wanted}"))
    beside = {"left": zero.x_mm - x0, "right": x1 - zero.x_mm}
    above = zero.y_mm - y0
    # The longest counts: the words for the board's corner as it lies begin like those for the other side.
    found = [(match, key) for key in _DATUMS if (match := _pattern(code, key).search(heading.text))]
    if not found:
        yield wrong(0, Message("headings_true.no_datum"))
        return
    datum, key = max(found, key=lambda each: len(each[0].group()))
    side, of = _DATUMS[key]
    said = datum.groups() if of == "sign" else (0.0, 0.0)
    if not _same(said, (beside[side], above)):
        left = Mm(beside["left"])
        yield wrong(datum.start(), Message("headings_true.datum", left=left, above=Mm(above)))


def _asked_for(cutter: ProgramUnderTest, code: str) -> Iterator[Finding]:
    """The comments right before the stop for a change by hand."""
    lines = cutter.text.splitlines()
    for event in cutter.replay.events:
        if event.kind == "stop" and event.value == 0:
            before = reversed(lines[: event.line - 1])
            said = " ".join(takewhile(_COMMENT.match, before))
            if _plain(_said(cutter.tool.called, code)) not in _plain(said):
                yield Finding(
                    message=Message("headings_true.stop", tool=cutter.tool.called),
                    file=cutter.file,
                    line=event.line,
                    remedy=REMEDY,
                )


def _same(said: Sequence[object], wanted: Sequence[float]) -> bool:
    try:
        return all(abs(float(str(a)) - b) <= FIGURE_MM for a, b in zip(said, wanted, strict=True))
    except ValueError:
        return False


def _plain(text: str) -> str:
    """Letters, digits and points only: comments hold no others for sure."""
    spread = unicodedata.normalize("NFKD", text)
    return "".join(c for c in spread.lower() if c.isascii() and (c.isalnum() or c == "."))
