"""What a message can be about. Lengths keep their millimetres until they are put into the units asked for."""

from __future__ import annotations

from typing import ClassVar, Literal

from msgspec import Struct

Kind = Literal["number", "length", "area", "speed"]


class Num(Struct, frozen=True):
    """A number. `places` after the point; None for as few as six digits allow. `trim`: without needless zeros."""

    value: float
    places: int | None = None
    trim: bool = False

    kind: ClassVar[Kind] = "number"


class Mm(Num, frozen=True):
    """A length in millimetres."""

    kind: ClassVar[Kind] = "length"


class Mm2(Num, frozen=True):
    """An area in square millimetres."""

    kind: ClassVar[Kind] = "area"


class MmPerMin(Num, frozen=True):
    """A feed in millimetres a minute."""

    kind: ClassVar[Kind] = "speed"


class Sides(Struct, frozen=True):
    """Millimetres across, as 'width x height' (and so on) with one unit behind them."""

    lengths_mm: tuple[float, ...]
    places: int | None = None
    trim: bool = False


class Typed(Struct, frozen=True):
    """A number as it is typed into a machine or stands in a program: with a point in every language, in millimetres
    or whatever the program is in."""

    value: float
    places: int | None = None
    trim: bool = False
