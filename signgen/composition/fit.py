"""As large as fits, and where."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import box
from shapely.geometry.base import BaseGeometry

STEP_MM = 0.05
"""Fitted sizes are whole steps, rounded down: the sheet and the report then show the very number that was used."""

COARSE_SIZES = 60
"""Sizes tried, each a few percent above the one before, where a larger text may fit although a smaller one does not."""

Box = tuple[float, float, float, float]
Points = NDArray[np.float64]
Places = Callable[[float, Points], Points]
"""From a size of the text and places (k, 2) for its middle to those of them where it lies well at that size."""


def largest_size(
    places: Places, middles: Points, least: float, most: float, *, steady: bool = True
) -> tuple[float, tuple[float, float]] | None:
    """The greatest size, in whole steps from `least` to `most`, at which the text lies well with its middle at one of
    `middles`, and the first of those; None when it never does.

    `steady`: where a size fits, all smaller ones do, at the same places.
    """
    low, high = math.ceil(least / STEP_MM - 1e-9), math.floor(most / STEP_MM) + 1
    if low >= high:
        return None
    if steady:
        left = places(low * STEP_MM, middles)
        if not len(left):
            return None
    else:
        found = _coarse(places, middles, low, high)
        if found is None:
            return None
        low, high, left = found
    while high - low > 1:
        middle = (low + high) // 2
        still = places(middle * STEP_MM, left if steady else middles)
        if len(still):
            low, left = middle, still
        else:
            high = middle
    return round(low * STEP_MM, 2), (float(left[0, 0]), float(left[0, 1]))


def _coarse(places: Places, middles: Points, low: int, high: int) -> tuple[int, int, Points] | None:
    """Steps (fits, next larger one tried that does not, its places), by trying sizes from the largest down."""
    sizes = sorted({round(step) for step in np.geomspace(low, high - 1, COARSE_SIZES).tolist()}, reverse=True)
    above = high
    for step in sizes:
        left = places(step * STEP_MM, middles)
        if len(left):
            return step, above, left
        above = step
    return None


def first_place(left: Points, middles: Points) -> tuple[float, float]:
    """The first of the places that are left; the very first when none is, so that the drawing can say what is in the
    way."""
    x, y = left[0] if len(left) else middles[0]
    return float(x), float(y)


def lying_within(room: BaseGeometry, boxes: Sequence[Box], middles: Points) -> Points:
    """(m, 2) those of the places where all boxes, (0, 0) being the middle, lie within the room, in their order."""
    if room.is_empty:
        return middles[:0]
    for x0, y0, x1, y1 in boxes:
        x, y = middles.T
        middles = middles[shapely.covers(room, shapely.box(x + x0, y + y0, x + x1, y + y1))]
    return middles


def quads_within(room: BaseGeometry, quads: Points, middles: Points) -> Points:
    """The same for turned boxes (n, 4, 2)."""
    if room.is_empty:
        return middles[:0]
    inside = [bool(shapely.covers(room, shapely.polygons(quads + middle)).all()) for middle in middles]
    kept: Points = middles[np.array(inside, dtype=bool)]
    return kept


def room_beside(room: BaseGeometry, bounds: Box, side: str) -> float:
    """How far a box that lies within the room can move to the `left` or the `right` before it meets what is not."""
    x0, y0, x1, y1 = bounds
    low, _, high, _ = room.bounds
    blocked = shapely.get_parts(box(low, y0, high, y1).difference(room))
    ends = shapely.bounds(blocked[shapely.area(blocked) > 0]).reshape(-1, 4)
    if side == "left":
        return float(x0 - max([low, *(end for end in ends[:, 2].tolist() if end <= x0 + 1e-9)]))
    return float(min([high, *(end for end in ends[:, 0].tolist() if end >= x1 - 1e-9)]) - x1)
