"""The bevel against the geometry of cones (plane geometry of cones): a tip at depth D whose middle is u away from
a place leaves D - (u - tip / 2) / tan(A / 2) there."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon, box

from signgen.features.edge import BEVEL_BELOW_MM, Bevel
from signgen.geometry.paths import LINE
from signgen.operations.bevel import BevelEdge, bevel_beyond_mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut

THICKNESS = 18.0
SIGN = box(0, 0, 80, 50)
SHARP = Polygon([(0, 0), (80, 0), (60, 50), (10, 50)])


def bit(angle: float = 90.0, diameter: float = 12.0, tip: float = 0.0) -> Tool:
    return Tool(
        name="v-bit", kind="v-bit", diameter_mm=diameter, shank_mm=6, cutting_length_mm=40, flutes=2, angle_deg=angle,
        tip_mm=tip, stickout_mm=50, source="test",
    )  # fmt: skip


def bevelled(outline: Polygon, width: float, tool: Tool, cutting: CuttingData) -> Cut:
    assert tool.angle_deg is not None
    operation = BevelEdge(
        bevels=(Bevel(name="bevel", edge=outline, width_mm=width, angle_deg=tool.angle_deg),),
        tool=tool,
        cutting=cutting,
        thickness_mm=THICKNESS,
        tolerances=Tolerances(total_mm=0.01),
    )
    (cut,) = operation.toolpath().cuts
    return cut


def last_round(cut: Cut) -> tuple[LineString, float]:
    """The way at full depth, arcs chorded by their ends, and its depth."""
    low = cut.path.points_mm[:, 2].min()
    at_depth = cut.path.points_mm[cut.path.points_mm[:, 2] <= low + 1e-9]
    return LineString(at_depth[:, :2]), float(THICKNESS - low)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=40, deadline=None)
@given(
    width=st.floats(0.3, 6), angle=st.sampled_from([60.0, 82.0, 90.0, 120.0]), tip=st.sampled_from([0.0, 0.2, 1.0]),
    outline=st.sampled_from([SIGN, SHARP]),
)  # fmt: skip
def test_the_flank_leaves_the_bevel_from_the_face_to_the_upright_edge(
    width: float, angle: float, tip: float, outline: Polygon, cutting: CuttingData
) -> None:
    tool = bit(angle, 60.0, tip)
    way, depth = last_round(bevelled(outline, width, tool, cutting))
    # Along a line into the sign from the middle of its lower side.
    inside = np.linspace(0.0, width, 25)
    away = shapely.distance(way, shapely.points(40.0, inside))
    left = depth - np.maximum(away - tip / 2, 0.0) / tool.slope
    assert left == pytest.approx((width - inside) / tool.slope, abs=0.01 / tool.slope)
    beyond = shapely.distance(way, shapely.points(40.0, np.linspace(width, width + 2, 9)))
    assert (depth - np.maximum(beyond - tip / 2, 0.0) / tool.slope).max() <= 0.01 / tool.slope


def test_hand_values_of_a_bevel_of_3_mm(cutting: CuttingData) -> None:
    """3 mm at 90 degrees are 3 mm deep; at 60 degrees 3 / tan 30 = 5.196 (plane geometry of cones)."""
    _, depth = last_round(bevelled(SIGN, 3, bit(), cutting))
    assert depth == pytest.approx(3 + BEVEL_BELOW_MM)
    _, depth = last_round(bevelled(SIGN, 3, bit(60.0, 20.0), cutting))
    assert depth == pytest.approx(3 / math.tan(math.radians(30)) + BEVEL_BELOW_MM)


def test_a_deep_bevel_takes_rounds_none_deeper_than_the_bit_may(cutting: CuttingData) -> None:
    cut = bevelled(SIGN, 8, bit(90.0, 20.0), cutting)
    levels = sorted({round(float(z), 6) for z in THICKNESS - cut.path.points_mm[:, 2]})
    rounds = [level for level in levels if (np.abs(THICKNESS - cut.path.points_mm[:, 2] - level) < 1e-6).sum() >= 4]
    assert len(rounds) == 3  # 8.2 mm by 3 mm at most
    assert np.diff([0.0, *rounds]).max() <= cutting.stepdown_mm + 1e-9


def test_the_way_down_is_no_steeper_than_the_material_takes(cutting: CuttingData) -> None:
    path = bevelled(SIGN, 5, bit(), cutting).path
    steps = np.diff(path.points_mm, axis=0)
    falls = (steps[:, 2] < -1e-9) & (path.kinds == LINE)
    assert falls.any()
    slope = np.degrees(np.arctan2(-steps[falls, 2], np.hypot(steps[falls, 0], steps[falls, 1])))
    assert slope.max() <= cutting.entry_deg + 1e-6


def test_a_bevel_as_deep_as_the_cone_runs_on_the_edge_itself(cutting: CuttingData) -> None:
    way, depth = last_round(bevelled(SIGN, 6, bit(), cutting))
    assert depth == pytest.approx(6)
    assert way.distance(SIGN.exterior) == pytest.approx(0, abs=1e-6)
    assert bevel_beyond_mm(Bevel(name="bevel", edge=SIGN, width_mm=6, angle_deg=90), bit()) == pytest.approx(6)
