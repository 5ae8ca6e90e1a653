"""The README's house number as it is really made, spoilt in ways that hurt: each is caught, at the right line."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

import pytest

from signgen.checks import judge
from signgen.checks.case import make_case
from signgen.checks.check import CheckReport
from signgen.pipeline import make_job
from signgen.sheet.job_facts import JobFacts
from tests.asking import spec_of

Spoilt = tuple[list[str], set[int]]
"""A program's lines, and the numbers of those that do the harm."""


@cache
def good() -> JobFacts:
    return make_job(spec_of()).facts


def judged(texts: dict[int, str], order: tuple[int, ...] = (0, 1)) -> CheckReport:
    facts = good()
    programs = [(p.file, texts.get(k, p.text), p.tool) for k, p in enumerate(facts.programs)]
    return judge(
        make_case(
            drawing=facts.drawing,
            stock=facts.stock,
            zero=facts.zero,
            machine=facts.spec.machine,
            material=facts.spec.material,
            programs=[programs[k] for k in order],
            breakthrough_mm=facts.spec.breakthrough_mm,
            tolerance_mm=facts.spec.tolerances.total_mm,
        )
    )


def block(lines: list[str], title: str) -> range:
    """Indices of the lines after the comment that starts with a title, up to the retract."""
    start = next(k for k, line in enumerate(lines) if line.startswith(f"({title}"))
    end = next(k for k in range(start + 3, len(lines)) if lines[k].startswith("G0 Z"))
    return range(start + 1, end)


def moved(title: str, letter: str, by_mm: float, first: int = 0) -> Callable[[list[str]], Spoilt]:
    """Every word of one letter in a block is off by some amount."""

    def spoil(lines: list[str]) -> Spoilt:
        own = block(lines, title)[first:]
        pattern = re.compile(rf"{letter}(-?[\d.]+)")
        out = list(lines)
        for k in own:
            out[k] = pattern.sub(lambda match: f"{letter}{float(match.group(1)) + by_mm:.4f}", lines[k])
        return out, {k + 1 for k in own}

    return spoil


def replaced(
    pattern: str, by: str | None, which: int = 0, after: str = "", span: int = 4
) -> Callable[[list[str]], Spoilt]:
    """One line that matches is replaced, or left out; the harm is done within `span` lines, or anywhere when 0."""

    def spoil(lines: list[str]) -> Spoilt:
        start = next(k for k, line in enumerate(lines) if line.startswith(after))
        k = [k for k in range(start, len(lines)) if re.search(pattern, lines[k])][which]
        new = [] if by is None else re.sub(pattern, by, lines[k]).split("\n")
        return [*lines[:k], *new, *lines[k + 1 :]], set(range(k, k + span))

    return spoil


def without(title: str) -> Callable[[list[str]], Spoilt]:
    def spoil(lines: list[str]) -> Spoilt:
        own = block(lines, title)
        return [line for k, line in enumerate(lines) if k not in own], set()

    return spoil


LETTER = "line 2 letter 1 'L'"
TABLE: tuple[tuple[str, int, Callable[[list[str]], Spoilt], str], ...] = (
    ("a letter moved 0.15 mm", 0, moved(LETTER, "X", 0.15), "C109"),
    ("a letter moved 0.03 mm", 0, moved(LETTER, "Y", 0.03), "C116"),
    ("a letter 0.06 mm too deep", 0, moved(LETTER, "Z", -0.06, first=2), "C109"),
    ("a letter 0.06 mm too shallow", 0, moved(LETTER, "Z", 0.06, first=2), "C108"),
    ("a letter 0.03 mm too deep", 0, moved(LETTER, "Z", -0.03, first=2), "C116"),
    ("a letter left out", 0, without(LETTER), "C108"),
    (
        "an ornament's end left out",
        0,
        replaced(r"^G1 X\S+ (Y\S+ )?Z10\.4\d+", None, after="(" + LETTER, span=0),
        "C116",
    ),
    ("a sign flipped", 0, replaced(r"^G1 X13\.1012", "G1 X-13.1012", after="(" + LETTER), "C109"),
    ("G0 for G1", 0, replaced(r"^G1 (X\S+ Y\S+ Z10\.1\d+).*", r"G0 \1", after="(" + LETTER), "C102"),
    ("a retract left out", 0, replaced(r"^G0 Z22$", None, which=1), "C102"),
    ("a retract 0.1 mm into the board", 0, replaced(r"^G0 Z22$", "G0 Z11.9", which=1), "C102"),
    ("inches for millimetres", 0, replaced("G21", "G20", span=0), "C101"),
    ("relative distances", 0, replaced("G90", "G91", span=0), "C103"),
    ("the spindle is never started", 0, replaced(r"^S\d+ M3$", None, span=8), "C105"),
    ("no time to reach speed", 1, replaced(r"^G4 P\d+$", None, span=8), "C105"),
    ("a feed tenfold", 1, replaced(r"F1990$", "F19900"), "C106"),
    ("a hole left out", 1, without("hole top left"), "C110"),
    ("a hole moved 0.1 mm", 1, moved("hole top left", "X", 0.1), "C110"),
    ("a tab's lift left out", 1, replaced(r"^G1 Z1\.5 F800$", None), "C112"),
    ("a tab 0.1 mm too low", 1, replaced(r"^G1 Z1\.5 F800$", "G1 Z1.4 F800"), "C112"),
    ("the last pass not through", 1, replaced(r"Z-0\.3 F990$", "Z0.2 F990", after="(edge", span=12), "C111"),
    ("a pass of double depth", 1, replaced(r"Z9\.54 F990$", "Z7.08 F990"), "C118"),
    ("into the spoilboard's depth", 1, replaced(r"Z-0\.3 F990$", "Z-3 F990", after="(edge"), "C107"),
    ("left running at the end", 1, replaced(r"^M5$", None), "C105"),
)


def test_the_house_number_passes_every_check() -> None:
    assert [finding.message for _, finding in judged({}).findings()] == []


@pytest.mark.parametrize(("program", "spoil", "code"), [row[1:] for row in TABLE], ids=[row[0] for row in TABLE])
def test_harm_is_caught_at_its_line(program: int, spoil: Callable[[list[str]], Spoilt], code: str) -> None:
    lines, harmful = spoil(good().programs[program].text.splitlines())
    report = judged({program: "\n".join(lines) + "\n"})
    result = next(result for result in report.results if result.code == code)
    assert result.findings, [(other.code, finding.message) for other, finding in report.findings()]
    named = {finding.line for finding in result.findings if finding.file == good().programs[program].file}
    assert not harmful or named & harmful, [(f.line, f.message) for f in result.findings]


def test_the_programs_in_the_wrong_order_are_caught() -> None:
    report = judged({}, order=(1, 0))
    assert not next(result for result in report.results if result.code == "C113").passed


def test_a_file_cut_short_is_caught() -> None:
    text = good().programs[1].text
    report = judged({1: text[: len(text) // 2]})
    assert not next(result for result in report.results if result.code == "C103").passed
