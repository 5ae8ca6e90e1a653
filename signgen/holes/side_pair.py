"""Two holes half way up, one at either side."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.holes.common import INSET, SIZE_OPTIONS, diameter_of, inset_of, must_not_cross
from signgen.option import Option


class SidePair(Struct, frozen=True, kw_only=True):
    """Two holes at half the height, each `inset_mm` from its side."""

    diameter_mm: float
    inset_mm: float

    name: ClassVar[str] = "side-pair"
    summary: ClassVar[str] = "One at either side, half way up."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> SidePair:
        diameter = diameter_of(values)
        inset = inset_of(values, diameter)
        must_not_cross(inset, diameter, width_mm, "wide")
        return cls(diameter_mm=diameter, inset_mm=inset)

    def asked(self) -> dict[str, str | float]:
        return {"holes": self.name, "hole-diameter": self.diameter_mm, "inset": self.inset_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        return (("left", self.inset_mm, height_mm / 2), ("right", width_mm - self.inset_mm, height_mm / 2))
