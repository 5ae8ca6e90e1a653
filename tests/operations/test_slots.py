"""Slots against plane geometry: what the cutter's disc sweeps at the bottom is a stadium of area 2 r a + pi r^2
(plane geometry), and nothing stands in it."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import LineString, Polygon

from signgen.features.hole import Hole
from signgen.geometry.paths import CCW, LINE, Path
from signgen.operations.slots import MillSlots
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut
from tests.asking import english

THICKNESS, BREAKTHROUGH = 12.0, 0.3


def milled(width: float, length: float, angle: float, tool: Tool, cutting: CuttingData) -> tuple[Hole, Cut]:
    slot = Hole(name="slot 1", x_mm=30, y_mm=20, diameter_mm=width, span_mm=length - width, angle_deg=angle)
    operation = MillSlots(
        slots=(slot,), tool=tool, cutting=cutting, thickness_mm=THICKNESS, breakthrough_mm=BREAKTHROUGH
    )
    (cut,) = operation.toolpath().cuts
    assert len(cut.feeds_mm_per_min) == len(cut.path)
    return slot, cut


def chords(path: Path, z_below: float) -> list[LineString]:
    """The way at or below a height, arcs in small chords."""
    found = []
    for i, kind in enumerate(path.kinds):
        start, end = path.points_mm[i], path.points_mm[i + 1]
        if max(start[2], end[2]) > z_below + 1e-9:
            continue
        if kind == LINE:
            found.append(LineString([start[:2], end[:2]]))
            continue
        turn = float(path.sweeps_rad[i]) * np.linspace(0, 1, 400)
        spoke = start[:2] - path.centres_mm[i]
        x = spoke[0] * np.cos(turn) - spoke[1] * np.sin(turn)
        y = spoke[0] * np.sin(turn) + spoke[1] * np.cos(turn)
        found.append(LineString(path.centres_mm[i] + np.column_stack([x, y])))
    return found


def swept(path: Path, z: float, radius: float) -> Polygon:
    return shapely.union_all([line.buffer(radius, quad_segs=128) for line in chords(path, z)])


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=40, deadline=None)
@given(
    width=st.sampled_from([6.0, 6.3, 7.0, 11.0, 16.0, 30.0]),
    longer=st.floats(0.5, 60),
    angle=st.floats(-180, 180),
)
def test_what_is_swept_at_the_bottom_is_the_slot_and_nothing_stands_in_it(
    width: float, longer: float, angle: float, mill: Tool, cutting: CuttingData
) -> None:
    slot, cut = milled(width, width + longer, angle, mill, cutting)
    area = swept(cut.path, -BREAKTHROUGH, mill.radius_mm)
    drawn = LineString(slot.ends_mm).buffer(width / 2, quad_segs=256)
    assert area.area == pytest.approx(width * longer + math.pi * width**2 / 4, rel=2e-4)
    assert area.symmetric_difference(drawn).area < 2e-4 * drawn.area
    assert cut.path.points_mm[0, 2] == THICKNESS
    assert cut.path.points_mm[:, 2].min() == -BREAKTHROUGH


@pytest.mark.parametrize(("width", "length"), [(6, 14), (6.3, 9), (7, 8), (16, 40), (30, 31)])
def test_goes_down_no_steeper_than_the_material_allows_and_a_stepdown_at_most(
    width: float, length: float, mill: Tool, cutting: CuttingData
) -> None:
    _, cut = milled(width, length, 30.0, mill, cutting)
    path = cut.path
    drop = -np.diff(path.points_mm[:, 2])
    across = np.sqrt(np.maximum(path.lengths_mm**2 - drop**2, 0))
    falls = drop > 1e-12
    assert falls.any()
    assert np.degrees(np.arctan2(drop[falls], across[falls])).max() <= cutting.entry_deg + 1e-6
    assert (cut.feeds_mm_per_min[falls] == cutting.ramp_mm_per_min).all()
    # Heights at which the cutter has been all the way along: no further apart than a stepdown.
    long_enough = across > 0.9 * (length - width)
    flat = sorted({float(z) for z in path.points_mm[:-1, 2][~falls & long_enough]}, reverse=True)
    if len(flat) > 1:
        assert np.diff([THICKNESS, *flat]).min() >= -cutting.stepdown_mm - 1e-9


def test_climbs_round_the_wall(mill: Tool, cutting: CuttingData) -> None:
    """The spindle turns clockwise, so inside a slot climb milling is counter-clockwise."""
    _, cut = milled(8, 20, 0.0, mill, cutting)
    arcs = cut.path.kinds[cut.path.kinds != LINE]
    assert len(arcs)
    assert (arcs == CCW).all()
    bottom = [i for i in range(len(cut.path)) if cut.path.points_mm[i : i + 2, 2].max() == -BREAKTHROUGH]
    first = bottom[0]
    assert cut.path.points_mm[first, 1] == pytest.approx(20 - 1)
    assert cut.path.points_mm[first + 1, 0] > cut.path.points_mm[first, 0]


def test_lifts_clear_of_the_wall(mill: Tool, cutting: CuttingData) -> None:
    for width in (8, 16):
        slot, cut = milled(width, 30, 45.0, mill, cutting)
        assert cut.path.points_mm[-1, :2] == pytest.approx(slot.ends_mm[0])


def test_says_what_it_does(mill: Tool, cutting: CuttingData) -> None:
    slot, _ = milled(6.6, 12, 0, mill, cutting)
    operation = MillSlots(slots=(slot,), tool=mill, cutting=cutting, thickness_mm=12, breakthrough_mm=0.3)
    assert english(operation.description) == "mills 1 slot of 6.6 x 12 mm"
    assert english(replace(operation, slots=(slot, slot)).description) == "mills 2 slots of 6.6 x 12 mm"
