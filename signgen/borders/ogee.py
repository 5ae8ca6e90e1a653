"""A rectangle whose corners are double curves."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import CORNER_CUT, NoEyes, Point, arc, given, must_fit, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

_DEFAULT_RATIO = 0.2
_GREATEST_RATIO = 0.45
"""Of the shorter side: what stays between two corners would be a spike, not a side."""


class Ogee(NoEyes, frozen=True, kw_only=True):
    cut_mm: float

    name: ClassVar[str] = "ogee"
    summary: ClassVar[str] = "A rectangle whose corners swing out and in again."
    options: ClassVar[tuple[Option, ...]] = (CORNER_CUT,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Ogee:
        return cls(cut_mm=given(values, CORNER_CUT, _DEFAULT_RATIO * min(width_mm, height_mm)))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, CORNER_CUT.name: self.cut_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Each corner is an S of two quarter circles: it leaves the top or bottom edge in the edge's own direction,
        first outward round, then inward, and meets the upright side square. Raises: CannotMakeError when the corners
        leave no side."""
        must_fit(CORNER_CUT, self.cut_mm, _GREATEST_RATIO * min(width_mm, height_mm), width_mm, height_mm)
        w, h = width_mm, height_mm
        low_right = self._corner(w, chord_mm)
        low_left = [(w - x, y) for x, y in reversed(low_right)]
        high_right = [(x, h - y) for x, y in reversed(low_right)]
        high_left = [(x, h - y) for x, y in reversed(low_left)]
        return ring([*low_right, *high_right, *high_left, *low_left])

    def _corner(self, width_mm: float, chord_mm: float) -> list[Point]:
        """The lower right corner, from the bottom edge up to the right side."""
        r = self.cut_mm / 2
        out = arc((width_mm - 2 * r, r), (r, r), -90, 90, chord_mm)
        back = arc((width_mm, r), (r, r), 180, -90, chord_mm)
        return [*out, *back]
