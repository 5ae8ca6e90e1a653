"""A rectangle with a bite out of each corner."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes, arc, given, must_fit, ring
from signgen.borders.rounded import CORNER_RADIUS
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

_DEFAULT_RATIO = 0.12
_GREATEST_RATIO = 0.45
"""Of the shorter side: what stays between two bites would be a spike, not a side."""


class Scalloped(NoEyes, frozen=True, kw_only=True):
    radius_mm: float

    name: ClassVar[str] = "scalloped"
    summary: ClassVar[str] = "A rectangle with hollow corners."
    options: ClassVar[tuple[Option, ...]] = (CORNER_RADIUS,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Scalloped:
        return cls(radius_mm=given(values, CORNER_RADIUS, _DEFAULT_RATIO * min(width_mm, height_mm)))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, CORNER_RADIUS.name: self.radius_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Quarter circles about the rectangle's corners, meeting its sides square. Raises: CannotMakeError when they
        leave no side."""
        must_fit(CORNER_RADIUS, self.radius_mm, _GREATEST_RATIO * min(width_mm, height_mm), width_mm, height_mm)
        w, h, radii = width_mm, height_mm, (self.radius_mm, self.radius_mm)
        corners = ((w, 0.0, 180), (w, h, 270), (0.0, h, 0), (0.0, 0.0, 90))
        return ring(p for x, y, start in corners for p in arc((x, y), radii, start, -90, chord_mm))
