"""Holes right through the board: round or long, with a cone for a screw's head at the top or without."""

from __future__ import annotations

import math
from functools import lru_cache
from typing import Any, Self

import numpy as np
import shapely
from msgspec import Struct
from msgspec.structs import replace
from shapely.geometry import LineString, Point, Polygon
from shapely.geometry.polygon import orient

from signgen.features.feature import Feature, FloatArray, slope_of
from signgen.geometry.motion import Motion
from signgen.numbers import rounded
from signgen.shop.tools import Tool

QUARTER = 32
"""Chords of a quarter circle, a little inside the rim: at 5 mm they err by 0.0015 mm."""


class Countersink(Struct, frozen=True, kw_only=True):
    """A cone at the top of a round hole, so that a screw's head lies flush: its diameter at the surface and its full
    angle. It ends where it meets the hole."""

    diameter_mm: float
    angle_deg: float

    @property
    def slope(self) -> float:
        """How much wider its radius gets with each millimetre up: tan(angle / 2)."""
        return slope_of(self.angle_deg)


class Hole(Feature, frozen=True, kw_only=True):
    """A hole right through the board: round, or a slot with round ends.

    (x, y) is its middle, `diameter_mm` how wide it is. `span_mm`: from the middle of one end's circle to the other's,
    0 for a round hole; `angle_deg`: the direction of a slot, anticlockwise from X.
    """

    x_mm: float
    y_mm: float
    diameter_mm: float
    span_mm: float = 0.0
    angle_deg: float = 0.0
    sink: Countersink | None = None
    source: str = "holes"

    kind = "hole"
    own_picture = True

    @property
    def ends_mm(self) -> tuple[tuple[float, float], tuple[float, float]]:
        """The middles of the circles at its two ends; of a round hole its middle, twice."""
        half, turn = self.span_mm / 2, math.radians(self.angle_deg)
        along, up = half * math.cos(turn), half * math.sin(turn)
        return (self.x_mm - along, self.y_mm - up), (self.x_mm + along, self.y_mm + up)

    @property
    def middle_line(self) -> Point | LineString:
        """What it is all points within its radius of: its middle, or the line between its ends' middles."""
        return LineString(self.ends_mm) if self.span_mm else Point(self.x_mm, self.y_mm)

    @property
    def face_radius_mm(self) -> float:
        """From its middle line to its rim at the board's top: that of its countersink when it has one."""
        return (self.sink.diameter_mm if self.sink else self.diameter_mm) / 2

    @property
    def sink_depth_mm(self) -> float:
        """How deep its countersink meets the hole: (D - d) / 2 / tan(angle / 2); 0 without one."""
        return (self.sink.diameter_mm - self.diameter_mm) / 2 / self.sink.slope if self.sink else 0.0

    @property
    def footprint(self) -> Polygon:
        """What it and its countersink take of the board's top."""
        return _around(self.ends_mm, self.face_radius_mm)

    @property
    def core(self) -> tuple[Point | LineString, float]:
        return self.middle_line, self.face_radius_mm

    @property
    def slack_ratio(self) -> float:
        return 1 / self.sink.slope if self.sink else 0.0

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        radius = self.diameter_mm / 2
        if self.sink is None:
            through = np.broadcast_to(np.inf, (len(points_mm),))
            return through, through
        away = shapely.distance(self.middle_line, shapely.points(points_mm))
        depth = np.where(away < radius - self.rim_mm, np.inf, (self.face_radius_mm - away) / self.sink.slope)
        depth = np.where(np.abs(away - radius) <= self.rim_mm, np.nan, depth)
        return depth, depth

    def deepest_mm(self, tool: Tool) -> float:
        return self.sink_depth_mm if tool.kind == "v-bit" else math.inf if tool.kind in ("drill", "end-mill") else 0.0

    def moved(self, motion: Motion) -> Self:
        x, y = motion.point(self.x_mm, self.y_mm)
        angle = motion.angle_deg(self.angle_deg) if self.span_mm else self.angle_deg
        return replace(self, x_mm=x, y_mm=y, angle_deg=angle)

    def facts(self) -> dict[str, Any]:
        found: dict[str, Any] = {
            "x_mm": rounded(self.x_mm, 4),
            "y_mm": rounded(self.y_mm, 4),
            "diameter_mm": rounded(self.diameter_mm, 4),
        }
        if self.span_mm:
            found |= {
                "length_mm": rounded(self.diameter_mm + self.span_mm, 4),
                "angle_deg": rounded(self.angle_deg, 4),
            }
        if self.sink:
            found["countersink"] = {
                "diameter_mm": rounded(self.sink.diameter_mm, 4),
                "angle_deg": rounded(self.sink.angle_deg, 4),
                "depth_mm": rounded(self.sink_depth_mm, 4),
            }
        return found


@lru_cache(maxsize=1024)
def _around(ends: tuple[tuple[float, float], tuple[float, float]], radius_mm: float) -> Polygon:
    line = Point(ends[0]) if ends[0] == ends[1] else LineString(ends)
    area: Polygon = orient(line.buffer(radius_mm, quad_segs=QUARTER))
    return area
