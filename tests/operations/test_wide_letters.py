"""Letters wider than the depth allows: the V-bit goes along their walls while the floor still stands, and an end mill
clears it afterwards. Measured on what the programs' texts take, no pass bites more than its cutter may."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
import shapely
from msgspec.structs import replace
from shapely.geometry import LineString

from signgen.checks.check import Case
from signgen.checks.engagement import engagement_of
from signgen.operations.engrave import Engrave, allowance_mm, passes
from signgen.operations.groove_floors import groove_floors
from signgen.operations.plan import Plan
from signgen.proving.judge_sides import case_of
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.replay.heights import board
from signgen.shop.feeds import stepdown_mm
from signgen.spec.sign_spec import SignSpec
from signgen.tolerances import CHECK_MM
from tests.asking import english, spec_of

SIGNS = {
    "oak, 60 degrees, 5 mm": {"material": "hardwood", "v_bit": "60", "depth": "5", "thickness": "15"},
    "plywood, 90 degrees, 5 mm": {"v_bit": "90", "depth": "5"},
    "MDF, 60 degrees, 2 mm": {"material": "mdf", "v_bit": "60", "depth": "2"},
}
by_sign = pytest.mark.parametrize("name", SIGNS)


@cache
def cut(name: str) -> tuple[SignSpec, Plan, Case]:
    spec = spec_of(
        text=["IO"], size="200x140", font="barlow", holes=None, hole_diameter=None, inset=None, **SIGNS[name]
    )
    (side,) = sides_of(spec)
    return spec, side.plan, case_of(side, written(side).programs())


@by_sign
def test_the_floor_is_cleared_by_an_end_mill_after_the_walls(name: str) -> None:
    _, plan, _ = cut(name)
    assert plan.runs[0].tool.kind == "v-bit"
    assert any("clears the floor" in does for run in plan.runs[1:] for does in english(run.description))


@by_sign
def test_no_cutter_takes_more_at_once_than_its_data_allow(name: str) -> None:
    """The judge's measure (C118), without what it spares for the data's scatter."""
    spec, _, case = cut(name)
    for program, engagement in zip(case.programs, case.engagement, strict=True):
        assert engagement.depth_mm.max() <= stepdown_mm(program.tool, spec.material) + CHECK_MM, program.file


@by_sign
def test_the_v_bit_comes_down_its_walls_in_steps_and_not_in_one(name: str) -> None:
    """The deepest tip lies within a stepdown of what the passes before left right there; so the last pass along a wall
    takes the same V, no more, as in a narrow stroke of the same depth."""
    spec, _, case = cut(name)
    engagement, most = case.engagement[0], stepdown_mm(case.programs[0].tool, spec.material)
    deep = engagement.z_mm <= spec.thickness_mm - spec.depth_mm + 0.01
    assert deep.any()
    assert engagement.depth_mm[deep].max() <= most + CHECK_MM
    levels = np.unique(
        np.round(spec.thickness_mm - case.cuts[0].low_z_mm[case.cuts[0].low_z_mm < spec.thickness_mm], 2)
    )
    assert len(levels) >= np.ceil(spec.depth_mm / most)


def test_the_measure_sees_a_wall_cut_in_one_go() -> None:
    """The deepest pass by itself on the uncut board."""
    spec, _, case = cut("oak, 60 degrees, 5 mm")
    deepest = case.cuts[0].where(case.cuts[0].low_z_mm <= spec.thickness_mm - spec.depth_mm + 0.01)
    tool = case.programs[0].tool
    alone = engagement_of(deepest, tool, board(case.stock, 0.25))
    assert alone.depth_mm.max() > 1.5 * stepdown_mm(tool, spec.material)


def test_before_the_last_pass_ridges_are_left_as_high_as_the_depth_that_is_left_for_it() -> None:
    """Lines far apart, but no point of the floor further from one than such a ridge is wide on either side (a V of
    half angle a leaves h = w / tan a half way between lines 2 w apart); the last pass is fine."""
    spec = spec_of(
        text=["I"], size="120x140", font="barlow", holes=None, hole_diameter=None, inset=None, layout=None,
        cap_height="60", v_bit="60", depth="5", thickness="15", material="hardwood",
    )  # fmt: skip
    (side,) = sides_of(spec)
    (engrave,) = (step.operation for step in side.plan.runs[0].steps if isinstance(step.operation, Engrave))
    alone = replace(engrave, cleared=None, cusp_height_mm=0.03)
    slope, stepdown = alone.tool.slope, alone.cutting.stepdown_mm
    lines: dict[float, list[LineString]] = {}
    for cut in alone.toolpath().cuts:
        z = cut.path.points_mm[:, 2]
        for k in np.flatnonzero(np.abs(np.diff(z)) < 1e-6):
            lines.setdefault(round(spec.thickness_mm - z[k], 3), []).append(
                LineString(cut.path.points_mm[k : k + 2, :2])
            )
    (floor,) = groove_floors(side.drawing, spec)[spec.depth_mm]
    x0, y0, x1, y1 = floor.area.bounds
    x, y = np.meshgrid(np.arange(x0, x1, 0.1), np.arange(y0, y1, 0.5))
    places = shapely.points(x.ravel(), y.ravel())
    places = places[shapely.covers(floor.area, places)]
    deepest = max(lines)
    levels = sorted(depth for depth in lines if shapely.union_all(lines[depth]).length > 100)
    assert levels[-1] == deepest
    assert len(levels) == passes(spec.depth_mm, stepdown) > 1
    for depth in levels:
        most = alone.cusp_height_mm if depth == deepest else allowance_mm(stepdown)
        away = shapely.distance(places, shapely.union_all(lines[depth])).max()
        assert away <= most * slope + 0.03, depth
    length = {depth: sum(line.length for line in lines[depth]) for depth in levels}
    assert all(length[depth] < 0.5 * length[deepest] for depth in levels[:-1])
