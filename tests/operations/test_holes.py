"""Boring and drilling."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point

from signgen.drawing.draw import draw
from signgen.errors import CannotMakeError
from signgen.features.hole import Hole
from signgen.geometry.paths import CCW, CW, LINE, Path, joined
from signgen.operations.holes import BoreHoles
from signgen.operations.plan import make_plan
from signgen.shop.bores import fits
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from tests.asking import spec_of

THICKNESS, BREAKTHROUGH = 12.0, 0.3


def bored(diameter: float, tool: Tool, cutting: CuttingData, **more: float | bool) -> tuple[Path, np.ndarray]:
    hole = Hole(name="hole", x_mm=30.0, y_mm=20.0, diameter_mm=diameter)
    operation = BoreHoles(
        holes=(hole,),
        tool=tool,
        cutting=cutting,
        thickness_mm=THICKNESS,
        breakthrough_mm=BREAKTHROUGH,
        **more,  # type: ignore[arg-type]
    )
    cuts = operation.toolpath().cuts
    path = joined([cut.path for cut in cuts])
    assert len(cuts) == 1 or cuts[0].stage < cuts[1].stage
    return path, cuts[0].feeds_mm_per_min


def test_a_helix_has_the_radius_and_the_angle_of_its_formula(mill: Tool, cutting: CuttingData) -> None:
    # Plane geometry: path radius (hole - tool) / 2; ramp angle atan(pitch / (2 pi R)).
    # Hole 10 and tool 6 give R = 2.
    path, _ = bored(10.0, mill, cutting)
    spokes = np.hypot(path.points_mm[:-1, 0] - 30.0, path.points_mm[:-1, 1] - 20.0)
    assert spokes == pytest.approx(np.full(len(spokes), 2.0))
    per_turn = path.points_mm[0, 2] - path.points_mm[2, 2]
    assert math.degrees(math.atan(per_turn / (2 * math.pi * 2.0))) <= cutting.entry_deg + 1e-9
    assert per_turn <= cutting.stepdown_mm


def test_a_full_circle_at_the_bottom_before_leaving_the_wall(mill: Tool, cutting: CuttingData) -> None:
    path, feeds = bored(7.0, mill, cutting)
    assert path.points_mm[-4:, 2].tolist() == [-BREAKTHROUGH] * 4
    assert path.kinds[-3:].tolist() == [CCW, CCW, CCW]
    # Off the wall on a circle that touches it: its middle lies on the line from the hole's middle to the place.
    assert path.centres_mm[-1].tolist() == [30.25, 20.0]
    assert path.points_mm[-1, :2].tolist() == [30.0, 20.0]
    assert feeds[-1] == cutting.feed_mm_per_min
    assert feeds[0] == cutting.ramp_mm_per_min


def test_a_hole_of_the_cutters_size_is_pecked_straight_down(drill: Tool, cutting: CuttingData) -> None:
    path, _ = bored(5.0, drill, cutting)
    assert np.all(path.points_mm[:, :2] == (30.0, 20.0))
    z = path.points_mm[:, 2]
    lows = z[1:-1][(z[1:-1] < z[:-2]) & (z[1:-1] < z[2:])]
    assert lows[0] > THICKNESS - cutting.stepdown_mm - 1e-9
    assert len(lows) == 4  # five equal pecks, the last of which ends the path at the bottom
    # Common handbook factor: a 118 degree point leads by 0.3004 D: 1.502 for 5 mm.
    assert path.points_mm[-1, 2] == pytest.approx(-BREAKTHROUGH - 1.502, abs=1e-3)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None, max_examples=60)
@given(st.floats(6.3, 60.0))
def test_what_is_swept_at_the_bottom_is_the_hole_and_nothing_stands_in_it(
    mill: Tool, cutting: CuttingData, diameter: float
) -> None:
    path, _ = bored(diameter, mill, cutting)
    xy: list[tuple[float, float]] = []
    for i in np.flatnonzero(np.isclose(path.points_mm[1:, 2], -BREAKTHROUGH)):
        start, end = path.points_mm[i, :2], path.points_mm[i + 1, :2]
        if path.kinds[i] == LINE:
            xy += [tuple(start), tuple(end)]
        else:
            spoke = start - path.centres_mm[i]
            turn = np.linspace(0, path.sweeps_rad[i], 60)
            xy += [
                (
                    path.centres_mm[i, 0] + spoke[0] * math.cos(a) - spoke[1] * math.sin(a),
                    path.centres_mm[i, 1] + spoke[0] * math.sin(a) + spoke[1] * math.cos(a),
                )
                for a in turn
            ]
    swept = LineString(xy).buffer(mill.radius_mm, quad_segs=64)
    hole = Point(30.0, 20.0).buffer(diameter / 2, quad_segs=256)
    assert not swept.interiors
    assert swept.symmetric_difference(hole).area < 0.003 * hole.area
    assert swept.hausdorff_distance(hole) < 0.02 + 0.001 * diameter


def test_passes_of_a_wide_hole_go_no_deeper_than_the_stepdown(mill: Tool, cutting: CuttingData) -> None:
    path, _ = bored(30.0, mill, cutting)
    flats = sorted({round(float(z), 6) for a, z in itertools.pairwise(path.points_mm[:, 2]) if a == z}, reverse=True)
    assert max(a - b for a, b in itertools.pairwise((THICKNESS, *flats))) <= cutting.stepdown_mm + 1e-9


def test_what_fits_and_what_does_not(mill: Tool, drill: Tool) -> None:
    assert fits(6.3, mill)
    assert not fits(6.29, mill)
    assert fits(6.0, mill, slot=True)
    assert not fits(5.9, mill, slot=True)
    assert fits(5.0, drill)
    assert not fits(5.5, drill)
    assert not fits(5.0, drill, slot=True)


@pytest.mark.parametrize("material", ["birch-plywood", "acrylic", "aluminium"])
@pytest.mark.parametrize("diameter", ["3", "4", "4.3", "5", "6", "6.4", "8"])
def test_no_end_mill_goes_straight_down_where_a_hole_will_be(diameter: str, material: str) -> None:
    spec = spec_of(hole_diameter=diameter, material=material, thickness="6")
    drawing = draw(spec)
    plan = make_plan(drawing, spec)
    makers = [run.tool for run in plan.runs if any(isinstance(each, BoreHoles) for each in run.operations)]
    assert len(makers) == 1
    for run in plan.runs:
        for operation, toolpath in zip(run.operations, run.toolpaths(), strict=True):
            steps = [np.diff(cut.path.points_mm, axis=0) for cut in toolpath.cuts]
            straight = any(((step[:, 2] < 0) & ~step[:, :2].any(axis=1)).any() for step in steps)
            assert not (straight and isinstance(operation, BoreHoles) and run.tool.kind == "end-mill")


@pytest.mark.parametrize("cutter", ["6", "4"])
def test_a_named_end_mill_of_the_holes_own_size_is_refused_with_what_would_do(cutter: str) -> None:
    spec = spec_of(hole_diameter=cutter, end_mill=cutter)
    with pytest.raises(CannotMakeError) as refused:
        make_plan(draw(spec), spec)
    said = str(refused.value)
    assert f"Name an end mill of {float(cutter) - 0.3:g} mm or less" in said
    assert f"at least {float(cutter) + 0.3:g} mm" in said
    better = spec_of(hole_diameter=str(float(cutter) + 0.3), end_mill=cutter)
    assert make_plan(draw(better), better).edge.diameter_mm == float(cutter)


def test_pecks_come_all_the_way_out_and_go_back_fast(drill: Tool, cutting: CuttingData) -> None:
    # Source: NIST IR 6556 section 3.5.16.3: G83 comes back to 0.010 in above the depth reached.
    path, feeds = bored(5.0, drill, cutting)
    z, top = path.points_mm[:, 2], THICKNESS + 1.0
    for n in np.flatnonzero(np.isinf(feeds)):
        assert max(z[n], z[n + 1]) == top
        if z[n + 1] < z[n]:
            assert z[n + 1] - z[n - 1] == pytest.approx(0.254)
    assert np.count_nonzero(np.isinf(feeds)) == 2 * 4  # five pecks of 2.96 mm from 13 down to -1.8
    assert np.all(feeds[np.isfinite(feeds)] == cutting.plunge_mm_per_min)


@pytest.mark.parametrize("diameter", [8.0, 20.0])
def test_a_finishing_circle_takes_the_allowance_in_one_pass_on_and_off_by_arcs(
    diameter: float, mill: Tool, cutting: CuttingData
) -> None:
    path, feeds = bored(diameter, mill, cutting, finish_mm=0.2, finish_feed_mm_per_min=2400.0)
    wall = (diameter - 6.0) / 2
    away = np.hypot(path.points_mm[:, 0] - 30.0, path.points_mm[:, 1] - 20.0)
    fine = np.flatnonzero(feeds == 2400.0)
    assert len(fine) == 4
    assert fine[-1] == len(path) - 1
    assert away[: fine[0]].max() == pytest.approx(wall - 0.2)
    assert away[fine].tolist() == pytest.approx([0.0, wall, wall, wall])
    assert path.points_mm[fine + 1, 2].tolist() == [-BREAKTHROUGH] * 4
    assert path.lengths_mm[fine[1:3]].sum() == pytest.approx(2 * math.pi * wall)
    assert path.centres_mm[fine[0]].tolist() == [30.0 + wall / 2, 20.0]


def test_a_hole_without_room_for_a_finishing_circle_has_none(mill: Tool, cutting: CuttingData) -> None:
    plain, _ = bored(6.6, mill, cutting)
    same, _ = bored(6.6, mill, cutting, finish_mm=0.2, finish_feed_mm_per_min=2400.0)
    assert np.array_equal(plain.points_mm, same.points_mm)


@pytest.mark.parametrize(("climb", "kind"), [(True, CCW), (False, CW)])
def test_every_turn_goes_the_way_that_is_asked_for(climb: bool, kind: int, mill: Tool, cutting: CuttingData) -> None:
    # Common practice: a spindle that turns clockwise climbs when it goes counter-clockwise inside a hole.
    for diameter in (7.0, 25.0):
        path, _ = bored(diameter, mill, cutting, climb=climb)
        assert set(path.kinds.tolist()) <= {LINE, kind}
