"""Who writes inches reads inches: on the sheet, in the summary and in errors; what is typed into a machine does not
change."""

from __future__ import annotations

import re

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.errors import AskError, SignGenError, said_in
from signgen.job.facts import JobFacts
from signgen.job.report import report
from signgen.job.summary import summary_text
from signgen.pages.setup_sheet import setup_html
from signgen.pictures.preview import sign_relief
from signgen.pipeline import prove, read_sign
from signgen.spec.said_units import units_of
from signgen.spec.sign_file import dump_sign_file
from signgen.words.words import Words

ASKED = {"text": ["17"], "size": "6 1/4 x 4 in", "thickness": "3/8in", "cap-height": "1 1/2 in"}


@pytest.fixture(scope="module")
def facts() -> JobFacts:
    return prove(read_sign(ASKED))


@pytest.mark.parametrize(
    ("mm", "said"),
    [
        (88.9, "3.5 in (3 1/2)"),  # 1 in = 25.4 mm exactly (international yard and pound agreement of 1959)
        (6.35, "0.25 in (1/4)"),
        (25.4 / 64, "0.016 in (1/64)"),
        (25.4, "1 in"),
        (10.0, "0.394 in"),
    ],
)
def test_lengths_have_a_thousandth_and_the_fraction_that_they_are(mm: float, said: str) -> None:
    assert Words("en", "in").mm(mm).replace("\u00a0", " ") == said


def test_the_summary_is_in_inches(facts: JobFacts) -> None:
    text = summary_text(facts, "out")
    assert "6.25 x 4 x 0.375 in" in text
    assert "17 at 1.5 in (1 1/2)" in text
    assert not re.search(r"\d mm", text)


def test_the_sheet_is_in_inches_and_what_is_typed_says_its_unit(facts: JobFacts) -> None:
    page = re.sub(
        r"<[^>]+>", " ", re.sub(r"(?s)<style.*?</style>|<svg.*?</svg>", "", setup_html(facts, sign_relief(facts)))
    )
    page = page.replace("\u00a0", " ").replace("&nbsp;", " ")
    assert "6.25 × 4 in" in page
    assert "set Z to 0.1 mm" in page
    for millimetres in re.finditer(r"[^.;]{40}\d mm(?!/min)", page):  # only what goes into the machine
        assert re.search(r"X-?\d|Z|paper|typed", millimetres.group()), millimetres.group()


def test_the_report_says_which(facts: JobFacts) -> None:
    assert report(facts)["sign"]["units"] == "in"


def test_the_resolved_sign_file_keeps_them(facts: JobFacts) -> None:
    assert 'units = "in"' in dump_sign_file(facts.spec)


def test_errors_are_in_inches() -> None:
    with pytest.raises(SignGenError) as caught, said_in("en", units_of(ASKED)):
        prove(read_sign({**ASKED, "cap-height": "5in"}))
    said = "\n".join(caught.value.lines())
    assert " in" in said
    assert "mm" not in said


def test_millimetres_where_nobody_wrote_inches() -> None:
    assert read_sign({"text": ["9"], "size": "100x80", "thickness": "9"}).units == "mm"
    assert read_sign({"text": ["9"], "size": "4x3in", "thickness": "9", "units": "mm"}).units == "mm"


@pytest.mark.parametrize("extra", [{"thickness": "12"}, {"thickness": "3/4in", "size": "24x12"}])
def test_a_size_that_can_only_be_inches_asks(extra: dict[str, str]) -> None:
    asked = {"text": ["9"], "size": "12x6", **extra}
    with pytest.raises(AskError) as caught:
        read_sign(asked)
    (problem,) = caught.value.problems
    assert problem.where == "size"
    size = asked["size"]
    assert f"{size} mm" in str(problem.what)
    assert f"{size} inches" in str(problem.what)
    assert f"Write {size}in or {size}mm." in str(problem.remedy)


def test_the_command_says_so_in_inches_too() -> None:
    command = ["make", "17", "--size", "6x4in", "--thickness", "3/8in", "--cap-height", "5in"]
    result = CliRunner().invoke(group, command, standalone_mode=False)
    assert isinstance(result.exception, SignGenError)
    assert "mm" not in "\n".join(result.exception.lines())
