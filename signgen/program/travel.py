"""How high the cutter goes between cuts."""

from __future__ import annotations

import math

import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from signgen.program.blocks import WRITTEN_MM
from signgen.shop.stock import CLAMP_STANDS_MM

LOW_MM = 2.0
"""Over the bare board, where neither clamps nor screws can stand: a board is never quite flat (common practice)."""

PARK_MM = 15.0
"""How much higher than the travel between cuts the program ends, so that hands and a vacuum reach the work; less where
the machine goes no higher."""

OVER_CLAMPS_MM = 1.0
"""How far over the highest clamps the head goes out, so that they may stand in its way there."""

HAIR_STEPS = 1e-6
"""Of a step: less is the rounding of a computer."""

Place = tuple[float, float]


class Travel(Struct, frozen=True, kw_only=True):
    """Heights in sign coordinates. `safe_mm` is over clamps and screws; `bare`: where none can be, since an outside
    cut runs round it (None: they may be anywhere); `most_mm` as high as the machine goes. Programs are written in
    steps of `step_mm` from `zero_mm`: what must be over something is the next step higher."""

    top_mm: float
    safe_mm: float
    bare: BaseGeometry | None = None
    most_mm: float = math.inf
    step_mm: float = WRITTEN_MM
    zero_mm: float = 0.0

    def written(self, step_mm: float, zero_mm: float) -> Travel:
        """The same in other steps, with a safe height that is no lower in the text."""
        own = replace(self, step_mm=step_mm, zero_mm=zero_mm)
        return replace(own, safe_mm=own._at_least(self.safe_mm))

    def _at_least(self, height_mm: float) -> float:
        return math.ceil((height_mm - self.zero_mm) / self.step_mm - HAIR_STEPS) * self.step_mm + self.zero_mm

    @property
    def low_mm(self) -> float:
        return min(self.top_mm + LOW_MM, self.safe_mm)

    @property
    def park_mm(self) -> float:
        """Over clamps, where the machine goes so high."""
        wanted = max(self.safe_mm + PARK_MM, self.top_mm + CLAMP_STANDS_MM + OVER_CLAMPS_MM)
        return max(self.safe_mm, min(self._at_least(wanted), self.most_mm))

    def height_mm(self, start: Place, end: Place) -> float:
        """As low as the straight way from one place to another allows."""
        if self.bare is None:
            return self.safe_mm
        shapely.prepare(self.bare)
        return self.low_mm if self.bare.covers(LineString([start, end])) else self.safe_mm
