"""A disc."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import SAME_MM, NoEyes, arc, ring
from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm
from signgen.messages.figures import plain
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Circle(NoEyes, frozen=True, kw_only=True):
    name: ClassVar[str] = "circle"
    summary: ClassVar[str] = "A disc, for signs as wide as high."
    options: ClassVar[tuple[Option, ...]] = ()
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Circle:
        return cls()

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Raises: CannotMakeError when the sign is not as wide as high."""
        if abs(width_mm - height_mm) > SAME_MM:
            shorter = plain(min(width_mm, height_mm))
            raise CannotMakeError.at(
                "border",
                Message("border.circle_wide_high_sign_x", width=Mm(width_mm), height=Mm(height_mm)),
                Message("border.use_size_x_border_oval", size=shorter),
            )
        middle = (width_mm / 2, height_mm / 2)
        return ring(p for start in (0, 90, 180, 270) for p in arc(middle, middle, start, 90, chord_mm))
