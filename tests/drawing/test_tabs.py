"""Where tabs stand."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon, box

from signgen.drawing.tabs import ROOM_MM, place_tabs
from signgen.errors import CannotMakeError
from signgen.features.hole import Hole
from signgen.geometry.offsets import polygons


def rounded(width: float, height: float, radius: float) -> Polygon:
    return polygons(box(radius, radius, width - radius, height - radius).buffer(radius, quad_segs=48))[0]


def along(edge: Polygon, tabs: tuple) -> list[float]:
    return [edge.exterior.project(Point(tab.x_mm, tab.y_mm)) for tab in tabs]


def test_four_tabs_on_a_rectangle_stand_in_the_middle_of_its_sides() -> None:
    tabs = place_tabs(box(0, 0, 220, 140), (), 4, 6.0, 1.5)
    places = sorted((round(tab.x_mm, 9), round(tab.y_mm, 9)) for tab in tabs)
    assert places == [(0, 70), (110, 0), (110, 140), (220, 70)]


@given(st.floats(100, 400), st.floats(80, 300), st.floats(5, 18))
def test_a_tab_near_the_middle_of_a_straight_stretch_is_exactly_there(
    width: float, height: float, radius: float
) -> None:
    edge = rounded(width, height, radius)
    middles = {"x": width / 2, "y": height / 2}
    for tab in place_tabs(edge, (), 4, 6.0, 1.5):
        place, middle = (tab.x_mm, middles["x"]) if abs(tab.along_x) > 0.5 else (tab.y_mm, middles["y"])
        assert abs(place - middle) < 1e-9 or abs(place - middle) > 0.5


def test_sides_that_run_out_want_more_straight_edge() -> None:
    edge = box(0, 0, 60, 60)
    place_tabs(edge, (), 4, 6.0, 1.5, foot_mm=3.0)
    with pytest.raises(CannotMakeError):
        place_tabs(edge, (), 4, 6.0, 1.5, foot_mm=20.0)


@given(st.floats(100, 400), st.floats(80, 300), st.floats(0, 18), st.integers(3, 4))
def test_tabs_stand_on_straight_stretches(width: float, height: float, radius: float, count: int) -> None:
    edge = rounded(width, height, radius) if radius > 1 else box(0, 0, width, height)
    tabs = place_tabs(edge, (), count, 6.0, 1.5)
    assert [tab.name for tab in tabs] == [f"tab {i}" for i in range(1, count + 1)]
    for tab in tabs:
        half = 3.0 + ROOM_MM - 1.0
        x, y, dx, dy = tab.x_mm, tab.y_mm, tab.along_x, tab.along_y
        stretch = LineString([(x - dx * half, y - dy * half), (x + dx * half, y + dy * half)])
        assert edge.exterior.buffer(1.0).contains(stretch)


@given(st.floats(40, 200), st.floats(40, 200), st.floats(0, 18), st.integers(1, 12))
def test_tabs_never_crowd_each_other(width: float, height: float, radius: float, count: int) -> None:
    edge = rounded(width, height, radius) if radius > 1 else box(0, 0, width, height)
    try:
        tabs = place_tabs(edge, (), count, 6.0, 1.5)
    except CannotMakeError:
        assert count * (6.0 + 2 * ROOM_MM) > 0.5 * edge.exterior.length
        return
    s = sorted(along(edge, tabs))
    gaps = [b - a for a, b in itertools.pairwise([*s, s[0] + edge.exterior.length])]
    assert min(gaps) >= 6.0 + ROOM_MM - 0.6


def test_tabs_on_a_round_sign_are_evenly_spread() -> None:
    disc = polygons(Point(50, 50).buffer(50, quad_segs=90))[0]
    s = np.array(along(disc, place_tabs(disc, (), 4, 6.0, 1.5)))
    gaps = np.diff([*s, s[0] + disc.exterior.length])
    assert gaps == pytest.approx(np.full(4, disc.exterior.length / 4), abs=1.0)


def test_tabs_keep_away_from_holes_near_the_edge() -> None:
    hole = Hole(name="hole", x_mm=110.0, y_mm=6.0, diameter_mm=8.0)
    tabs = place_tabs(box(0, 0, 220, 140), (hole,), 4, 6.0, 1.5)
    assert all(np.hypot(tab.x_mm - 110, tab.y_mm - 6) > 10 for tab in tabs)


def test_no_tabs_when_none_are_asked_for() -> None:
    assert place_tabs(box(0, 0, 220, 140), (), 0, 6.0, 1.5) == ()


def test_more_tabs_than_there_is_edge() -> None:
    with pytest.raises(CannotMakeError) as error:
        place_tabs(box(0, 0, 60, 40), (), 20, 6.0, 1.5)
    assert error.value.problems[0].where == "tabs"


def waved(width: float, height: float, radius: float, *, out: bool) -> Polygon:
    """A rectangle with bows (or hollows) of a radius all round, like a cloud (or a stamp)."""
    base = box(0, 0, width, height)
    count = round(base.exterior.length / ((1.6 if out else 2.6) * radius))
    places = [base.exterior.interpolate(i / count, normalized=True) for i in range(count)]
    bows = shapely.union_all([place.buffer(radius, quad_segs=64) for place in places])
    whole = base.union(bows) if out else base.difference(bows)
    return max(polygons(whole), key=lambda part: part.area).simplify(0.003)


@pytest.mark.parametrize(("radius", "out"), [(12, True), (20, True), (12, False), (20, False)])
@pytest.mark.parametrize("size", [(120, 80), (200, 120), (400, 200)])
def test_wavy_edges_have_tabs_in_the_middle_of_their_waves(size: tuple[int, int], radius: float, out: bool) -> None:
    edge = waved(*size, radius, out=out)
    tabs = place_tabs(edge, (), 4, 6.0, 1.5)
    assert len(tabs) == 4
    corners = [Point(x, y) for x, y in edge.exterior.coords[:-1]]
    ring = np.asarray(edge.exterior.coords)
    steps = np.diff(ring, axis=0, prepend=ring[-2:-1])[:-1]
    heading = np.arctan2(steps[:, 1], steps[:, 0])
    turn = np.abs((np.roll(heading, -1) - heading + np.pi) % (2 * np.pi) - np.pi)
    for tab in tabs:
        cusps = [corner for corner, sharp in zip(corners, turn > np.radians(30), strict=True) if sharp]
        assert min(corner.distance(Point(tab.x_mm, tab.y_mm)) for corner in cusps) > 3.0


def test_a_tab_as_wide_as_a_wave_finds_no_place() -> None:
    with pytest.raises(CannotMakeError, match="no straight"):
        place_tabs(waved(200, 120, 5, out=False), (), 4, 6.0, 1.5)
