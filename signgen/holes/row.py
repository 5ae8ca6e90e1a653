"""Holes in a row across the sign."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.holes.common import HOLE_COUNT, INSET, SIZE_OPTIONS, count_of, diameter_of, inset_of, pitch_of, spread
from signgen.option import Option

ROW_HEIGHT = Option(
    name="row-height", kind="length", metavar="LENGTH", group="Holes",
    help="From the sign's bottom edge up to the middle of a row of holes.", otherwise="inset below the top edge",
    words=("height of the row of holes",),
)  # fmt: skip

_DEFAULT_COUNT = 3


class HoleRow(Struct, frozen=True, kw_only=True):
    """`count` holes at even distances, the outer ones `inset_mm` from the sides; a single one in the middle."""

    diameter_mm: float
    inset_mm: float
    count: int
    row_height_mm: float

    name: ClassVar[str] = "row"
    summary: ClassVar[str] = "Several at even distances from side to side, near the top or at a given height."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET, HOLE_COUNT, ROW_HEIGHT)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> HoleRow:
        diameter, count = diameter_of(values), count_of(values, _DEFAULT_COUNT)
        inset, asked_height = inset_of(values, diameter), values.get(ROW_HEIGHT.name)
        pitch_of(count, inset, diameter, width_mm, "wide")
        row_height = asked_height if isinstance(asked_height, float) else height_mm - inset
        return cls(diameter_mm=diameter, inset_mm=inset, count=count, row_height_mm=row_height)

    def asked(self) -> dict[str, str | float]:
        return {
            "holes": self.name, "hole-diameter": self.diameter_mm, "inset": self.inset_mm,
            "hole-count": self.count, "row-height": self.row_height_mm,
        }  # fmt: skip

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        places = spread(self.count, self.inset_mm, width_mm)
        return tuple((f"{i}", x, self.row_height_mm) for i, x in enumerate(places, 1))
