"""What is left of a sheet adds up, and the offcut is untouched."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import MultiPolygon, box

from signgen.drawing.drawing import Drawing, Plate
from signgen.fastening.offcut import leftover
from signgen.features.edge import Edge
from signgen.shop.stock import Stock

CUTTER = 6.0


def sheet(width: float, height: float, x: float, y: float, on: tuple[float, float]) -> tuple[Drawing, Stock]:
    """Two signs in the opposite corners of a field of a size, at a place on a board."""
    edge = MultiPolygon([box(0, 0, width / 3, height / 3), box(width / 2, height / 2, width, height)])
    drawing = Drawing(
        plate=Plate(width_mm=width, height_mm=height, thickness_mm=9), cap_height_mm=0,
        features=tuple(Edge(name=f"{n}: edge", piece=f"{n}", area=part) for n, part in enumerate(edge.geoms, 1)),
    )  # fmt: skip
    return drawing, Stock(width_mm=on[0], height_mm=on[1], thickness_mm=9, sign_x_mm=x, sign_y_mm=y)


@given(
    size=st.tuples(st.integers(30, 300), st.integers(30, 300)),
    place=st.tuples(st.integers(10, 50), st.integers(10, 50)),
    rest=st.tuples(st.integers(0, 400), st.integers(0, 400)),
)
def test_the_offcut_is_the_larger_strip_that_no_cut_touches(
    size: tuple[int, int], place: tuple[int, int], rest: tuple[int, int]
) -> None:
    board = (size[0] + place[0] + rest[0], size[1] + place[1] + rest[1])
    drawing, stock = sheet(*size, *place, board)
    left = leftover(drawing, stock, CUTTER)
    width, height = left.offcut_mm
    beside = max(0, rest[0] - CUTTER) * board[1]
    behind = max(0, rest[1] - CUTTER) * board[0]
    assert width * height == max(beside, behind)
    strip = box(board[0] - width, 0, *board) if left.beside else box(0, board[1] - height, *board)
    swept = drawing.edge.buffer(CUTTER)
    moved = box(*(value + place[i % 2] for i, value in enumerate(swept.bounds)))
    assert strip.area == 0 or not moved.buffer(-1e-9).intersects(strip)
    total = left.used_ratio + left.offcut_ratio(stock) + left.waste_ratio(stock)
    assert abs(total - 1) < 1e-12
    assert left.used_ratio * board[0] * board[1] == drawing.edge.area or abs(
        left.used_ratio * board[0] * board[1] - drawing.edge.area
    ) < 1e-6  # fmt: skip
