"""The outside cut."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import LinearRing, Point, Polygon, box

from signgen.drawing.tabs import place_tabs
from signgen.errors import CannotMakeError
from signgen.geometry.offsets import polygons
from signgen.geometry.paths import CCW, LINE, Path
from signgen.operations.edge import CutOut
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.gaps import zigzag
from tests.asking import english

THICKNESS, BREAKTHROUGH, TAB_WIDTH, TAB_HEIGHT = 12.0, 0.3, 6.0, 1.5


def cut_out(
    edge: Polygon, tabs: int, tool: Tool, cutting: CuttingData, foot_mm: float = 0.0, **more: float | bool
) -> tuple[CutOut, Path, np.ndarray]:
    operation = CutOut(
        edge=edge,
        tabs=place_tabs(edge, (), tabs, TAB_WIDTH, TAB_HEIGHT, foot_mm),
        tool=tool,
        cutting=cutting,
        thickness_mm=THICKNESS,
        breakthrough_mm=BREAKTHROUGH,
        tolerances=Tolerances(),
        **more,  # type: ignore[arg-type]
    )
    (cut,) = operation.toolpath().cuts
    return operation, cut.path, cut.feeds_mm_per_min


def chorded(path: Path, step: float = 0.02) -> np.ndarray:
    """(k, 3) points along a path, arcs included, about `step` mm apart."""
    points = [path.points_mm[:1]]
    for i in range(len(path)):
        n = max(2, math.ceil(path.lengths_mm[i] / step))
        share = np.linspace(0, 1, n)[1:, None]
        start, end = path.points_mm[i], path.points_mm[i + 1]
        xyz = start + share * (end - start)
        if path.kinds[i] != LINE:
            angle = share[:, 0] * path.sweeps_rad[i]
            spoke = start[:2] - path.centres_mm[i]
            xyz[:, 0] = path.centres_mm[i, 0] + spoke[0] * np.cos(angle) - spoke[1] * np.sin(angle)
            xyz[:, 1] = path.centres_mm[i, 1] + spoke[0] * np.sin(angle) + spoke[1] * np.cos(angle)
        points.append(xyz)
    return np.concatenate(points)


ROUNDED = polygons(box(10, 10, 210, 130).buffer(10, quad_segs=64))[0]


def test_goes_clockwise_so_that_the_sign_is_on_the_right(mill: Tool, cutting: CuttingData) -> None:
    # Common practice: with the spindle turning clockwise, climb milling has the work on the right of travel.
    _, path, _ = cut_out(box(0, 0, 220, 140), 0, mill, cutting)
    last_round = path.points_mm[path.points_mm[:, 2] == -BREAKTHROUGH][:, :2]
    assert LinearRing(last_round).is_ccw is False


@pytest.mark.parametrize("edge", [box(0, 0, 220, 140), ROUNDED], ids=["rectangle", "rounded"])
def test_stays_a_radius_away_from_the_edge(edge: Polygon, mill: Tool, cutting: CuttingData) -> None:
    import shapely

    _, path, _ = cut_out(edge, 4, mill, cutting)
    away = shapely.distance(shapely.points(chorded(path)[:, :2]), edge.exterior)
    assert away.min() == pytest.approx(3.0, abs=0.01)
    off = np.flatnonzero(away > 3.01)  # only on the arcs at both ends
    assert np.all((off < 100) | (off > len(away) - 100))


def test_never_goes_down_steeper_than_the_entry_angle(mill: Tool, cutting: CuttingData) -> None:
    _, path, _ = cut_out(ROUNDED, 4, mill, cutting)
    drop = path.points_mm[:-1, 2] - path.points_mm[1:, 2]
    across = np.sqrt(np.maximum(path.lengths_mm**2 - drop**2, 0))
    going_down = drop > 1e-9
    assert np.all(np.degrees(np.arctan2(drop[going_down], across[going_down])) <= cutting.entry_deg + 1e-6)


def test_every_pass_takes_at_most_the_stepdown(mill: Tool, cutting: CuttingData) -> None:
    _, path, _ = cut_out(ROUNDED, 4, mill, cutting)
    points = chorded(path, 0.5)
    floor: dict[int, float] = {}
    worst = 0.0
    ring = LinearRing(ROUNDED.exterior)
    for x, y, z in points:  # the floor under the cutter's centre, in stretches of 2 mm of the edge, as the passes go
        cell = round(ring.project(Point(x, y)) / 2)
        worst = max(worst, floor.get(cell, THICKNESS) - z)
        floor[cell] = min(floor.get(cell, THICKNESS), z)
    along_a_cell = 2 * math.sqrt(2) * math.tan(math.radians(cutting.entry_deg))
    assert worst <= cutting.stepdown_mm + along_a_cell


@pytest.mark.parametrize("count", [1, 2, 3, 4, 7])
def test_between_tabs_the_cut_goes_through_and_over_them_it_stays_up(
    count: int, mill: Tool, cutting: CuttingData
) -> None:
    operation, path, _ = cut_out(ROUNDED, count, mill, cutting)
    points = chorded(path)
    ring = LinearRing(operation._loop(0.0).path.points_mm[:, :2])  # close enough to find the place along it
    s = np.array([ring.project(p) for p in map(_point, points[:, :2])])
    lowest = np.full(math.ceil(ring.length * 10) + 1, np.inf)
    np.minimum.at(lowest, np.rint(s * 10).astype(int), points[:, 2])
    through = lowest <= -BREAKTHROUGH + 1e-9
    low_enough = lowest[np.isfinite(lowest)]
    assert low_enough.min() == pytest.approx(-BREAKTHROUGH)
    # Derived here: the path's gap is the tab's width and the cutter's diameter.
    standing = np.count_nonzero(~through & np.isfinite(lowest)) / 10
    assert standing == pytest.approx(count * (TAB_WIDTH + 6.0), abs=0.25 * count)
    assert lowest[~through & np.isfinite(lowest)].min() == pytest.approx(TAB_HEIGHT, abs=0.2)


def _point(xy: np.ndarray):  # type: ignore[no-untyped-def]
    from shapely.geometry import Point

    return Point(xy)


def test_thin_stock_is_cut_in_one_pass_over_tabs(mill: Tool, cutting: CuttingData) -> None:
    edge = box(0, 0, 120, 80)
    operation = CutOut(
        edge=edge,
        tabs=place_tabs(edge, (), 4, 4.0, 1.0),
        tool=mill,
        cutting=cutting,
        thickness_mm=2.0,
        breakthrough_mm=0.2,
        tolerances=Tolerances(),
    )
    (cut,) = operation.toolpath().cuts
    assert cut.path.points_mm[0, 2] == 2.0
    assert set(np.round(cut.path.points_mm[:, 2], 6)) == {2.0, 1.0, -0.2}


def test_more_tabs_than_the_edge_has_room_for(mill: Tool, cutting: CuttingData) -> None:
    edge = box(0, 0, 60, 40)
    tabs = place_tabs(edge, (), 4, 6.0, 1.5)
    wide = tuple(replace(tab, width_mm=60.0) for tab in tabs)
    operation = CutOut(
        edge=edge,
        tabs=wide,
        tool=mill,
        cutting=cutting,
        thickness_mm=6.0,
        breakthrough_mm=0.3,
        tolerances=Tolerances(),
    )
    with pytest.raises(CannotMakeError) as error:
        operation.toolpath()
    assert error.value.problems[0].where == "tabs"


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.floats(0.5, 100), st.floats(0.1, 10), st.floats(0.02, 1.0))
def test_a_zigzag_comes_back_at_depth_and_is_never_too_steep(span: float, depth: float, slope: float) -> None:
    knots = zigzag(10.0, 10.0 + span, depth, 0.0, slope)
    assert knots[0] == (10.0, depth)
    assert knots[-1][0] == 10.0
    assert knots[-1][1] == pytest.approx(0.0, abs=1e-9)
    for (s0, z0), (s1, z1) in itertools.pairwise(knots):
        assert 10.0 - 1e-9 <= s1 <= 10.0 + span + 1e-9
        assert z0 - z1 <= abs(s1 - s0) * slope * (1 + 1e-9) + 1e-9


def off_edge(edge: Polygon, path: Path) -> np.ndarray:
    """(k,) how far the cutter's middle is from the edge along its way."""
    import shapely

    return np.asarray(shapely.distance(shapely.points(chorded(path)[:, :2]), edge.exterior))


