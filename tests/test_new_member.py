"""A kind of thing that the program has never heard of: a row of drilled dimples. One feature, one planner, one exact
check, one row of the options and one of words, put into their tables at run time; everything else must take it without
a change, from the command line to the folder that is judged again."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any, Self

import numpy as np
import pytest
from click.testing import CliRunner
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Point

from signgen import checks, features
from signgen.checks import CHECKS, judge
from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at
from signgen.cli import group
from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.nested import Placement, nested
from signgen.drawing.spacing import LEAST_WALL_MM
from signgen.errors import CannotMakeError
from signgen.features.feature import Area, Feature, FloatArray, SignAsked, slope_of
from signgen.geometry.motion import Motion
from signgen.messages import Message, Mm
from signgen.messages.language import language
from signgen.operations import planners
from signgen.operations.plan import Plan, make_plan
from signgen.operations.planner import Known, PlannedStep, Role
from signgen.operations.planners import PLANNERS
from signgen.option import Option
from signgen.proving.judge_sides import case_of, judged_sides
from signgen.proving.prove import proved
from signgen.proving.sides import Side, setup_of
from signgen.proving.written import written
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.spec import keys
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import APPROACH_MM, Cut, Toolpath
from signgen.toolpath.pecks import pecks
from signgen.units import Limits
from tests.asking import english, spec_of
from tests.schemas import strict


class Dimples(Feature, frozen=True, kw_only=True):
    """A row of blind holes by a drill, each as deep as drawn to the shoulder of its point."""

    places_mm: tuple[tuple[float, float], ...]
    diameter_mm: float
    depth_mm: float
    point_deg: float

    kind = "dimples"

    @classmethod
    def asked_of(cls, sign: SignAsked) -> Iterator[Self]:
        depth = sign.asked(OPTION.name)
        if depth:
            places = tuple((sign.width_mm * share, 12.0) for share in (0.2, 0.4, 0.6, 0.8))
            yield cls(
                name="dimples", source=OPTION.name, places_mm=places, diameter_mm=5.0, depth_mm=depth, point_deg=118.0
            )

    @property
    def footprint(self) -> Area:
        return MultiPolygon([Point(place).buffer(self.diameter_mm / 2) for place in self.places_mm])

    @property
    def point_mm(self) -> float:
        return self.diameter_mm / 2 / slope_of(self.point_deg)

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        away = np.min([np.hypot(*(points_mm - place).T) for place in self.places_mm], axis=0)
        depth = self.depth_mm + self.point_mm - away / slope_of(self.point_deg)
        return depth, depth

    def deepest_mm(self, tool: Tool) -> float:
        return self.depth_mm + self.point_mm if tool.kind == "drill" else 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, places_mm=tuple(motion.point(x, y) for x, y in self.places_mm))

    @classmethod
    def messages(cls, own: Sequence[Self]) -> Iterator[Message]:
        count = sum(len(row.places_mm) for row in own)
        yield Message("feature.dimples", count=count, wide=Mm(own[0].diameter_mm), deep=Mm(own[0].depth_mm))

    def facts(self) -> dict[str, Any]:
        return {"diameter_mm": self.diameter_mm, "depth_mm": self.depth_mm}


class DrillDimples(Struct, frozen=True, kw_only=True):
    rows: tuple[Dimples, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float

    @property
    def description(self) -> str:
        return f"drills {sum(len(row.places_mm) for row in self.rows)} dimples"

    def toolpath(self) -> Toolpath:
        cuts = []
        for row in self.rows:
            for x, y in row.places_mm:
                path, feeds, peck = pecks(
                    x, y, self.thickness_mm + APPROACH_MM, self.thickness_mm - row.depth_mm - row.point_mm,
                    self.cutting.stepdown_mm, self.cutting.plunge_mm_per_min,
                )  # fmt: skip
                still = np.zeros(len(path), np.bool_)
                cuts.append(
                    Cut(path=path, feeds_mm_per_min=feeds, feature=row.name, stage=40, entering=still, peck_mm=peck)
                )
        return Toolpath(operation="dimples", tool=self.tool, cuts=tuple(cuts))


def dimples(features: Sequence[Feature], job: Known) -> Iterator[PlannedStep]:
    rows = tuple(each for each in features if isinstance(each, Dimples))
    if rows:
        drills = (tool for tool in job.spec.shop.tools if tool.kind == "drill")
        tool = next(tool for tool in drills if tool.diameter_mm == rows[0].diameter_mm)
        operation = DrillDimples(rows=rows, tool=tool, cutting=job.cutting(tool), thickness_mm=job.thickness_mm)
        yield PlannedStep(role=Role("dimples"), operation=operation, finishes=tuple(row.name for row in rows))


class DimplesMade:
    code = "X901"
    name = "dimples_made"
    severity: Severity = "error"
    needs_drawing = True
    explanation = "Every dimple is there, at its place and to its depth, from the motions alone."

    def run(self, case: Case) -> CheckResult:
        findings = []
        rows = case.drawing.of(Dimples)
        tips = [
            way.end_mm for program, way in zip(case.programs, case.cuts, strict=True) if program.tool.kind == "drill"
        ]
        ends = np.concatenate(tips) if tips else np.zeros((0, 3))
        for row in rows:
            for place in row.places_mm:
                own = ends[np.hypot(*(ends[:, :2] - place).T) < 0.05]
                low = case.stock.thickness_mm - float(own[:, 2].min()) if len(own) else 0.0
                if abs(low - row.depth_mm - row.point_mm) > 0.05:
                    findings.append(Finding(message=f"{row.name}: {low:.2f} mm deep at {at(*place)}.", place_mm=place))
        return verdict(self, findings, f"{len(rows)} rows")


OPTION = Option(
    name="dimple-depth", kind="length", metavar="LENGTH", group="Engraving", limits=Limits(least=0.5, greatest=4),
    help="Drill a row of dimples this deep below the text.", left_open="no dimples",
)  # fmt: skip

ROW = Dimples(
    name="dimples", source="dimples", places_mm=tuple((x, 12.0) for x in (60.0, 80.0, 100.0, 120.0)), diameter_mm=5.0,
    depth_mm=3.0, point_deg=118.0,
)  # fmt: skip


@pytest.fixture(scope="module")
def spec() -> SignSpec:
    return spec_of(text=["17"], size="180x120", thickness="12", holes=None, hole_diameter=None, inset=None, margin="25")


@pytest.fixture(scope="module")
def side(spec: SignSpec) -> Side:
    drill = next(tool for tool in spec.shop.tools if tool.kind == "drill" and tool.diameter_mm == ROW.diameter_mm)
    plain = draw(spec)
    drawing = replace(plain, features=(*plain.features, replace(ROW, point_deg=drill.angle_deg)))
    plan = planned(drawing, spec)
    return Side(spec=spec, drawing=drawing, plan=plan, setup=setup_of(spec, plan))


def planned(drawing: Drawing, spec: SignSpec) -> Plan:
    return make_plan(drawing, spec, planners=(dimples, *PLANNERS))


def test_a_sign_with_dimples_is_made_and_nothing_refuses_it(side: Side) -> None:
    facts = proved([side])
    assert facts.checks.passed
    assert [english(program.description) for program in facts.programs] == [
        ("engraves the letters",), ("drills 4 dimples",), ("cuts the sign out, leaving 4 tabs",),
    ]  # fmt: skip
    (judged,) = judged_sides([written(side)])
    case = judged.case
    assert judge(case, (*CHECKS, DimplesMade())).passed
    deep = float(side.drawing.thickness_mm - case.boards[-1].z_mm.min(initial=math.inf, where=_at(case, (80.0, 12.0))))
    assert deep == pytest.approx(3.0 + side.drawing.of(Dimples)[0].point_mm, abs=0.1)


@pytest.fixture
def member(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The five rows, each in its table; schemas are read from the tables when they are first asked for."""
    strict._validator.cache_clear()
    rows = list(keys.KEYS)
    rows.insert(next(n for n, row in enumerate(rows) if row.name == "ridge"), OPTION)
    monkeypatch.setattr(keys, "KEYS", tuple(rows))
    monkeypatch.setitem(keys.KEY_BY_NAME, OPTION.name, OPTION)
    monkeypatch.setattr(features, "KINDS", (*features.KINDS, Dimples))
    monkeypatch.setattr(planners, "PLANNERS", (dimples, *planners.PLANNERS))
    monkeypatch.setattr(checks, "CHECKS", (*checks.CHECKS, DimplesMade()))
    monkeypatch.setitem(language("en").table, "feature.dimples", "{count} dimples, {wide} wide and {deep} deep.")
    yield
    strict._validator.cache_clear()


