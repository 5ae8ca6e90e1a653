"""Distances from many points to many segments, held to GEOS and to closed forms."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import MultiPolygon, Point, Polygon, box

from signgen.geometry.distance import distance_to_segments, nearest_segment, segments_of

HOLED = box(0, 0, 40, 30).difference(Point(12, 14).buffer(7))


def test_segments_of_a_holed_area_walk_every_ring() -> None:
    area = MultiPolygon([HOLED, box(100, 0, 110, 10)])
    segments = segments_of(area)
    total = np.hypot(segments[:, 2] - segments[:, 0], segments[:, 3] - segments[:, 1]).sum()
    assert total == pytest.approx(area.length)


def test_segments_of_nothing_are_none() -> None:
    assert segments_of(Polygon()).shape == (0, 4)


@pytest.mark.parametrize(
    ("area", "point", "radius"),
    [
        # Source: plane geometry, derived here (inscribed radii; arithmetic).
        (box(0, 0, 10, 10), (5, 5), 5.0),
        (Polygon([(0, 0), (50, 0), (25, 25 * 3**0.5)]), (25, 14.433757), 14.433757),
        (Polygon([(0, 0), (40, 0), (40, 10), (10, 10), (10, 40), (0, 40)]), (5.857864, 5.857864), 5.857864),
    ],
)
def test_the_middle_of_an_area_is_its_inscribed_radius_away(
    area: Polygon, point: tuple[float, float], radius: float
) -> None:
    assert distance_to_segments(np.array([point], float), segments_of(area))[0] == pytest.approx(radius, abs=1e-6)


@given(
    seed=st.integers(0, 2**32 - 1),
    count=st.integers(1, 300),
    limit=st.sampled_from([np.inf, 3.0]),
    squash=st.sampled_from([1.0, 1e-4, 0.0]),
)
def test_agrees_with_geos(seed: int, count: int, limit: float, squash: float) -> None:
    random = np.random.default_rng(seed)
    points = random.uniform(-10, 50, (count, 2)) * [1, squash]
    boundary = shapely.union_all([HOLED, Point(*random.uniform(-20, 20, 2)).buffer(random.uniform(1, 9))]).boundary
    expected = np.minimum(shapely.distance(boundary, shapely.points(points)), limit)
    assert distance_to_segments(points, segments_of(boundary), limit) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("at_once", [1, 100, 5000])
def test_lists_measured_in_parts_are_the_same(at_once: int, monkeypatch: pytest.MonkeyPatch) -> None:
    random = np.random.default_rng(5)
    # The middle of circles too, as near to all of their chords.
    rings = [Point(x, 0).buffer(radius, quad_segs=64).boundary for x in (0, 30) for radius in (9, 9.0001, 9.0002)]
    segments = segments_of(shapely.union_all(rings))
    points = np.vstack([random.uniform(-10, 40, (300, 2)), [[0, 0], [0, 0.001], [30, 0]]])
    whole = nearest_segment(points, segments)
    monkeypatch.setattr("signgen.geometry.distance.MEASURED_AT_ONCE", at_once)
    parts = nearest_segment(points, segments)
    assert np.array_equal(whole[0], parts[0])
    assert np.array_equal(whole[1], parts[1])


@given(seed=st.integers(0, 2**32 - 1), count=st.integers(1, 40))
def test_a_disc_that_travels_is_as_near_as_the_nearest_of_its_places(seed: int, count: int) -> None:
    random = np.random.default_rng(seed)
    segments = random.uniform(-5, 5, (count, 4))
    segments[0, 2:] = segments[0, :2]
    segments[count // 2, 2:] = segments[count // 2, :2] + random.normal(0, 0.01, 2)
    radii = random.uniform(0, 2, (count, 2))
    points = random.uniform(-6, 6, (12, 2))
    found, which = nearest_segment(points, segments, radii=radii)
    share = np.linspace(0, 1, 2001)[:, None]
    for point, value, segment in zip(points, found, which, strict=True):
        rims = []
        for (x0, y0, x1, y1), (r0, r1) in zip(segments, radii, strict=True):
            centre = np.array([x0, y0]) + share * [x1 - x0, y1 - y0]
            rims.append(float((np.hypot(*(centre - point).T) - (r0 + share[:, 0] * (r1 - r0))).min()))
        assert -1e-9 <= min(rims) - value <= 0.02
        assert rims[segment] == pytest.approx(min(rims), abs=0.02)


def test_without_a_segment_everything_is_at_the_limit() -> None:
    found, which = nearest_segment(np.zeros((3, 2)), np.zeros((0, 4)), limit=7.0)
    assert found.tolist() == [7.0] * 3
    assert which.tolist() == [-1] * 3
