"""Screws along the rim of a sheet: out of every cutter's way, near enough to each other, or none."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import Point, box

from signgen.drawing.drawing import Drawing, Plate
from signgen.fastening.rim_screws import APART_MM, rim_screws
from signgen.fastening.screws import FROM_CUT_MM, FROM_EDGE_MM
from signgen.features.edge import Edge
from signgen.shop.load import load_shop
from signgen.shop.stock import Stock, work_zero
from signgen.shop.tools import Tool

TOOLS = {tool.name: tool for tool in load_shop(None).tools}
V_BIT, MILL = TOOLS["v-bit-90"], TOOLS["end-mill-6"]
ROUNDING_MM = 0.08


def places(width: float, height: float, rims: tuple[float, float, float, float], tools: list[Tool]) -> list[Point]:
    """The screws in sign coordinates; rims: strip beyond the outside cut on the left, front, right, back."""
    left, front, right, back = (rim + tools[-1].diameter_mm for rim in rims)
    drawing = Drawing(
        plate=Plate(width_mm=width, height_mm=height, thickness_mm=9), cap_height_mm=0,
        features=(Edge(name="1: edge", piece="1", area=box(0, 0, width, height)),),
    )  # fmt: skip
    stock = Stock(
        width_mm=left + width + right, height_mm=front + height + back, thickness_mm=9, sign_x_mm=left, sign_y_mm=front
    )
    zero = work_zero(stock, on_board=True, at_top=False)
    return [Point(x + zero.x_mm, y + zero.y_mm) for x, y in rim_screws(drawing, stock, zero, tools, 0.3)]


@given(
    size=st.tuples(st.integers(60, 900), st.integers(60, 900)),
    rims=st.tuples(*[st.floats(FROM_CUT_MM + FROM_EDGE_MM, 90)] * 4),
)
def test_every_screw_clears_the_cut_and_has_wood_around_it(
    size: tuple[int, int], rims: tuple[float, float, float, float]
) -> None:
    found = places(*size, rims, [V_BIT, MILL])
    cut = box(0, 0, *size).buffer(MILL.diameter_mm, join_style="mitre")
    board = box(*(bound + sign * rim for bound, sign, rim in zip(cut.bounds, (-1, -1, 1, 1), rims, strict=True)))
    assert len(found) >= 4
    for place in found:
        assert cut.distance(place) >= FROM_CUT_MM - ROUNDING_MM
        assert board.contains(place)
        assert board.exterior.distance(place) >= FROM_EDGE_MM - ROUNDING_MM
    around = [*found, found[0]]
    assert all(a.distance(b) <= APART_MM + ROUNDING_MM for a, b in itertools.pairwise(around))
    assert len({(place.x, place.y) for place in found}) == len(found)


@pytest.mark.parametrize("side", range(4))
def test_no_screws_where_one_side_has_no_room(side: int) -> None:
    rims = [20.0] * 4
    rims[side] = FROM_CUT_MM + FROM_EDGE_MM - 0.5
    assert places(200, 100, (rims[0], rims[1], rims[2], rims[3]), [V_BIT, MILL]) == []


def test_no_screws_where_the_nut_would_meet_their_heads() -> None:
    stubby = replace(MILL, stickout_mm=11.0)
    assert places(200, 100, (20, 20, 20, 20), [V_BIT, stubby]) == []
