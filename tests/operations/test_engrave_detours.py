"""Floors that a run along the walls turns off to."""

from __future__ import annotations

import numpy as np
import pytest
from shapely.geometry import MultiPolygon, box

from signgen.geometry.paths import polyline
from signgen.operations.engrave_detours import with_detours
from signgen.operations.engrave_runs import ShapeRun

W = 2.0
ROOM = MultiPolygon([box(0, 0, 20, 10)])


def run(*places: tuple[float, float, float]) -> ShapeRun:
    return ShapeRun(path=polyline(places), either_way=False)


def floor(*places: tuple[float, float]) -> ShapeRun:
    return ShapeRun(path=polyline([(x, y, W) for x, y in places]), either_way=True)


WALL = run((-2, -2, 0), (0, 0, W), (20, 0, W), (20, 10, W), (0, 10, W), (0, 0, W))


def test_the_run_goes_to_the_floor_from_its_nearest_place_and_back_there() -> None:
    runs, left = with_detours([WALL], [floor((18, 3), (12, 3))], ROOM, 40.0)
    assert left == []
    points = runs[0].path.points_mm[:, :2].tolist()
    assert points == [[-2, -2], [0, 0], [20, 0], [18, 3], [12, 3], [20, 0], [20, 10], [0, 10], [0, 0]]
    there, back = np.hypot(2, 3), np.hypot(8, 3)
    assert runs[0].path.length_mm == pytest.approx(WALL.path.length_mm + there + 6 + back)
    assert not runs[0].either_way


@pytest.mark.parametrize(
    ("wall", "why"),
    [
        (run((0, 0, W / 2), (20, 0, W / 2)), "it is nowhere as wide as the floor"),
        (run((60, 0, W), (80, 0, W)), "it is too far"),
        (run((12, -5, W), (18, -5, W)), "the way would cut the wall"),
    ],
)
def test_a_floor_that_no_run_can_turn_off_to_is_left_alone(wall: ShapeRun, why: str) -> None:
    runs, left = with_detours([wall], [floor((18, 3), (12, 3))], ROOM, 40.0)
    assert (len(left), runs) == (1, [wall]), why


def test_a_floor_is_reached_by_way_of_another() -> None:
    far, near = floor((10, 9), (11, 9)), floor((10, 5), (11, 5))
    stub = run((-1, -1, 0), (10, 0, W))
    runs, left = with_detours([stub], [far, near], ROOM, 12.0)
    assert left == []
    assert runs[0].path.points_mm[:, :2].tolist() == [
        [-1, -1], [10, 0], [10, 5], [10, 9], [11, 9], [10, 5], [11, 5], [10, 0],
    ]  # fmt: skip


def test_every_floor_is_cut_once_by_one_run() -> None:
    floors = [floor((4 * n + 2, 4), (4 * n + 3, 4)) for n in range(4)]
    runs, left = with_detours([WALL, WALL], floors, ROOM, 60.0)
    assert left == []
    every = np.concatenate([run.path.points_mm[:, :2] for run in runs])
    for one in floors:
        assert (np.abs(every - one.path.points_mm[0, :2]).max(axis=1) == 0).sum() == 1