@pytest.mark.parametrize("climb", [True, False])
def test_begins_and_ends_on_an_arc_that_touches_the_way_from_the_wastes_side(
    climb: bool, mill: Tool, cutting: CuttingData
) -> None:
    _, path, _ = cut_out(ROUNDED, 4, mill, cutting, climb=climb)
    away = off_edge(ROUNDED, path)
    # Source: a tangent arc of radius r has left its tangent by r (1 - cos t); 0.5 mm is this module's LEAD_MM, and a
    # rounded corner's own bend adds to it.
    assert 3.49 < away[0] < 3.8
    assert 3.49 < away[-1] < 3.8
    last = len(path) - 1
    for one, other in ((0, 1), (last - 1, last)):
        assert tangent(path, one, 1) @ tangent(path, other, 0) == pytest.approx(1.0, abs=1e-6)


def tangent(path: Path, i: int, end: int) -> np.ndarray:
    """The unit direction across XY at the start (0) or the end (1) of a segment."""
    if path.kinds[i] == LINE:
        step = path.points_mm[i + 1, :2] - path.points_mm[i, :2]
    else:
        spoke = path.points_mm[i + end, :2] - path.centres_mm[i]
        step = np.array([-spoke[1], spoke[0]]) * (1 if path.kinds[i] == CCW else -1)
    return step / np.hypot(*step)


