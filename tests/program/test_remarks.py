"""`--comments full`: every pass, ramp and tab is named, and nothing else changes."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

import pytest
from msgspec.structs import replace

from signgen.dialects import DIALECTS, dialect_named
from signgen.proving.judge_sides import judged_sides
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.replay.motion import RAPID
from signgen.replay.steps import trace
from signgen.shop.manner import Manner
from tests.asking import spec_of
from tests.dialects.jobs import house_number

FULL = Manner(comments="full")
REMARK = re.compile(r"\(- (.*): (.*)\)$")
PASS = re.compile(r"pass (\d+) of (\d+).*?, (?:at most )?([\d.]+) mm deep")
SIGNS: dict[str, dict[str, Any]] = {
    "usual": {"tabs": "4", "hole_diameter": "14"},
    "finished": {"tabs": "3", "finish-pass": "0.3", "z_zero": "top"},
    "raised": {"finish": "raised", "hole_diameter": "5", "text": ["17"]},
    "recess": {"finish": "recess", "sharp-corners": True, "font": "roboto-slab", "text": ["17"]},
    "stroke": {"finish": "stroke", "text": ["17"], "depth": "3"},
    "slots": {"slot-length": "14", "edge-chamfer": "4", "countersink": False, "hole_diameter": "6"},
    "sunk": {"screw": "M5", "hole_diameter": None, "countersink": True},
    "keyholes": {"holes": "keyholes", "hole_diameter": None, "inset": None},
}
TOP_MM = 12.0


@cache
def full_texts(name: str) -> tuple[str, ...]:
    spec = spec_of(**SIGNS[name])
    return tuple(text for side in sides_of(spec) for text in dialect_named("plain").write(written(side).made, FULL))


def stepped(text: str, top_mm: float) -> list[tuple[str, str, float | None, float | None]]:
    """(what is said, of which feature, depth at the end of the next cut, depth at its start) of each remark."""
    steps = trace(text)
    found = []
    for n, step in enumerate(steps.steps):
        remark = REMARK.match(step.text)
        if remark:
            cut = next(
                (
                    each.first for each in steps.steps[n + 1 :]
                    if each.count and steps.motions.kind[each.first] != RAPID
                ),
                None,
            )  # fmt: skip
            z = None if cut is None else top_mm - float(steps.motions.end_mm[cut, 2])
            z0 = None if cut is None else top_mm - float(steps.motions.start_mm[cut, 2])
            found.append((remark.group(1), remark.group(2), z, z0))
    return found


@pytest.mark.parametrize("dialect", [dialect.name for dialect in DIALECTS])
def test_without_its_comments_a_program_is_the_same_in_every_dialect(dialect: str) -> None:
    programs = house_number(dialect)
    for short, full in zip(
        dialect_named(dialect).write(programs, Manner()), dialect_named(dialect).write(programs, FULL), strict=True
    ):
        assert [line for line in full.splitlines() if not line.startswith(("(- ", "(G"))] == short.splitlines()
        said = [line for line in full.splitlines() if line.startswith("(")]
        assert len(said) > len(short.splitlines()) - sum(line[0] != "(" for line in short.splitlines())
        for line in said:
            assert re.fullmatch(r"\([ -'*-:<->@-}]*\)", line), line
            assert len(line) <= 102
            assert "!" not in line


@pytest.mark.parametrize("name", SIGNS)
def test_each_pass_ramp_and_tab_is_named_where_it_begins(name: str) -> None:
    top = 0.0 if SIGNS[name].get("z_zero") == "top" else TOP_MM
    told = [row for text in full_texts(name) for row in stepped(text, top)]
    assert told
    for says, _, depth, before in told:
        named = PASS.search(says)
        assert depth is not None, says
        assert before is not None, says
        if says.startswith("pass") and "at most" not in says and "floor" not in says and named:
            plunges = depth > before + 0.005
            assert plunges or depth == pytest.approx(float(named.group(3)), abs=0.006), says
        if "ramp down" in says:
            assert depth > before, says
        if "over tab" in says:
            assert depth < before, says


@pytest.mark.parametrize("name", SIGNS)
def test_the_passes_of_a_feature_are_numbered_without_gaps(name: str) -> None:
    counted: dict[tuple[str, str, str], set[str]] = {}
    for number, text in enumerate(full_texts(name)):
        for says, feature, _, _ in stepped(text, TOP_MM):
            named = PASS.search(says)
            if named and says.startswith("pass"):
                counted.setdefault((str(number), feature, named.group(2)), set()).add(named.group(1))
    for (_, feature, count), numbers in counted.items():
        assert numbers == {str(n) for n in range(1, int(count) + 1)}, (feature, count, numbers)


@pytest.mark.parametrize("name", SIGNS)
def test_no_feature_is_cut_without_a_word_on_how(name: str) -> None:
    for text in full_texts(name):
        lines = text.splitlines()
        for n, line in enumerate(lines):
            later = [each for each in lines[n + 1 : n + 6] if each.startswith("(- ")]
            if re.fullmatch(r"\((?!-|G\d|MSG)[^)]*\)", line) and lines[n + 1].startswith("G0"):
                assert later, line


def test_the_opening_line_is_explained_in_the_signs_language() -> None:
    spec = replace(spec_of(dialect="one-file"), language="de", manner=FULL)
    (side,) = sides_of(spec)
    (judged,) = judged_sides([written(side)])
    assert judged.report.passed
    text = judged.case.programs[0].text
    assert text.isascii()
    opening = next(line for line in text.splitlines() if line.startswith("G17"))
    for word in opening.split():
        assert f"({word}: " in text
    assert "(G90: Orte zaehlen vom Nullpunkt)" in text
    assert "(- Rampe hinab zu Durchgang 2 von 5, 4,92 mm tief: Kante)" in text
