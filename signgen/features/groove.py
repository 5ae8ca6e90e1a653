"""An area engraved by a V-bit: a letter, a line of a frame, a rule, an ornament."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Self

import numpy as np
from msgspec.structs import replace
from shapely.geometry import MultiLineString, MultiPolygon, Polygon

from signgen.features.feature import Area, Feature, FloatArray, IntArray, between, slope_of
from signgen.geometry.distance import distance_to_segments, segments_of
from signgen.geometry.motion import Motion
from signgen.messages import Message
from signgen.numbers import rounded
from signgen.shop.tools import Tool


class Groove(Feature, frozen=True, kw_only=True):
    """An area engraved with sloping walls that fall from its outline at the cutter's angle.

    The surface at a point inside, at distance s from the outline, lies min(s / tan(angle/2), max_depth) below the
    top; where the limit acts the floor is flat. A bit with a flat tip leaves the bottom of a groove blunt: its tip
    goes only (r - tip/2) / tan(angle/2) deep where the groove is 2 r wide, and strokes narrower than the tip stay
    uncut.
    """

    area: Polygon | MultiPolygon
    angle_deg: float
    tip_mm: float
    max_depth_mm: float

    kind = "groove"
    rim_mm = 0.0

    @property
    def footprint(self) -> Area:
        return self.area

    @property
    def slope(self) -> float:
        """How much wider it gets with each millimetre up: tan(angle / 2)."""
        return slope_of(self.angle_deg)

    @property
    def slack_ratio(self) -> float:
        return 1 / self.slope

    @property
    def deepest_floor_mm(self) -> float:
        return self.max_depth_mm

    @property
    def limit_radius_mm(self) -> float:
        """How far from the outline the cutter's middle runs along a wall at the limit: max_depth x tan(angle/2) +
        tip/2."""
        return self.max_depth_mm * self.slope + self.tip_mm / 2

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        return self.depths_of([self], points_mm, np.zeros(len(points_mm), np.intp))

    @classmethod
    def depths_of(
        cls, features: Sequence[Self], points_mm: FloatArray, owner: IntArray
    ) -> tuple[FloatArray, FloatArray]:
        """Least and greatest differ by what a flat tip leaves open.

        A bit whose flat tip is t wide reaches the outline from a place at distance R with depth (R - t / 2) / k, k =
        tan(A / 2). At distance q of that place it leaves (R - max(q, t / 2)) / k: so a wall falls as r / k from the
        outline, and within t / 2 of the ridge where walls meet the floor is flat at (R - t / 2) / k. Hence (r - t / 2)
        / k <= depth <= r / k everywhere. Derived here from depth = (w - t) / (2 tan a), w the width at the face.
        """
        if not len(features) or not len(points_mm):
            return np.zeros(0), np.zeros(0)
        slope = np.array([groove.slope for groove in features])[owner]
        half_tip = np.array([groove.tip_mm / 2 for groove in features])[owner]
        limit = np.array([groove.max_depth_mm for groove in features])[owner]
        # Inside one groove no outline is nearer than its own, so one search serves all.
        outline = np.concatenate([segments_of(groove.area) for groove in features])
        farthest = max(groove.limit_radius_mm for groove in features) + 1e-6
        radius = distance_to_segments(points_mm, outline, farthest)
        return np.clip((radius - half_tip) / slope, 0.0, limit), np.minimum(radius / slope, limit)

    def deepest_mm(self, tool: Tool) -> float:
        return self.max_depth_mm if tool.kind in ("v-bit", "end-mill") else 0.0

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.area(self.area))

    def facts(self) -> dict[str, Any]:
        return {
            "angle_deg": rounded(self.angle_deg, 4),
            "tip_mm": rounded(self.tip_mm, 4),
            "greatest_depth_mm": rounded(self.max_depth_mm, 4),
        }


class Stroke(Groove, frozen=True, kw_only=True):
    """A groove that the tip of the V-bit makes as it follows `lines` at `max_depth_mm`: the surface at distance q of
    the nearest line lies min((limit_radius - q) / tan(angle/2), max_depth) deep, and the area is all that lies nearer
    than limit_radius."""

    lines: MultiLineString

    kind = "stroke"

    @classmethod
    def depths_of(
        cls, features: Sequence[Self], points_mm: FloatArray, owner: IntArray
    ) -> tuple[FloatArray, FloatArray]:
        """What a cone leaves of whose tip follows a line: exact, whatever its tip."""
        depth = np.zeros(len(points_mm))
        for number, stroke in enumerate(features):
            own = owner == number
            if own.any():
                away = distance_to_segments(points_mm[own], segments_of(stroke.lines))
                depth[own] = np.clip((stroke.limit_radius_mm - away) / stroke.slope, 0.0, stroke.max_depth_mm)
        return depth, depth

    def moved(self, motion: Motion) -> Self:
        return replace(self, area=motion.area(self.area), lines=motion.lines(self.lines))

    def facts(self) -> dict[str, Any]:
        return {**super().facts(), "width_mm": rounded(2 * self.limit_radius_mm, 4)}

    @classmethod
    def messages(cls, own: Sequence[Self]) -> Iterator[Message]:
        wide = between([2 * stroke.limit_radius_mm for stroke in own])
        yield Message("finish.stroke", width=wide, depth=between([stroke.max_depth_mm for stroke in own]))
