"""Rings are walked whole, or the shorter way round, from any place."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.geometry.rings import Ring, by_distance

SQUARE = Ring.of([(0, 0), (10, 0), (10, 10), (10, 10), (0, 10), (0, 0)], level=1)
POINT = st.tuples(st.floats(-5, 15), st.floats(-5, 15))


def length(points):
    return float(np.hypot(*np.diff(points, axis=0).T).sum())


def test_the_nearest_place_is_on_the_nearest_edge():
    place, away = SQUARE.nearest((4, -3))
    assert (place.edge, place.share, place.xy, away) == (0, 0.4, (4, 0), 3)


@given(POINT)
def test_a_lap_goes_once_round_and_comes_back(xy):
    place, _ = SQUARE.nearest(xy)
    lap = SQUARE.lap(place)
    assert tuple(lap[0]) == tuple(lap[-1]) == place.xy
    assert length(lap) == pytest.approx(40)
    x, y = lap[:-1].T
    assert np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y) / 2 == pytest.approx(100)


@given(POINT, POINT)
def test_between_two_places_lies_the_shorter_way_along_the_ring(a, b):
    start, end = SQUARE.nearest(a)[0], SQUARE.nearest(b)[0]
    way = SQUARE.between(start, end)
    assert tuple(way[0]) == start.xy
    assert tuple(way[-1]) == end.xy
    gone = [place.edge * 10 + place.share * 10 for place in (start, end)]
    ahead = (gone[1] - gone[0]) % 40
    assert length(way) == pytest.approx(min(ahead, 40 - ahead), abs=1e-9)
    assert max(SQUARE.nearest(tuple(point))[1] for point in way) < 1e-9


@given(st.lists(POINT, min_size=1, max_size=8), POINT)
def test_rings_come_nearest_first(corners, xy):
    rings = [Ring.of([(x, y), (x + 3, y), (x, y + 2), (x, y)], level=0) for x, y in corners]
    found = list(by_distance(rings, range(len(rings)), xy))
    assert sorted(ring for _, ring, _ in found) == list(range(len(rings)))
    assert [away for away, _, _ in found] == sorted(ring.nearest(xy)[1] for ring in rings)
