"""Places for hold-down screws in the waste around the sign, out of every cutter's way."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from signgen.drawing.drawing import Drawing
from signgen.fastening.keep_out import Cutters, swept_outside
from signgen.numbers import rounded
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.stock import GAP_MM, HEAD_STANDS_MM, SCREW_EDGE_MM, SCREW_HEAD_MM, Stock, WorkZero

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

ROUNDING_MM = 0.08
"""Places are stated in tenths, and swept areas are drawn a little too large."""
NEAR_MM = 22.0
"""Farther than this from the cut a screw holds the sign less well, so larger boards get theirs nearer."""
LONG_SIDE_MM = 260.0
"""A side longer than this gets a screw at its middle too: a board lifts between screws that are far apart (common
practice)."""

FROM_CUT_MM = SCREW_HEAD_MM / 2 + GAP_MM
FROM_EDGE_MM = SCREW_HEAD_MM / 2 + SCREW_EDGE_MM
"""Least distances of a screw's middle."""

Place = tuple[float, float]


def screw_keep_out(drawing: Drawing, zero: WorkZero, cutters: Cutters, collet_series: int) -> BaseGeometry:
    """Everything that a cutter or the collet's nut passes lower than a screw's head may stand; sign coordinates."""
    cut = swept_outside(drawing, zero, cutters, HEAD_STANDS_MM)
    nut = swept_outside(drawing, zero, cutters, HEAD_STANDS_MM, nut_mm=NUT_DIAMETER_MM[collet_series])
    both: BaseGeometry = cut.union(nut)
    return both


def suggest_screws(
    drawing: Drawing,
    stock: Stock,
    zero: WorkZero,
    cutters: Cutters,
    collet_series: int,
    touched: Sequence[BaseGeometry] = (),
) -> tuple[Place, ...]:
    """Middles of the screws in program coordinates, counter-clockwise from the lower left; () where there is no room
    on two opposite sides of the sign, for a board that is held on one side only turns.

    A head of SCREW_HEAD_MM at each place clears every cutter's path by GAP_MM and has SCREW_EDGE_MM of wood beyond
    it. No head comes into what is `touched` where Z is set.
    """
    keep_out = screw_keep_out(drawing, zero, cutters, collet_series)
    wanted = _around([_on_tenths(place, zero) for place in _wanted(drawing, stock, keep_out)])
    places = [place for place in wanted if _is_free(place, stock, keep_out) and _apart(place, touched)]
    if not _holds_two_sides(places, keep_out.bounds):
        return ()
    return tuple((rounded(x - zero.x_mm, 1), rounded(y - zero.y_mm, 1)) for x, y in places)


def _wanted(drawing: Drawing, stock: Stock, keep_out: BaseGeometry) -> list[Place]:
    """Corners of the waste; where a side has no waste, the ends of the sides that have; the middles of long sides."""
    xs = _lanes(stock.bounds_mm[0], stock.bounds_mm[2], keep_out.bounds[0], keep_out.bounds[2])
    ys = _lanes(stock.bounds_mm[1], stock.bounds_mm[3], keep_out.bounds[1], keep_out.bounds[3])
    inner_x = _ends(drawing.width_mm)
    inner_y = _ends(drawing.height_mm)
    places = [(x, y) for x in xs for y in ys]
    if len(xs) < 2:
        places += [(x, y) for x in inner_x for y in ys]
    if len(ys) < 2:
        places += [(x, y) for x in xs for y in inner_y]
    if drawing.width_mm > LONG_SIDE_MM:
        places += [(drawing.width_mm / 2, y) for y in ys]
    if drawing.height_mm > LONG_SIDE_MM:
        places += [(x, drawing.height_mm / 2) for x in xs]
    return places


def _on_tenths(place: Place, zero: WorkZero) -> Place:
    """The place as the sheet will state it, for that is the one to judge."""
    return rounded(place[0] - zero.x_mm, 1) + zero.x_mm, rounded(place[1] - zero.y_mm, 1) + zero.y_mm


def _lanes(low: float, high: float, kept_low: float, kept_high: float) -> list[float]:
    """Coordinates in the middle of the waste before and behind the keep-out, where it is wide enough."""
    before, behind = kept_low - low, high - kept_high
    lanes = []
    if before >= FROM_CUT_MM + FROM_EDGE_MM - ROUNDING_MM:
        lanes.append(kept_low - min((FROM_CUT_MM + before - FROM_EDGE_MM) / 2, NEAR_MM))
    if behind >= FROM_CUT_MM + FROM_EDGE_MM - ROUNDING_MM:
        lanes.append(kept_high + min((FROM_CUT_MM + behind - FROM_EDGE_MM) / 2, NEAR_MM))
    return lanes


def _ends(length: float) -> tuple[float, float]:
    """A little inside the ends of a side."""
    return 0.08 * length, 0.92 * length


def _is_free(place: Place, stock: Stock, keep_out: BaseGeometry) -> bool:
    from shapely.geometry import Point

    low_x, low_y, high_x, high_y = stock.bounds_mm
    x, y = place
    on_board = min(x - low_x, high_x - x, y - low_y, high_y - y) >= FROM_EDGE_MM - ROUNDING_MM
    return on_board and keep_out.distance(Point(x, y)) >= FROM_CUT_MM - ROUNDING_MM


def _apart(place: Place, touched: Sequence[BaseGeometry]) -> bool:
    from shapely.geometry import Point

    return all(area.distance(Point(place)) >= SCREW_HEAD_MM / 2 for area in touched)


def _holds_two_sides(places: list[Place], kept: tuple[float, float, float, float]) -> bool:
    left, right = (any(x < kept[0] for x, _ in places), any(x > kept[2] for x, _ in places))
    below, above = (any(y < kept[1] for _, y in places), any(y > kept[3] for _, y in places))
    return (left and right) or (below and above)


def _around(places: list[Place]) -> list[Place]:
    """Counter-clockwise about their middle, from the lower left."""
    if not places:
        return []
    middle_x = sum(x for x, _ in places) / len(places)
    middle_y = sum(y for _, y in places) / len(places)
    lower_left = math.atan2(min(y for _, y in places) - middle_y, min(x for x, _ in places) - middle_x)

    def turned(place: Place) -> float:
        return round((math.atan2(place[1] - middle_y, place[0] - middle_x) - lower_left) % (2 * math.pi), 6)

    return sorted(places, key=turned)
