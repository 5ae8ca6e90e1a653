"""What became of a row, or of a sheet of signs."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from msgspec import Struct, field

from signgen.errors import Problem, SignGenError, gathered
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording

LOST = 70
"""Exit code of a row whose worker hung, crashed or ran out of memory: nothing that `signgen make` ends with."""


class RowOutcome(Struct, frozen=True, kw_only=True):
    """A row's sign made or not, or a sheet's: then `sheet` is its number, and `row` 0.

    `figures` are what the batch's report tells of what was made, plain values; `problems` what kept it from being
    made, and `exit_code` what `signgen make` would have ended with. `digest` stands for what the row asks for, '' when
    it cannot be read; `cells` are the row's, in the order of the list's columns. `stops`: it is not the row that is to
    blame, and every other row would fare alike (a full disk). `language`: what its problems are said in.
    """

    row: int
    folder: str = ""
    copies: int = 1
    figures: Mapping[str, Any] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    exit_code: int = 0
    stops: bool = False
    sheet: int = 0
    digest: str = ""
    cells: tuple[str, ...] = ()
    language: str = LANGUAGES[0]

    @property
    def made(self) -> bool:
        return not self.problems

    @property
    def field_named(self) -> str:
        """Where the row is wrong: the keys, each once, in the order in which they were found."""
        return "; ".join(dict.fromkeys(problem.where for problem in self.problems))

    @property
    def message(self) -> str:
        """What is wrong and what to do; with several problems each begins with its key."""
        problems, say = tuple(gathered(self.problems)), Wording(self.language)
        if len(problems) == 1:
            (problem,) = problems
            return " ".join(part for part in (say(problem.what), say(problem.remedy)) if part)
        return " ".join(problem.said(say) for problem in problems)

    def to_json(self) -> bytes:
        """One line without its end."""
        told: dict[str, Any] = {"sheet": self.sheet} if self.sheet else {"row": self.row}
        told |= {"folder": self.folder, "copies": self.copies}
        told |= {} if self.sheet else {"digest": self.digest, "cells": self.cells}
        if self.made:
            told["figures"] = dict(self.figures)
        else:
            told["exit_code"] = self.exit_code
            say = Wording(self.language)
            told["problems"] = [[each.where, say(each.what), say(each.remedy)] for each in self.problems]
        return json.dumps(told, ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode()


def outcome_from_json(line: bytes) -> RowOutcome:
    """The outcome that `to_json` wrote. Raises: ValueError, KeyError or TypeError when it did not."""
    told = json.loads(line)
    return RowOutcome(
        row=int(told.get("row", 0)),
        sheet=int(told.get("sheet", 0)),
        folder=str(told["folder"]),
        copies=int(told["copies"]),
        figures=told.get("figures", {}),
        problems=tuple(
            Problem(where=where, what=what, remedy=remedy) for where, what, remedy in told.get("problems", [])
        ),
        exit_code=int(told.get("exit_code", 0)),
        digest=str(told.get("digest", "")),
        cells=tuple(told.get("cells", ())),
    )


def failed(
    row: int, error: SignGenError, folder: str = "", copies: int = 1, *, stops: bool = False, sheet: int = 0
) -> RowOutcome:
    """The outcome of a row, or a sheet, that something is wrong with."""
    return RowOutcome(
        row=row, folder=folder, copies=copies, problems=error.problems, exit_code=error.exit_code, stops=stops,
        sheet=sheet, language=error.language,
    )  # fmt: skip


def lost(row: int, folder: str, copies: int, reason: str, sheet: int = 0) -> RowOutcome:
    """The outcome of a row, or a sheet, that no worker came back from; `reason` is a sentence without its end."""
    where = "sheet" if sheet else "row"
    problem = Problem(where=where, what=f"{reason}.", remedy=f"Look at what is special about this {where}.")
    return RowOutcome(row=row, folder=folder, copies=copies, problems=(problem,), exit_code=LOST, sheet=sheet)
