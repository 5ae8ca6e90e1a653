"""Offsets against Steiner's formula and the hand values of what a round cutter cannot reach."""

import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import GeometryCollection, LineString, MultiPolygon, Point, Polygon, box

from signgen.geometry.offsets import area_of, inward, opening, outward, polygons, quad_segs, unreachable

TOLERANCE = 1e-5


def regular(n, side):
    radius = side / (2 * math.sin(math.pi / n))
    return Polygon([(radius * math.cos(2 * math.pi * k / n), radius * math.sin(2 * math.pi * k / n)) for k in range(n)])


L = Polygon([(0, 0), (40, 0), (40, 10), (10, 10), (10, 40), (0, 40)])


@pytest.mark.parametrize(
    ("shape", "distance", "area", "perimeter"),
    [
        (box(0, 0, 100, 60), 3.175, 7047.6692, 339.9491),
        (box(0, 0, 300, 200), 3, 63028.2743, 1018.8496),
        (regular(3, 50), 5, 1911.0716, 181.4159),
        (regular(6, 30), 4, 3108.5341, 205.1327),
        (L, 3, 1206.3429, 177.5619),
    ],
    ids=["rectangle", "plaque", "triangle", "hexagon", "L"],
)
def test_outward_agrees_with_steiner(shape, distance, area, perimeter):
    """Source: Steiner's formula A + P r + pi r^2 and P + 2 pi r; the L, with one reflex corner, A + P r
    + (5 pi/4 - 1) r^2 (plane geometry)."""
    grown = area_of(outward(shape, distance, TOLERANCE))
    assert grown.area == pytest.approx(area, abs=TOLERANCE * perimeter + 5e-5)
    assert grown.length == pytest.approx(perimeter, abs=1e-3)


def test_inward_of_a_rectangle_is_a_smaller_rectangle():
    # Source: A - P r + 4 r^2 = 93.65 x 53.65 (plane geometry).
    (left,) = inward(box(0, 0, 100, 60), 3.175, TOLERANCE)
    assert left.area == pytest.approx(5024.3225, abs=1e-9)
    assert left.bounds == pytest.approx((3.175, 3.175, 96.825, 56.825))


@pytest.mark.parametrize(
    ("shape", "corners", "angle_deg"),
    [(box(0, 0, 40, 40), 4, 90), (regular(3, 60), 3, 60), (regular(6, 40), 6, 120)],
)
def test_the_corners_that_a_round_cutter_leaves(shape, corners, angle_deg):
    """Source: r^2 (cot(a/2) - (pi - a)/2) uncut at a corner of angle a (plane geometry)."""
    r, a = 3.0, math.radians(angle_deg)
    left = unreachable(shape, r, 1e-5)
    assert len(left) == corners
    expected = corners * r**2 * (1 / math.tan(a / 2) - (math.pi - a) / 2)
    assert sum(part.area for part in left) == pytest.approx(expected, rel=2e-4)


def test_the_gap_in_a_square_corner():
    # Source: r (1 / sin(a/2) - 1) = 1.2426 mm for r 3 at 90 degrees (plane geometry).
    reach = area_of(opening(box(0, 0, 40, 40), 3, 1e-5))
    assert reach.distance(box(-1, -1, 0, 0)) == pytest.approx(1.2426, abs=1e-4)


def test_a_narrow_place_divides_what_is_left():
    dumbbell = box(0, 0, 20, 20).union(box(20, 8, 40, 12)).union(box(40, 0, 60, 20))
    assert len(inward(dumbbell, 3, 0.01)) == 2
    assert any(part.covers(box(23, 9, 37, 11)) for part in unreachable(dumbbell, 3, 0.01))


@pytest.mark.parametrize("nothing", [Polygon(), MultiPolygon(), GeometryCollection(), box(0, 0, 4, 4)])
def test_nothing_is_left_of_what_is_too_small(nothing):
    assert inward(nothing, 3, 0.01) == ()
    assert opening(nothing, 3, 0.01) == ()


def test_polygons_are_oriented_and_rid_of_lines():
    ring = Polygon(box(0, 0, 9, 9).exterior.coords[::-1], [box(3, 3, 6, 6).exterior.coords])
    (part,) = polygons(GeometryCollection([LineString([(0, 0), (1, 1)]), ring]))
    assert part.exterior.is_ccw
    assert not part.interiors[0].is_ccw


@given(st.floats(0.01, 200), st.floats(0.0005, 0.5))
def test_quarter_circle_chords_stay_within_the_tolerance_and_one_fewer_would_not(radius, tolerance):
    n = quad_segs(radius, tolerance)
    assert radius * (1 - math.cos(math.pi / (4 * n))) <= tolerance * (1 + 1e-6)
    if n > 1:
        assert radius * (1 - math.cos(math.pi / (4 * (n - 1)))) > tolerance * (1 - 1e-6)


@settings(max_examples=40, deadline=None)
@given(st.floats(5, 60), st.floats(5, 60), st.floats(0.2, 2.4), st.floats(0, math.pi))
def test_opening_then_opening_changes_nothing(width, height, radius, turn):
    c, s = math.cos(turn), math.sin(turn)
    shape = Polygon([(c * x - s * y, s * x + c * y) for x, y in box(0, 0, width, height).exterior.coords[:-1]])
    once = area_of(opening(shape, radius, 0.001))
    twice = area_of(opening(once, radius, 0.001))
    assert shape.buffer(1e-9).covers(once)
    assert once.symmetric_difference(twice).area <= 0.004 * once.length


def test_a_tolerance_of_zero_is_refused():
    with pytest.raises(ValueError):
        quad_segs(3, 0)


def test_a_loop_that_the_library_leaves_standing_is_not_taken():
    # Met in GEOS 3.14: the buffer of this area by -1.25 has a second, tiny polygon 0.4 mm from the outline.
    outline = [
        (0, 20),
        (30.196, 11.362),
        (30.134, 11.329),
        (30.069, 11.301),
        (30.001, 11.28),
        (30, 11.28),
        (7.935, 3.586),
    ]
    area = Polygon(outline)
    (left,) = inward(area, 1.25, 0.005)
    assert shapely.distance(shapely.points(left.exterior.coords), area.boundary).min() >= 1.25 - 0.005


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


@settings(max_examples=100, deadline=None)
@given(st.integers(0, 10**6), st.floats(0.1, 4), st.sampled_from([0.001, 0.01]))
def test_an_offset_outline_keeps_its_distance_within_the_tolerance(seed, distance, tolerance):
    area = cut_out(seed)
    for parts, from_ in (
        (inward(area, distance, tolerance), area.boundary),
        (outward(area, distance, tolerance), area),
    ):
        lines = shapely.segmentize(MultiPolygon(parts).boundary, 0.1)
        away = shapely.distance(shapely.points(shapely.get_coordinates(lines)), from_)
        assert np.all(np.abs(away - distance) <= tolerance + 1e-9)
