"""Letters wider than the depth allows: the V-bit goes along their walls while the floor still stands, and an end mill
clears it afterwards. Measured on what the programs' texts take, no pass bites more than its cutter may."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from signgen.checks.check import Case
from signgen.checks.engagement import engagement_of
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
