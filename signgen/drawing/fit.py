"""As large as fits."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.errors import CannotMakeError

LEAST_CAP_HEIGHT_MM = 3.0
"""Below this a V-groove closes up and nobody reads it (common practice)."""

STEP_MM = 0.05
"""Fitted heights are whole steps, rounded down: the sheet and the sign file then show the very number that was
used."""


def fitted_cap_height(boxes: Callable[[float], Sequence[Polygon]], room: BaseGeometry) -> float:
    """The greatest cap height, in whole steps, at which every box (one a line, as set at that height) lies within
    `room`.

    Raises: CannotMakeError when not even the least height fits.
    """
    shapely.prepare(room)
    low, high = (
        math.ceil(LEAST_CAP_HEIGHT_MM / STEP_MM),
        math.ceil((room.bounds[3] - room.bounds[1]) / STEP_MM) + 1 if not room.is_empty else 0,
    )

    def fits(steps: int) -> bool:
        return all(room.covers(area) for area in boxes(steps * STEP_MM))

    if room.is_empty or not fits(low):
        raise CannotMakeError.at(
            "text",
            f"The text does not fit between margins and holes, not even with capitals of {LEAST_CAP_HEIGHT_MM:g} mm.",
            "Use a larger sign, less text, a narrower face, a smaller margin, or holes nearer to the edge.",
        )
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return round(low * STEP_MM, 2)
