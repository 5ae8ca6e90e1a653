"""Rigid motions of the plane, mirrored or not: how a sign is moved, turned, or laid on its face."""

from __future__ import annotations

import math

from msgspec import Struct
from shapely import affinity
from shapely.geometry import MultiLineString, MultiPolygon, Polygon
from shapely.geometry.polygon import orient


class Motion(Struct, frozen=True, kw_only=True):
    """(x, y) goes to (xx x + xy y + x_mm, yx x + yy y + y_mm); the matrix is orthogonal."""

    xx: float = 1.0
    xy: float = 0.0
    yx: float = 0.0
    yy: float = 1.0
    x_mm: float = 0.0
    y_mm: float = 0.0

    @property
    def is_mirrored(self) -> bool:
        """Whether left and right change places: what turns to the left then turns to the right."""
        return self.xx * self.yy - self.xy * self.yx < 0

    def point(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        x, y = self.direction(x_mm, y_mm)
        return x + self.x_mm, y + self.y_mm

    def direction(self, along_x: float, along_y: float) -> tuple[float, float]:
        return self.xx * along_x + self.xy * along_y, self.yx * along_x + self.yy * along_y

    def angle_deg(self, angle_deg: float) -> float:
        """The direction, anticlockwise from X, that a direction becomes."""
        turn = math.degrees(math.atan2(self.yx, self.xx))
        return turn - angle_deg if self.is_mirrored else angle_deg + turn

    def polygon(self, polygon: Polygon) -> Polygon:
        """Its shell runs counter-clockwise, whatever the motion."""
        moved: Polygon = orient(affinity.affine_transform(polygon, self._matrix))
        return moved

    def area(self, area: Polygon | MultiPolygon) -> Polygon | MultiPolygon:
        if isinstance(area, MultiPolygon):
            return MultiPolygon([self.polygon(part) for part in area.geoms])
        return self.polygon(area)

    def lines(self, lines: MultiLineString) -> MultiLineString:
        moved: MultiLineString = affinity.affine_transform(lines, self._matrix)
        return moved

    @property
    def _matrix(self) -> list[float]:
        return [self.xx, self.xy, self.yx, self.yy, self.x_mm, self.y_mm]


def quarter_turn(height_mm: float) -> Motion:
    """A quarter to the left of what is `height_mm` high, its bounds' corner at the origin before and after."""
    return Motion(xx=0.0, xy=-1.0, yx=1.0, yy=0.0, x_mm=height_mm)


def turned_page(width_mm: float) -> Motion:
    """Over about the upright middle line of what is `width_mm` wide, as a page is."""
    return Motion(xx=-1.0, x_mm=width_mm)
