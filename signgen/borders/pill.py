"""A rectangle with half circles for its ends."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes
from signgen.borders.rounded import Rounded
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Pill(NoEyes, frozen=True, kw_only=True):
    name: ClassVar[str] = "pill"
    summary: ClassVar[str] = "Two straight sides between half circles."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Pill:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """A rounded rectangle with the greatest radius that it can have; on a square a disc."""
        return Rounded(radius_mm=min(width_mm, height_mm) / 2).outline(width_mm, height_mm, chord_mm)
