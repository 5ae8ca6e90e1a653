"""A hole in each corner."""

from __future__ import annotations

from typing import ClassVar

from signgen.holes.common import AtInset, must_not_cross


class Corners(AtInset, frozen=True, kw_only=True):
    """Four holes, each `inset_mm` from both edges of its corner."""

    name: ClassVar[str] = "corners"
    summary: ClassVar[str] = "One in each corner, inset from both edges."

    @classmethod
    def must_fit(cls, inset_mm: float, diameter_mm: float, width_mm: float, height_mm: float) -> None:
        must_not_cross(inset_mm, diameter_mm, min(width_mm, height_mm), "wide" if width_mm <= height_mm else "high")

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        left, right = self.inset_mm, width_mm - self.inset_mm
        low, high = self.inset_mm, height_mm - self.inset_mm
        return (
            ("bottom left", left, low),
            ("bottom right", right, low),
            ("top right", right, high),
            ("top left", left, high),
        )
