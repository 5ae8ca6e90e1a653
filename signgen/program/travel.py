"""How high the cutter goes between cuts."""

from __future__ import annotations

import math

import shapely
from msgspec import Struct
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from signgen.shop.stock import CLAMP_STANDS_MM

LOW_MM = 2.0
"""Over the bare board, where neither clamps nor screws can stand: a board is never quite flat (common practice)."""

PARK_MM = 15.0
"""How much higher than the travel between cuts the program ends, so that hands and a vacuum reach the work; less where
the machine goes no higher."""

OVER_CLAMPS_MM = 1.0
"""How far over the highest clamps the head goes out, so that they may stand in its way there."""

Place = tuple[float, float]


class Travel(Struct, frozen=True, kw_only=True):
    """Heights in sign coordinates. `safe_mm` is over clamps and screws; `bare`: where none can be, since an outside
    cut runs round it (None: they may be anywhere); `most_mm` as high as the machine goes."""

    top_mm: float
    safe_mm: float
    bare: BaseGeometry | None = None
    most_mm: float = math.inf

    @property
    def low_mm(self) -> float:
        return min(self.top_mm + LOW_MM, self.safe_mm)

    @property
    def park_mm(self) -> float:
        """Over clamps, where the machine goes so high."""
        wanted = max(self.safe_mm + PARK_MM, self.top_mm + CLAMP_STANDS_MM + OVER_CLAMPS_MM)
        return max(self.safe_mm, min(wanted, self.most_mm))

    def height_mm(self, start: Place, end: Place) -> float:
        """As low as the straight way from one place to another allows."""
        if self.bare is None:
            return self.safe_mm
        shapely.prepare(self.bare)
        return self.low_mm if self.bare.covers(LineString([start, end])) else self.safe_mm
