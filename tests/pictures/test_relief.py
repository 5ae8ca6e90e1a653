"""The picture shows the simulated board and nothing else."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Polygon, box

from signgen.geometry.raster import Grid
from signgen.job.facts import JobFacts
from signgen.pictures.grain import mottle, wood
from signgen.pictures.relief import edge_mask, relief
from signgen.replay.heights import HeightMap

SQUARE = box(0, 0, 40, 40)


def plain(facts: JobFacts) -> object:
    """A material without grain, one colour cut or not: only the light is left to see."""
    return replace(facts.spec.material, grain=False, colour_rgb=(180, 180, 180), ground_rgb=(180, 180, 180))


def heights_of(z: np.ndarray, at: float, cell: float) -> HeightMap:
    """The cells' first centre lies at (at, at)."""
    ny, nx = z.shape
    return HeightMap(z_mm=z.astype(np.float32), grid=Grid(nx=nx, ny=ny, x0_mm=at, y0_mm=at, cell_mm=cell))


def board(z: np.ndarray, cell: float = 0.25) -> HeightMap:
    return heights_of(z, 0.1, cell)


def grid(cell: float = 0.25) -> tuple[np.ndarray, np.ndarray]:
    c = np.arange(0.1, 40.0, cell)
    return np.meshgrid(c, c)


def test_walls_turned_to_the_upper_left_are_bright_and_the_others_dark(facts: JobFacts) -> None:
    x, _ = grid()
    # a groove along Y at x = 20: its right wall looks left, to the light
    z = 10 - np.maximum(0, 4 - np.abs(x - 20))
    shot = relief(board(z), SQUARE, (40, 40), 10, plain(facts), 10)  # type: ignore[arg-type]
    row = shot.rgb[200, :, 0].astype(float)
    left_wall, right_wall, face = row[165:195].mean(), row[205:235].mean(), row[20:120].mean()
    assert left_wall < 0.7 * face
    assert right_wall > 1.02 * face


def test_the_top_of_the_picture_is_the_greatest_y(facts: JobFacts) -> None:
    _, y = grid()
    z = np.where(y > 30, -0.3, 10.0)
    shot = relief(board(z), SQUARE, (40, 40), 10, facts.spec.material, 5)
    assert shot.solid[10, 100] == 0
    assert shot.solid[150, 100] == 255


def test_what_is_cut_through_is_open_and_what_is_not_stays_even_where_a_hole_was_drawn(facts: JobFacts) -> None:
    x, y = grid()
    z = np.where(np.hypot(x - 10, y - 10) < 3, -0.3, 10.0)
    shot = relief(board(z), SQUARE, (40, 40), 10, facts.spec.material, 10)
    assert shot.solid[300, 100] == 0
    # drawn or not: at (30, 10) nothing was cut
    assert shot.solid[300, 300] == 255
    open_mm2 = (255 - shot.solid.astype(float)).sum() / 255 / 100
    assert open_mm2 == pytest.approx(np.pi * 9, rel=0.03)


@pytest.mark.parametrize("cell", [0.1, 0.4, 1.0])
def test_fine_and_coarse_maps_give_the_same_picture_size_and_place(facts: JobFacts, cell: float) -> None:
    x, y = grid(cell)
    z = np.where(np.hypot(x - 28, y - 12) < 6, 7.0, 10.0)
    shot = relief(board(z, cell), SQUARE, (40, 40), 10, plain(facts), 10)  # type: ignore[arg-type]
    assert shot.rgb.shape == (400, 400, 3)
    dark = shot.rgb[..., 0] < np.median(shot.rgb[..., 0]) - 5
    rows, columns = np.nonzero(dark)
    assert columns.mean() / 10 == pytest.approx(28, abs=0.5 * cell + 0.3)
    assert 40 - rows.mean() / 10 == pytest.approx(12, abs=0.5 * cell + 0.3)


def test_tabs_and_the_cut_outside_leave_no_mark_on_the_rim(facts: JobFacts) -> None:
    x, y = grid()
    inside = (x > 5) & (x < 35) & (y > 5) & (y < 35)
    z = np.where(inside, 10.0, np.where(np.abs(x - 20) < 3, 1.5, -0.3))
    shifted = heights_of(z, -4.9, 0.25)
    shot = relief(shifted, box(0, 0, 30, 30), (30, 30), 10, plain(facts), 10)  # type: ignore[arg-type]
    face = shot.rgb[..., 0][shot.solid == 255].astype(int)
    assert np.ptp(face) <= 8


def test_the_mask_has_the_outlines_area() -> None:
    outline = Polygon([(5, 5), (35, 8), (30, 33), (9, 30)])
    mask = edge_mask(outline, (40, 40), (400, 400)).astype(float) / 255
    assert mask.sum() / 100 == pytest.approx(outline.area, rel=0.002)


def test_what_stands_in_the_hole_of_a_frame_is_in_the_mask() -> None:
    letter, frame = box(15, 15, 25, 25), box(2, 2, 38, 38).difference(box(5, 5, 35, 35))
    for parts in ([letter, frame], [frame, letter]):
        mask = edge_mask(MultiPolygon(parts), (40, 40), (400, 400)).astype(float) / 255
        assert mask.sum() / 100 == pytest.approx(letter.area + frame.area, rel=0.005)


@pytest.mark.parametrize("texture", [wood, mottle])
def test_grain_is_the_same_every_time_and_close_to_one(texture: object) -> None:
    x = (np.arange(300, dtype=np.float32) + 0.5) * np.float32(0.2)
    y = x[:200][::-1].copy()
    first, second = texture(x, y), texture(x, y)  # type: ignore[operator]
    assert np.array_equal(first, second)
    assert first.shape == (200, 300)
    assert 0.9 < first.mean() < 1.05
    assert first.std() > 0.002
