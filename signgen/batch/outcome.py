"""What became of a row."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from signgen.errors import Problem, SignGenError


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """A row's sign made or not. `figures` are what the batch's report tells of a sign that was made, plain values;
    `problems` what kept one from being made, and `exit_code` what `signgen make` would have ended with."""

    row: int
    folder: str = ""
    copies: int = 1
    figures: Mapping[str, Any] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    exit_code: int = 0

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
        if len(self.problems) == 1:
            (problem,) = self.problems
            return " ".join(part for part in (problem.what, problem.remedy) if part)
        return " ".join(str(problem) for problem in self.problems)


def failed(row: int, error: SignGenError, folder: str = "", copies: int = 1) -> Outcome:
    """The outcome of a row that something is wrong with."""
    return Outcome(row=row, folder=folder, copies=copies, problems=error.problems, exit_code=error.exit_code)
