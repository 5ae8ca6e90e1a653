"""A flat top, straight sides, and two arcs that meet in a point below."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import SAME_MM, NoEyes, arc, given, ring
from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

SIDE_LENGTH = Option(
    name="side-length", kind="length", metavar="LENGTH", group="Shape",
    help="How far a shield's sides go straight down before they bend.", otherwise="a third of the height",
    words=("straight sides",),
)  # fmt: skip

_DEFAULT_RATIO = 1 / 3
_SLENDER_RATIO = 0.75
"""Height over width of the pointed part that a wide shield is squeezed from: rounder than this it has no point."""


class Shield(NoEyes, frozen=True, kw_only=True):
    side_mm: float

    name: ClassVar[str] = "shield"
    summary: ClassVar[str] = "A flat top and sides that bend to a point below."
    options: ClassVar[tuple[Option, ...]] = (SIDE_LENGTH,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Shield:
        return cls(side_mm=given(values, SIDE_LENGTH, _DEFAULT_RATIO * height_mm))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, SIDE_LENGTH.name: self.side_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The sides run into their arcs without a bend.

        An arc that leaves a side of the width w upright and ends in the middle, s lower, has the radius (w^2 / 4 +
        s^2) / w, its centre level with its start; it has a point below only when s > w / 2. A wider shield takes the
        arcs of a slender one, squeezed in height, which makes them elliptic. Raises: CannotMakeError when the sides
        are as long as the sign is high.
        """
        w, h = width_mm, height_mm
        s = h - self.side_mm
        if s <= SAME_MM:
            raise CannotMakeError.at(
                SIDE_LENGTH.name,
                Message("border.sides_leave_nothing_bend", side=Mm(self.side_mm), h=Mm(h)),
                Message("border.use_less_than_third_so", h=Mm(h)),
            )
        slender = max(s, _SLENDER_RATIO * w)
        radius = (w * w / 4 + slender * slender) / w
        squeezed = radius * s / slender
        sweep = math.degrees(math.atan2(slender, radius - w / 2))
        right = arc((w - radius, s), (radius, squeezed), -sweep, sweep, chord_mm)
        left = arc((radius, s), (radius, squeezed), 180, sweep, chord_mm)
        return ring([(w / 2, 0), *right[1:], (w, h), (0, h), *left[:-1]])
