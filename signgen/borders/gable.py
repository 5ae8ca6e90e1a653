"""The front of a house: straight walls under a pitched roof."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes, given, must_fit, ring
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

ROOF_HEIGHT = Option(
    name="roof-height", kind="length", metavar="LENGTH", group="Shape",
    help="How much higher a gable's ridge is than its walls.",
    otherwise="half the width, at most two fifths of the height",
    words=("height of the roof", "gable height"),
)  # fmt: skip

_DEFAULT_RATIO = 0.5
_GREATEST_RATIO = 0.4


class Gable(NoEyes, frozen=True, kw_only=True):
    roof_mm: float

    name: ClassVar[str] = "gable"
    summary: ClassVar[str] = "The front of a house: walls under a pitched roof."
    options: ClassVar[tuple[Option, ...]] = (ROOF_HEIGHT,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Gable:
        return cls(roof_mm=given(values, ROOF_HEIGHT, min(_DEFAULT_RATIO * width_mm, _GREATEST_RATIO * height_mm)))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, ROOF_HEIGHT.name: self.roof_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """A triangle when the roof is as high as the sign. Raises: CannotMakeError when it is higher."""
        must_fit(ROOF_HEIGHT, self.roof_mm, height_mm, width_mm, height_mm)
        w, h, eaves = width_mm, height_mm, height_mm - self.roof_mm
        return ring([(0, 0), (w, 0), (w, eaves), (w / 2, h), (0, eaves)])
