"""Holes at given points."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import combinations
from typing import ClassVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import SIZE_OPTIONS, diameter_of
from signgen.messages import Message, Mm
from signgen.option import Option
from signgen.units import points_mm

_MOST = 200


class AtPoints(Struct, frozen=True, kw_only=True):
    """Holes at points of the sign, measured from its bottom-left corner."""

    diameter_mm: float
    points_mm: tuple[tuple[float, float], ...]

    name: ClassVar[str] = "at"
    summary: ClassVar[str] = "At given points, measured from the sign's bottom-left corner."
    options: ClassVar[tuple[Option, ...]] = SIZE_OPTIONS
    argument: ClassVar[str] = "X,Y;X,Y"

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> AtPoints:
        points, diameter = points_mm(argument, "holes"), diameter_of(values)
        if len(points) > _MOST:
            raise AskError.at(
                "holes", Message("hole.holes_too_many", count=len(points)), Message("hole.use_most", most=_MOST)
            )
        for (i, p), (j, q) in combinations(enumerate(points, 1), 2):
            if math.dist(p, q) <= diameter:
                apart = math.dist(p, q)
                what = Message("hole.points_mm_apart_holes_run", i=i, j=j, apart=Mm(apart), diameter=Mm(diameter))
                raise AskError.at("holes", what, Message("hole.move_one_them_make_holes"))
        return cls(diameter_mm=diameter, points_mm=points)

    def asked(self) -> dict[str, str | float]:
        points = ";".join(f"{_decimal(x)},{_decimal(y)}" for x, y in self.points_mm)
        return {"holes": f"{self.name}:{points}", "hole-diameter": self.diameter_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        return tuple((f"{i}", x, y) for i, (x, y) in enumerate(self.points_mm, 1))


def _decimal(value: float) -> str:
    """The shortest decimal that reads back as the same float, never in powers of ten."""
    from decimal import Decimal

    return f"{Decimal(repr(value)):f}"
