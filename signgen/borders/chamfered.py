"""A rectangle whose corners are cut off straight."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import CORNER_CUT, NoEyes, given, must_fit, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

_DEFAULT_RATIO = 0.12
"""Of the shorter side: a little more than a round corner, for a cut looks smaller (common practice)."""


class Chamfered(NoEyes, frozen=True, kw_only=True):
    cut_mm: float

    name: ClassVar[str] = "chamfered"
    summary: ClassVar[str] = "A rectangle with its corners cut off at 45 degrees."
    options: ClassVar[tuple[Option, ...]] = (CORNER_CUT,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Chamfered:
        return cls(cut_mm=given(values, CORNER_CUT, _DEFAULT_RATIO * min(width_mm, height_mm)))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, CORNER_CUT.name: self.cut_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Eight corners of 135 degrees, fewer where the cuts meet. Raises: CannotMakeError when the cuts do not fit."""
        must_fit(CORNER_CUT, self.cut_mm, min(width_mm, height_mm) / 2, width_mm, height_mm)
        c, w, h = self.cut_mm, width_mm, height_mm
        return ring([(c, 0), (w - c, 0), (w, c), (w, h - c), (w - c, h), (c, h), (0, h - c), (0, c)])
