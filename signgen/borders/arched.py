"""A rectangle with an arc of a circle for its top."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes, arc, given, must_fit, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

ARCH_RISE = Option(
    name="arch-rise", kind="length", metavar="LENGTH", group="Shape",
    help="How much higher the middle of an arched top is than its ends.",
    otherwise="a quarter of the height, at most half the width",
    words=("height of the arch",),
)  # fmt: skip

_DEFAULT_RATIO = 0.25


class Arched(NoEyes, frozen=True, kw_only=True):
    rise_mm: float

    name: ClassVar[str] = "arched"
    summary: ClassVar[str] = "Straight sides under a round top."
    options: ClassVar[tuple[Option, ...]] = (ARCH_RISE,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Arched:
        return cls(rise_mm=given(values, ARCH_RISE, min(_DEFAULT_RATIO * height_mm, width_mm / 2)))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, ARCH_RISE.name: self.rise_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Radius of an arc over a width w that rises by f: (w^2 / 4 + f^2) / (2 f), from Pythagoras; a half circle at
        f = w / 2. Raises: CannotMakeError when it rises more than that, or more than the sign is high."""
        must_fit(ARCH_RISE, self.rise_mm, min(width_mm / 2, height_mm), width_mm, height_mm)
        w, h, f = width_mm, height_mm, self.rise_mm
        radius = (w * w / 4 + f * f) / (2 * f)
        half = math.degrees(math.atan2(w / 2, radius - f))
        right = arc((w / 2, h - radius), (radius, radius), 90 - half, half, chord_mm)
        left = arc((w / 2, h - radius), (radius, radius), 90, half, chord_mm)
        return ring([(0, 0), (w, 0), *right, *left[:-1], (0, h - f)])
