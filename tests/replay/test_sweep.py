"""What is left of the board against closed forms, against another library's distances and against brute
force.

Volumes are those of solid geometry (groove, cone, frustum, cylinder, cap); the rest is computed here by other
means.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.replay.heights import HeightMap, board
from signgen.replay.motion import FEED, RAPID
from signgen.replay.sweep import cut
from signgen.shop.stock import Stock, WorkZero
from signgen.shop.tools import Tool
from tests.replay.making import AT_ZERO, a_board, a_tool, motions_of, straight_motions

TOP = 10.0


def removed_mm3(stock: Stock, cell_mm: float, motions, tool: Tool) -> float:
    uncut = board(stock, cell_mm)
    left = cut(uncut, motions, tool, AT_ZERO)
    return float((uncut.z_mm - left.z_mm).sum(dtype=np.float64)) * cell_mm**2


# -- the board -----------------------------------------------------------------------------------------------


def test_uncut_board_is_as_high_as_it_is_thick_and_every_cell_lies_on_it() -> None:
    stock = Stock(width_mm=30.0, height_mm=20.0, thickness_mm=12.0, sign_x_mm=5.0, sign_y_mm=4.0)
    heights = board(stock, 0.1)
    assert (heights.z_mm == 12.0).all()
    assert heights.z_mm.shape == (200, 300)
    x0, y0, x1, y1 = stock.bounds_mm
    assert x0 < heights.x_mm[0] < x0 + 0.1
    assert y0 < heights.y_mm[0] < y0 + 0.1
    assert x1 - 0.1 < heights.x_mm[-1] < x1
    assert y1 - 0.1 < heights.y_mm[-1] < y1


def test_cell_centres_keep_off_round_numbers() -> None:
    heights = board(a_board(30, 20), 0.1)
    for places in (heights.x_mm, heights.y_mm):
        off = np.abs(places * 20 - np.round(places * 20)) / 20
        assert off.min() > 0.005


def test_refuses_cells_larger_than_the_board() -> None:
    with pytest.raises(ValueError):
        board(a_board(0.2, 0.2), 1.0)


def test_cutting_leaves_the_map_before_it_alone() -> None:
    uncut = board(a_board(10, 10), 0.5)
    left = cut(uncut, straight_motions([(2, 5, 8), (8, 5, 8)]), a_tool("end-mill", 3), AT_ZERO)
    assert (uncut.z_mm == TOP).all()
    assert left.z_mm.min() == 8.0
    with pytest.raises(ValueError):
        left.z_mm[0, 0] = 0.0


# -- volumes -------------------------------------------------------------------------------------------------


def cone_mm3(radius: float, height: float) -> float:
    return math.pi * radius**2 * height / 3


@pytest.mark.parametrize("angle", [30, 60, 82, 90, 118, 120])
def test_volume_of_a_groove(angle: float) -> None:
    """Section d^2 tan(A/2), and half a cone at either end."""
    depth = 2.0
    slope = math.tan(math.radians(angle / 2))
    motions = straight_motions([(8, 10, TOP - depth), (32, 12, TOP - depth)])
    expected = depth**2 * slope * math.dist((8, 10), (32, 12)) + cone_mm3(depth * slope, depth)
    assert removed_mm3(a_board(40, 22), 0.05, motions, a_tool("v-bit", 12, angle)) == pytest.approx(expected, rel=1e-3)


def test_volume_of_a_groove_with_a_flat_tip() -> None:
    """Section (tip + d tan(A/2)) d, and half a frustum at either end."""
    depth, tip, slope = 2.0, 0.8, math.tan(math.radians(30))
    low, high = tip / 2, tip / 2 + depth * slope
    frustum = math.pi * depth * (low * low + low * high + high * high) / 3
    expected = (tip + depth * slope) * depth * 24 + frustum
    motions = straight_motions([(8, 10, 8), (32, 10, 8)])
    assert removed_mm3(a_board(40, 20), 0.05, motions, a_tool("v-bit", 12, 60, tip)) == pytest.approx(
        expected, rel=1e-3
    )


def test_volume_of_a_cone() -> None:
    motions = straight_motions([(10, 10, 12), (10, 10, 6)])
    assert removed_mm3(a_board(20, 20), 0.025, motions, a_tool("v-bit", 12, 90)) == pytest.approx(
        cone_mm3(4, 4), rel=1e-3
    )


def test_a_v_bit_sunk_deeper_than_its_cone_cuts_a_cylinder_above_it() -> None:
    """Diameter 6 at 90 degrees: the cone is 3 long; sunk 5 deep, a cylinder of 2 stands over it."""
    motions = straight_motions([(10, 10, 12), (10, 10, 5)])
    expected = cone_mm3(3, 3) + math.pi * 9 * 2
    assert removed_mm3(a_board(20, 20), 0.025, motions, a_tool("v-bit", 6, 90)) == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize("angle", [90, 118, 135])
def test_volume_of_a_drilled_hole_with_its_point(angle: float) -> None:
    """Point D/2 cot(A/2) long. Plane geometry; handbooks give 0.3004 D at 118 degrees."""
    point = 3 / math.tan(math.radians(angle / 2))
    motions = straight_motions([(10, 10, 12), (10, 10, 2)])
    expected = cone_mm3(3, point) + math.pi * 9 * (8 - point)
    assert removed_mm3(a_board(20, 20), 0.025, motions, a_tool("drill", 6, angle)) == pytest.approx(expected, rel=1e-3)


@pytest.mark.parametrize("depth", [0.5, 2.0, 3.0, 5.0])
def test_volume_of_a_ball_slot(depth: float) -> None:
    """A circular segment (and what stands above the ball's middle) along the way, half a cap at either end."""
    radius = 3.0
    sunk = min(depth, radius)
    segment = radius**2 * math.acos(1 - sunk / radius) - (radius - sunk) * math.sqrt(2 * radius * sunk - sunk**2)
    cap = math.pi * sunk**2 * (3 * radius - sunk) / 3
    above = depth - sunk
    expected = (segment + above * 2 * radius) * 24 + cap + above * math.pi * radius**2
    motions = straight_motions([(8, 10, TOP - depth), (32, 10, TOP - depth)])
    assert removed_mm3(a_board(40, 20), 0.05, motions, a_tool("ball-nose", 6)) == pytest.approx(expected, rel=1e-3)


def test_volume_of_a_bored_hole() -> None:
    """Hole 10, cutter 6, pitch 1, a full circle at the bottom: a cylinder. Source: plane geometry, derived here."""
    turns = [f"G3 X12 I-2 Z{TOP - 1 - k}" for k in range(6)]
    motions = motions_of("G0 X12 Y10 Z10", *turns, "G3 X12 I-2")
    removed = removed_mm3(a_board(20, 20), 0.025, motions, a_tool("end-mill", 6))
    assert removed == pytest.approx(math.pi * 25 * 6, rel=1e-3)


def test_volume_of_a_helix() -> None:
    """One turn, 1 mm down, around a core that stays (path radius 8, cutter 6). A place at radius r and angle
    a is cut as deep as the cutter was when it left it: at a + acos((64 + r^2 - 9) / 16 r), or at the turn's
    end. Integrated numerically."""
    motions = motions_of("G0 X28 Y20 Z10", "G3 X28 I-8 Z9", start_mm=(0, 0, 20))
    removed = removed_mm3(a_board(40, 40), 0.05, motions, a_tool("end-mill", 6))
    r, a = np.meshgrid(np.linspace(5, 11, 2001)[:-1] + 0.0015, np.linspace(0, 2 * np.pi, 4001)[:-1] + np.pi / 4000)
    lead = np.arccos(np.clip((64 + r * r - 9) / (16 * r), -1, 1))
    depth = np.where((2 * np.pi - a <= lead) | (a <= lead), 1.0, (a + lead) / (2 * np.pi))
    expected = float((np.minimum(depth, 1.0) * r).sum() * 0.003 * (2 * np.pi / 4000))
    assert removed == pytest.approx(expected, rel=1e-3)


# -- against distance ----------------------------------------------------------------------------------------


def distances(heights: HeightMap, track) -> np.ndarray:
    """From every cell's centre to the path, by shapely."""
    x, y = np.meshgrid(heights.x_mm, heights.y_mm)
    with np.errstate(divide="ignore", invalid="ignore"):  # it divides by the length of a segment even where that is 0
        return shapely.distance(shapely.points(x, y), shapely.LineString(track))


TRACKS = st.lists(st.tuples(st.floats(-5, 35), st.floats(-5, 25)), min_size=2, max_size=12)


@settings(max_examples=25)
@given(TRACKS, st.sampled_from([0.4, 1.0, 3.175, 6.0, 12.7]))
def test_constant_depth_is_the_union_of_buffered_paths(track, diameter) -> None:
    """shapely's distance to the path, which knows nothing of sweeping."""
    uncut = board(a_board(30, 20), 0.25)
    left = cut(uncut, straight_motions([(*p, 7.0) for p in track]), a_tool("end-mill", diameter), AT_ZERO)
    distance = distances(left, track)
    clear = np.abs(distance - diameter / 2) > 1e-4
    np.testing.assert_array_equal(
        left.z_mm[clear], np.where(distance < diameter / 2, 7.0, TOP).astype(np.float32)[clear]
    )


@settings(max_examples=25)
@given(TRACKS, st.sampled_from([(30, 0.0, 6), (60, 0.2, 12), (90, 0.0, 12), (90, 1.0, 3), (120, 0.5, 30)]))
def test_v_grooves_rise_with_the_distance_from_the_path(track, bit) -> None:
    """Height = floor + (distance - tip / 2) / tan(A / 2), within the bit's radius."""
    angle, tip, diameter = bit
    tool = a_tool("v-bit", diameter, angle, tip)
    left = cut(board(a_board(30, 20), 0.25), straight_motions([(*p, 7.0) for p in track]), tool, AT_ZERO)
    distance = distances(left, track)
    expected = np.minimum(TOP, 7.0 + np.maximum(0, distance - tip / 2) / tool.slope)
    expected = np.where(distance < diameter / 2, expected, TOP)
    clear = np.abs(distance - diameter / 2) > 1e-4
    np.testing.assert_allclose(left.z_mm[clear], expected[clear], atol=1e-4)


@settings(max_examples=25)
@given(TRACKS, st.sampled_from([1.0, 6.0, 12.7]))
def test_ball_slots_are_round(track, diameter) -> None:
    left = cut(
        board(a_board(30, 20), 0.25),
        straight_motions([(*p, 7.0) for p in track]),
        a_tool("ball-nose", diameter),
        AT_ZERO,
    )
    distance, radius = distances(left, track), diameter / 2
    ball = 7.0 + radius - np.sqrt(np.maximum(0, radius**2 - distance**2))
    expected = np.where(distance < radius, np.minimum(TOP, ball), TOP)
    clear = np.abs(distance - radius) > 1e-3
    np.testing.assert_allclose(left.z_mm[clear], expected[clear], atol=1e-4)


# -- against stamping ----------------------------------------------------------------------------------------

STEP_MM = 0.005
CUTTERS = st.sampled_from(
    [
        a_tool("end-mill", 3.0),
        a_tool("v-bit", 12.0, 90),
        a_tool("v-bit", 4.0, 60, 0.5),
        a_tool("v-bit", 6.35, 30, 0.1),
        a_tool("v-bit", 5.0, 120, 2.0),
        a_tool("ball-nose", 4.0),
        a_tool("drill", 5.0, 118),
    ]
)


def underside(tool: Tool, r: np.ndarray) -> np.ndarray:
    """Height of the cutter above its tip at a distance from its axis; written without a look at the one under
    test."""
    if tool.kind == "end-mill":
        return np.zeros_like(r)
    if tool.kind == "ball-nose":
        return tool.diameter_mm / 2 - np.sqrt(np.maximum(0, tool.diameter_mm**2 / 4 - r**2))
    flat = tool.tip_mm / 2 if tool.kind == "v-bit" else 0.0
    return np.maximum(0, r - flat) / math.tan(math.radians(tool.angle_deg / 2))


def stamped(heights: HeightMap, points: np.ndarray, tool: Tool, nearer_mm: float) -> np.ndarray:
    """The board after the cutter was set down at each point, every cell taken to lie nearer to its axis by
    `nearer_mm` (farther where negative) than it does."""
    z = heights.z_mm.astype(np.float64).copy()
    x, y = np.meshgrid(heights.x_mm, heights.y_mm)
    for px, py, pz in points:
        r = np.maximum(0, np.hypot(x - px, y - py) - nearer_mm)
        z = np.where(r <= tool.diameter_mm / 2, np.minimum(z, pz + underside(tool, r)), z)
    return z


def sandwich(left: HeightMap, uncut: HeightMap, points: np.ndarray, tool: Tool, blur_mm: float) -> None:
    """Stamps at the points cut no more than the sweep does; stamps that reach half a step farther cut no
    less, but for the rise between two. `blur_mm` is how far the swept way may lie beside the stamped one."""
    rise = np.abs(np.diff(points[:, 2])).max(initial=0.0)
    assert (left.z_mm <= stamped(uncut, points, tool, -blur_mm) + 1e-4).all()
    assert (left.z_mm >= stamped(uncut, points, tool, STEP_MM / 2 + blur_mm) - rise - 1e-4).all()


@settings(max_examples=30)
@given(
    CUTTERS,
    st.tuples(*[st.floats(2, 10)] * 2, st.floats(4, 12)),
    st.tuples(*[st.floats(2, 10)] * 2, st.floats(4, 12)),
)
def test_sloped_moves_against_stamps(tool, start, end) -> None:
    uncut = board(a_board(12, 12), 0.25)
    left = cut(uncut, straight_motions([start, end]), tool, AT_ZERO)
    count = max(2, math.ceil(math.dist(start[:2], end[:2]) / STEP_MM))
    points = np.linspace(start, end, count)
    sandwich(left, uncut, points, tool, 0.0)


@settings(max_examples=15)
@given(
    CUTTERS,
    st.sampled_from(["G2", "G3"]),
    st.floats(0, 6.28),
    st.floats(0.3, 6.2),
    st.floats(1, 4),
    st.floats(5, 9),
    st.floats(5, 9),
)
def test_helical_arcs_against_stamps(tool, code, angle, turn, radius, z0, z1) -> None:
    sweep = turn if code == "G3" else -turn
    p = (6 + radius * math.cos(angle), 6 + radius * math.sin(angle))
    q = (6 + radius * math.cos(angle + sweep), 6 + radius * math.sin(angle + sweep))
    arc = f"{code} X{q[0]:.6f} Y{q[1]:.6f} I{6 - p[0]:.6f} J{6 - p[1]:.6f} Z{z1:.6f}"
    motions = motions_of(arc, start_mm=(*p, z0))
    uncut = board(a_board(12, 12), 0.25)
    left = cut(uncut, motions, tool, AT_ZERO)
    part = np.linspace(0, 1, math.ceil(radius * turn / STEP_MM) + 1)
    points = np.column_stack(
        (6 + radius * np.cos(angle + part * sweep), 6 + radius * np.sin(angle + part * sweep), z0 + part * (z1 - z0))
    )
    # Chords lie up to 0.002 mm inside the arc.
    sandwich(left, uncut, points, tool, 0.0021)


def test_a_move_steeper_than_the_cone_cuts_like_its_lowest_place() -> None:
    """Going down at 80 degrees a 90 degree bit leaves its last cone and what its edge cut above."""
    tool = a_tool("v-bit", 6, 90)
    motions = straight_motions([(9.0, 6.0, 9.0), (9.5, 6.0, 6.0)])
    uncut = board(a_board(18, 12), 0.25)
    left = cut(uncut, motions, tool, AT_ZERO)
    sandwich(left, uncut, np.linspace((9, 6, 9), (9.5, 6, 6), 2001), tool, 0.0)


# -- laws ----------------------------------------------------------------------------------------------------


def random_track(seed: int, count: int, span: float = 30.0) -> np.ndarray:
    dice = np.random.default_rng(seed)
    return np.column_stack(
        (dice.uniform(0, span, count), dice.uniform(0, span * 2 / 3, count), dice.uniform(5, 11, count))
    )


@pytest.mark.parametrize("kind", ["end-mill", "v-bit", "ball-nose"])
def test_order_does_not_matter(kind) -> None:
    tool = a_tool(kind, 3, 60 if kind == "v-bit" else None)
    track = random_track(1, 60)
    uncut = board(a_board(30, 20), 0.2)
    whole = cut(uncut, straight_motions(track), tool, AT_ZERO)
    half = straight_motions(track)
    odd = np.arange(len(half)) % 2 == 1
    parts = cut(cut(uncut, half, tool, AT_ZERO, select=odd), half, tool, AT_ZERO, select=~odd)
    np.testing.assert_array_equal(parts.z_mm, whole.z_mm)


@pytest.mark.parametrize("kind", ["end-mill", "v-bit", "ball-nose"])
def test_a_move_in_two_halves_cuts_the_same(kind) -> None:
    tool = a_tool(kind, 3, 60 if kind == "v-bit" else None)
    track = random_track(2, 40)
    halved = np.empty((2 * len(track) - 1, 3))
    halved[0::2], halved[1::2] = track, (track[1:] + track[:-1]) / 2
    uncut = board(a_board(30, 20), 0.2)
    one, two = (cut(uncut, straight_motions(t), tool, AT_ZERO).z_mm for t in (track, halved))
    np.testing.assert_allclose(one, two, atol=1e-4)


def test_long_diagonals_cut_like_their_parts() -> None:
    """A diagonal across a large board is taken in pieces inside; twenty pieces given from outside must agree."""
    tool = a_tool("v-bit", 4, 60)
    uncut = board(a_board(300, 200), 0.5)
    ends = np.array([(-50.0, -20.0, 9.0), (320.0, 230.0, 6.0)])
    parts = np.linspace(ends[0], ends[1], 21)
    one, two = (cut(uncut, straight_motions(t), tool, AT_ZERO).z_mm for t in (ends, parts))
    assert (one < TOP).any()
    np.testing.assert_allclose(one, two, atol=1e-4)


def test_the_zero_moves_the_cut() -> None:
    uncut = board(a_board(30, 20), 0.2)
    tool, track = a_tool("v-bit", 6, 90), random_track(3, 10, 15)
    shifted = cut(uncut, straight_motions(track - (5, 3, 10)), tool, WorkZero(x_mm=5.0, y_mm=3.0, z_mm=10.0))
    np.testing.assert_allclose(shifted.z_mm, cut(uncut, straight_motions(track), tool, AT_ZERO).z_mm, atol=1e-5)


def test_rapids_cut_only_when_asked() -> None:
    uncut = board(a_board(30, 20), 0.5)
    motions = straight_motions([(5, 5, 8), (25, 5, 8), (25, 15, 8)], kind=[RAPID, FEED])
    tool = a_tool("end-mill", 3)
    feeds, everything = cut(uncut, motions, tool, AT_ZERO), cut(uncut, motions, tool, AT_ZERO, rapids=True)
    assert (feeds.z_mm[:, :30] == TOP).all()
    assert (everything.z_mm[:, 12:30] == 8).any()
    nothing = cut(uncut, motions, tool, AT_ZERO, select=np.zeros(2, bool), rapids=True)
    assert (nothing.z_mm == TOP).all()


def test_moves_beside_or_above_the_board_cut_nothing() -> None:
    uncut = board(a_board(30, 20), 0.5)
    for track in ([(-9, -9, 1), (-9, 40, 1)], [(0, 0, 10), (30, 20, 10)], [(5, 5, 11), (5, 5, 10)]):
        assert (cut(uncut, straight_motions(track), a_tool("end-mill", 6), AT_ZERO).z_mm == TOP).all()


def test_a_cut_through_shows_its_depth_below_zero() -> None:
    left = cut(
        board(a_board(10, 10), 0.5), straight_motions([(5, 5, 12), (5, 5, -0.3)]), a_tool("end-mill", 6), AT_ZERO
    )
    assert left.z_mm.min() == np.float32(-0.3)


def test_absurd_coordinates_neither_hang_nor_fill_the_memory() -> None:
    uncut = board(a_board(30, 20), 0.5)
    far = straight_motions([(-1e9, 10, 8), (1e9, 10, 8), (1e9, 1e9, -1e9), (-1e9, -1e9, 1e9)])
    left = cut(uncut, far, a_tool("end-mill", 3), AT_ZERO)
    row = np.argmin(np.abs(left.y_mm - 10))
    assert (left.z_mm[row] <= 8).all()
    giant = motions_of("G0 X-1000000 Y10 Z9", "G2 X1000000 Y10 I1000000 J0", "G2 X1000000 Y10 I-900000000 J0")
    assert (cut(uncut, giant, a_tool("end-mill", 3), AT_ZERO).z_mm <= TOP).all()


@pytest.mark.sweep
@pytest.mark.parametrize("seed", range(12))
def test_many_moves_against_stamps(seed: int) -> None:
    dice = np.random.default_rng(seed)
    tool = [a_tool("end-mill", 3), a_tool("v-bit", 6, 60, 0.2), a_tool("drill", 4, 118)][seed % 3]
    uncut = board(a_board(12, 12), 0.2)
    for _ in range(20):
        ends = dice.uniform((1, 1, 4), (11, 11, 11), (2, 3))
        count = max(2, math.ceil(math.dist(ends[0, :2], ends[1, :2]) / STEP_MM))
        sandwich(cut(uncut, straight_motions(ends), tool, AT_ZERO), uncut, np.linspace(*ends, count), tool, 0.0)
