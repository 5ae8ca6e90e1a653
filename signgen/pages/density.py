"""How closely a sheet is set, so that it prints on two sides whatever it has to say.

The heights here were measured in print on Letter, the shorter paper; A4 has 18 mm more.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from signgen.features.hole import Hole
from signgen.job.facts import JobFacts
from signgen.job.legibility import reading_note
from signgen.pages.part_programs import card_lines
from signgen.spec.keys.papers import NO_TEMPLATE

SIDE_MM = 246.0
"""What one side of Letter holds between its margins, less three lines for fonts that run wider."""
LINE_MM, LINE_CHARACTERS, COLUMN_CHARACTERS = 3.6, 130, 62
CARD_CHARACTERS = 36
"""Of a line in the table of a program's card."""
LONGER = {"de": 1.1}
"""How much higher texts stand in other languages than in English."""
PLACES_IN_A_LINE, NAMES_IN_A_LINE = 3, 6
HEAD_MM, PICTURE_MM = 26.0, 6.0
SETTING_UP_MM, HOLDING_MM = 122.0, 44.0
"""The left column with board and zero; the right one below the board's plan."""
TEMPLATE_LINES = 4
"""What the sheet says about the drilling template, when there is one."""
BEFORE_MM, CUTTING_MM, CAUTIONS_MM, CHECKS_MM, CHECK_MM, FILES_MM = 29.0, 47.0, 40.0, 13.0, 3.2, 13.0
CAUTION_ROWS = 5
"""Of the cautions, between which a side may end."""
CARD_MM, CARD_LINE_MM = 6.0, 3.95
"""A program's card without lines, and each line of its table."""


class Density(Struct, frozen=True, kw_only=True):
    """`css`: class of the page; `scale` of the text's height; greatest heights of the plans.
    `brief`: of checks that passed only the names are printed; what they compared is in the report."""

    css: str | None
    scale: float
    plan_mm: float
    board_mm: float
    brief: bool = False


DENSITIES = (
    Density(css=None, scale=1.0, plan_mm=56.0, board_mm=84.0),
    Density(css=None, scale=1.0, plan_mm=56.0, board_mm=84.0, brief=True),
    Density(css="dense", scale=0.91, plan_mm=50.0, board_mm=80.0, brief=True),
    Density(css="dense densest", scale=0.83, plan_mm=42.0, board_mm=72.0, brief=True),
    Density(css="dense densest", scale=0.83, plan_mm=34.0, board_mm=58.0, brief=True),
)
"""From the common sheet to the fullest."""


def blocks_mm(facts: JobFacts, density: Density, plan_mm: float, board_mm: float) -> tuple[float, ...]:
    """Heights of the pieces that no page break may part, in order; the plans' own heights are given."""
    s = density.scale * LONGER.get(facts.spec.language, 1.0)
    warned = s * LINE_MM * (2 + len(" ".join(map(str, facts.warnings))) // LINE_CHARACTERS) if facts.warnings else 0.0
    listed = s * LINE_MM * (3 if len(facts.drawing.of(Hole)) > PLACES_IN_A_LINE * 4 else 0)
    holding = s * (HOLDING_MM + LINE_MM * (len(facts.screws_mm) // PLACES_IN_A_LINE))
    own = sum(len(str(text)) for text in facts.spec.material.cautions) // (LINE_CHARACTERS // 2)
    passed = sum(result.passed for result in facts.checks.results)
    rows = len(facts.checks.results) - (passed - passed // NAMES_IN_A_LINE - 1 if density.brief else 0)
    return (
        s * HEAD_MM + warned + (s * LINE_MM * 3 if facts.back else 0.0),
        max(density.plan_mm, plan_mm) + PICTURE_MM + listed,
        max(s * SETTING_UP_MM, board_mm + holding),
        *(s * (CAUTIONS_MM + LINE_MM / 2 * own) / CAUTION_ROWS for _ in range(CAUTION_ROWS)),
        s * BEFORE_MM,
        *(s * (CARD_MM + CARD_LINE_MM * lines) for lines in card_lines(facts, CARD_CHARACTERS)),
        s
        * (
            CUTTING_MM
            + LINE_MM
            * (sum(len(str(text)) for text in reading_note(facts.drawing)) / COLUMN_CHARACTERS + _template_lines(facts))
        ),
        s * (CHECKS_MM + CHECK_MM),
        *(s * CHECK_MM for _ in range(rows)),
        s * FILES_MM,
    )


def _template_lines(facts: JobFacts) -> int:
    return 0 if facts.spec.template == NO_TEMPLATE else TEMPLATE_LINES


def sides(blocks: Sequence[float]) -> int:
    """Sides of paper that the pieces take, one after the other."""
    count, used = 1, 0.0
    for block in blocks:
        if used + block > SIDE_MM:
            count, used = count + 1, 0.0
        used += block
    return count
