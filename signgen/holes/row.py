"""Holes in a row across the sign."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from signgen.holes.common import HOLE_COUNT, INSET, SIZE_OPTIONS, InLine, spread
from signgen.option import Option

ROW_HEIGHT = Option(
    name="row-height", kind="length", metavar="LENGTH", group="Holes",
    help="From the sign's bottom edge up to the middle of a row of holes.", otherwise="inset below the top edge",
    words=("height of the row of holes",),
)  # fmt: skip


class HoleRow(InLine, frozen=True, kw_only=True):
    """`count` holes at even distances, the outer ones `inset_mm` from the sides; a single one in the middle."""

    row_height_mm: float

    name: ClassVar[str] = "row"
    summary: ClassVar[str] = "Several at even distances from side to side, near the top or at a given height."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET, HOLE_COUNT, ROW_HEIGHT)

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> HoleRow:
        diameter, inset, count = cls.read(values, width_mm, "wide")
        height = values.get(ROW_HEIGHT.name)
        return cls(
            diameter_mm=diameter, inset_mm=inset, count=count,
            row_height_mm=height if isinstance(height, float) else height_mm - inset,
        )  # fmt: skip

    def asked(self) -> dict[str, str | float]:
        return {**super().asked(), ROW_HEIGHT.name: self.row_height_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        places = spread(self.count, self.inset_mm, width_mm)
        return tuple((f"{i}", x, self.row_height_mm) for i, x in enumerate(places, 1))
