"""Places for hold-down screws along the rim of a sheet of signs, in the strip that no cutter touches."""

from __future__ import annotations

import math
from collections.abc import Sequence

from signgen.drawing.drawing import Drawing
from signgen.fastening.screws import FROM_CUT_MM, FROM_EDGE_MM
from signgen.numbers import rounded
from signgen.shop.stock import HEAD_STANDS_MM, Stock, WorkZero
from signgen.shop.tools import Tool

Place = tuple[float, float]

APART_MM = 250.0
"""Farthest from one screw to the next: a board lifts between screws that are far apart (common practice)."""

NEAR_MM = 22.0
"""Farther than this from the cut a screw holds less well, so wide rims get theirs nearer."""


def rim_screws(
    drawing: Drawing, stock: Stock, zero: WorkZero, tools: Sequence[Tool], breakthrough_mm: float
) -> tuple[Place, ...]:
    """Middles of the screws in program coordinates, counter-clockwise from the lower left; the last of the tools is
    that of the outside cut. () where the strip between the outermost cut and the sheet's rim is too narrow for their
    heads on any side, or where a nut comes so low that it would meet one."""
    reach = tools[-1].diameter_mm
    deepest = stock.thickness_mm + breakthrough_mm
    if any(tool.stickout_mm - deepest < HEAD_STANDS_MM for tool in tools):
        return ()
    low_x, low_y, high_x, high_y = stock.bounds_mm
    lanes = [
        _lane(-reach, low_x), _lane(-reach, low_y),
        _lane(drawing.width_mm + reach, high_x), _lane(drawing.height_mm + reach, high_y),
    ]  # fmt: skip
    left, front, right, back = lanes
    if left is None or front is None or right is None or back is None:
        return ()
    across, along = _steps(left, right), _steps(front, back)
    around = [(x, front) for x in across[:-1]] + [(right, y) for y in along[:-1]]
    around += [(x, back) for x in across[:0:-1]] + [(left, y) for y in along[:0:-1]]
    return tuple((rounded(x - zero.x_mm, 1), rounded(y - zero.y_mm, 1)) for x, y in around)


def _lane(cut: float, rim: float) -> float | None:
    """Coordinate of screws between the outermost cut and the rim, None where there is no room."""
    strip = abs(rim - cut)
    if strip < FROM_CUT_MM + FROM_EDGE_MM:
        return None
    away = min((FROM_CUT_MM + strip - FROM_EDGE_MM) / 2, NEAR_MM)
    return cut - away if rim < cut else cut + away


def _steps(first: float, last: float) -> list[float]:
    """Evenly from one end to the other, no farther apart than APART_MM."""
    count = max(1, math.ceil((last - first) / APART_MM))
    return [first + (last - first) * i / count for i in range(count + 1)]
