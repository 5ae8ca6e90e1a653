"""Pieces of a sheet are cut out from the middle outwards, each by one outside cut."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import box

from signgen.features.tab import Tab
from signgen.operations.apart import CutApart
from signgen.operations.edge import CutOut
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.order import in_order
from tests.asking import english


def cut_out(x: float, y: float, mill: Tool, cutting: CuttingData, tabs: int = 1) -> CutOut:
    """A piece of 60 x 30 mm with tabs on its lower side."""
    return CutOut(
        edge=box(x, y, x + 60, y + 30),
        tabs=tuple(
            Tab(
                name=f"tab {n}",
                x_mm=x + 60 * (n + 1) / (tabs + 1),
                y_mm=y,
                along_x=1,
                along_y=0,
                width_mm=6,
                height_mm=1,
            )
            for n in range(tabs)
        ),
        tool=mill,
        cutting=cutting,
        thickness_mm=9,
        breakthrough_mm=0.3,
        tolerances=Tolerances(),
    )


@pytest.fixture
def grid(mill: Tool, cutting: CuttingData) -> CutApart:
    places = [(80.0 * i, 50.0 * j) for j in range(3) for i in range(5)]
    return CutApart(
        cuts=tuple(cut_out(x, y, mill, cutting) for x, y in places), pieces=tuple(f"{n + 1}" for n in range(15))
    )


def test_every_piece_is_cut_once_and_named(grid: CutApart) -> None:
    features = [cut.feature for cut in grid.toolpath().cuts]
    assert sorted(features) == sorted(f"{n + 1}: edge" for n in range(15))


def test_the_middle_is_cut_first_and_the_outer_columns_last(grid: CutApart) -> None:
    features = [cut.feature for cut in grid.toolpath().cuts]
    assert features[0] == "8: edge"
    assert set(features[-6:]) == {f"{n}: edge" for n in (1, 5, 6, 10, 11, 15)}


def test_ordering_for_short_travel_keeps_the_order(grid: CutApart) -> None:
    toolpath = grid.toolpath()
    kept = [cut.feature for path in in_order([toolpath], (500.0, 500.0)) for cut in path.cuts]
    assert kept == [cut.feature for cut in toolpath.cuts]


@given(st.lists(st.tuples(st.integers(0, 8), st.integers(0, 8)), min_size=2, max_size=12, unique=True))
def test_no_piece_is_cut_before_one_that_is_much_nearer_to_the_middle(places: list[tuple[int, int]]) -> None:
    mill = Tool(
        name="m", kind="end-mill", diameter_mm=6, shank_mm=6, cutting_length_mm=22, flutes=2, stickout_mm=28, source="t"
    )
    cutting = CuttingData(
        spindle_rpm=16000, chip_load_mm=0.06, feed_mm_per_min=2000, plunge_mm_per_min=500, ramp_mm_per_min=1000,
        stepdown_mm=3, stepover_mm=2.4, entry_deg=5,
    )  # fmt: skip
    cuts = tuple(cut_out(80.0 * i, 50.0 * j, mill, cutting) for i, j in places)
    order = CutApart(cuts=cuts, pieces=tuple(str(n) for n in range(len(cuts))))._from_the_middle()
    bounds = np.array([cut.edge.bounds for cut in cuts])
    middle = (bounds[:, :2].min(axis=0) + bounds[:, 2:].max(axis=0)) / 2
    away = np.hypot(*((bounds[:, :2] + bounds[:, 2:]) / 2 - middle).T)[order]
    assert all(away[i] >= away[:i].max(initial=0) - math.hypot(60, 30) for i in range(len(away)))


def test_says_what_it_does(mill: Tool, cutting: CuttingData) -> None:
    def does(*tabs: int) -> str:
        cuts = tuple(cut_out(80.0 * i, 0, mill, cutting, n) for i, n in enumerate(tabs))
        return english(CutApart(cuts=cuts, pieces=tuple(str(n) for n in range(len(tabs)))).description)

    assert does(2, 2) == "cuts 2 signs out, leaving 2 tabs on each"
    assert does(2, 3, 2) == "cuts 3 signs out, leaving 2 to 3 tabs on each"
    assert does(0, 0) == "cuts 2 signs out"
