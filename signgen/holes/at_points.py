"""Holes at given points."""

from __future__ import annotations

import math
from collections.abc import Mapping
from itertools import combinations
from typing import ClassVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import SIZE_OPTIONS, diameter_of
from signgen.messages.figures import plain
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
            raise AskError.at("holes", f"{len(points)} holes are too many.", f"Use at most {_MOST}.")
        for (i, p), (j, q) in combinations(enumerate(points, 1), 2):
            if math.dist(p, q) <= diameter:
                apart = plain(math.dist(p, q))
                what = f"Points {i} and {j} are {apart} mm apart: holes of {plain(diameter)} mm run together."
                raise AskError.at("holes", what, "Move one of them, or make the holes smaller.")
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
