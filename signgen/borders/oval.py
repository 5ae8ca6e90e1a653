"""An ellipse."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes, arc, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Oval(NoEyes, frozen=True, kw_only=True):
    name: ClassVar[str] = "oval"
    summary: ClassVar[str] = "An ellipse as wide and as high as the sign."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Oval:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The four ends of its axes are vertices."""
        middle = (width_mm / 2, height_mm / 2)
        return ring(p for start in (0, 90, 180, 270) for p in arc(middle, middle, start, 90, chord_mm))
