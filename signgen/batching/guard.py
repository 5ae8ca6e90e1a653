"""Cells that a spreadsheet would run as formulas, in the file of failed rows."""

from __future__ import annotations

import re

_FORMULA = re.compile(r"'*[=+\-@\t\r\n]")
_NUMBER = re.compile(r"[+-]?[\d.,]+")


def guarded(cell: str) -> str:
    """The cell with an apostrophe before what a spreadsheet would take for a formula; a plain number stays as it is.

    Source: OWASP, "CSV Injection": the first characters =, +, -, @, tab and line ends start formulas (from memory).
    """
    return f"'{cell}" if _FORMULA.match(cell) and not _NUMBER.fullmatch(cell) else cell


def unguarded(cell: str) -> str:
    """The cell as it was before `guarded`.

    >>> unguarded(guarded("=1+1")), unguarded(guarded("'=x")), unguarded(guarded("-3"))
    ('=1+1', "'=x", '-3')
    """
    return cell[1:] if cell.startswith("'") and _FORMULA.match(cell) else cell
