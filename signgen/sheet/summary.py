"""The few lines for the terminal: what was made, the board, minutes, cutters, the verdict and the next step."""

from __future__ import annotations

import textwrap
import unicodedata
from pathlib import Path

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.legibility import cap_heights
from signgen.sheet.numbers import figure, rounded, span
from signgen.sheet.part_checks import verdict_words

COLUMNS, ROWS = 80, 24
LABEL = 10
MOST_PROGRAMS = 8


def summary_text(facts: JobFacts, out_dir: Path | str) -> str:
    """At most 24 lines of at most 80 columns; long texts are cut, long paths are wrapped."""
    drawing, board = facts.drawing, facts.stock
    holes = f", {len(drawing.holes)} hole{'s' if len(drawing.holes) > 1 else ''}" if drawing.holes else ""
    made = f"{facts.spec.material.label}{holes}, capitals {cap_heights(drawing)} mm high"
    lines = " / ".join(line.strip() for line in facts.spec.text.lines if line.strip())
    rows = _row("sign", _cut(_one_line(lines), COLUMNS - LABEL))
    rows += _row("", f"{_size(drawing.width_mm, drawing.height_mm)} x {figure(drawing.thickness_mm, 2)} mm, {made}")
    corner = f"{figure(board.sign_x_mm)} mm from its left and {figure(board.sign_y_mm)} mm from its front edge"
    if facts.spec.board_mm is None:
        text = f"at least {_size(board.width_mm, board.height_mm)} mm"
    else:
        least = _size(facts.least.width_mm, facts.least.height_mm)
        text = f"yours, {_size(board.width_mm, board.height_mm)} mm; with room for screws {least} mm"
    rows += _row("board", f"{text}; the sign lies {corner}")
    rows += _programs(facts)
    total = span(sum(program.minutes for program in facts.programs))
    rows += _row("time", f"about {total} of cutting")
    rows += _row("checks", _cut(verdict_words(facts.checks), 3 * (COLUMNS - LABEL)))
    if facts.warnings:
        more = f" And {len(facts.warnings) - 1} more on the sheet." if len(facts.warnings) > 1 else ""
        rows += _row("warning", _cut(_one_line(facts.warnings[0]), 150) + more)
    first = "Open" if facts.checks.passed else "Do not cut. Open"
    rows += _row("next", f"{first} {_one_line(str(Path(out_dir) / 'setup.html'))} and print it.")
    return "\n".join(rows[:ROWS])


def _programs(facts: JobFacts) -> list[str]:
    rows: list[str] = []
    for number, program in enumerate(facts.programs[:MOST_PROGRAMS]):
        time = span(rounded(program.minutes, 4))
        text = f"{program.file}  {program.tool.label}, {time}"
        rows += _row("" if number else "programs", _cut(text, COLUMNS - LABEL))
    hidden = len(facts.programs) - MOST_PROGRAMS
    return rows + (_row("", f"and {hidden} more") if hidden > 0 else [])


def _row(label: str, text: str) -> list[str]:
    """Lines with the label in front of the first."""
    return textwrap.wrap(
        text, COLUMNS, initial_indent=f"{label:<{LABEL}}", subsequent_indent=" " * LABEL, break_on_hyphens=False
    )


def _size(width: float, height: float) -> str:
    return f"{figure(width)} x {figure(height)}"


def _cut(text: str, most: int) -> str:
    """The text within so many columns; wide characters take two."""
    used = 0
    for i, character in enumerate(text):
        used += 2 if unicodedata.east_asian_width(character) in "WF" else 1
        if used > most:
            return text[: max(0, i - 3)].rstrip() + "..."
    return text


def _one_line(text: str) -> str:
    """No control characters reach the terminal, and the no-break spaces of the sheet become plain ones."""
    return "".join(c if unicodedata.category(c)[0] != "C" else " " for c in text.replace("\u00a0", " "))
