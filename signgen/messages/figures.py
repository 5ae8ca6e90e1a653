"""Numbers and lengths in words: decimals after a point or a comma, in millimetres or inches."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from signgen.messages.values import Kind, Mm, Num, Sides, Typed

Units = Literal["mm", "in"]

MM_PER_INCH = 25.4
"""Exactly. Source: the international yard and pound agreement of 1959."""

INCH_PLACES = 3
"""A thousandth of an inch is as fine as callipers in inches are read; smaller differences get a place more than their
millimetres have."""

FRACTIONS_OF_INCH = 64
"""The finest line on a workshop's rule. Common practice."""

SAME_MM = 0.0005
"""Nearer to a fraction of an inch than this, a length is that fraction: half of the programs' last place."""

_UNITS: dict[tuple[Kind, Units], str] = {
    ("number", "mm"): "", ("number", "in"): "",
    ("length", "mm"): "mm", ("length", "in"): "in",
    ("area", "mm"): "mm2", ("area", "in"): "in2",
    ("speed", "mm"): "mm/min", ("speed", "in"): "in/min",
}  # fmt: skip


def plain(value: float) -> str:
    """As short as six digits allow, never in powers of ten for what fits a sign.

    >>> plain(7.0), plain(0.00001), plain(88.9)
    ('7', '0.00001', '88.9')
    """
    if abs(value) >= 1e6:
        return f"{value:g}"
    text = f"{value:.6g}"
    return f"{value:.6f}".rstrip("0").rstrip(".") if "e" in text else text


def digits(value: float, places: int | None, trim: bool) -> str:
    """The number with a point; never '-0'.

    >>> digits(-0.0001, 2, False), digits(12.50, 2, True), digits(12.5, None, False)
    ('0.00', '12.5', '12.5')
    """
    if places is None:
        return plain(value)
    text = f"{round(float(value), places) + 0.0:.{places}f}"
    return text.rstrip("0").rstrip(".") if trim and "." in text else text


def fraction_of_inch(mm: float) -> str:
    """'3 1/2' for a length that is a fraction of an inch, as on a rule; '' for any other, and for whole inches.

    >>> fraction_of_inch(88.9), fraction_of_inch(6.35), fraction_of_inch(25.4), fraction_of_inch(6.0)
    ('3 1/2', '1/4', '', '')
    """
    parts = round(abs(mm) / MM_PER_INCH * FRACTIONS_OF_INCH)
    if abs(abs(mm) - parts * MM_PER_INCH / FRACTIONS_OF_INCH) > SAME_MM or parts % FRACTIONS_OF_INCH == 0:
        return ""
    whole, rest = divmod(Fraction(parts, FRACTIONS_OF_INCH), 1)
    return f"{'-' if mm < 0 else ''}{f'{whole} ' if whole else ''}{rest}"


def figure(number: Num | Typed, units: Units) -> str:
    """The number alone, in the units, with a point."""
    if isinstance(number, Typed) or number.kind == "number" or units == "mm":
        return digits(number.value, number.places, number.trim)
    if number.kind == "area":
        return digits(number.value / MM_PER_INCH**2, INCH_PLACES, True)
    if number.kind == "speed":
        return digits(number.value / MM_PER_INCH, 1, True)
    return digits(number.value / MM_PER_INCH, max(INCH_PLACES, (number.places or 0) + 1), True)


def measure(number: Num | Typed | Sides, units: Units, point: str, gap: str, *, bare: bool = False) -> str:
    """With its unit unless `bare`; an exact fraction of an inch stands behind it.

    >>> from signgen.messages.values import Mm
    >>> measure(Mm(6.35, 2), "mm", ",", " "), measure(Mm(6.35), "in", ".", " ")
    ('6,35 mm', '0.25 in (1/4)')
    """
    if isinstance(number, Typed):
        return figure(number, units)
    if isinstance(number, Sides):
        sides = (figure(Mm(side, number.places, number.trim), units) for side in number.lengths_mm)
        text, unit = f"{gap}x{gap}".join(sides), _UNITS["length", units]
    else:
        text, unit = figure(number, units), _UNITS[number.kind, units]
    said = text.replace(".", point) + (f"{gap}{unit}" if unit and not bare else "")
    exact = fraction_of_inch(number.value) if isinstance(number, Mm) and units == "in" else ""
    return f"{said} ({exact})" if exact and not bare else said


def grouped(value: int, comma: str) -> str:
    """A count with its thousands apart.

    >>> grouped(12345, ",")
    '12,345'
    """
    return f"{value:,}".replace(",", comma)
