"""No holes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.option import Option


class NoHoles(Struct, frozen=True, kw_only=True):
    name: ClassVar[str] = "none"
    summary: ClassVar[str] = "No holes."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @property
    def diameter_mm(self) -> float:
        return 0.0

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> NoHoles:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"holes": self.name}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        return ()
