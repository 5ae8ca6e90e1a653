"""A pocket is cleared wherever the cutter fits, nowhere else, with the walls last and the cutter climbing."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, MultiPolygon, Point, Polygon, box

from signgen.geometry.offsets import opening
from signgen.geometry.pocket import pocket_rings

TOLERANCE = 0.0025
RASTER_MM = 0.05

PLAIN = box(0, 0, 40, 24)
ISLANDS = (
    box(0, 0, 44, 30)
    .difference(Point(12, 15).buffer(4, quad_segs=64))
    .difference(box(22, 8, 25, 24))
    .difference(Polygon([(32, 6), (38, 8), (34, 20)]))
)
NECK = box(0, 0, 16, 16).union(box(16, 6, 26, 10)).union(box(26, 0, 44, 16))
"""Two rooms and a neck that is wider than a 3 mm cutter, but not wide enough for two rings."""
CHANNEL = Point(0, 0).buffer(18, quad_segs=64).difference(Point(0, 0).buffer(13.5, quad_segs=64))
SHAPES = {"plain": PLAIN, "islands": ISLANDS, "neck": NECK, "channel": CHANNEL}


def runs(pocket):
    return [run for piece in pocket.pieces for run in piece]


def chains(pocket):
    return [chain for run in runs(pocket) for chain in run.chains]


def sampled(pocket, step):
    lines = shapely.linestrings
    return np.concatenate(
        [shapely.get_coordinates(shapely.segmentize(lines(chain.points_mm), step)) for chain in chains(pocket)]
    )


@pytest.mark.parametrize("step", [1.2, 1.49, 1.9, 2.6])
@pytest.mark.parametrize("name", SHAPES)
def test_a_raster_finds_everything_cut_that_can_be_reached_and_nothing_else(name, step):
    from scipy.spatial import cKDTree

    area, radius = SHAPES[name], 1.5
    pocket = pocket_rings(area, radius, step, 0.0, TOLERANCE)
    x0, y0, x1, y1 = area.bounds
    x, y = np.meshgrid(np.arange(x0 - 1, x1 + 1, RASTER_MM), np.arange(y0 - 1, y1 + 1, RASTER_MM))
    cells = np.column_stack([x.ravel(), y.ravel()])
    away = cKDTree(sampled(pocket, 0.02)).query(cells, distance_upper_bound=2)[0]
    reachable = shapely.union_all(opening(area, radius, 1e-4))
    sure = shapely.contains_xy(reachable.buffer(-0.01), cells)
    assert sure.sum() > 10_000
    assert away[sure].max() <= radius
    outside = ~shapely.contains_xy(area.buffer(0.01), cells)
    assert away[outside].min() > radius


def cut_out(seed):
    """A board with some discs and bars added and taken away."""
    random = np.random.default_rng(seed)
    area = box(0, 0, 30, 20)
    for _ in range(random.integers(0, 6)):
        x, y = random.uniform((0, 0), (30, 20))
        shape = Point(x, y).buffer(random.uniform(0.5, 6)) if random.random() < 0.5 else box(x, y, x + 8, y + 3)
        shape = shapely.affinity.rotate(shape, random.uniform(0, 90))
        area = area.difference(shape) if random.random() < 0.7 else area.union(shape)
    return area


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10**6), st.floats(0.4, 3), st.floats(0.3, 1.9), st.sampled_from([0.0, 0.2]), st.floats(0, 300))
def test_whatever_the_area_all_that_is_reachable_is_cut_and_nothing_outside(seed, radius, ratio, allowance, walk):
    area = cut_out(seed)
    pocket = pocket_rings(area, radius, ratio * radius, min(allowance, radius / 2), TOLERANCE, walk)
    if not pocket.pieces:
        assert area.buffer(-radius - 0.01).is_empty
        return
    lines = [shapely.linestrings(chain.points_mm) for chain in chains(pocket)]
    swept = shapely.union_all(shapely.buffer(lines, radius, quad_segs=64))
    assert area.buffer(-radius).buffer(radius - 0.01).difference(swept).area < 1e-6
    assert swept.difference(area.buffer(2 * TOLERANCE, quad_segs=64)).area < 1e-6
    assert pocket.walls == sum(1 + len(part.interiors) for part in shapely.get_parts(area.buffer(-radius)))
    assert sum(chain.is_wall for chain in chains(pocket)) == pocket.walls
    for run in runs(pocket):
        for before, after in zip(run.chains, run.chains[1:], strict=False):
            np.testing.assert_allclose(before.points_mm[-1], after.points_mm[0], atol=1e-8)
        if not run.in_the_clear:
            np.testing.assert_array_equal(run.chains[0].points_mm[0], run.chains[0].points_mm[-1])
            assert area.boundary.distance(Point(run.middle_mm)) >= radius + run.room_mm - TOLERANCE


@pytest.mark.parametrize("name", SHAPES)
def test_walls_are_as_far_from_the_outline_as_the_cutter_is_thick(name):
    area, radius = SHAPES[name], 1.5
    for chain in chains(pocket_rings(area, radius, 1.2, 0.0, TOLERANCE)):
        if chain.is_wall:
            points = shapely.points(shapely.get_coordinates(shapely.segmentize(LineString(chain.points_mm), 0.05)))
            away = shapely.distance(points, area.boundary)
            assert away.min() >= radius - TOLERANCE
            assert away.max() <= radius + TOLERANCE


@pytest.mark.parametrize("name", SHAPES)
def test_one_plunge_for_each_piece_when_walking_costs_nothing(name):
    pocket = pocket_rings(SHAPES[name], 1.5, 1.2, 0.0, TOLERANCE, walk_mm=math.inf)
    assert [len(piece) for piece in pocket.pieces] == [1]


def test_two_rooms_that_the_cutter_cannot_pass_between_are_two_pieces():
    rooms = box(0, 0, 16, 16).union(box(16, 7, 26, 9)).union(box(26, 0, 44, 16))
    assert len(pocket_rings(rooms, 1.5, 1.2, 0.0, TOLERANCE).pieces) == 2


def test_lifts_replace_long_ways():
    few = runs(pocket_rings(ISLANDS, 0.5, 0.4, 0.0, TOLERANCE, walk_mm=math.inf))
    many = runs(pocket_rings(ISLANDS, 0.5, 0.4, 0.0, TOLERANCE, walk_mm=0.5))
    assert len(few) < len(many)
    assert not many[0].in_the_clear


def test_a_rectangle_is_cut_from_the_inside_out():
    (run,) = runs(pocket_rings(PLAIN, 1.5, 1.2, 0.0, TOLERANCE))
    points = np.concatenate([chain.points_mm for chain in run.chains])
    away = shapely.distance(shapely.points(points), PLAIN.boundary)
    # Rings at 1.5, 2.7, ... 11.1: along the run the distance from the wall never grows.
    assert away[0] == pytest.approx(1.5 + 8 * 1.2)
    assert np.all(np.diff(away) <= 1e-6)
    assert [chain.is_loose for chain in run.chains] == [True, False] * 8 + [False]
    assert [chain.is_wall for chain in run.chains] == [False] * 16 + [True]


@pytest.mark.parametrize("name", SHAPES)
def test_nothing_is_left_for_the_ways_between_walls_to_cut(name):
    """All that is no wall's lap is cut before the first wall; what comes between walls are only ways."""
    pocket = pocket_rings(SHAPES[name], 1.5, 1.2, 0.0, TOLERANCE)
    for piece in pocket.pieces:
        row = [chain for run in piece for chain in run.chains]
        first = next(i for i, chain in enumerate(row) if chain.is_wall)
        kept = row[:first] + [chain for chain in row[first:] if chain.is_wall]
        swept = shapely.union_all([LineString(chain.points_mm).buffer(1.5, quad_segs=64) for chain in kept])
        whole = shapely.union_all([LineString(chain.points_mm).buffer(1.5, quad_segs=64) for chain in row])
        assert whole.buffer(-0.01).difference(swept).area < 1e-6


