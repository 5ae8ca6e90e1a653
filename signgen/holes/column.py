"""Holes one above the other."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from signgen.holes.common import HOLE_COUNT, INSET, SIZE_OPTIONS, InLine, spread
from signgen.option import Option

COLUMN_PLACE = Option(
    name="column-place", kind="length", metavar="LENGTH", group="Holes",
    help="From the sign's left edge to the middle of a column of holes.", otherwise="inset from the left edge",
    words=("place of the column",),
)  # fmt: skip


class Column(InLine, frozen=True, kw_only=True):
    """`count` holes at even distances, the outer ones `inset_mm` from bottom and top; a single one half way up."""

    column_place_mm: float

    name: ClassVar[str] = "column"
    summary: ClassVar[str] = "Several at even distances from bottom to top, near the left side or at a given place."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET, HOLE_COUNT, COLUMN_PLACE)

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Column:
        diameter, inset, count = cls.read(values, height_mm, "high")
        place = values.get(COLUMN_PLACE.name)
        return cls(
            diameter_mm=diameter, inset_mm=inset, count=count,
            column_place_mm=place if isinstance(place, float) else inset,
        )  # fmt: skip

    def asked(self) -> dict[str, str | float]:
        return {**super().asked(), COLUMN_PLACE.name: self.column_place_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        places = spread(self.count, self.inset_mm, height_mm)
        return tuple((f"{i}", self.column_place_mm, y) for i, y in enumerate(places, 1))
