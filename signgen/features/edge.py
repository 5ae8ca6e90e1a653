"""The sign's outline, and the bevel that may go round its face."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import Any, Self

from msgspec.structs import replace
from shapely.geometry import Polygon

from signgen.features.feature import Area, Feature, FloatArray, level, slope_of
from signgen.geometry.distance import distance_to_segments, segments_of
from signgen.geometry.motion import Motion
from signgen.geometry.offsets import area_of, inward
from signgen.messages import Message, Mm, Num
from signgen.numbers import rounded
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

BEVEL_BELOW_MM = 0.2
"""How far below a bevel the tip may go, outside the sign: so that the bevel is cut by the flank alone, and not by the
tip, which is never quite sharp (common practice)."""


class Edge(Feature, frozen=True, kw_only=True):
    """Where the sign ends: everything within `area` is the sign, and the cutter goes round outside.

    `skin_mm`: what stays of the board under the outside cut, 0 where it goes through but for tabs.
    """

    area: Polygon
    skin_mm: float = 0.0
    source: str = "border"

    kind = "edge"
    own_picture = True
    side = "both"

    @property
    def footprint(self) -> Polygon:
        return self.area

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        """The face, but for what else is drawn on it."""
        return level(points_mm, 0.0), level(points_mm, 0.0)

    def deepest_mm(self, tool: Tool) -> float:
        return math.inf if tool.kind == "end-mill" else 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.polygon(self.area))

    def facts(self) -> dict[str, Any]:
        return {"skin_mm": rounded(self.skin_mm, 4)} if self.skin_mm else {}


class ReadyEdge(Edge, frozen=True, kw_only=True):
    """The edge of a blank that is already to size: nothing is cut there, and beyond it there is no board."""

    kind = "ready-edge"
    takes = False

    def deepest_mm(self, tool: Tool) -> float:
        return 0.0


class Bevel(Feature, frozen=True, kw_only=True):
    """A bevel of the face's edge all round: `width_mm` of it on the face, falling evenly outwards as steeply as the
    V-bit of that full angle cuts. At distance s inside the edge it lies (width - s) / tan(angle / 2) below the face."""

    edge: Polygon
    width_mm: float
    angle_deg: float
    source: str = "edge-chamfer"

    kind = "bevel"
    own_picture = True
    is_outside = True

    @property
    def slope(self) -> float:
        """How much wider it gets with each millimetre of depth: tan(angle / 2)."""
        return slope_of(self.angle_deg)

    @property
    def slack_ratio(self) -> float:
        return 1 / self.slope

    @property
    def depth_mm(self) -> float:
        """How far below the face the upright edge begins. Derived here: width / tan(angle / 2)."""
        return self.width_mm / self.slope

    @property
    def footprint(self) -> Area:
        inner = inward(self.edge, self.width_mm, CHECK_MM / 10)
        return area_of((Polygon(self.edge.exterior, [part.exterior for part in inner]),))

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        away = distance_to_segments(points_mm, segments_of(self.edge), self.width_mm)
        depth = (self.width_mm - away) / self.slope
        return depth, depth

    def deepest_mm(self, tool: Tool) -> float:
        """Outside the sign."""
        return self.depth_mm + BEVEL_BELOW_MM if tool.kind == "v-bit" else 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, edge=motion.polygon(self.edge))

    def facts(self) -> dict[str, Any]:
        return {"width_mm": rounded(self.width_mm, 4), "depth_mm": rounded(self.depth_mm, 4)}

    @classmethod
    def messages(cls, own: Sequence[Self]) -> Iterator[Message]:
        """They are alike, also on a sheet of signs."""
        width, depth = Mm(own[0].width_mm, 2, trim=True), Mm(own[0].depth_mm, 2, trim=True)
        yield Message("finish.chamfer", width=width, depth=depth, angle=Num(own[0].angle_deg / 2, 1, trim=True))