def test_the_wood_that_stays_is_on_the_right():
    # Climb milling with M3: round the pocket's outside counter-clockwise, round an island clockwise.
    pocket = pocket_rings(CHANNEL, 1.0, 0.8, 0.0, TOLERANCE)
    walls = [shapely.linearrings(chain.points_mm) for chain in chains(pocket) if chain.is_wall]
    outer, island = sorted(walls, key=lambda ring: -Polygon(ring).area)
    assert outer.is_ccw
    assert not island.is_ccw


def test_an_allowance_stays_until_the_last_lap():
    pocket = pocket_rings(PLAIN, 1.5, 1.2, 0.3, TOLERANCE)
    inner = [chain.points_mm for chain in chains(pocket) if not chain.is_wall]
    away = shapely.distance(shapely.points(np.concatenate(inner)[:-1]), PLAIN.boundary)
    assert away.min() == pytest.approx(1.8, abs=1e-6)


def test_a_circle_of_known_rings():
    # Source: rings of a round pocket at R - k s (plane geometry). Pocket 20, cutter 6, step 2: 7, 5, 3, 1.
    pocket = pocket_rings(Point(0, 0).buffer(10, quad_segs=200), 3.0, 2.0, 0.0, TOLERANCE)
    assert (pocket.rings, pocket.walls) == (4, 1)


@pytest.mark.parametrize("area", [Polygon(), MultiPolygon(), box(0, 0, 2.9, 30)])
def test_no_room_is_no_pieces(area):
    pocket = pocket_rings(area, 1.5, 1.2, 0.0, TOLERANCE)
    assert (pocket.pieces, pocket.rings) == ((), 0)


@pytest.mark.parametrize("numbers", [(0, 1, 0, 0.01), (1, 0, 0, 0.01), (1, 2, 0, 0.01), (1, 1, -1, 0.01), (1, 1, 0, 0)])
def test_nonsense_is_refused(numbers):
    with pytest.raises(ValueError):
        pocket_rings(PLAIN, *numbers)
