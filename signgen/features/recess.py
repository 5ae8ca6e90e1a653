"""Flat floors with upright walls, and the letters that they leave standing."""

from __future__ import annotations

from typing import Any, Self

import numpy as np
from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Polygon

from signgen.features.feature import Area, Feature, FloatArray, level
from signgen.geometry.motion import Motion
from signgen.numbers import rounded
from signgen.shop.tools import Tool


class Recess(Feature, frozen=True, kw_only=True):
    """A flat floor with upright walls, cut by an end mill: a letter sunk into the face, or the ground of a panel.

    Everything within `area` lies `depth_mm` below the board's top, but for inner corners and narrow places where a
    round cutter has no room. With a depth of the board's thickness the area is cut right through. `sharp`: the V-bit
    cuts the corners, as far as the end mill does not reach into them, with walls that slope.
    """

    area: Polygon | MultiPolygon
    depth_mm: float
    sharp: bool = False

    kind = "recess"

    @property
    def footprint(self) -> Area:
        return self.area

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        """How much of its corners stands depends on the cutter, which only the exact check knows."""
        return level(points_mm, np.nan), level(points_mm, self.depth_mm)

    def deepest_mm(self, tool: Tool) -> float:
        return self.depth_mm if tool.kind == "end-mill" or (tool.kind == "v-bit" and self.sharp) else 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.area(self.area))

    def facts(self) -> dict[str, Any]:
        return {"depth_mm": rounded(self.depth_mm, 4), "sharp_corners": self.sharp}


class Panel(Recess, frozen=True, kw_only=True):
    """The floor that is sunk into the face with letters standing in it, sunk into it deeper, or beside it."""

    kind = "panel"
