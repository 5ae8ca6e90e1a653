"""Which collet holds a shank, and how much of it must grip.

Source: ISO 15488:2003 (collets with 8 degree setting angle), nominal sizes and overall capacities as reproduced in
ISO 15488:2003. Collapse: 1 mm a collet in sizes 16 and larger (from memory), 0.5 mm in size 11.
"""

from __future__ import annotations

import math
from fractions import Fraction

from msgspec import Struct

from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm
from signgen.shop.tools import Tool

LEAST_GRIP_RATIO = 2 / 3
"""Share of the collet's length that must grip the shank (from memory)."""


class Series(Struct, frozen=True, kw_only=True):
    """A nominal size of the standard: what it can hold, how far one collet closes, how long its collets are."""

    least_mm: float
    greatest_mm: float
    step_mm: Fraction
    length_mm: float


SERIES = {
    11: Series(least_mm=0.5, greatest_mm=7, step_mm=Fraction(1, 2), length_mm=18),
    16: Series(least_mm=0.5, greatest_mm=10, step_mm=Fraction(1), length_mm=27.5),
    20: Series(least_mm=0.5, greatest_mm=13, step_mm=Fraction(1), length_mm=31.5),
    25: Series(least_mm=0.5, greatest_mm=16, step_mm=Fraction(1), length_mm=34),
    32: Series(least_mm=1, greatest_mm=20, step_mm=Fraction(1), length_mm=40),
    40: Series(least_mm=2, greatest_mm=26, step_mm=Fraction(1), length_mm=46),
}
"""Capacities: ISO 15488:2003 (size 40 and all lengths from memory of DIN 6499 form B)."""

NUT_DIAMETER_MM = {11: 19.0, 16: 28.0, 20: 34.0, 25: 42.0, 32: 50.0, 40: 63.0}
"""Outer diameter of the clamping nut by nominal collet size, from memory of makers' sheets (plain nuts, the
larger kind)."""


class Collet(Struct, frozen=True, kw_only=True):
    """A collet of one size: holds shanks from `lower_mm` to `upper_mm`, never thicker ones."""

    series: int
    upper_mm: float
    lower_mm: float
    grip_mm: float

    @property
    def label(self) -> str:
        """What is engraved on it: '8-7' in whole steps, '4.0-3.5' in halves."""
        digits = 0 if SERIES[self.series].step_mm == 1 and self.lower_mm >= 1 else 1
        return f"{self.upper_mm:.{digits}f}-{self.lower_mm:.{digits}f}"


def collet_for(shank_mm: float, series: int) -> Collet | None:
    """The smallest collet that takes a shank, since collets close and do not open; None when the size has none."""
    size = SERIES[series]
    if not size.least_mm <= shank_mm <= size.greatest_mm:
        return None
    upper = math.ceil(Fraction(repr(float(shank_mm))) / size.step_mm) * size.step_mm
    lower = max(upper - size.step_mm, Fraction(1, 2))
    grip = round(LEAST_GRIP_RATIO * size.length_mm, 2)
    return Collet(series=series, upper_mm=float(upper), lower_mm=float(lower), grip_mm=grip)


def collet_of_tool(tool: Tool, series: int) -> Collet:
    """The collet for a cutter.

    Raises: CannotMakeError when the machine's collets do not take its shank.
    """
    collet = collet_for(tool.shank_mm, series)
    if collet is None:
        size = SERIES[series]
        raise CannotMakeError.at(
            tool.name,
            Message("shop.shank_does_not_go_into", shank=Mm(tool.shank_mm), series=series),
            Message("shop.they_take", least=Mm(size.least_mm), greatest=Mm(size.greatest_mm)),
        )
    return collet
