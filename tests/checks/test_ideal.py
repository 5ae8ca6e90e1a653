"""The board as drawn, held to published depths and to a bit moved by brute force."""

from __future__ import annotations

import numpy as np
import pytest
from shapely.geometry import Point, Polygon, box

from signgen.checks.ideal import BODY, KERF, UNTOLD, WASTE, ideal_board
from signgen.checks.tabs_hold import tab_cells
from signgen.features.groove import Groove
from signgen.features.tab import Tab
from signgen.geometry.raster import Grid
from tests.checks.plate import DRAWING

GRID = Grid(nx=420, ny=320, x0_mm=-11.93, y0_mm=-11.92, cell_mm=0.2)


def groove(area: Polygon, angle_deg: float = 90, tip_mm: float = 0, max_depth_mm: float = 20) -> Groove:
    return Groove(name="g", source="frame", area=area, angle_deg=angle_deg, tip_mm=tip_mm, max_depth_mm=max_depth_mm)


def depth_at(drawn: Groove, x: float, y: float) -> tuple[float, float]:
    shallowest, deepest = drawn.depths(np.array([[x, y]], float))
    return float(shallowest[0]), float(deepest[0])


@pytest.mark.parametrize(
    ("angle_deg", "factor"),
    # Depth over width. Source: Engineers Edge spot-drill table.
    [(60, 0.866), (82, 0.5752), (90, 0.5), (118, 0.3004), (135, 0.2071), (142, 0.1722)],
)
def test_a_long_groove_is_as_deep_as_published(angle_deg: float, factor: float) -> None:
    drawn = groove(box(0, 0, 40, 3), angle_deg)
    assert depth_at(drawn, 20, 1.5) == pytest.approx((3 * factor, 3 * factor), abs=2e-4)


def test_the_elbow_of_an_l_is_deeper_than_its_legs() -> None:
    # Plane geometry: (2 - sqrt 2) w at the elbow of legs w wide, w / 2 along them.
    drawn = groove(Polygon([(0, 0), (40, 0), (40, 10), (10, 10), (10, 40), (0, 40)]))
    assert depth_at(drawn, 5.857864, 5.857864)[1] == pytest.approx(5.857864, abs=1e-5)
    assert depth_at(drawn, 30, 5)[1] == pytest.approx(5.0)


def test_the_floor_is_flat_at_the_greatest_depth() -> None:
    drawn = groove(box(0, 0, 20, 20), 90, 0, 3)
    assert depth_at(drawn, 2.999, 10)[1] == pytest.approx(2.999)
    assert depth_at(drawn, 3.5, 10) == (3.0, 3.0)
    assert depth_at(drawn, 10, 10) == (3.0, 3.0)


@pytest.mark.parametrize("angle_deg", [60, 90, 120])
def test_a_flat_tip_carves_between_the_two_surfaces(angle_deg: float) -> None:
    drawn = groove(Polygon([(0, 0), (8, 0), (3, 5)]), angle_deg, 0.6, 1.8)
    slope, half_tip = np.tan(np.radians(angle_deg) / 2), 0.3
    grid = np.stack(np.meshgrid(np.arange(0, 8, 0.04), np.arange(0, 5, 0.04)), -1).reshape(-1, 2)
    away = np.array([drawn.area.exterior.distance(Point(*place)) for place in grid])
    inside = np.array([drawn.area.contains(Point(*place)) for place in grid])
    centres, room = grid[inside & (away >= half_tip)], away[inside & (away >= half_tip)]
    tip = np.minimum((room - half_tip) / slope, 1.8)
    for x, y in ((2, 1), (3, 2.5), (1, 0.5), (5, 0.4), (3, 0.2), (4, 1.3)):
        carved = (tip - np.maximum(np.hypot(*(centres - [x, y]).T) - half_tip, 0) / slope).max()
        shallowest, deepest = depth_at(drawn, x, y)
        assert shallowest - 0.05 <= carved <= deepest + 1e-9


def test_zones_of_the_plate() -> None:
    ideal = ideal_board(DRAWING, GRID, 7.5)

    def zone(x: float, y: float) -> int:
        i, j = round((x - GRID.x0_mm) / 0.2), round((y - GRID.y0_mm) / 0.2)
        return int(ideal.zone[j * GRID.nx + i])

    assert zone(5, 5) == BODY
    groove, hole = 0, 1
    assert [each.feature.kind for each in ideal.drawn] == ["groove", "hole"]
    assert zone(12, 17) == groove
    assert zone(45, 20) == hole
    assert zone(-3, 20) == KERF
    assert zone(-9, 20) == WASTE
    counts = {value: count * 0.04 for value, count in zip(*np.unique(ideal.zone, return_counts=True), strict=True)}
    assert counts[groove] == pytest.approx(25, abs=0.6)
    assert counts[hole] == pytest.approx(np.pi * 16, abs=1.5)
    assert counts[BODY] == pytest.approx(2400 - 25 - np.pi * 16, abs=20)
    assert counts[UNTOLD] < 25


def test_where_nothing_is_cut_round_the_edge_all_beyond_it_is_waste() -> None:
    ideal = ideal_board(DRAWING, GRID, 0.0)
    assert not (ideal.zone == KERF).any()


def test_a_tab_is_looked_for_outside_the_edge_only() -> None:
    ideal = ideal_board(DRAWING, GRID, 7.5)
    places = GRID.centres_mm(tab_cells(ideal, DRAWING.of(Tab)[0]))
    assert places[:, 1].max() < 0
    assert np.abs(places[:, 0] - 30).max() <= 2.5
    assert len(places) * 0.04 == pytest.approx(4.8 * 7.45, abs=1.5)
