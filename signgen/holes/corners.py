"""A hole in each corner."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.holes.common import INSET, SIZE_OPTIONS, diameter_of, inset_of, must_not_cross
from signgen.option import Option


class Corners(Struct, frozen=True, kw_only=True):
    """Four holes, each `inset_mm` from both edges of its corner."""

    diameter_mm: float
    inset_mm: float

    name: ClassVar[str] = "corners"
    summary: ClassVar[str] = "One in each corner, inset from both edges."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Corners:
        diameter = diameter_of(values)
        inset = inset_of(values, diameter)
        must_not_cross(inset, diameter, min(width_mm, height_mm), "wide" if width_mm <= height_mm else "high")
        return cls(diameter_mm=diameter, inset_mm=inset)

    def asked(self) -> dict[str, str | float]:
        return {"holes": self.name, "hole-diameter": self.diameter_mm, "inset": self.inset_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        left, right = self.inset_mm, width_mm - self.inset_mm
        low, high = self.inset_mm, height_mm - self.inset_mm
        return (
            ("bottom left", left, low),
            ("bottom right", right, low),
            ("top right", right, high),
            ("top left", left, high),
        )
