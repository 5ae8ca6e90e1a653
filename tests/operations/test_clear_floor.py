"""Floors are cut at their depth, where the cutter fits and nowhere else; ways down are never too steep."""

import math

import numpy as np
import pytest
import shapely
from msgspec.structs import replace
from shapely.geometry import LineString, Point, box

from signgen.geometry.paths import LINE
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.operations.clear_floor import ClearFloor, Floor
from signgen.operations.clearing_cutter import choose_clearing_cutter
from signgen.replay import sweep
from signgen.replay.heights import board
from signgen.replay.motion import Motions
from signgen.shop.stock import Stock, WorkZero
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import FAST
from tests.asking import english

TOP, DEPTH = 12.0, 4.0
ROOM = Floor(name="room", area=box(10, 10, 70, 50).difference(Point(40, 30).buffer(6, quad_segs=64)))
SLOT = Floor(name="slot", area=box(80, 10, 86.4, 50))
DOT = Floor(name="dot", area=Point(100, 30).buffer(3.05, quad_segs=64))
ALL = (ROOM, SLOT, DOT)


@pytest.fixture
def clear(mill, cutting):
    def make(*floors, **changes):
        fields = {"tool": mill, "cutting": cutting, "thickness_mm": TOP, "depth_mm": DEPTH, "tolerances": Tolerances()}
        return ClearFloor(floors=floors, **(fields | changes))

    return make


def sampled(cut, step=0.05):
    """Points along a cut, arcs by their angle, and for each the segment that it is on."""
    out, owner = [], []
    path = cut.path
    for i, (a, b, turn) in enumerate(zip(path.points_mm[:-1], path.points_mm[1:], path.sweeps_rad, strict=True)):
        n = max(2 if path.kinds[i] == LINE else 12, int(path.lengths_mm[i] / step))
        t = np.linspace(0, 1, n)[:, None]
        points = a + t * (b - a)
        if path.kinds[i] != LINE:
            c = path.centres_mm[i]
            angle = math.atan2(*(a[:2] - c)[::-1]) + t[:, 0] * turn
            points[:, :2] = c + math.dist(a[:2], c) * np.column_stack([np.cos(angle), np.sin(angle)])
        out.append(points)
        owner += [i] * n
    return np.concatenate(out), np.array(owner)


def area_at(cuts, z, radius):
    """What the cutter sweeps at one height."""
    lines = []
    for cut in cuts:
        points, owner = sampled(cut)
        flat = [points[owner == i] for i in np.unique(owner)]
        lines += [LineString(part[:, :2]) for part in flat if np.allclose(part[:, 2], z)]
    return shapely.union_all(shapely.buffer(lines, radius, quad_segs=64))


@pytest.mark.parametrize("allowance", [0.0, 0.3])
def test_all_that_can_be_reached_is_cut_to_depth_and_nothing_outside(clear, allowance):
    operation = clear(*ALL, allowance_mm=allowance)
    cuts = operation.toolpath().cuts
    swept = area_at(cuts, TOP - DEPTH, 3.0)
    assert operation.reached().buffer(-0.015).difference(swept).area < 1e-6
    whole = shapely.union_all([floor.area for floor in ALL])
    for cut in cuts:
        points, _ = sampled(cut)
        points = points[points[:, 2] <= TOP]  # above it the cutter passes from run to run
        away = shapely.distance(shapely.points(points[:, :2]), whole.boundary)
        assert shapely.contains_xy(whole, points[:, :2]).all()
        assert away.min() >= 3.0 - 0.01


def test_walls_are_right_to_a_hundredth(clear):
    cuts = clear(ROOM).toolpath().cuts
    swept = area_at(cuts, TOP - DEPTH, 3.0)
    exact = ROOM.area.buffer(-3, quad_segs=500).buffer(3, quad_segs=500)
    assert swept.symmetric_difference(exact).buffer(-0.005, quad_segs=2).is_empty


def test_no_pass_is_deeper_than_the_stepdown_and_the_last_is_at_depth(clear):
    (cut,) = clear(ROOM).toolpath().cuts
    z = cut.path.points_mm[:, 2]
    heights = sorted({round(float(low), 9) for low in z[1:][(np.diff(z) == 0) & (z[1:] < TOP)]})
    assert heights == [8.0, 10.0]  # 4 mm with at most 3 mm at once: two passes of 2 mm


