"""One hole in the middle of the sign."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.holes.common import SIZE_OPTIONS, diameter_of
from signgen.option import Option


class Centre(Struct, frozen=True, kw_only=True):
    diameter_mm: float

    name: ClassVar[str] = "centre"
    summary: ClassVar[str] = "One in the middle."
    options: ClassVar[tuple[Option, ...]] = SIZE_OPTIONS
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Centre:
        return cls(diameter_mm=diameter_of(values))

    def asked(self) -> dict[str, str | float]:
        return {"holes": self.name, "hole-diameter": self.diameter_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        return (("centre", width_mm / 2, height_mm / 2),)
