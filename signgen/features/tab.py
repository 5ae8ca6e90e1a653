"""Bridges that hold the sign in the board."""

from __future__ import annotations

from typing import Any, Self

import numpy as np
from msgspec.structs import replace
from shapely.geometry import Polygon
from shapely.geometry.polygon import orient

from signgen.features.feature import Feature, FloatArray, level
from signgen.geometry.motion import Motion
from signgen.numbers import rounded
from signgen.shop.tools import Tool


class Tab(Feature, frozen=True, kw_only=True):
    """A bridge that holds the sign in the board: `width_mm` along the edge and `height_mm` up from the stock's
    bottom.

    (x, y) is its middle on the sign's edge; (along_x, along_y) the unit direction of the edge there,
    counter-clockwise. `foot_mm`: how far its sides run out on both ends between its top and the cut's bottom; 0 for
    upright ones.
    """

    x_mm: float
    y_mm: float
    along_x: float
    along_y: float
    width_mm: float
    height_mm: float
    foot_mm: float = 0.0
    source: str = "tabs"

    kind = "tab"
    own_picture = True
    takes = False

    def stand(self, across_mm: float, narrower_mm: float = 0.0) -> Polygon:
        """The rectangle outside the edge in which it stands, so far out, and so much narrower than drawn."""
        half = max((self.width_mm - narrower_mm) / 2, 0.0)
        along, out = np.array([self.along_x, self.along_y]), np.array([self.along_y, -self.along_x])
        middle = np.array([self.x_mm, self.y_mm])
        corners = [middle - half * along, middle + half * along]
        return Polygon([*corners, corners[1] + across_mm * out, corners[0] + across_mm * out])

    @property
    def footprint(self) -> Polygon:
        """As far outside the edge as it is wide: how far the cut goes is the cutter's matter."""
        stand: Polygon = orient(self.stand(self.width_mm))
        return stand

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        """How high it is counts up from the board's bottom."""
        return level(points_mm, np.nan), level(points_mm, np.nan)

    def deepest_mm(self, tool: Tool) -> float:
        return 0.0

    def moved(self, motion: Motion) -> Self:
        """Mirrored, the edge runs the other way: its direction there is turned round."""
        x, y = motion.point(self.x_mm, self.y_mm)
        along_x, along_y = motion.direction(self.along_x, self.along_y)
        if motion.is_mirrored:
            along_x, along_y = -along_x, -along_y
        return replace(self, x_mm=x, y_mm=y, along_x=along_x, along_y=along_y)

    def facts(self) -> dict[str, Any]:
        return {
            "x_mm": rounded(self.x_mm, 4),
            "y_mm": rounded(self.y_mm, 4),
            "width_mm": rounded(self.width_mm, 4),
            "height_mm": rounded(self.height_mm, 4),
        }
