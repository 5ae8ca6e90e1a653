"""A whole sheet of signs is judged as one job: what is wrong on one piece is found on it."""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from signgen.checks import judge
from signgen.checks.case import make_case
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.nested import Placement, nested
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.operations.plan import make_plan
from signgen.proving.prove import proved
from signgen.proving.sides import Setup, Side
from signgen.shop.stock import Stock, work_zero
from signgen.spec.sign_spec import SignSpec
from tests.asking import english, spec_of


def small(text: str) -> SignSpec:
    return spec_of(text=[text], size="50x30", thickness="6", hole_diameter="6", holes="row", inset="8", tabs="2")


@pytest.fixture(scope="module")
def sheet() -> tuple[SignSpec, JobFacts]:
    """Three signs on a board of 160 x 130 mm, one of them turned."""
    specs = [spec_of(text=[text], size="50x30", thickness="6", holes=None, hole_diameter=None, inset=None, tabs="2",
                     cap_height="8") for text in ("A", "B", "C")]  # fmt: skip
    places = [(0.0, 0.0, False), (65.0, 0.0, False), (0.0, 45.0, True)]
    signs = [
        (draw(spec), Placement(name=str(n), x_mm=x, y_mm=y, turned=turned))
        for n, (spec, (x, y, turned)) in enumerate(zip(specs, places, strict=True), 1)
    ]
    drawing = nested(signs)
    stock = Stock(width_mm=160, height_mm=145, thickness_mm=6, sign_x_mm=22, sign_y_mm=22)
    spec = replace(specs[0], width_mm=drawing.width_mm, height_mm=drawing.height_mm, origin="stock")
    plan = make_plan(drawing, spec)
    zero = work_zero(stock, on_board=True, at_top=False)
    setup = Setup(stock=stock, least=stock, zero=zero)
    return spec, proved([Side(spec=spec, drawing=drawing, plan=plan, setup=setup)])


def judged(sheet: tuple[SignSpec, JobFacts], texts: dict[int, str], drawing: Drawing | None = None) -> dict[str, str]:
    """Messages of the checks that fail, by code, with some programs' texts changed."""
    spec, facts = sheet
    case = make_case(
        drawing=drawing or facts.drawing,
        stock=facts.stock,
        zero=facts.zero,
        machine=spec.machine,
        material=spec.material,
        programs=[
            (program.file, texts.get(number, program.text), program.tool)
            for number, program in enumerate(facts.programs)
        ],
        breakthrough_mm=spec.breakthrough_mm,
        tolerance_mm=spec.tolerances.total_mm,
    )
    failed = [result for result in judge(case).results if result.severity == "error" and not result.passed]
    return {result.code: " ".join(str(finding.message) for finding in result.findings) for result in failed}


def without(text: str, feature: str) -> str:
    """A program without what follows a feature's comment, up to the next one."""
    start = text.index(f"({feature})")
    after = re.compile(r"^\(|^G0 Z.*\nG0 X0|^M5", re.MULTILINE).search(text, start + 1)
    assert after is not None
    return text[:start] + text[after.start() :]


def test_a_sheet_that_is_right_passes(sheet: tuple[SignSpec, JobFacts]) -> None:
    assert sheet[1].checks.passed
    assert judged(sheet, {}) == {}
    assert [english(program.description) for program in sheet[1].programs] == [
        ("engraves the letters",), ("cuts 3 signs out, leaving 2 tabs on each",)
    ]  # fmt: skip


def test_edges_come_after_everything_else_and_are_named(sheet: tuple[SignSpec, JobFacts]) -> None:
    comments = re.findall(r"^\((\d: [^)]*)\)", sheet[1].programs[-1].text, re.MULTILINE)
    assert sorted(comments) == ["1: edge", "2: edge", "3: edge"]


def test_a_piece_that_is_not_cut_out_is_found(sheet: tuple[SignSpec, JobFacts]) -> None:
    failed = judged(sheet, {1: without(sheet[1].programs[1].text, "3: edge")})
    assert "C111" in failed
    for place in re.findall(r"\(([\d.]+), ([\d.]+)\)", failed["C111"]):
        assert float(place[1]) > 40  # the third piece lies above the others


def test_a_letter_that_is_not_engraved_is_found(sheet: tuple[SignSpec, JobFacts]) -> None:
    text = sheet[1].programs[0].text
    comment = re.search(r"\((2: line 1 letter 1[^)]*)\)", text)
    assert comment is not None
    assert "2: line 1 letter 1" in judged(sheet, {0: without(text, comment[1])})["C108"]


def test_a_cut_through_a_neighbour_is_found(sheet: tuple[SignSpec, JobFacts]) -> None:
    drawing = sheet[1].drawing
    moved = drawing.having(Tab, drawing.of(Tab)[:-1])
    assert judged(sheet, {}, moved) != {}  # a tab stands that this drawing does not have: not cut free there
