"""The terminal's few lines fit a terminal."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.checks.check import CheckReport
from signgen.job.facts import JobFacts
from signgen.job.summary import summary_text

Make = Callable[..., JobFacts]


WRITTEN = st.characters(exclude_categories=("C", "Z"))
"""What a spec's lines may hold; all else is in folders and warnings."""


def columns(line: str) -> int:
    return sum(2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in line)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    lines=st.lists(st.text(WRITTEN, min_size=1, max_size=120), min_size=1, max_size=6),
    folder=st.text(min_size=1, max_size=300),
    programs=st.integers(1, 20), warnings=st.lists(st.text(max_size=400), max_size=4),
)  # fmt: skip
def test_it_fits_80_by_24_and_holds_no_control_characters(
    facts: JobFacts, lines: list[str], folder: str, programs: int, warnings: list[str]
) -> None:
    text = replace(facts.spec.text, lines=tuple(lines))
    busy = replace(
        facts,
        spec=replace(facts.spec, text=text),
        programs=(facts.programs * 10)[:programs],
        warnings=tuple(warnings),
    )
    rows = summary_text(busy, folder).split("\n")
    assert len(rows) <= 24
    assert max(columns(row) for row in rows) <= 80
    assert not any(unicodedata.category(c)[0] == "C" for row in rows for c in row)


def test_it_says_what_was_made_on_what_board_for_how_long_and_what_comes_next(facts: JobFacts) -> None:
    text = summary_text(facts, "out/17")
    for part in (
        "200 x 120 x 12 mm", "Birch plywood", "4 holes", "at least 280 x 200 mm", "1-v-bit-90.nc", "90 degree V-bit",
        "3 min 20 s", "about 9 min 10 s", "2 of 3 checks passed, 1 with a warning", "out/17/setup.html",
    ):  # fmt: skip
        assert part in text


def test_a_real_board_is_named_beside_the_least_one(make_facts: Make) -> None:
    text = summary_text(make_facts(real_board=True, cell=5.0), "x")
    assert "yours, 280 x 200 mm" in text
    assert "220 x 140 mm" in text


def test_what_a_check_warns_of_is_said(facts: JobFacts) -> None:
    (found,) = [result for result in facts.checks.results if not result.passed]
    row = next(row for row in summary_text(facts, "x").split("\n") if row.startswith("warning"))
    assert row.split(maxsplit=1)[1][:40] in str(found.findings[0].message)


def test_a_failed_check_is_not_a_thing_to_cut_by(facts: JobFacts) -> None:
    bad = replace(facts.checks.results[2], severity="error")
    text = summary_text(replace(facts, checks=CheckReport(results=(*facts.checks.results[:2], bad))), "x")
    assert "Do not run: 1 of 3 checks failed: C120 wood_left" in text
    assert "Do not cut" in text
