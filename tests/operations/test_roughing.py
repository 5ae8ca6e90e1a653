"""Floors that a thicker cutter clears first: all is cleared, no wall is touched before its lap, and it is quicker."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
import shapely
from shapely.geometry import LineString

from signgen.drawing.draw import draw
from signgen.features.recess import Recess
from signgen.operations.clear_floor import ClearFloor
from signgen.operations.finish_floor import ALLOWANCE_MM, FinishFloor
from signgen.operations.plan import Plan, make_plan
from signgen.pipeline import prove
from signgen.spec.sign_spec import SignSpec
from signgen.toolpath.cut import Toolpath
from tests.asking import spec_of

BARE: dict[str, Any] = {"holes": None, "hole_diameter": None, "inset": None}
SIGNS: dict[str, dict[str, Any]] = {
    "raised": {
        "text": ["LARKSPUR"], "finish": "raised", "size": "380x120", "panel": "6",
        "letter_spacing": "4", "layout": None,
    },
    "a rim": {"text": ["No 12"], "finish": "raised", "size": "260x160", "rim": "3", "rim_inset": "6"},
    "sharp": {"text": ["MILL"], "finish": "raised", "size": "200x80", "sharp_corners": True, "cap_height": "22"},
}  # fmt: skip


def sign(name: str, **changes: Any) -> SignSpec:
    return spec_of(**{**BARE, **SIGNS[name], **changes})


def plan_of(spec: SignSpec, *, twice: bool = True) -> Plan:
    return make_plan(draw(spec), spec, twice=twice)


def swept(toolpath: Toolpath, z: float) -> shapely.geometry.base.BaseGeometry:
    """All that the cutter has covered at a height, its arcs by their ends and middles."""
    lines = []
    for cut in toolpath.cuts:
        points = cut.path.points_mm
        for k in range(len(cut.path)):
            if max(points[k, 2], points[k + 1, 2]) <= z + 1e-6 and np.isfinite(cut.feeds_mm_per_min[k]):
                lines.append(LineString(chorded(cut.path, k)))
    return shapely.union_all(lines).buffer(toolpath.tool.radius_mm + 0.005, quad_segs=32)


def chorded(path: Any, k: int) -> np.ndarray:
    start, end, centre = path.points_mm[k, :2], path.points_mm[k + 1, :2], path.centres_mm[k]
    if path.kinds[k] == 0:
        return np.array([start, end])
    angle = float(path.sweeps_rad[k])
    x, y = start - centre
    # Chords stray by less than 0.002 mm, whatever the radius (sagitta r a^2 / 8).
    turns = np.linspace(0.0, angle, 2 + int(abs(angle) * np.sqrt(np.hypot(x, y) / (8 * 0.002))))
    return centre + np.column_stack([x * np.cos(turns) - y * np.sin(turns), x * np.sin(turns) + y * np.cos(turns)])


@pytest.mark.parametrize("name", SIGNS)
def test_all_that_the_thin_cutter_reaches_is_cleared_and_the_thick_one_keeps_off_the_walls(name: str) -> None:
    spec = sign(name)
    plan = plan_of(spec)
    assert plan.roughing is not None
    z = spec.thickness_mm - plan.roughing.rough[0].depth_mm
    rough, finish = plan.roughing.rough[0], plan.roughing.finish[0]
    (ground,) = (each for each in draw(spec).of(Recess) if not each.is_letter)
    first, last = swept(rough.toolpath(), z), swept(finish.toolpath(), z)
    assert first.difference(ground.area.buffer(-ALLOWANCE_MM + 0.02)).area < 0.05
    alone = ClearFloor(
        floors=finish.floors, tool=finish.tool, cutting=finish.cutting, thickness_mm=spec.thickness_mm,
        depth_mm=finish.depth_mm, tolerances=finish.tolerances,
    )  # fmt: skip
    assert last.difference(ground.area.buffer(0.02)).area < 0.05
    assert alone.reached().buffer(-0.02).difference(first.union(last)).area < 0.05


@pytest.mark.parametrize("name", SIGNS)
def test_it_is_proved_and_takes_less_time_by_what_it_says(name: str) -> None:
    spec = sign(name)
    facts = prove(spec)
    assert facts.checks.passed
    plan = plan_of(spec)
    roughing = plan.roughing
    assert roughing is not None
    tools = [run.tool for run in plan.runs]
    thick, thin = roughing.tool, roughing.finish[0].tool
    assert tools[-3:] == [thick, thin, thick]
    spent = sum(
        program.minutes
        for program, run in zip(facts.programs, plan.runs, strict=True)
        if any(isinstance(each, ClearFloor | FinishFloor) for each in run.operations)
    )
    assert spent < roughing.alone_minutes - 2
    assert any("clears the floors first" in str(remark) for remark in plan.remarks)


def test_where_one_file_holds_all_cutters_none_comes_twice() -> None:
    assert plan_of(sign("raised"), twice=False).roughing is None
    names = [program.tool.name for program in prove(sign("raised", dialect="changer")).programs]
    assert len(names) == len(set(names))


def test_what_saves_nothing_is_left_alone() -> None:
    # A floor that the thick cutter clears whole needs no thin one, and a small one not two fittings.
    assert plan_of(sign("raised", text=["I"], cap_height="40")).roughing is None
    assert plan_of(sign("raised", size="120x40", text=["LI"], panel="4")).roughing is None
