"""Outlines of signs. To add one: a file with a frozen value that knows its outline, and its line in BORDERS.

The command line grows the options that a border declares, the sign file its keys; nothing else has to know. A border
imports shapely inside `outline` alone, since the command line reads BORDERS for its help.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar, Protocol, Self

from signgen.borders.arched import Arched
from signgen.borders.arrow import Arrow
from signgen.borders.chamfered import Chamfered
from signgen.borders.circle import Circle
from signgen.borders.common import Eye
from signgen.borders.gable import Gable
from signgen.borders.hexagon import Hexagon
from signgen.borders.octagon import Octagon
from signgen.borders.ogee import Ogee
from signgen.borders.oval import Oval
from signgen.borders.path import PathOutline
from signgen.borders.pill import Pill
from signgen.borders.rectangle import Rectangle
from signgen.borders.rounded import Rounded
from signgen.borders.scalloped import Scalloped
from signgen.borders.shield import Shield
from signgen.borders.tag import Tag
from signgen.option import Option, named

if TYPE_CHECKING:
    from shapely.geometry import Polygon


class Border(Protocol):
    """A border read from a spec. Its fields are its options, in millimetres.

    `options` are the keys that it reads, `summary` one sentence for `signgen list borders`, `argument` what stands
    after the colon of `NAME:ARGUMENT`, '' when nothing does.
    """

    name: ClassVar[str]
    summary: ClassVar[str]
    options: ClassVar[tuple[Option, ...]]
    argument: ClassVar[str]

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Self:
        """The border from what stands after the colon and from values that `read_option` gave; those left out get a
        default in proportion to the sign.

        Raises: AskError when the argument names nothing that makes a border.
        """
        ...

    def asked(self) -> dict[str, str | float]:
        """`border` and its options as a sign file would ask for them; reading them gives an equal border."""
        ...

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The outline inside the rectangle from (0, 0) to (width, height), touching all four of its sides,
        counter-clockwise; curves within `chord_mm`. Raises: CannotMakeError with the option that does not fit."""
        ...

    def eyes(self, width_mm: float, height_mm: float) -> tuple[Eye, ...]:
        """(name, x, y, diameter) of each hole that belongs to the border; most have none."""
        ...


BORDERS: tuple[type[Border], ...] = (
    Rectangle,
    Rounded,
    Chamfered,
    Scalloped,
    Ogee,
    Oval,
    Circle,
    Pill,
    Arched,
    Gable,
    Hexagon,
    Octagon,
    Shield,
    Arrow,
    Tag,
    PathOutline,
)


def border_named(asked: str) -> tuple[type[Border], str]:
    """The border of 'NAME' or 'NAME:ARGUMENT', and the argument. Raises: AskError."""
    return named(asked, BORDERS, "border")
