"""Cells inside an area, held to GEOS cell by cell and to areas on paper."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import MultiPolygon, Point, Polygon, box

from signgen.geometry.raster import Grid, cells_inside


def grid(nx: int = 60, ny: int = 40, cell: float = 0.5) -> Grid:
    return Grid(nx=nx, ny=ny, x0_mm=-3.137, y0_mm=-2.071, cell_mm=cell)


@given(seed=st.integers(0, 2**32 - 1))
def test_agrees_with_geos_cell_by_cell(seed: int) -> None:
    random = np.random.default_rng(seed)
    discs = [Point(*random.uniform(-8, 30, 2)).buffer(random.uniform(0.1, 12)) for _ in range(5)]
    area = shapely.union_all(discs[:4]).difference(discs[4])
    mesh = grid()
    every = mesh.centres_mm(np.arange(mesh.nx * mesh.ny))
    expected = np.flatnonzero(shapely.contains_xy(area, every[:, 0], every[:, 1]))
    assert cells_inside(area, mesh).tolist() == expected.tolist()


def test_an_area_with_a_hole_counts_its_own_cells_only() -> None:
    area = box(0, 0, 20, 10).difference(box(5, 2, 15, 8))
    mesh = Grid(nx=300, ny=200, x0_mm=-0.95, y0_mm=-0.95, cell_mm=0.1)
    assert len(cells_inside(area, mesh)) * 0.01 == pytest.approx(area.area, abs=1e-9)


def test_corners_on_a_row_of_centres_do_not_spill() -> None:
    mesh = Grid(nx=11, ny=11, x0_mm=0.0, y0_mm=0.0, cell_mm=1.0)
    diamond = Polygon([(5, 1), (9, 5), (5, 9), (1, 5)])
    rows = np.bincount(cells_inside(diamond, mesh) // mesh.nx, minlength=mesh.ny)
    assert rows[0] == 0
    assert rows[10] == 0
    assert max(rows) <= 9


def test_an_empty_area_has_no_cells() -> None:
    assert len(cells_inside(MultiPolygon(), grid())) == 0


def test_an_area_beyond_the_grid_is_clipped() -> None:
    mesh = grid()
    assert len(cells_inside(box(-1e3, -1e3, 1e3, 1e3), mesh)) == mesh.nx * mesh.ny
    assert len(cells_inside(box(500, 0, 600, 20), mesh)) == 0
