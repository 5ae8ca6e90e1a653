"""Four straight sides and sharp corners."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Rectangle(NoEyes, frozen=True, kw_only=True):
    name: ClassVar[str] = "rectangle"
    summary: ClassVar[str] = "Straight sides, sharp corners."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Rectangle:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The rectangle itself, counter-clockwise from (0, 0)."""
        from shapely.geometry import Polygon

        return Polygon([(0, 0), (width_mm, 0), (width_mm, height_mm), (0, height_mm)])
