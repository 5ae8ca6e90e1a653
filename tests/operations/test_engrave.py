"""Engraving: depths, limits, passes, floors, and the surface that a simulated cut leaves."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
import shapely.affinity
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from signgen.errors import CannotMakeError
from signgen.features.groove import Groove
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.operations.engrave import Engrave
from signgen.pipeline import prove
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Toolpath
from tests.asking import spec_of
from tests.carved import as_written, away_mm, deviation_mm, widths
from tests.geometry.test_medial import L_SHAPE, PLUS, T_SHAPE, blobs

THICKNESS = 20.0
CUTTING = CuttingData(
    spindle_rpm=16000.0,
    chip_load_mm=0.05,
    feed_mm_per_min=1500.0,
    plunge_mm_per_min=500.0,
    ramp_mm_per_min=800.0,
    stepdown_mm=50.0,
    stepover_mm=4.0,
    entry_deg=5.0,
)


def bit(angle: float = 90.0, tip: float = 0.0, diameter: float = 60.0) -> Tool:
    reach = (diameter - tip) / 2 / math.tan(math.radians(angle) / 2)
    return Tool(
        name="v-bit",
        kind="v-bit",
        diameter_mm=diameter,
        shank_mm=6.0,
        cutting_length_mm=reach,
        flutes=2,
        angle_deg=angle,
        tip_mm=tip,
        stickout_mm=reach + 10,
        source="test",
    )


def engraved(
    *areas: Polygon, tool: Tool | None = None, depth: float = 19.0, stepdown: float = 50.0, ridge: float = 0.05
) -> Toolpath:
    tool = tool or bit()
    depth = min(depth, tool.reach_mm)
    assert tool.angle_deg is not None
    grooves = tuple(
        Groove(
            name=f"groove {i}",
            source="text",
            text="x",
            area=area,
            angle_deg=tool.angle_deg,
            tip_mm=tool.tip_mm,
            max_depth_mm=depth,
        )
        for i, area in enumerate(areas)
    )
    cutting = CuttingData(**{**{f: getattr(CUTTING, f) for f in CUTTING.__slots__}, "stepdown_mm": stepdown})
    return Engrave(
        grooves=grooves,
        tool=tool,
        cutting=cutting,
        thickness_mm=THICKNESS,
        tolerances=Tolerances(),
        cusp_height_mm=ridge,
    ).toolpath()


def deepest(toolpath: Toolpath) -> float:
    return THICKNESS - min(float(cut.path.points_mm[:, 2].min()) for cut in toolpath.cuts)


# Plane geometry of cones: depth over width; 60, 82, 90, 118 and 135 degrees as published in Engineers Edge's
# spot-drill table, 120 derived.
FACTORS = [(60, 0.866), (82, 0.5752), (90, 0.5), (118, 0.3004), (120, 0.2887), (135, 0.2071)]


@pytest.mark.parametrize(("angle", "factor"), FACTORS)
def test_a_groove_is_as_deep_as_its_width_and_the_bits_angle_say(angle: float, factor: float) -> None:
    assert deepest(engraved(box(0, 0, 60, 6), tool=bit(angle))) == pytest.approx(6 * factor, abs=0.02)


def test_a_ninety_degree_bit_engraves_half_as_deep_as_the_groove_is_wide() -> None:
    # Common practice.
    assert deepest(engraved(box(0, 0, 60, 5))) == pytest.approx(2.5, abs=0.01)


@pytest.mark.parametrize(("shape", "depth"), [(L_SHAPE, 5.858), (T_SHAPE, 6.25), (PLUS, 7.071)])
def test_where_strokes_meet_it_is_deeper(shape: Polygon, depth: float) -> None:
    # Source: plane geometry, derived here, consequence for strokes of 10 mm at 90 degrees.
    assert deepest(engraved(shape)) == pytest.approx(depth, abs=0.02)


def test_a_flat_tip_goes_less_deep_by_its_own_width() -> None:
    # Plane geometry of cones: depth = (w - t) / (2 tan(angle / 2)).
    assert deepest(engraved(box(0, 0, 60, 6), tool=bit(90, tip=0.4))) == pytest.approx(2.8, abs=0.02)


def test_sharper_bits_go_deeper() -> None:
    found = [deepest(engraved(L_SHAPE, tool=bit(angle))) for angle in (150, 120, 90, 60, 45)]
    assert found == sorted(found)


@pytest.mark.parametrize("depth", [1.0, 2.5, 4.0])
def test_never_deeper_than_the_limit(depth: float) -> None:
    assert deepest(engraved(L_SHAPE, PLUS, depth=depth)) <= depth + 1e-6


def test_one_plunge_for_each_shape_and_none_into_the_wood() -> None:
    small = [shapely.affinity.scale(shape, 0.5, 0.5, origin=(0, 0)) for shape in (L_SHAPE, T_SHAPE, PLUS)]
    toolpath = engraved(*(shapely.affinity.translate(shape, 60 * i, 0) for i, shape in enumerate(small)))
    assert len(toolpath.cuts) == 3
    assert all(cut.path.points_mm[0, 2] > THICKNESS - 0.02 for cut in toolpath.cuts)


def test_roughing_passes_take_no_more_than_the_step_and_the_last_runs_everything() -> None:
    toolpath = engraved(PLUS, stepdown=3.0)
    by_stage = {cut.stage: [] for cut in toolpath.cuts}
    for cut in toolpath.cuts:
        by_stage[cut.stage].append(THICKNESS - float(cut.path.points_mm[:, 2].min()))
    lows = [max(depths) for _, depths in sorted(by_stage.items())]
    assert len(lows) >= 3
    assert all(b - a <= 3.0 + 1e-6 for a, b in zip([0.0, *lows[:-1]], lows, strict=True))
    assert lows[-1] == pytest.approx(7.071, abs=0.02)


def test_going_down_never_asks_for_more_than_the_plunge_feed() -> None:
    for cut in engraved(L_SHAPE, T_SHAPE, depth=3.0).cuts:
        fall = -np.diff(cut.path.points_mm[:, 2]) / np.maximum(cut.path.lengths_mm, 1e-12)
        assert np.all(fall * cut.feeds_mm_per_min <= CUTTING.plunge_mm_per_min * (1 + 1e-6))


def test_touching_letters_are_one_groove() -> None:
    halves = engraved(box(0, 0, 20, 6), box(20, 0, 40, 6))
    whole = engraved(box(0, 0, 40, 6))
    assert len(halves.cuts) == len(whole.cuts)
    assert deepest(halves) == pytest.approx(deepest(whole), abs=1e-6)


def test_a_bit_that_is_not_the_drawn_one_is_refused() -> None:
    groove = Groove(name="g", source="frame", area=box(0, 0, 9, 3), angle_deg=60.0, tip_mm=0.0, max_depth_mm=2.0)
    with pytest.raises(CannotMakeError):
        Engrave(
            grooves=(groove,), tool=bit(90), cutting=CUTTING, thickness_mm=THICKNESS, tolerances=Tolerances()
        ).toolpath()


def carved_errors(toolpath: Toolpath, area: shapely.Geometry, tool: Tool, limit: float) -> tuple[float, float]:
    """(worst uncut, worst gouge) across the board in mm, at probes inside and just outside, from the path's own
    discs.

    A place at distance s inside the outline must be cut min(s, limit radius) / slope deep; the cut there is the
    lowest of the cones along the path, taken every 0.02 mm: an independent brute force.
    """
    rows = []
    for cut in toolpath.cuts:
        path = cut.path
        for i in range(len(path)):
            n = max(2, math.ceil(path.lengths_mm[i] / 0.02))
            share = np.linspace(0, 1, n)[:, None]
            start, end = path.points_mm[i], path.points_mm[i + 1]
            xyz = start + share * (end - start)
            if path.kinds[i]:
                angle, spoke = share[:, 0] * path.sweeps_rad[i], start[:2] - path.centres_mm[i]
                xyz[:, 0] = path.centres_mm[i, 0] + spoke[0] * np.cos(angle) - spoke[1] * np.sin(angle)
                xyz[:, 1] = path.centres_mm[i, 1] + spoke[0] * np.sin(angle) + spoke[1] * np.cos(angle)
            rows.append(xyz)
    way = np.concatenate(rows)
    tree = pytest.importorskip("scipy.spatial").cKDTree(way[:, :2])
    x0, y0, x1, y1 = area.bounds
    rng = np.random.default_rng(7)
    probe = rng.uniform((x0 - 0.3, y0 - 0.3), (x1 + 0.3, y1 + 0.3), (1500, 2))
    inside = shapely.contains_xy(area, probe[:, 0], probe[:, 1])
    away = shapely.distance(shapely.points(probe), area.boundary) * np.where(inside, 1.0, -1.0)
    reach = tool.radius_at_depth_mm(limit) + 0.5
    wanted = np.clip(away, 0, limit * tool.slope)
    cut_radius = np.empty(len(probe))
    for i, near in enumerate(tree.query_ball_point(probe, reach)):
        lift = np.maximum(np.hypot(*(way[near, :2] - probe[i]).T) - tool.tip_mm / 2, 0)
        cut_radius[i] = ((THICKNESS - way[near, 2]) * tool.slope - lift).max(initial=-1.0)
    got = np.maximum(cut_radius, 0)
    blunt = tool.tip_mm / 2
    return float((wanted - got).max() - blunt), float((got - wanted).max())


@pytest.mark.parametrize("face", ["barlow", "cinzel", "pacifico", "roboto-slab"])
@pytest.mark.parametrize(("angle", "tip"), [(90.0, 0.0), (60.0, 0.2)])
def test_the_carved_surface_is_the_drawn_one(face: str, angle: float, tip: float) -> None:
    """Issue: worst deviation 0.02 mm or better on four faces."""
    letters = set_lines(["Ra8"], open_face(face), cap_height_mm=20.0).letters
    area = shapely.union_all([letter.area for letter in letters])
    tool = bit(angle, tip)
    toolpath = engraved(*(letter.area for letter in letters), tool=tool, depth=19.0)
    uncut, gouge = carved_errors(toolpath, area, tool, 19.0)
    assert uncut <= 0.02
    assert gouge <= 0.02


@pytest.mark.parametrize("tip", [0.0, 0.3])
def test_a_floor_is_flat_to_the_ridge_asked_for(tip: float) -> None:
    tool = bit(90.0, tip, diameter=12.0)
    toolpath = engraved(PLUS, tool=tool, depth=2.0, ridge=0.1)
    uncut, gouge = carved_errors(toolpath, PLUS, tool, 2.0)
    assert uncut * 1.0 <= 0.1 * tool.slope + 0.02
    assert gouge <= 0.02


def test_floors_are_cut_without_lifting_out_where_the_walls_pass_by() -> None:
    # A stroke 20 wide and 12 deep has a floor 8 wide (45 degrees: 12 less on either side) that rings and an axis clear.
    toolpath = engraved(box(0, 0, 60, 32), depth=12.0, ridge=0.2)
    (cut,) = toolpath.cuts
    assert cut.path.points_mm[:, 2].min() == pytest.approx(THICKNESS - 12.0)


@pytest.mark.parametrize("tip", [0.0, 0.3])
def test_the_bit_does_not_come_up_before_a_stroke_has_run_out(tip: float) -> None:
    """A wall off by e is within the tolerance; a disc that runs out early by e leaves e / sin(a / 2) of the corner."""
    x = np.linspace(-20, 20, 401)
    y = 0.3 * (20 - np.abs(x)) + 0.02 * (20 - np.abs(x)) ** 2
    star = Polygon([*zip(x, -y, strict=True), *zip(x[-2:0:-1], y[-2:0:-1], strict=True)])
    places = np.concatenate([cut.path.points_mm for cut in engraved(star, tool=bit(tip=tip)).cuts])
    for side in (-1, 1):
        last = places[np.argmax(side * places[:, 0])]
        assert last[2] <= THICKNESS + 1e-9
        assert star.exterior.distance(shapely.Point(last[:2])) == pytest.approx(tip / 2, abs=2e-5)


@pytest.mark.parametrize("face", ["cinzel", "pacifico", "roboto-slab", "unifraktur"])
@pytest.mark.parametrize("tolerance_mm", [0.01, 0.05])
def test_the_whole_tolerance_holds_from_the_fonts_curves_to_the_written_decimals(
    face: str, tolerance_mm: float
) -> None:
    """The sum that tolerances.py proves, measured against outlines twenty times finer than the job's."""
    tolerances = Tolerances(total_mm=tolerance_mm)
    drawn, true = (
        set_lines(["Rk&"], open_face(face), cap_height_mm=30.0, chord_mm=chord).letters
        for chord in (tolerances.chord_mm, tolerances.chord_mm / 20)
    )
    grooves = tuple(
        Groove(name=str(i), source="text", text="x", area=letter.area, angle_deg=90.0, tip_mm=0.0, max_depth_mm=19.0)
        for i, letter in enumerate(drawn)
    )
    toolpath = Engrave(
        grooves=grooves, tool=bit(), cutting=CUTTING, thickness_mm=THICKNESS, tolerances=tolerances
    ).toolpath()
    runs = [as_written(run) for run in widths(toolpath, THICKNESS)]
    gouge, uncut = deviation_mm(runs, shapely.union_all([letter.area for letter in true]), 0.02)
    # What lies between two points of the brute force, or of the finer outline, is not seen.
    assert gouge <= tolerance_mm + tolerances.chord_mm / 20
    assert uncut <= tolerance_mm + tolerances.chord_mm / 20 + 0.0005


