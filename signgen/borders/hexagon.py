"""Six sides, a point at either end."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import POINT_LENGTH, NoEyes, given, must_fit, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

_GREATEST_RATIO = 0.25
"""Of the length, for the default: a regular hexagon's own proportion, and never more than that unasked."""


class Hexagon(NoEyes, frozen=True, kw_only=True):
    point_mm: float

    name: ClassVar[str] = "hexagon"
    summary: ClassVar[str] = "Six sides with points left and right, or up and down on a sign that is higher than wide."
    options: ClassVar[tuple[Option, ...]] = (POINT_LENGTH,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Hexagon:
        """Angles of 120 degrees when nothing is asked for, as far as the sign is long enough: a point is then half the
        shorter side x tan 30 degrees long."""
        across, along = sorted((width_mm, height_mm))
        usual = min(across / 2 * math.tan(math.radians(30)), _GREATEST_RATIO * along)
        return cls(point_mm=given(values, POINT_LENGTH, usual))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, POINT_LENGTH.name: self.point_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Raises: CannotMakeError when the two points are longer than the sign."""
        w, h, p = width_mm, height_mm, self.point_mm
        must_fit(POINT_LENGTH, p, max(w, h) / 2, w, h)
        if w >= h:
            return ring([(p, 0), (w - p, 0), (w, h / 2), (w - p, h), (p, h), (0, h / 2)])
        return ring([(w / 2, 0), (w, p), (w, h - p), (w / 2, h), (0, h - p), (0, p)])
