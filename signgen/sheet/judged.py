"""Programs and what the checks say of them."""

from __future__ import annotations

from dataclasses import dataclass

from signgen.checks.check import Case, CheckReport
from signgen.sheet.survey import Survey


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """`path` is what the user named; `survey` what programs from elsewhere do, None for a folder that `make` wrote,
    whose setup sheet says it."""

    path: str
    case: Case
    report: CheckReport
    survey: Survey | None = None
