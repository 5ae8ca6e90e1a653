"""The medial axis against hand values, laws and independent references."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Point, Polygon, box

from signgen.geometry import medial
from signgen.geometry.medial import MedialAxis, medial_axes, medial_axis
from signgen.tolerances import Tolerances

TOLERANCES = Tolerances()
NEAR = TOLERANCES.total_mm


def axis_of(shape: Polygon) -> MedialAxis:
    return medial_axis(shape, TOLERANCES)


def length_mm(axis: MedialAxis) -> float:
    return sum(float(np.hypot(*np.diff(branch[:, :2], axis=0).T).sum()) for branch in axis.branches)


def all_points(axis: MedialAxis) -> np.ndarray:
    return np.concatenate([axis.nodes_mm, *axis.branches])


def ngon(n: int, side: float) -> Polygon:
    radius = side / (2 * math.sin(math.pi / n))
    turns = 2 * math.pi * (np.arange(n) + 0.3) / n
    return Polygon(np.column_stack([radius * np.cos(turns), radius * np.sin(turns)]))


L_SHAPE = Polygon([(0, 0), (40, 0), (40, 10), (10, 10), (10, 40), (0, 40)])
T_SHAPE = Polygon([(-20, 0), (20, 0), (20, 10), (5, 10), (5, 40), (-5, 40), (-5, 10), (-20, 10)])
PLUS = Polygon(
    [(-5, -20), (5, -20), (5, -5), (20, -5), (20, 5), (5, 5), (5, 20), (-5, 20), (-5, 5), (-20, 5), (-20, -5), (-5, -5)]
)

# Plane geometry, derived here (the three junctions confirmed by brute force).
WIDEST = {
    "square": (box(0, 0, 20, 20), 10.0),
    "rectangle": (box(0, 0, 30, 10), 5.0),
    "equilateral triangle": (ngon(3, 50.0), 14.4338),
    "right isosceles triangle": (Polygon([(0, 0), (20, 0), (0, 20)]), 20 * 0.292893),
    "hexagon": (ngon(6, 30.0), 15 / math.tan(math.pi / 6)),
    "disc": (Point(0, 0).buffer(8, quad_segs=200), 8.0),
    "stadium": (shapely.LineString([(0, 0), (40, 0)]).buffer(5, quad_segs=200), 5.0),
    "annulus": (Point(0, 0).buffer(20, quad_segs=200).difference(Point(0, 0).buffer(12, quad_segs=200)), 4.0),
    "L, strokes of 10": (L_SHAPE, 5.85786),
    "T, strokes of 10": (T_SHAPE, 6.25),
    "plus, strokes of 10": (PLUS, 7.07107),
}


@pytest.mark.parametrize(("shape", "radius"), WIDEST.values(), ids=WIDEST)
def test_the_widest_disc_is_the_inscribed_one(shape: Polygon, radius: float) -> None:
    assert axis_of(shape).widest_mm == pytest.approx(radius, abs=NEAR)


def test_the_widest_disc_of_an_l_sits_in_its_elbow() -> None:
    # Plane geometry: centre (0.585786 w, 0.585786 w) from the outer corner.
    points = all_points(axis_of(L_SHAPE))
    assert points[points[:, 2].argmax(), :2] == pytest.approx((5.85786, 5.85786), abs=NEAR)


def test_the_widest_disc_of_a_t_sits_below_its_bar() -> None:
    points = all_points(axis_of(T_SHAPE))
    assert points[points[:, 2].argmax(), :2] == pytest.approx((0.0, 6.25), abs=NEAR)


def test_a_square_has_two_diagonals() -> None:
    # Plane geometry: total length 2 sqrt(2) s.
    assert length_mm(axis_of(box(0, 0, 20, 20))) == pytest.approx(2 * math.sqrt(2) * 20, abs=8 * NEAR)


def test_a_rectangle_has_a_spine_and_four_corners() -> None:
    # Plane geometry: (a - b) + 2 sqrt(2) b.
    assert length_mm(axis_of(box(0, 0, 30, 10))) == pytest.approx(20 + 2 * math.sqrt(2) * 10, abs=8 * NEAR)


def test_an_annulus_has_a_circle_in_its_middle() -> None:
    points = all_points(axis_of(WIDEST["annulus"][0]))
    assert np.hypot(points[:, 0], points[:, 1]) == pytest.approx(np.full(len(points), 16.0), abs=NEAR)
    assert points[:, 2] == pytest.approx(np.full(len(points), 4.0), abs=NEAR)


def test_a_disc_is_one_node() -> None:
    axis = axis_of(WIDEST["disc"][0])
    assert len(axis.branches) == 0
    assert len(axis.nodes_mm) == 1


def test_an_ellipse_ends_where_its_curvature_says() -> None:
    # Plane geometry: the major axis, half-length (a^2 - b^2) / a.
    turns = np.linspace(0, 2 * np.pi, 1600, endpoint=False)
    points = all_points(axis_of(Polygon(np.column_stack([30 * np.cos(turns), 20 * np.sin(turns)]))))
    assert np.abs(points[:, 1]).max() < 0.05
    # Near its ends the axis says little: pruning by a tolerance e shortens it by about the square root of e.
    assert np.abs(points[:, 0]).max() == pytest.approx((900 - 400) / 30, abs=1.2)


@pytest.mark.parametrize("shape", [box(0, 0, 30, 10), L_SHAPE, T_SHAPE, PLUS, ngon(5, 20)])
def test_every_convex_corner_is_reached(shape: Polygon) -> None:
    points = all_points(axis_of(shape))
    ring = np.asarray(shape.exterior.coords)[:-1]
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    turn = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    convex = ring[turn > 0] if shape.exterior.is_ccw else ring[turn < 0]
    for corner in convex:
        away = np.hypot(*(points[:, :2] - corner).T)
        assert points[away.argmin(), 2] <= NEAR


@st.composite
def blobs(draw: st.DrawFn) -> Polygon:
    """Star-shaped outlines with corners of all kinds."""
    n = draw(st.integers(5, 14))
    radii = draw(st.lists(st.floats(4, 20), min_size=n, max_size=n))
    turns = 2 * np.pi * np.arange(n) / n
    return Polygon(np.column_stack([radii * np.cos(turns), radii * np.sin(turns)]))


@settings(max_examples=40)
@given(blobs())
def test_every_convex_corner_over_twenty_degrees_has_a_point_at_zero_depth(shape: Polygon) -> None:
    points = all_points(axis_of(shape))
    ring = np.asarray(shapely.orient_polygons(shape).exterior.coords)[:-1]
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    turn = np.degrees(np.arctan2(cross, np.einsum("ij,ij->i", before, after)))
    for corner in ring[turn > 20]:
        away = np.hypot(*(points[:, :2] - corner).T)
        assert away.min() <= NEAR
        assert points[away.argmin(), 2] <= NEAR


@settings(max_examples=40)
@given(blobs())
def test_every_radius_is_the_distance_to_the_outline(shape: Polygon) -> None:
    points = all_points(axis_of(shape))
    away = shapely.distance(shapely.points(points[:, :2]), shape.boundary)
    assert points[:, 2] == pytest.approx(away, abs=TOLERANCES.branch_mm + TOLERANCES.prune_mm)
    assert shapely.contains_xy(shape.buffer(NEAR), points[:, 0], points[:, 1]).all()


@settings(max_examples=20)
@given(blobs())
def test_its_discs_cover_the_shape_and_nothing_else(shape: Polygon) -> None:
    axis = axis_of(shape)
    x0, y0, x1, y1 = shape.bounds
    xs, ys = np.meshgrid(np.arange(x0, x1, 0.7) + 0.013, np.arange(y0, y1, 0.7) + 0.017)
    inside = shapely.contains_xy(shape, xs, ys)
    probe = np.column_stack([xs[inside], ys[inside]])
    margin = np.full(len(probe), -np.inf)
    for branch in (*axis.branches, axis.nodes_mm):
        steps = [max(2, math.ceil(math.dist(a[:2], b[:2]) / 0.05)) for a, b in itertools.pairwise(branch)]
        parts = [np.linspace(a, b, n) for (a, b), n in zip(itertools.pairwise(branch), steps, strict=True)]
        fine = np.concatenate(parts or [branch]) if branch is not axis.nodes_mm else branch
        reach = fine[None, :, 2] - np.hypot(*(probe[:, None, :] - fine[None, :, :2]).transpose(2, 0, 1))
        margin = np.maximum(margin, reach.max(axis=1))
    # A probe may lie between two of the sampled discs: their envelope is flat there, to the square of the spacing.
    assert margin.min() > -0.03


@settings(max_examples=25)
@given(blobs(), st.floats(-180, 180), st.floats(-50, 50), st.booleans())
def test_moving_turning_and_mirroring_change_nothing(shape: Polygon, degrees: float, shift: float, flip: bool) -> None:
    moved = affinity.translate(affinity.rotate(shape, degrees, origin=(0, 0)), shift, -shift)
    if flip:
        moved = affinity.scale(moved, -1, 1, origin=(0, 0))
    one, other = axis_of(shape), axis_of(moved)
    assert one.widest_mm == pytest.approx(other.widest_mm, abs=NEAR)
    assert length_mm(one) == pytest.approx(length_mm(other), abs=0.02 * length_mm(one) + 0.5)


@settings(max_examples=25)
@given(blobs(), st.integers(2, 5))
def test_points_more_on_straight_sides_change_nothing(shape: Polygon, parts: int) -> None:
    more = Polygon(shapely.segmentize(shape, shape.length / (40 * parts)).exterior.coords)
    assert axis_of(more).widest_mm == pytest.approx(axis_of(shape).widest_mm, abs=NEAR)
    assert length_mm(axis_of(more)) == pytest.approx(
        length_mm(axis_of(shape)), abs=0.02 * length_mm(axis_of(shape)) + 0.5
    )


def test_agrees_with_points_sampled_along_the_outline() -> None:
    """Reference: scipy's Voronoi diagram of points 0.05 mm apart; its inner vertices far from the outline lie on the
    axis."""
    spatial = pytest.importorskip("scipy.spatial")
    rim = shapely.segmentize(L_SHAPE, 0.05)
    vertices = spatial.Voronoi(np.asarray(rim.exterior.coords)[:-1]).vertices
    inner = vertices[shapely.contains_xy(L_SHAPE.buffer(-2.0), vertices[:, 0], vertices[:, 1])]
    axis = shapely.MultiLineString([shapely.LineString(branch[:, :2]) for branch in axis_of(L_SHAPE).branches])
    assert shapely.distance(shapely.points(inner), axis).max() < 0.05


def test_an_invalid_polygon_is_refused() -> None:
    with pytest.raises(ValueError, match="invalid polygon"):
        axis_of(Polygon([(0, 0), (10, 10), (10, 0), (0, 10)]))


def flowers(count: int) -> list[Polygon]:
    """Wavy outlines of 400 points, all different."""
    turns = np.linspace(0, 2 * math.pi, 400, endpoint=False)
    radii = (10 + k / 10 + np.sin((3 + k) * turns) for k in range(count))
    return [Polygon(np.column_stack([r * np.cos(turns), r * np.sin(turns)])) for r in radii]


def test_axes_found_side_by_side_are_those_found_one_by_one() -> None:
    shapes = [*flowers(6), affinity.translate(flowers(1)[0], 50, 0)]
    medial._axis_of_rings.cache_clear()
    together = medial_axes(shapes, TOLERANCES)
    medial._axis_of_rings.cache_clear()
    for axis, shape in zip(together, shapes, strict=True):
        alone = axis_of(shape)
        np.testing.assert_array_equal(axis.nodes_mm, alone.nodes_mm)
        np.testing.assert_array_equal(axis.ends, alone.ends)
        for one, other in zip(axis.branches, alone.branches, strict=True):
            np.testing.assert_array_equal(one, other)


def test_what_goes_wrong_with_one_of_many_is_heard(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise ArithmeticError("no sound diagram")

    medial._axis_of_rings.cache_clear()
    monkeypatch.setattr(medial, "_sound_axis", fail)
    with pytest.raises(ArithmeticError, match="no sound diagram"):
        medial_axes(flowers(3), TOLERANCES)
    medial._axis_of_rings.cache_clear()


def test_threads_are_as_many_as_cores_or_as_were_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("OMP_NUM_THREADS", raising=False)
    cores = medial._cores()
    assert cores >= 1
    for said, meant in (("1", 1), ("999", cores), ("0", cores), ("2,1", cores), ("", cores)):
        monkeypatch.setenv("OMP_NUM_THREADS", said)
        assert medial._cores() == meant


def test_no_shapes_have_no_axes() -> None:
    assert medial_axes([], TOLERANCES) == []
