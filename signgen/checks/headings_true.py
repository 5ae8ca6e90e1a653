"""C144: what the comments of a program say of cutter, board and zero is so."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator, Sequence
from itertools import takewhile

from msgspec import Struct

from signgen.checks.check import Case, CheckResult, Finding, ProgramUnderTest, Severity, verdict

FIGURE_MM = 0.006
"""Headings say six digits; zeros and boards are set to the tenth at best."""

NUMBER = r"(-?[\d.]+(?:e-?\d+)?)"
MOST_OF_A_NAME = 70
"""Characters of a cutter's name that surely stand in one comment."""

REMEDY = "Make the programs again, or believe the setup sheet only after comparing it with this file."

_COMMENT = re.compile(r"^\s*(?:N\d+\s*)?\(([^)]*)\)\s*$", re.IGNORECASE)
_NOTHING = re.compile(r"^\s*%?\s*$")
_TOOL = re.compile(r"\bTool: ")
_BOARD = re.compile(rf"\bBoard: {NUMBER} x {NUMBER} x {NUMBER} mm")
_TOP = re.compile(rf"\bboard's top is at Z{NUMBER}")
_DATUM = re.compile(r"\bX0 Y0: bottom-(left|right) corner of the (board|finished sign)")
_BESIDE = re.compile(rf"{NUMBER} mm (right|left) of and {NUMBER} mm above")
_Z_ZERO = re.compile(r"\bZ0: (bottom|top) of the board")


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
        return verdict(self, findings, f"cutter, board and zero as in the comments of {len(files)} files")


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


def _of_file(case: Case, program: ProgramUnderTest, cutters: Sequence[ProgramUnderTest]) -> Iterator[Finding]:
    heading = _heading(program.text)

    def wrong(at: int, message: str) -> Finding:
        return Finding(message=message, file=program.file, line=heading.line_of(at), remedy=REMEDY)

    named = [match.end() for match in _TOOL.finditer(heading.text)]
    if len(named) != len(cutters):
        yield wrong(
            named[-1] if named else 0, f"The heading names {len(named)} cutters; the sheet says {len(cutters)}."
        )
    for at, cutter in zip(named, cutters, strict=False):
        wanted = f"{cutter.tool.label}, {cutter.tool.shank_mm:g} mm shank"
        if not _plain(heading.text[at:]).startswith(_plain(wanted)[:MOST_OF_A_NAME]):
            said = heading.text[at:].split("  ")[0][:50]
            yield wrong(at, f"The heading names another cutter ('{said}') than the sheet: {wanted}.")
    yield from _of_board(case, heading, wrong)
    for cutter in cutters:
        if cutter.stated and cutter.stated.change == "pause" and cutter.stated.number > 1:
            yield from _asked_for(cutter)


def _of_board(case: Case, heading: _Heading, wrong: Callable[[int, str], Finding]) -> Iterator[Finding]:
    stock, zero = case.stock, case.zero
    x0, y0, x1, _ = stock.bounds_mm
    board = _BOARD.search(heading.text)
    if board is None or not _same(board.groups(), (stock.width_mm, stock.height_mm, stock.thickness_mm)):
        size = f"{stock.width_mm:g} x {stock.height_mm:g} x {stock.thickness_mm:g} mm"
        yield wrong(board.start() if board else 0, f"The heading does not say the board's size, {size}.")
    top = _TOP.search(heading.text)
    at_z = stock.thickness_mm - zero.z_mm
    if top is None or not _same(top.groups(), (at_z,)):
        yield wrong(top.start() if top else 0, f"The heading does not say that the board's top is at Z{at_z:g}.")
    face = _Z_ZERO.search(heading.text)
    wanted = "bottom" if zero.z_mm == 0 else "top"
    if face is None or face.group(1) != wanted:
        yield wrong(face.start() if face else 0, f"The heading does not say that Z0 is at the board's {wanted}.")
    datum = _DATUM.search(heading.text)
    beside = {"left": zero.x_mm - x0, "right": x1 - zero.x_mm}
    above = zero.y_mm - y0
    if datum is None:
        yield wrong(0, "The heading does not say where X0 Y0 lies.")
        return
    side, of = datum.groups()
    figures = _BESIDE.search(heading.text, datum.end())
    if of == "board":
        right = _same((beside[side], above), (0.0, 0.0))
    else:
        right = (
            figures is not None
            and figures.group(2) != side
            and _same((figures.group(1), figures.group(3)), (beside[side], above))
        )
    if not right:
        at = f"{beside['left']:g} mm from the board's left and {above:g} mm from its lower edge"
        yield wrong(datum.start(), f"The heading says otherwise than that X0 Y0 is {at}.")


def _asked_for(cutter: ProgramUnderTest) -> Iterator[Finding]:
    """The comments right before the stop for a change by hand."""
    lines = cutter.text.splitlines()
    for event in cutter.replay.events:
        if event.kind == "stop" and event.value == 0:
            before = reversed(lines[: event.line - 1])
            said = " ".join(takewhile(_COMMENT.match, before))
            if _plain(cutter.tool.label) not in _plain(said):
                yield Finding(
                    message=f"The message before the stop does not name the cutter to fit, {cutter.tool.label}.",
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
