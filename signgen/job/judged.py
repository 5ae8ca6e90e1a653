"""Programs and what the checks say of them."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from signgen.checks.check import Case, CheckReport
from signgen.checks.fixing import Fixing, clamps_at, screws_at
from signgen.job.survey import Survey
from signgen.shop.stock import WorkZero
from signgen.spec.check_spec import FixingSpec


class Judged(Struct, frozen=True, kw_only=True):
    """`path` is what the user named; `language` the sign's own; `survey`
    what programs from elsewhere do, None for a folder that `make` wrote,
    whose setup sheet says it."""

    path: str
    case: Case
    report: CheckReport
    survey: Survey | None = None
    language: str = "en"


def fixings_of(
    said: FixingSpec, zero: WorkZero, stated_screws_mm: Sequence[tuple[float, float]] = ()
) -> tuple[Fixing, ...]:
    """Screws and clamps as they were said; screws that were not, as the setup sheet states them."""
    screws = stated_screws_mm if said.screws_mm is None else said.screws_mm
    return (*screws_at(screws, zero), *clamps_at(said.clamps_mm, said.clamp_height_mm, zero))
