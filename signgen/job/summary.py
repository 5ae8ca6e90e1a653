"""The few lines for the terminal: what was made, the board, minutes, cutters, the verdict and the next step."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterator
from pathlib import Path

from signgen.drawing.drawing import Drawing
from signgen.drawing.legibility import house_numbers
from signgen.features.hole import Hole
from signgen.job.back_names import BACK
from signgen.job.facts import JobFacts
from signgen.job.tally import verdict_words
from signgen.messages import Sentence
from signgen.numbers import rounded
from signgen.words.words import Words, words_of

COLUMNS, ROWS = 80, 24
LABEL = 10
MOST_PROGRAMS = 8

HALF_MM = 0.5
"""Rules round inches to whole millimetres, one way or the other."""


def summary_text(facts: JobFacts, out_dir: Path | str) -> str:
    """At most 24 lines of at most 80 columns; long texts are cut, long paths are wrapped."""
    words, drawing = words_of(facts), facts.drawing
    holes = words.count("summary.holes", len(drawing.of(Hole))) if drawing.of(Hole) else ""
    made = words(
        "summary.made",
        material=words.material(facts),
        holes=holes,
        capitals=words.with_unit(words.cap_heights(drawing)),
    )
    lines = " / ".join(line.strip() for line in facts.spec.text.lines if line.strip())
    sides = (words.length(drawing.width_mm), words.length(drawing.height_mm), words.length(drawing.thickness_mm, 2))
    size = words.with_unit(" x ".join(sides))
    rows = _row(words("summary.sign"), _cut(_one_line(lines), COLUMNS - LABEL))
    rows += _row("", f"{size}, {made}")
    rows += _row(
        words("summary.lettering"), _cut(_one_line(lettering_said(facts.drawing, words)), 2 * (COLUMNS - LABEL))
    )
    rows += _row(words("summary.board"), _board(facts, words))
    rows += _programs(facts, words)
    total = words.span(sum(program.minutes for program in facts.every_program))
    rows += _row(words("summary.time"), words("summary.cutting", span=total, machine=words.machine(facts)))
    rows += _row(words("summary.checks"), _cut(verdict_words(facts.checks, words), 3 * (COLUMNS - LABEL)))
    kind = "pdf" if facts.spec.sheet_format == "pdf" else "html"
    sheet = _one_line(str(Path(out_dir) / f"{BACK if facts.back else 'setup'}.{kind}"))
    after = _row(words("summary.next"), words("summary.open" if facts.checks.passed else "summary.do_not", file=sheet))
    after = _row(words("summary.caution"), words("summary.care")) + after
    rows += _warnings(facts, words, ROWS - len(rows) - len(after))
    return "\n".join((rows + after)[:ROWS])


def _warnings(facts: JobFacts, words: Words, room: int) -> list[str]:
    """Every warning whole, as many as there are rows for, those of the checks first; of the rest how many stand on the
    sheet."""
    rows: list[str] = []
    every = (*found_by_checks(facts), *facts.warnings)
    for number, warning in enumerate(every):
        own = _row("" if number else words("summary.warning"), _one_line(words.said(warning)))[: max(room - 1, 2)]
        is_last = number + 1 == len(every)
        if number and len(rows) + len(own) > room - (not is_last):
            more = words("summary.more", count=len(every) - number)
            return rows + _row("", more.strip())
        rows += own
    return rows


def found_by_checks(facts: JobFacts) -> Iterator[Sentence]:
    """What checks found that only warns, the first of each."""
    for side in (facts, facts.back):
        for result in side.checks.results if side else ():
            if result.applies and not result.passed and not result.stops:
                yield from (finding.message for finding in result.findings[:1])


def lettering_said(drawing: Drawing, words: Words) -> str:
    """What was chosen: '17 at 62 mm, Larkspur Lane at 20 mm'; and what is asked of house numbers elsewhere."""
    lines = drawing.lines
    heights: dict[int, tuple[list[str], float]] = {}
    for line in lines:
        if line.bounds_mm is not None:
            heights.setdefault(line.source, ([], line.cap_height_mm))[0].append(line.text.strip())
    said = (words("summary.at", text=" / ".join(parts), height=words.mm(height)) for parts, height in heights.values())
    small = [number for number in house_numbers(lines) if number.figures_mm < number.rules[0].height_mm - HALF_MM]
    asked = words("summary.fire_code", height=words.mm(small[0].rules[0].height_mm, 0)) if small else ""
    return ", ".join(said) + asked


def _board(facts: JobFacts, words: Words) -> str:
    board, least = facts.stock, facts.least
    size = _size(words, board.width_mm, board.height_mm)
    if facts.drawing.is_blank:
        return words("summary.blank", size=size)
    if facts.spec.board_mm is None:
        text = words("summary.least", size=size)
    else:
        text = words("summary.yours", size=size, least=_size(words, least.width_mm, least.height_mm))
    left, front = words.mm(board.sign_x_mm), words.mm(board.sign_y_mm)
    return words("summary.lies", board=text, left=left, front=front)


def _programs(facts: JobFacts, words: Words) -> list[str]:
    rows: list[str] = []
    for number, program in enumerate(facts.every_program[:MOST_PROGRAMS]):
        time = words.span(rounded(program.minutes, 4))
        text = f"{program.file}  {words.tool(program.tool)}, {time}"
        rows += _row("" if number else words("summary.programs"), _cut(text, COLUMNS - LABEL))
    hidden = len(facts.every_program) - MOST_PROGRAMS
    return rows + (_row("", words("summary.hidden", count=hidden)) if hidden > 0 else [])


def _row(label: str, text: str) -> list[str]:
    """Lines with the label in front of the first."""
    return textwrap.wrap(
        text.replace("\u00a0", " "),
        COLUMNS,
        initial_indent=f"{label:<{LABEL}}",
        subsequent_indent=" " * LABEL,
        break_on_hyphens=False,
    )


def _size(words: Words, width: float, height: float) -> str:
    return words.with_unit(f"{words.length(width)} x {words.length(height)}")


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
