"""Two holes half way up, one at either side."""

from __future__ import annotations

from typing import ClassVar

from signgen.holes.common import AtInset


class SidePair(AtInset, frozen=True, kw_only=True):
    """Two holes at half the height, each `inset_mm` from its side."""

    name: ClassVar[str] = "side-pair"
    summary: ClassVar[str] = "One at either side, half way up."

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        return (("left", self.inset_mm, height_mm / 2), ("right", width_mm - self.inset_mm, height_mm / 2))
