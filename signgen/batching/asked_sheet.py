"""What was asked about sheets, from the command line."""

from __future__ import annotations

from signgen.batching.layout import USUAL_BORDER_MM, SheetHow
from signgen.errors import AskError, Problem
from signgen.messages import Message
from signgen.units import NOT_NEGATIVE, POSITIVE, Limits, length_mm, size_mm

_SHEET = Limits(least=50, greatest=5000)


def read_sheet(
    sheet: str | None, gap: str | None, clamp_border: str | None, *, turn: bool, keep_grain: bool
) -> SheetHow | None:
    """None when no sheet was asked for. Raises: AskError with every problem at once."""
    problems: list[Problem] = []
    size, between, border = (0.0, 0.0), None, USUAL_BORDER_MM
    if sheet is None:
        asked = {"gap": gap, "clamp-border": clamp_border, "no-turn": not turn, "keep-grain": keep_grain}
        for name in [name for name, value in asked.items() if value]:
            problems.append(
                Problem(where=name, what=Message("batching.there_no_sheet"), remedy=Message("batching.give_sheet_too"))
            )
        if problems:
            raise AskError(problems)
        return None
    try:
        size = size_mm(sheet, "sheet", _SHEET)
    except AskError as error:
        problems += error.problems
    try:
        between = None if gap is None else length_mm(gap, "gap", POSITIVE)
    except AskError as error:
        problems += error.problems
    try:
        border = USUAL_BORDER_MM if clamp_border is None else length_mm(clamp_border, "clamp-border", NOT_NEGATIVE)
    except AskError as error:
        problems += error.problems
    if problems:
        raise AskError(problems)
    return SheetHow(size_mm=size, border_mm=border, gap_mm=between, turn=turn, keep_grain=keep_grain)
