"""The README's house number as it is really made, spoilt in ways that hurt: each is caught, at the right line."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

import pytest
from msgspec.structs import replace

from signgen.checks import judge
from signgen.checks.case import make_case
from signgen.checks.check import CheckReport
from signgen.checks.fixing import screws_at
from signgen.job.facts import JobFacts
from signgen.pipeline import make_job
from tests.asking import spec_of

Spoilt = tuple[list[str], set[int]]
"""A program's lines, and the numbers of those that do the harm."""


@cache
def good() -> JobFacts:
    return make_job(spec_of()).facts


def judged(texts: dict[int, str], order: tuple[int, ...] = (0, 1)) -> CheckReport:
    facts = good()
    programs = [(p.file, texts.get(k, p.text), p.tool) for k, p in enumerate(facts.programs)]
    case = make_case(
        drawing=facts.drawing,
        stock=facts.stock,
        zero=facts.zero,
        machine=facts.spec.machine,
        material=facts.spec.material,
        programs=[programs[k] for k in order],
        breakthrough_mm=facts.spec.breakthrough_mm,
        tolerance_mm=facts.spec.tolerances.total_mm,
    )
    return judge(replace(case, fixings=screws_at(facts.screws_mm, facts.zero)))


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


def longest(lines: list[str], title: str) -> int:
    """Index of the straight feed move of a block that goes farthest across, and has no arc after it: an arc from
    elsewhere would be refused before anything is cut."""
    position = {"X": 0.0, "Y": 0.0}
    best, found = 0.0, 0
    for k in block(lines, title):
        words = {word[0]: float(word[1:]) for word in lines[k].split() if word[0] in "XY"}
        gone = sum((words.get(letter, position[letter]) - position[letter]) ** 2 for letter in "XY")
        position |= words
        if lines[k].startswith("G1") and not lines[k + 1].startswith(("G2", "G3")) and gone > best:
            best, found = gone, k
    return found


def at_longest(title: str, change: Callable[[str], str | None]) -> Callable[[list[str]], Spoilt]:
    """The longest straight move of a block is changed, or left out where the change gives None."""

    def spoil(lines: list[str]) -> Spoilt:
        k = longest(lines, title)
        new = change(lines[k])
        return [*lines[:k], *([] if new is None else [new]), *lines[k + 1 :]], set(range(k, k + 4))

    return spoil


def flipped(line: str) -> str:
    """The sign of its first coordinate turned round."""
    return re.sub(r"([XY])(\d)", r"\1-\2", line, count=1)


def tenfold(line: str) -> str:
    return re.sub(r" F\S+", "", line) + " F19900"


def double_first_pass(lines: list[str]) -> Spoilt:
    """The edge's first ramp goes to where its second should end."""
    ramps = [k for k in block(lines, "edge") if re.search(r"^G1 [XY].*Z", lines[k])]
    first, second = (re.search(r"Z\S+", lines[k]) for k in ramps[:2])
    assert first
    assert second
    out = list(lines)
    out[ramps[0]] = lines[ramps[0]].replace(first.group(), second.group())
    return out, set(range(ramps[0], ramps[0] + 5))