def test_conventional_milling_goes_the_other_way_round(mill: Tool, cutting: CuttingData) -> None:
    _, path, _ = cut_out(box(0, 0, 220, 140), 0, mill, cutting, climb=False)
    last_round = path.points_mm[path.points_mm[:, 2] == -BREAKTHROUGH][:, :2]
    assert LinearRing(last_round).is_ccw is True


@pytest.mark.parametrize("tabs", [0, 4])
def test_a_finishing_pass_takes_its_allowance_at_full_depth_and_its_own_feed(
    tabs: int, mill: Tool, cutting: CuttingData
) -> None:
    _, path, feeds = cut_out(ROUNDED, tabs, mill, cutting, finish_mm=0.3, finish_feed_mm_per_min=2400.0)
    fine = np.flatnonzero(feeds == 2400.0)
    first = int(fine[0])
    rough = Path(
        points_mm=path.points_mm[:first].copy(),
        kinds=path.kinds[: first - 1].copy(),
        centres_mm=path.centres_mm[: first - 1].copy(),
    )
    assert off_edge(ROUNDED, rough).min() >= 3.3 - 0.01
    assert off_edge(ROUNDED, path).min() == pytest.approx(3.0, abs=0.01)
    at_bottom = fine[path.points_mm[fine + 1, 2] == -BREAKTHROUGH]
    around = LinearRing(ROUNDED.buffer(3.0, quad_segs=64).exterior.coords).length
    assert path.lengths_mm[at_bottom].sum() == pytest.approx(around - tabs * (TAB_WIDTH + 6.0), abs=6.0)


def test_a_skin_is_left_all_round_and_nothing_goes_lower(mill: Tool, cutting: CuttingData) -> None:
    operation, path, _ = cut_out(ROUNDED, 0, mill, cutting, skin_mm=0.4)
    assert path.points_mm[:, 2].min() == pytest.approx(0.4)
    points = chorded(path)
    last_round = points[points[:, 2] < 0.4 + 1e-9]
    assert LinearRing(last_round[:, :2]).length > ROUNDED.exterior.length
    assert english(operation.description) == "cuts the sign out down to a skin of 0.4 mm"


def test_sides_of_ramped_tabs_fall_evenly_and_are_only_cut_upwards(mill: Tool, cutting: CuttingData) -> None:
    foot = (TAB_HEIGHT + BREAKTHROUGH) / math.tan(math.radians(30))
    operation, path, _ = cut_out(ROUNDED, 4, mill, cutting, foot_mm=foot)
    points = chorded(path)[:-120]
    ring = LinearRing(operation._loop(0.0).path.points_mm[:, :2])
    s = np.array([ring.project(p) for p in map(_point, points[:, :2])])
    for tab in operation.tabs:
        middle = ring.project(_point(np.array([tab.x_mm, tab.y_mm])))
        away = np.abs((s - middle + ring.length / 2) % ring.length - ring.length / 2)
        for beyond in (0.5, 1.5, 2.5):
            near = np.abs(away - (TAB_WIDTH + 6.0) / 2 - beyond) < 0.05
            assert points[near, 2].min() == pytest.approx(TAB_HEIGHT - beyond * math.tan(math.radians(30)), abs=0.08)
        assert points[away < (TAB_WIDTH + 6.0) / 2 - 0.05, 2].min() == pytest.approx(TAB_HEIGHT)
    drop = path.points_mm[:-1, 2] - path.points_mm[1:, 2]
    across = np.sqrt(np.maximum(path.lengths_mm**2 - drop**2, 0))
    falling = np.degrees(np.arctan2(drop, np.maximum(across, 1e-12)))
    # Steeper than the entry angle only where the side has been cut upwards just before: through air.
    for i in np.flatnonzero(falling > cutting.entry_deg + 1e-6):
        assert path.points_mm[i - 1] == pytest.approx(path.points_mm[i + 1])
        assert drop[i - 1] == pytest.approx(-drop[i])