@settings(max_examples=15)
@given(blobs(), st.floats(15, 140), st.floats(5, 100))
def test_a_sharper_bit_is_nowhere_less_deep(shape: Polygon, angle: float, more: float) -> None:
    """Depth is clearance over tan(angle / 2), and the path across the board does not hang on the angle."""
    sharp, blunt = bit(angle, diameter=200.0), bit(min(angle + more, 150.0), diameter=200.0)
    small = shapely.affinity.scale(shape, 0.1, 0.1)
    found = [engraved(small, tool=tool).cuts for tool in (sharp, blunt)]
    assert len(found[0]) == len(found[1])
    for one, other in zip(*found, strict=True):
        assert np.array_equal(one.path.points_mm[:, :2], other.path.points_mm[:, :2])
        # Above the board nothing is cut.
        depths = [np.maximum(THICKNESS - cut.path.points_mm[:, 2], 0.0) for cut in (one, other)]
        assert np.all(depths[0] >= depths[1] - 1e-9)


@settings(max_examples=15)
@given(blobs(), blobs(), st.floats(2, 15))
def test_shapes_that_touch_are_engraved_as_their_union(one: Polygon, other: Polygon, shift: float) -> None:
    small = [shapely.affinity.scale(shape, 0.2, 0.2) for shape in (one, shapely.affinity.translate(other, shift, 0.3))]
    moved = [small[0], shapely.affinity.translate(small[1], shift / 5 - shift, 0.0)]
    whole = shapely.union_all(moved)
    assume(whole.geom_type == "Polygon" and shapely.intersects(*moved))
    apart, together = engraved(*moved), engraved(whole)
    assert [cut.path.points_mm.tolist() for cut in apart.cuts] == [cut.path.points_mm.tolist() for cut in together.cuts]