def test_the_way_down_is_never_steeper_than_the_entry_angle(clear, cutting):
    for cut in clear(ROOM, SLOT).toolpath().cuts:
        path = cut.path
        fall = -np.diff(path.points_mm[:, 2])
        across = np.sqrt(np.maximum(path.lengths_mm**2 - fall**2, 0))
        sloped = (fall > 0) & (across > 0)
        assert sloped.any()
        assert np.degrees(np.arctan2(fall[sloped], across[sloped])).max() <= cutting.entry_deg + 1e-6
        assert set(cut.feeds_mm_per_min[sloped]) == {cutting.ramp_mm_per_min}
        # Straight down only where the pass before has cleared already.
        straight = (fall > 0) & (across == 0)
        assert np.all(path.points_mm[1:][straight, 2] >= (10.0 if cut.path.points_mm[-1, 2] < 9 else TOP) - 1e-9)


def test_a_place_hardly_larger_than_the_cutter_is_plunged_into(clear, cutting):
    (cut,) = clear(DOT).toolpath().cuts
    z = cut.path.points_mm[:, 2]
    into_wood = (np.diff(z) < 0) & (cut.feeds_mm_per_min != FAST)
    assert set(cut.feeds_mm_per_min[into_wood]) == {cutting.plunge_mm_per_min}
    assert z[-1] == TOP - DEPTH


def test_a_cutter_that_cannot_plunge_leaves_such_a_place(clear, mill):
    blunt = replace(mill, can_plunge=False)
    operation = clear(DOT, SLOT, tool=blunt)
    assert {cut.feature for cut in operation.toolpath().cuts} == {"slot"}
    assert operation.reached().bounds[2] < 90


def test_one_cut_for_each_connected_floor_and_one_lift_for_each_pass(clear):
    cuts = clear(*ALL).toolpath().cuts
    assert sorted(cut.feature for cut in cuts) == ["dot", "room", "slot"]
    for cut in cuts:
        lifts = np.diff(cut.path.points_mm[:, 2]) > 0
        assert np.count_nonzero(lifts) == 1  # two passes
        assert np.all(cut.feeds_mm_per_min[lifts] == FAST)


def test_every_floor_is_finished_before_the_next_begins(clear):
    names = [cut.feature for cut in clear(*ALL).toolpath().cuts]
    assert names == sorted(names, key=names.index)


def test_later_passes_come_down_fast_through_what_is_cleared(clear):
    (cut,) = clear(SLOT).toolpath().cuts
    falls = np.diff(cut.path.points_mm[:, 2]) < 0
    fast = (cut.feeds_mm_per_min == FAST) & falls
    assert fast.sum() == 1
    assert cut.path.points_mm[1:][fast, 2] == [10.0 + 0.5]


@pytest.mark.parametrize("ratio", [0.3, 0.5, 0.6, 0.8])
def test_any_step_over_clears_the_floor(clear, cutting, ratio):
    operation = clear(ROOM, cutting=replace(cutting, stepover_mm=ratio * 6))
    swept = area_at(operation.toolpath().cuts, TOP - DEPTH, 3.0)
    assert operation.reached().buffer(-0.015).difference(swept).area < 1e-6


def test_a_floor_without_room_has_no_cuts(clear):
    assert clear(Floor(name="x", area=box(0, 0, 5, 50))).toolpath().cuts == ()
    assert clear(Floor(name="x", area=box(0, 0, 5, 50))).reached().is_empty


def choose(mill, cutting, floors, *, rate=100.0, fitted=()):
    thin = replace(mill, name="end-mill-3", diameter_mm=3.0, cutting_length_mm=12.0)
    slower = replace(cutting, stepover_mm=1.2, feed_mm_per_min=1000.0, stepdown_mm=1.5)
    return choose_clearing_cutter(
        floors, [(thin, slower), (mill, cutting)], depth_mm=DEPTH, rest_mm2_per_min=rate, fitted=fitted
    )