def test_no_arc_beside_a_notch_that_has_no_room_for_it(mill: Tool, cutting: CuttingData) -> None:
    # The longest straights are inside a slot just wider than the cutter: an arc beside one would cut the other side.
    comb = box(0, 0, 40, 200).difference(box(16.9, 1, 23.1, 200))
    _, path, _ = cut_out(comb, 0, mill, cutting)
    assert off_edge(comb, path).min() >= 3.0 - 0.011


@pytest.mark.parametrize("foot", [0.0, 3.0])
@pytest.mark.parametrize("tabs", [1, 4])
def test_a_finishing_pass_comes_on_by_an_arc_and_passes_no_wall_twice(
    tabs: int, foot: float, mill: Tool, cutting: CuttingData
) -> None:
    operation, path, feeds = cut_out(
        ROUNDED, tabs, mill, cutting, finish_mm=0.3, finish_feed_mm_per_min=2400.0, foot_mm=foot
    )
    first = int(np.flatnonzero(feeds == 2400.0)[0])
    assert path.kinds[first] != LINE
    loop = LinearRing(operation._loop(0.0).path.points_mm[:, :2])
    start, end = (path.points_mm[k, :2] for k in (first, first + 1))
    assert LinearRing(operation._loop(0.3).path.points_mm[:, :2]).distance(_point(start)) < 0.01
    assert loop.distance(_point(end)) < 0.01
    # Off the wall again where the first straight behind the tab is taken up, a little further on.
    last = np.flatnonzero(feeds == 2400.0)[-1]
    assert path.kinds[last] != LINE
    on_wall = [k for k in range(first + 1, int(last)) if np.any(path.points_mm[k, :2] != path.points_mm[k + 1, :2])]
    assert path.lengths_mm[on_wall].sum() < operation._loop(0.0).length_mm + 2 * tabs * foot + 3.5


def test_a_cutter_that_cannot_plunge_is_led_in_behind_each_tab(mill: Tool, cutting: CuttingData) -> None:
    blunt = replace(mill, can_plunge=False)
    _, path, feeds = cut_out(ROUNDED, 4, blunt, cutting, finish_mm=0.3, finish_feed_mm_per_min=2400.0)
    fine = int(np.flatnonzero(feeds == 2400.0)[0])
    drop = path.points_mm[fine:-1, 2] - path.points_mm[fine + 1 :, 2]
    across = np.hypot(*np.diff(path.points_mm[fine:, :2], axis=0).T)
    assert np.degrees(np.arctan2(drop[drop > 0], across[drop > 0])).max() <= cutting.entry_deg + 1e-6


PILL = polygons(box(30, 29.9, 70, 30.1).buffer(30, quad_segs=64))[0]


@pytest.mark.parametrize("can_plunge", [True, False])
@pytest.mark.parametrize(
    ("edge", "tabs", "diameter"), [(PILL, 4, 3.5), (PILL, 10, 2.9), (box(0, 0, 60, 40), 8, 6.0), (ROUNDED, 3, 3.0)]
)
def test_a_finishing_pass_spares_every_tab(
    edge: Polygon, tabs: int, diameter: float, can_plunge: bool, mill: Tool, cutting: CuttingData
) -> None:
    thin = replace(mill, diameter_mm=diameter, can_plunge=can_plunge)
    operation, path, _ = cut_out(edge, tabs, thin, cutting, finish_mm=0.4, finish_feed_mm_per_min=2400.0)
    points = chorded(path, 0.1)
    low = points[points[:, 2] < TAB_HEIGHT - 1e-6]
    assert operation.tabs
    for tab in operation.tabs:
        along, out = (tab.along_x, tab.along_y), (tab.along_y, -tab.along_x)
        u = (low[:, 0] - tab.x_mm) * along[0] + (low[:, 1] - tab.y_mm) * along[1]
        v = (low[:, 0] - tab.x_mm) * out[0] + (low[:, 1] - tab.y_mm) * out[1]
        # From the tab's core, 0.05 mm inside its ends, from the edge to the other side of the cut.
        away = np.hypot(
            np.maximum(np.abs(u) - (TAB_WIDTH / 2 - 0.05), 0.0), np.maximum(np.abs(v) - diameter, 0.0)
        )  # fmt: skip
        assert away.min() >= diameter / 2