@pytest.mark.parametrize(("angle", "tip"), [(60, "0"), (60, "0.2"), (90, "0"), (90, "0.2")])
def test_the_simulated_surface_of_a_whole_sign_is_the_ideal_one(angle: int, tip: str) -> None:
    """The board as the replayed V-bit program leaves it, cell by cell, against the exact distance to the outline."""
    spec = spec_of(v_bit=str(angle), v_bit_tip=tip, depth="5", frame="6", frame_width="1.5")
    facts = prove(spec)
    board, drawing = facts.boards[0], facts.drawing
    area = shapely.union_all([groove.area for groove in drawing.of(Groove)])
    x, y = np.meshgrid(board.x_mm, board.y_mm)
    near = shapely.contains_xy(area.buffer(0.3), x, y)
    places = np.column_stack([x[near], y[near]])
    away = away_mm(places, area) * np.where(shapely.contains_xy(area, *places.T), 1.0, -1.0)
    slope = spec.v_bit.slope
    wanted = np.clip(away, 0.0, 5.0 * slope)
    got = (drawing.thickness_mm - board.z_mm[near]) * slope
    allowed = spec.tolerances.total_mm + board.cell_mm / 2
    assert len(places) > 50_000
    assert (got - wanted).max() <= allowed
    # A flat tip leaves the bottom of each groove blunt by half its width.
    assert (wanted - got).max() <= allowed + spec.v_bit.tip_mm / 2


def test_there_is_one_plunge_for_each_polygon_of_a_line_of_letters() -> None:
    letters = set_lines(["Ra8&"], open_face("cinzel"), cap_height_mm=20.0).letters
    areas = [part for letter in letters for part in shapely.get_parts(letter.area)]
    assert len(engraved(*areas).cuts) == len(areas)
