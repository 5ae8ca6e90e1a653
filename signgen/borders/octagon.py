"""Eight sides with equal angles."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Octagon(NoEyes, frozen=True, kw_only=True):
    name: ClassVar[str] = "octagon"
    summary: ClassVar[str] = "Eight sides, all angles equal; regular on a square."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Octagon:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Eight corners of 135 degrees. On a square of side s each side is s / (1 + sqrt 2), which leaves s / (2 +
        sqrt 2) beside it; a longer sign has two longer sides."""
        c, w, h = min(width_mm, height_mm) / (2 + math.sqrt(2)), width_mm, height_mm
        return ring([(c, 0), (w - c, 0), (w, c), (w, h - c), (w - c, h), (c, h), (0, h - c), (0, c)])
