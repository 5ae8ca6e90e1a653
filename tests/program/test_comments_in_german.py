"""Programs of a German sign speak German in ASCII, and the judge reads their headings by the same tables."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.checks.check import Case
from signgen.checks.headings_true import HeadingsTrue
from signgen.proving.judge_sides import judged_sides
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from tests.asking import spec_of


@pytest.fixture(scope="module")
def case() -> Case:
    spec = replace(spec_of(dialect="one-file"), language="de")
    (side,) = sides_of(spec)
    (judged,) = judged_sides([written(side)])
    assert judged.report.passed
    return judged.case


def test_comments_and_messages_are_german_in_ascii(case: Case) -> None:
    text = case.programs[0].text
    assert text.isascii()
    for line in ("(Schild: ", "(Werkzeug: V-Fraeser", "(Brett: ", "(Fraeser 2. Werkzeug: ", "(MSG, einsetzen: "):
        assert line in text
    assert "Tool: " not in text
    assert "(MSG, vorn links: unter dem Fraeser muss Brett liegen)" in case.outlines[0].text


@pytest.mark.parametrize(
    ("true", "false"),
    [
        ("Werkzeug: V-Fraeser 90", "Werkzeug: V-Fraeser 60"),
        ("Werkzeug: V-Fraeser", "Tool: V-Fraeser"),
        ("(Brett: ", "(Brett: 1"),
        ("Oberseite des Bretts liegt bei Z1", "Oberseite des Bretts liegt bei Z2"),
        ("Z0: Unterseite des Bretts", "Z0: Oberseite des Bretts"),
        ("X0 Y0: Ecke unten links des fertigen Schilds", "X0 Y0: Ecke unten links des Bretts"),
        ("mm rechts und", "mm rechts und 9"),
        ("MSG, einsetzen: Schaftfraeser", "MSG, einsetzen: Kugelfraeser"),
    ],
)
def test_the_judge_finds_a_heading_that_says_otherwise(case: Case, true: str, false: str) -> None:
    assert HeadingsTrue().run(case).passed
    assert true in case.programs[0].text
    text = case.programs[0].text.replace(true, false, 1)
    spoiled = replace(case, programs=tuple(replace(program, text=text) for program in case.programs))
    result = HeadingsTrue().run(spoiled)
    assert result.findings
    assert all(finding.line for finding in result.findings)
