"""Countersinks against the geometry of cones: a bit of the angle A with its tip at depth z and
distance q from the axis leaves, at a distance s on the far side, z - (s - q) / tan(A / 2)."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from signgen.features.hole import Countersink, Hole
from signgen.operations.countersinks import SinkHeads
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut

THICKNESS = 12.0


def bit(angle: float = 90.0, diameter: float = 12.0, tip: float = 0.0) -> Tool:
    return Tool(
        name="v-bit", kind="v-bit", diameter_mm=diameter, shank_mm=6, cutting_length_mm=20, flutes=2, angle_deg=angle,
        tip_mm=tip, stickout_mm=30, source="test",
    )  # fmt: skip


def sunk(hole_mm: float, head_mm: float, tool: Tool, cutting: CuttingData) -> tuple[Hole, Cut]:
    assert tool.angle_deg is not None
    sink = Countersink(diameter_mm=head_mm, angle_deg=tool.angle_deg)
    hole = Hole(name="hole 1", x_mm=30, y_mm=20, diameter_mm=hole_mm, sink=sink)
    operation = SinkHeads(holes=(hole,), tool=tool, cutting=cutting, thickness_mm=THICKNESS)
    (cut,) = operation.toolpath().cuts
    return hole, cut


def surface(cut: Cut, tool: Tool, away_mm: np.ndarray) -> np.ndarray:
    """Depth of the cone that the rings leave, at distances from the axis."""
    depth = np.zeros(len(away_mm))
    for x, _, z in cut.path.points_mm:
        ring = abs(x - 30)
        gap = np.maximum(np.abs(away_mm - ring) - tool.tip_mm / 2, 0.0)
        depth = np.maximum(depth, THICKNESS - z - gap / tool.slope)
    return depth


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60, deadline=None)
@given(
    hole=st.floats(3, 12), wider=st.floats(0.2, 12), angle=st.sampled_from([60.0, 82.0, 90.0, 120.0]),
    tip=st.sampled_from([0.0, 0.2, 1.0]),
)  # fmt: skip
def test_leaves_the_cone_between_the_heads_rim_and_the_hole(
    hole: float, wider: float, angle: float, tip: float, cutting: CuttingData
) -> None:
    tool = bit(angle, 40.0, tip)
    drawn, cut = sunk(hole, hole + wider, tool, cutting)
    away = np.linspace(hole / 2, (hole + wider) / 2, 50)
    wanted = ((hole + wider) / 2 - away) / math.tan(math.radians(angle / 2))
    assert surface(cut, tool, away) == pytest.approx(wanted, abs=1e-9)
    beyond = np.linspace((hole + wider) / 2, hole + wider, 20)
    assert surface(cut, tool, beyond).max() <= 1e-9
    assert THICKNESS - cut.path.points_mm[:, 2].min() == pytest.approx(drawn.sink_depth_mm)


def test_hand_values_of_an_m5_head(cutting: CuttingData) -> None:
    """ISO 7046 M5 (10.4 sharp) over a 5.5 hole at 90 degrees: (10.4 - 5.5) / 2 = 2.45 deep."""
    hole, cut = sunk(5.5, 10.4, bit(), cutting)
    assert hole.sink_depth_mm == pytest.approx(2.45)
    assert cut.path.points_mm[-1].tolist() == pytest.approx([30 + 2.75, 20, THICKNESS - 2.45])


def test_a_head_wider_than_the_bit_is_sunk_by_rings(cutting: CuttingData) -> None:
    """An 11.2 mm head with a 6 mm bit, whose cone is 3 mm high: 2.85 mm are enough above a 5.5 mm hole."""
    tool = bit(diameter=6.0)
    _, cut = sunk(5.5, 11.2, tool, cutting)
    radii = np.unique(np.round(np.hypot(cut.path.points_mm[:, 0] - 30, cut.path.points_mm[:, 1] - 20), 9))
    assert len(radii) >= 2
    assert THICKNESS - cut.path.points_mm[:, 2].min() <= tool.reach_mm
    assert radii.max() + tool.radius_mm > 11.2 / 2


def test_no_ring_bites_deeper_than_the_stepdown(cutting: CuttingData) -> None:
    """The tip comes down where the ring before left its flank: the bite is the step and that flank's fall to there."""
    tool = bit(60.0, 20.0)
    _, cut = sunk(5.0, 14.0, tool, cutting)
    found = {(round(THICKNESS - z, 9), round(abs(x - 30), 9)) for x, _, z in cut.path.points_mm}
    rings = sorted(found)
    assert rings[0][0] <= cutting.stepdown_mm
    for (before, outer), (depth, inner) in pairwise(rings):
        assert depth - (before - (outer - inner) / tool.slope) <= cutting.stepdown_mm + 1e-6


def test_goes_down_at_the_plunge_feed_and_round_at_the_full_one(cutting: CuttingData) -> None:
    _, cut = sunk(5.5, 14.0, bit(), cutting)
    falls = np.diff(cut.path.points_mm[:, 2]) < 0
    assert falls.any()
    assert (cut.feeds_mm_per_min[falls] == cutting.plunge_mm_per_min).all()
    assert (cut.feeds_mm_per_min[~falls] == cutting.feed_mm_per_min).all()


def test_a_tip_as_wide_as_the_hole_ends_in_its_middle(cutting: CuttingData) -> None:
    _, cut = sunk(3.0, 8.0, bit(tip=3.0), cutting)
    assert cut.path.points_mm[-1].tolist() == pytest.approx([30, 20, THICKNESS - 2.5])
