"""Writes tests/checks/SABOTAGE.md from the checks and the table of sabotage: `python -m
tests.checks.sabotage_table`."""

from __future__ import annotations

from pathlib import Path

from signgen.checks import CHECKS, FROM_BEHIND
from tests.checks.test_sabotage import TABLE
from tests.checks.test_sabotage_told import TOLD_TABLE

PATH = Path(__file__).parent / "SABOTAGE.md"


def text() -> str:
    every = (*CHECKS, *(check for check in FROM_BEHIND if check not in CHECKS))
    lines = [
        "# What is checked before a program leaves",
        "",
        "Every program is read back from its text, run over a virtual board and compared with the drawing; reader,",
        "simulation and checks share nothing with what writes programs. A check that fails stops the job (a warning",
        "does not). `signgen explain CODE` says what a check looks at and what to do.",
        "",
        "This page is written by `python -m tests.checks.sabotage_table`, and a test holds it to the code.",
        "",
        "| code | name | what it sees at least |",
        "|---|---|---|",
    ]
    for check in every:
        least = check.explanation.split("\n\n")[-1].split(":", 1)[1]
        name = check.name.replace("_", " ") + (" (warning)" if check.severity == "warning" else "")
        lines.append(f"| {check.code} | {name} | {' '.join(least.split())} |")
    lines += [
        "",
        "## Sabotage",
        "",
        f"A small plate (`tests/checks/plate.py`) is spoilt in {len(TABLE) + len(TOLD_TABLE)} ways; each must be",
        "caught by the check beside it, at the line that does the harm (`tests/checks/test_sabotage.py`; against its",
        "sheet: `test_sabotage_told.py`). The README's house number is spoilt likewise in",
        "`tests/checks/test_sabotage_house_number.py`, and keyholes cut from behind (C150, C151) in",
        "`tests/checks/test_keyholes.py`.",
        "",
        "| what was done | caught by |",
        "|---|---|",
    ]
    names = {check.code: check.name.replace("_", " ") for check in every}
    lines += [f"| {what} | {code} {names[code]} |" for what, _, code, _ in (*TABLE, *TOLD_TABLE)]
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    PATH.write_text(text(), encoding="utf-8")