def test_a_wide_floor_goes_to_the_thick_cutter(mill, cutting):
    choice = choose(mill, cutting, [Floor(name="x", area=box(0, 0, 200, 150))])
    assert choice.best.tool is mill
    # A 6 mm cutter leaves 0.214602 r^2 in each corner (plane geometry).
    assert choice.best.left_mm2 == pytest.approx(4 * 0.214602 * 9, rel=0.1)
    (remark,) = choice.remarks()
    assert english(remark).startswith(
        "A 3 mm cutter would clear 6 mm2 more than the 6 mm one, and the floors would take "
    )


def test_narrow_floors_go_to_the_thin_cutter(mill, cutting):
    floors = [Floor(name=str(i), area=box(10 * i, 0, 10 * i + 4, 40)) for i in range(8)]
    assert choose(mill, cutting, floors).best.tool.diameter_mm == 3
    assert choose(mill, cutting, floors).options[0].reached_mm2 == 0


def test_a_cutter_that_is_fitted_anyway_wins_a_close_call(mill, cutting):
    floors = [Floor(name="x", area=box(0, 0, 40, 30))]
    free, other = choose(mill, cutting, floors, fitted=(mill,)), choose(mill, cutting, floors)
    assert free.best.minutes == pytest.approx(other.options[0].minutes - 3)


def test_a_cutter_too_short_is_no_candidate(mill, cutting):
    short = replace(mill, cutting_length_mm=3.0)
    assert choose_clearing_cutter([ROOM], [(short, cutting)], depth_mm=DEPTH, rest_mm2_per_min=100) is None


def test_the_estimate_is_near_the_path_that_is_cut(clear, mill, cutting):
    cuts = clear(ROOM).toolpath().cuts
    taken = sum((cut.path.lengths_mm / cut.feeds_mm_per_min)[cut.feeds_mm_per_min != FAST].sum() for cut in cuts)
    choice = choose_clearing_cutter([ROOM], [(mill, cutting)], depth_mm=DEPTH, rest_mm2_per_min=100, fitted=(mill,))
    assert choice.best.minutes == pytest.approx(taken, rel=0.25)


def carved(cuts, tool, width, height, cell):
    """The board after the cuts, by the simulation that judges programs."""
    paths = [cut.path for cut in cuts]
    kinds = np.concatenate([np.choose(path.kinds, [1, 2, 3]) for path in paths]).astype(np.uint8)
    n = len(kinds)
    motions = Motions(
        kind=kinds,
        start_mm=np.concatenate([path.points_mm[:-1] for path in paths]),
        end_mm=np.concatenate([path.points_mm[1:] for path in paths]),
        centre_mm=np.concatenate([path.centres_mm for path in paths]),
        plane=np.full(n, 17),
        feed_mm_per_min=np.full(n, 1000.0),
        spindle_rpm=np.full(n, 16000.0),
        spindle_s=np.full(n, 9.0),
        line=np.arange(1, n + 1),
        tool=np.zeros(n, np.int32),
        start_known=np.ones((n, 3), dtype=bool),
    )
    stock = Stock(width_mm=width, height_mm=height, thickness_mm=TOP, sign_x_mm=0, sign_y_mm=0)
    return sweep.cut(board(stock, cell), motions, tool, WorkZero(x_mm=0, y_mm=0, z_mm=0))


@pytest.mark.parametrize("allowance", [0.0, 0.2])
def test_round_raised_letters_the_simulated_board_is_flat_and_no_letter_is_touched(clear, mill, cutting, allowance):
    letters = set_lines(["LARK", "SPUR"], open_face("cinzel"), cap_height_mm=12).moved(35, 25).letters
    area = box(3, 3, 67, 47).difference(shapely.union_all([letter.area for letter in letters]))
    thin = replace(mill, diameter_mm=2.0)
    operation = clear(
        Floor(name="ground", area=area),
        tool=thin,
        cutting=replace(cutting, stepover_mm=0.8, stepdown_mm=2.0),
        allowance_mm=allowance,
    )
    board = carved(operation.toolpath().cuts, thin, 70, 50, 0.05)
    x, y = np.meshgrid(board.x_mm, board.y_mm)
    reached = shapely.contains_xy(operation.reached().buffer(-0.01), x, y)
    outside = ~shapely.contains_xy(area.buffer(0.01), x, y)
    assert reached.sum() > 500_000
    np.testing.assert_allclose(board.z_mm[reached], TOP - DEPTH, atol=1e-5)
    assert np.all(board.z_mm[outside] == TOP)
