"""Rectangles on sheets: laws for every layout, examples whose best is known, and a reference library."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry.rectangles import PlacedBox, Size, fits, nest

SHEET = (600.0, 400.0)
SIDE = st.integers(50, 4000).map(lambda tenths: tenths / 10)
SIZES = st.lists(st.tuples(SIDE, SIDE), min_size=1, max_size=14)
SAME_MM = 1e-6


def least_sheets(sizes_mm: Sequence[Size], sheet_mm: Size, gap_mm: float) -> int:
    """A bound that no layout can beat: all areas, each with its gap, over a sheet's."""
    area = sum((width + gap_mm) * (height + gap_mm) for width, height in sizes_mm)
    return math.ceil(area / ((sheet_mm[0] + gap_mm) * (sheet_mm[1] + gap_mm)) - 1e-9)


def corners(size: Size, place: PlacedBox) -> tuple[float, float, float, float]:
    width, height = size[::-1] if place.turned else size
    return place.x_mm, place.y_mm, place.x_mm + width, place.y_mm + height


def sheets(places: tuple[PlacedBox, ...]) -> int:
    return max(place.sheet for place in places) + 1


def must_be_a_layout(
    sizes: list[Size], sheet: Size, gap: float, turn: list[bool], places: tuple[PlacedBox, ...]
) -> None:
    assert len(places) == len(sizes)
    boxes = [(place.sheet, *corners(size, place)) for size, place in zip(sizes, places, strict=True)]
    for _, x0, y0, x1, y1 in boxes:
        assert x0 >= -SAME_MM
        assert y0 >= -SAME_MM
        assert x1 <= sheet[0] + SAME_MM
        assert y1 <= sheet[1] + SAME_MM
    for a, b in itertools.combinations(boxes, 2):
        if a[0] == b[0]:
            apart = max(b[1] - a[3], a[1] - b[3], b[2] - a[4], a[2] - b[4])
            assert apart >= gap - SAME_MM, (a, b)
    assert all(may or not place.turned for may, place in zip(turn, places, strict=True))
    assert {place.sheet for place in places} == set(range(sheets(places)))


@settings(max_examples=40)
@given(sizes=SIZES, gap=st.sampled_from([0.0, 0.1, 7.5, 15.0]), data=st.data())
def test_nothing_overlaps_gaps_are_kept_and_only_what_may_turn_turns(
    sizes: list[Size], gap: float, data: st.DataObject
) -> None:
    turn = data.draw(st.lists(st.booleans(), min_size=len(sizes), max_size=len(sizes)))
    kept = [(size, may) for size, may in zip(sizes, turn, strict=True) if fits(size, SHEET, may)]
    sizes, turn = [size for size, _ in kept], [may for _, may in kept]
    places = nest(sizes, SHEET, gap, turn)
    if sizes:
        must_be_a_layout(sizes, SHEET, gap, turn, places)
        assert sheets(places) >= least_sheets(sizes, SHEET, gap)
    assert nest(sizes, SHEET, gap, turn) == places


@pytest.mark.parametrize(
    ("size", "count", "sheet", "gap", "turn", "expected"),
    [
        ((100, 100), 24, (600, 400), 0, False, 1),
        ((95.1, 95.2), 24, (596, 396), 5, False, 1),  # rows that fill the sheet but for hundredths
        ((100.1, 100), 24, (600, 400), 0, False, 2),
        ((400, 100), 6, (600, 400), 0, True, 1),  # upright ones side by side
        ((400, 100), 6, (600, 400), 0, False, 2),
        ((200, 100), 5, (300, 300), 0, True, 2),
        ((200, 100), 4, (300, 300), 0, True, 1),  # round an empty middle
        ((60, 30), 7, (200, 100), 0, True, 1),
    ],
)
def test_layouts_whose_best_is_known(
    size: Size, count: int, sheet: Size, gap: float, turn: bool, expected: int
) -> None:
    sizes, may = [size] * count, [turn] * count
    places = nest(sizes, sheet, gap, may)
    must_be_a_layout(sizes, sheet, gap, may, places)
    assert sheets(places) == expected


def test_sheets_cut_into_rectangles_go_back_together() -> None:
    """A sheet cut up at random can be filled to the last corner; a good order must find no third sheet for two."""
    dice = random.Random(3)

    def cut(width: int, height: int, times: int) -> list[Size]:
        if times == 0 or min(width, height) < 80:
            return [(float(width), float(height))]
        at = dice.randint(40, max(width, height) - 40)
        if width > height:
            return cut(at, height, times - 1) + cut(width - at, height, times - 1)
        return cut(width, at, times - 1) + cut(width, height - at, times - 1)

    sizes = cut(600, 400, 3) + cut(600, 400, 3)
    assert math.isclose(sum(width * height for width, height in sizes), 2 * 600 * 400)
    assert sheets(nest(sizes, SHEET, 0, [True] * len(sizes))) <= 3


def test_a_rectangle_larger_than_the_sheet_is_refused() -> None:
    assert fits((400, 600), SHEET, True)
    assert not fits((400, 600), SHEET, False)
    with pytest.raises(ValueError, match="larger"):
        nest([(400, 600)], SHEET, 0, [False])


def test_nothing_takes_no_sheet() -> None:
    assert nest([], SHEET, 10, []) == ()
    assert least_sheets([], SHEET, 10) == 0


@pytest.mark.parametrize("turn", [True, False])
@pytest.mark.parametrize("seed", range(3))
def test_no_more_sheets_than_a_reference_library(seed: int, turn: bool) -> None:
    """Against rectpack (PyPI, 0.2.2) with its best bin choice and four of its algorithms and orders."""
    rectpack = pytest.importorskip("rectpack", reason="rectpack is a development dependency")
    dice = random.Random(seed)
    sizes = [(dice.randint(40, 300), dice.randint(40, 300)) for _ in range(50)]
    gap, sheet = 15, (1190, 580)
    theirs = []
    for algorithm in (rectpack.MaxRectsBssf, rectpack.MaxRectsBaf):
        for order in (rectpack.SORT_AREA, rectpack.SORT_LSIDE):
            packer = rectpack.newPacker(pack_algo=algorithm, sort_algo=order, rotation=turn)
            for width, height in sizes:
                packer.add_rect(width + gap, height + gap)
            packer.add_bin(sheet[0] + gap, sheet[1] + gap, count=float("inf"))
            packer.pack()
            assert len(packer.rect_list()) == len(sizes)
            theirs.append(len(packer))
    wanted = [(float(width), float(height)) for width, height in sizes]
    places = nest(wanted, (1190.0, 580.0), 15.0, [turn] * 50)
    must_be_a_layout(wanted, (1190.0, 580.0), 15.0, [turn] * 50, places)
    assert sheets(places) <= min(theirs)
