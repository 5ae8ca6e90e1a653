"""Outlines of signs. To add one: a file with a frozen value that knows its outline, and its line in BORDERS.

The command line grows the options that a border declares, the sign file its keys; nothing else has to know. A border
imports shapely inside `outline` alone, since the command line reads BORDERS for its help.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, Protocol, Self

from signgen.borders.rectangle import Rectangle
from signgen.borders.rounded import Rounded
from signgen.option import Option, pick

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Border(Protocol):
    """A border read from a spec. Its fields are its options, in millimetres.

    `options` are the keys that it reads, `summary` one sentence for `signgen list borders`.
    """

    name: ClassVar[str]
    summary: ClassVar[str]
    options: ClassVar[tuple[Option, ...]]

    @classmethod
    def from_options(cls, values: Mapping[str, object], width_mm: float, height_mm: float) -> Self:
        """The border from values that `read_option` gave; those left out get a default in proportion to the sign."""
        ...

    def asked(self) -> dict[str, str | float]:
        """Its options as a sign file would ask for them; reading them gives an equal border."""
        ...

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The outline inside the rectangle from (0, 0) to (width, height), touching all four of its sides,
        counter-clockwise; curves within `chord_mm`. Raises: CannotMakeError with the option that does not fit."""
        ...


BORDERS: tuple[type[Border], ...] = (Rectangle, Rounded)


def border_named(name: str) -> type[Border]:
    """The border of a name. Raises: AskError that offers close matches."""
    found = pick(name, (border.name for border in BORDERS), "border")
    return next(border for border in BORDERS if border.name == found)


def read_border(name: str, options: Mapping[str, object], width_mm: float, height_mm: float) -> Border:
    """The border of a name with those of its options that were asked for (values of `read_option` by option name).

    Raises: AskError when there is no such border.
    """
    return border_named(name).from_options(options, width_mm, height_mm)