def run(*args: str) -> str:
    return CliRunner().invoke(group, list(args), standalone_mode=False, catch_exceptions=False).output


@pytest.mark.usefixtures("member")
def test_the_command_makes_it_and_the_report_the_sheet_and_the_drawings_name_it(tmp_path: Path) -> None:
    assert OPTION.help in " ".join(run("make", "--help-all").split())
    asked = ("make", "17", "--size", "180x120", "--thickness", "12")
    plain, out = tmp_path / "plain", tmp_path / "dimples"
    run(*asked, "--out", str(plain))
    run(*asked, "--dimple-depth", "3mm", "--out", str(out))
    assert "dimple-depth = 3\n" in (out / "sign.toml").read_text()
    assert "# dimple-depth: no dimples\n" in (plain / "sign.toml").read_text()
    facts = json.loads((out / "report.json").read_text())
    (told,) = (each for each in facts["sign"]["features"] if each["kind"] == "dimples")
    assert (told["source"], told["diameter_mm"], told["depth_mm"]) == ("dimple-depth", 5.0, 3.0)
    assert "X901" in {each["code"] for each in facts["checks"]}
    page = (out / "setup.html").read_text().replace("\N{NO-BREAK SPACE}", " ")
    assert "4 dimples, 5 mm wide and 3 mm deep." in page
    assert "drills 4 dimples" in page
    for name in ("setup.html", "preview.html", "preview.svg", "preview.png"):
        assert (out / name).read_bytes() != (plain / name).read_bytes()
    (drilled,) = out.glob("*drill-5*.nc")
    assert drilled.read_text().count("G1 ") >= 4
    assert "passed" in run("check", str(out))


