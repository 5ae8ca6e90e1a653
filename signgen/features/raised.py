"""What stands in a sunk floor: letters, a rim, ornaments."""

from __future__ import annotations

from typing import Self

from msgspec.structs import replace
from shapely.geometry import MultiPolygon, Polygon

from signgen.features.feature import Area, Feature, FloatArray, level
from signgen.geometry.motion import Motion
from signgen.shop.tools import Tool


class Raised(Feature, frozen=True, kw_only=True):
    """What a floor round it leaves of the face."""

    area: Polygon | MultiPolygon

    kind = "raised"
    takes = False

    @property
    def footprint(self) -> Area:
        return self.area

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        return level(points_mm, 0.0), level(points_mm, 0.0)

    def deepest_mm(self, tool: Tool) -> float:
        return 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.area(self.area))
