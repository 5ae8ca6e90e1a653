"""C131 and C132, and C111 with a skin: on real jobs, good and spoilt."""

from __future__ import annotations

import re
from functools import cache

import pytest

from signgen.checks import judge
from signgen.checks.case import make_case
from signgen.checks.check import CheckReport
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.pipeline import make_job
from tests.asking import spec_of


@cache
def job(**changes: object) -> JobFacts:
    return make_job(spec_of(text="7", holes=None, hole_diameter=None, inset=None, size="90x70", **changes)).facts


def judged(facts: JobFacts, texts: dict[int, str] | None = None, tabs: tuple[int, ...] | None = None) -> CheckReport:
    drawing = facts.drawing
    if tabs is not None:
        drawing = drawing.having(Tab, tuple(drawing.of(Tab)[i] for i in tabs))
    programs = [(p.file, (texts or {}).get(k, p.text), p.tool) for k, p in enumerate(facts.programs)]
    spec = facts.spec
    return judge(
        make_case(
            drawing=drawing, stock=facts.stock, zero=facts.zero, machine=spec.machine, material=spec.material,
            programs=programs, breakthrough_mm=spec.breakthrough_mm, tolerance_mm=spec.tolerances.total_mm,
            cusp_height_mm=spec.cusp_height_mm,
        )
    )  # fmt: skip


def result(report: CheckReport, code: str):  # type: ignore[no-untyped-def]
    return next(each for each in report.results if each.code == code)


def test_a_skin_as_asked_for_passes_everything() -> None:
    assert [str(f.message) for _, f in judged(job(onion_skin=0.4)).findings()] == []


@pytest.mark.parametrize(("height", "code"), [(0.3, "C131"), (0.5, "C111")])
def test_a_skin_thinner_or_thicker_by_a_tenth_is_caught(height: float, code: str) -> None:
    facts = job(onion_skin=0.4)
    text = re.sub(r"Z0\.4(?=\s)", f"Z{height}", facts.programs[-1].text)
    assert text != facts.programs[-1].text
    found = result(judged(facts, {len(facts.programs) - 1: text}), code)
    assert not found.passed
    assert found.findings


def test_a_skin_cut_through_is_named_with_its_line() -> None:
    facts = job(onion_skin=0.4)
    lines = facts.programs[-1].text.splitlines()
    k = max(n for n, line in enumerate(lines) if "Z0.4" in line)
    lines[k] = lines[k].replace("Z0.4", "Z-0.1")
    found = result(judged(facts, {len(facts.programs) - 1: "\n".join(lines) + "\n"}), "C131")
    assert found.findings[0].line is not None
    assert found.findings[0].line >= k + 1


def test_tabs_all_round_hold_and_tabs_on_one_side_are_warned_about() -> None:
    facts = job()
    assert result(judged(facts), "C132").passed
    one_side = result(judged(facts, tabs=(0,)), "C132")
    assert one_side.severity == "warning"
    assert "one side only" in str(one_side.findings[0].message)


def test_two_tabs_opposite_each_other_hold_it() -> None:
    tabs = job().drawing.of(Tab)
    opposite = next(
        (0, n)
        for n in range(1, 4)
        if abs(tabs[0].along_x + tabs[n].along_x) + abs(tabs[0].along_y + tabs[n].along_y) < 1e-6
    )
    assert result(judged(job(), tabs=opposite), "C132").passed