@pytest.mark.usefixtures("member")
def test_what_is_in_its_way_is_refused_by_name() -> None:
    spec = spec_of(text=["17"], size="180x120", thickness="12", holes="at:36,12;90,90", inset=None, dimple_depth="3")
    with pytest.raises(CannotMakeError, match="dimple-depth: dimples runs into hole 1"):
        draw(spec)


@pytest.mark.usefixtures("member")
def test_letters_are_laid_clear_of_it() -> None:
    asked = {"text": ["17"], "size": "180x60", "thickness": "12", "holes": None, "hole_diameter": None, "inset": None}
    drawing = draw(spec_of(**asked, dimple_depth="3"))
    (row,) = drawing.of(Dimples)
    assert min(letter.footprint.distance(row.footprint) for letter in drawing.letters) > LEAST_WALL_MM


@pytest.mark.parametrize(
    ("wrong", "codes"),
    [
        ({"depth_mm": 2.8}, {"C107", "C109", "X901"}),
        ({"depth_mm": 3.2}, {"C108", "X901"}),
        ({"places_mm": tuple((x + 1.0, 12.0) for x, _ in ROW.places_mm)}, {"C108", "C109", "X901"}),
    ],
    ids=["too deep", "too shallow", "beside its place"],
)
def test_what_is_cut_otherwise_than_drawn_is_seen_by_checks_that_never_heard_of_it(
    side: Side, wrong: dict[str, Any], codes: set[str]
) -> None:
    (row,) = side.drawing.of(Dimples)
    drawn = replace(side, drawing=side.drawing.having(Dimples, (replace(row, **wrong),)))
    case = case_of(drawn, written(side).programs())
    results = judge(case, (*CHECKS, DimplesMade())).results
    assert codes <= {result.code for result in results if result.findings}


def test_a_feature_that_no_planner_makes_or_two_make_is_said(side: Side) -> None:
    with pytest.raises(ValueError, match="dimples"):
        make_plan(side.drawing, side.spec)
    with pytest.raises(ValueError, match="dimples"):
        make_plan(side.drawing, side.spec, planners=(dimples, dimples, *PLANNERS))


def test_it_goes_on_a_sheet_turned(side: Side) -> None:
    place = Placement(name="2", x_mm=0, y_mm=0, turned=True)
    (row,) = nested([(side.drawing, place)]).of(Dimples)
    assert row.name == "2: dimples"
    assert row.places_mm[0] == pytest.approx((120 - 12, 60))


def _at(case: Case, place: tuple[float, float]) -> np.ndarray:
    grid = case.ideal.grid
    i, j = round((place[0] - grid.x0_mm) / grid.cell_mm), round((place[1] - grid.y0_mm) / grid.cell_mm)
    mask = np.zeros((grid.ny, grid.nx), np.bool_)
    mask[j - 2 : j + 3, i - 2 : i + 3] = True
    return mask
