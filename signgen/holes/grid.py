"""Holes in columns and rows."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import INSET, SIZE_OPTIONS, diameter_of, inset_of, pitch_of, spread
from signgen.messages import Message
from signgen.option import Option

_MOST = 200
_COUNTS = re.compile(r"\s*(\d{1,4})\s*[xX×]\s*(\d{1,4})\s*", re.ASCII)


class HoleGrid(Struct, frozen=True, kw_only=True):
    """`columns` x `rows` holes at even distances, the outer ones `inset_mm` from their edges; a single column or row
    in the middle."""

    diameter_mm: float
    inset_mm: float
    columns: int
    rows: int

    name: ClassVar[str] = "grid"
    summary: ClassVar[str] = "Columns and rows at even distances."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET)
    argument: ClassVar[str] = "COLUMNSxROWS"

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> HoleGrid:
        found = _COUNTS.fullmatch(argument)
        if not found or not int(found[1]) or not int(found[2]):
            what = Message("hole.no_number_columns_rows", argument=argument)
            raise AskError.at("holes", what, Message("hole.write_grid_3x2_example"))
        columns, rows = int(found[1]), int(found[2])
        if columns * rows > _MOST:
            raise AskError.at(
                "holes", Message("hole.holes_too_many", count=columns * rows), Message("hole.use_most", most=_MOST)
            )
        diameter = diameter_of(values)
        inset = inset_of(values, diameter)
        pitch_of(columns, inset, diameter, width_mm, "wide", where="holes")
        pitch_of(rows, inset, diameter, height_mm, "high", where="holes")
        return cls(diameter_mm=diameter, inset_mm=inset, columns=columns, rows=rows)

    def asked(self) -> dict[str, str | float]:
        return {
            "holes": f"{self.name}:{self.columns}x{self.rows}", "hole-diameter": self.diameter_mm,
            "inset": self.inset_mm,
        }  # fmt: skip

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        """Row by row from the bottom, each from the left: 'row 1 column 1', ..."""
        return tuple(
            (f"row {row} column {column}", x, y)
            for row, y in enumerate(spread(self.rows, self.inset_mm, height_mm), 1)
            for column, x in enumerate(spread(self.columns, self.inset_mm, width_mm), 1)
        )
