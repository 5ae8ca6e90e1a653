"""Two holes at the top, to hang a sign by."""

from __future__ import annotations

from typing import ClassVar

from signgen.holes.common import AtInset


class TopPair(AtInset, frozen=True, kw_only=True):
    """Two holes, each `inset_mm` from the top and from its side."""

    name: ClassVar[str] = "top-pair"
    summary: ClassVar[str] = "One in each upper corner, to hang the sign by."

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        high = height_mm - self.inset_mm
        return (("top left", self.inset_mm, high), ("top right", width_mm - self.inset_mm, high))