LETTER = "line 2 letter 1 'L'"
TABLE: tuple[tuple[str, int, Callable[[list[str]], Spoilt], str], ...] = (
    ("a letter moved 0.15 mm", 0, moved(LETTER, "X", 0.15), "C109"),
    ("a letter moved 0.03 mm", 0, moved(LETTER, "Y", 0.03), "C116"),
    ("a letter 0.06 mm too deep", 0, moved(LETTER, "Z", -0.06, first=2), "C109"),
    ("a letter 0.06 mm too shallow", 0, moved(LETTER, "Z", 0.06, first=2), "C108"),
    ("a letter 0.03 mm too deep", 0, moved(LETTER, "Z", -0.03, first=2), "C116"),
    ("a letter left out", 0, without(LETTER), "C108"),
    ("a letter left out, by its name", 0, without(LETTER), "C125"),
    ("a line left out", 0, at_longest(LETTER, lambda line: None), "C116"),
    ("a sign flipped", 0, at_longest(LETTER, flipped), "C109"),
    ("G0 for G1", 0, at_longest(LETTER, lambda line: line.replace("G1", "G0")), "C102"),
    ("a retract left out", 0, replaced(r"^G0 Z14$", None, which=1), "C102"),
    ("a retract 0.1 mm into the board", 0, replaced(r"^G0 Z14$", "G0 Z11.9", which=1), "C102"),
    ("inches for millimetres", 0, replaced("G21", "G20", span=0), "C101"),
    ("relative distances", 0, replaced("G90", "G91", span=0), "C103"),
    ("the spindle is never started", 0, replaced(r"^S\d+ M3$", None, span=8), "C105"),
    ("no time to reach speed", 1, replaced(r"^G4 P\d+$", None, span=8), "C105"),
    ("a feed tenfold", 1, at_longest("edge", tenfold), "C106"),
    ("a hole left out", 1, without("hole top left"), "C110"),
    ("a hole moved 0.1 mm", 1, moved("hole top left", "X", 0.1), "C110"),
    ("a tab's lift left out", 1, replaced(r"^G1 Z1\.5.*", None), "C112"),
    ("a tab 0.1 mm too low", 1, replaced(r"^G1 Z1\.5", "G1 Z1.4"), "C112"),
    ("no tabs", 1, lambda lines: ([line for line in lines if not line.startswith("G1 Z1.5")], set()), "C119"),
    ("the last pass not through", 1, replaced(r"^(G1 [XY].*)Z-0\.3", r"\1Z0.2", after="(edge", span=14), "C111"),
    ("a pass of double depth", 1, double_first_pass, "C118"),
    ("deep into the spoilboard", 1, replaced(r"^(G1 [XY].*)Z-0\.3", r"\1Z-3", after="(edge"), "C107"),
    ("left running at the end", 1, replaced(r"^M5$", None), "C105"),
)


def test_the_house_number_passes_every_check() -> None:
    assert [str(finding.message) for _, finding in judged({}).findings()] == []


@pytest.mark.parametrize(("program", "spoil", "code"), [row[1:] for row in TABLE], ids=[row[0] for row in TABLE])
def test_harm_is_caught_at_its_line(program: int, spoil: Callable[[list[str]], Spoilt], code: str) -> None:
    lines, harmful = spoil(good().programs[program].text.splitlines())
    report = judged({program: "\n".join(lines) + "\n"})
    result = next(result for result in report.results if result.code == code)
    assert result.findings, [(other.code, str(finding.message)) for other, finding in report.findings()]
    named = {finding.line for finding in result.findings if finding.file == good().programs[program].file}
    assert not harmful or named & harmful, [(f.line, str(f.message)) for f in result.findings]


def test_the_programs_in_the_wrong_order_are_caught() -> None:
    report = judged({}, order=(1, 0))
    assert not next(result for result in report.results if result.code == "C113").passed


def test_the_engraving_of_another_number_is_told_by_its_figures() -> None:
    other = make_job(spec_of(text=["71", "Larkspur Lane"])).facts.programs[0].text
    result = next(result for result in judged({0: other}).results if result.code == "C125")
    said = " ".join(str(finding.message) for finding in result.findings)
    assert "line 1 letter 1 '1'" in said
    assert "line 1 letter 2 '7'" in said
    assert "line 2" not in said


def test_the_suggested_screws_are_measured() -> None:
    result = next(result for result in judged({}).results if result.code == "C124")
    assert re.search(r"^[4-9] screws and clamps: nearest \d", str(result.detail))


def test_a_file_cut_short_is_caught() -> None:
    text = good().programs[1].text
    report = judged({1: text[: len(text) // 2]})
    assert not next(result for result in report.results if result.code == "C103").passed
