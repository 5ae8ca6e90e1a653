"""As large as fits, and where."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from signgen.errors import CannotMakeError

LEAST_CAP_HEIGHT_MM = 3.0
"""Below this a V-groove closes up and nobody reads it (common practice)."""

STEP_MM = 0.05
"""Fitted heights are whole steps, rounded down: the sheet and the sign file then show the very number that was
used."""

Box = tuple[float, float, float, float]
Boxes = Callable[[float], Sequence[Box]]
"""From a cap height to the bounds of each line's ink, (0, 0) being the middle of the text."""


def fitted_cap_height(
    boxes: Boxes, room: BaseGeometry, middles: NDArray[np.float64]
) -> tuple[float, tuple[float, float]]:
    """The greatest cap height, in whole steps, at which every line lies within `room` with the text's middle at one of
    `middles` (k, 2), and the first of those places where it does.

    Raises: CannotMakeError when not even the least height fits.
    """
    shapely.prepare(room)
    low = math.ceil(LEAST_CAP_HEIGHT_MM / STEP_MM)
    high = math.ceil((room.bounds[3] - room.bounds[1]) / STEP_MM) + 1 if not room.is_empty else 0
    left = _fitting(boxes(low * STEP_MM), room, middles)
    if not len(left):
        raise CannotMakeError.at(
            "text",
            f"The text does not fit between margins and holes, not even with capitals of {LEAST_CAP_HEIGHT_MM:g} mm.",
            "Use a larger sign, less text, a narrower face, a smaller margin, or holes nearer to the edge.",
        )
    while high - low > 1:
        middle = (low + high) // 2
        # Where small text has no room, larger text has none either: its boxes hold the smaller ones.
        still = _fitting(boxes(middle * STEP_MM), room, left)
        if len(still):
            low, left = middle, still
        else:
            high = middle
    return round(low * STEP_MM, 2), (float(left[0, 0]), float(left[0, 1]))


def first_fitting(boxes: Sequence[Box], room: BaseGeometry, middles: NDArray[np.float64]) -> tuple[float, float]:
    """The first of the places where lines of these bounds lie within `room`; the very first when there is none, so
    that the drawing can say what is in the way."""
    shapely.prepare(room)
    found = _fitting(boxes, room, middles)
    x, y = found[0] if len(found) else middles[0]
    return float(x), float(y)


def _fitting(boxes: Sequence[Box], room: BaseGeometry, middles: NDArray[np.float64]) -> NDArray[np.float64]:
    """(m, 2) those of the places where all boxes lie within the room, in their order."""
    if room.is_empty:
        return middles[:0]
    for x0, y0, x1, y1 in boxes:
        x, y = middles.T
        middles = middles[shapely.covers(room, shapely.box(x + x0, y + y0, x + x1, y + y1))]
    return middles
