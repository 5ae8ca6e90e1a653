"""Patterns of holes. To add one: a file with a frozen value that knows its centres, and its line in PATTERNS.

The command line grows the options that a pattern declares, the sign file its keys; nothing else has to know.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar, Protocol, Self

from signgen.holes.at_points import AtPoints
from signgen.holes.centre import Centre
from signgen.holes.column import Column
from signgen.holes.corners import Corners
from signgen.holes.grid import HoleGrid
from signgen.holes.keyholes import Keyholes
from signgen.holes.none import NoHoles
from signgen.holes.ring import HoleRing
from signgen.holes.row import HoleRow
from signgen.holes.side_pair import SidePair
from signgen.holes.top_pair import TopPair
from signgen.option import Option, named


class HolePattern(Protocol):
    """A pattern read from a spec. `options` are the keys that it reads, `summary` one sentence for `signgen list
    holes`, `argument` what stands after the colon of `NAME:ARGUMENT`, '' when nothing does."""

    name: ClassVar[str]
    summary: ClassVar[str]
    options: ClassVar[tuple[Option, ...]]
    argument: ClassVar[str]

    @property
    def diameter_mm(self) -> float: ...

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Self:
        """The pattern from what stands after the colon and from values that `read_option` gave.

        Raises: AskError when the numbers make no such pattern on a sign of this size.
        """
        ...

    def asked(self) -> dict[str, str | float]:
        """`holes` and its options as a sign file would ask for them; reading them gives an equal pattern."""
        ...

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        """(name, x, y) of each hole, names unique ('bottom left', '1', ...). Empty for no holes."""
        ...


PATTERNS: tuple[type[HolePattern], ...] = (
    NoHoles, Corners, TopPair, SidePair, Centre, HoleRow, Column, HoleGrid, HoleRing, AtPoints, Keyholes,
)  # fmt: skip


def pattern_named(asked: str) -> tuple[type[HolePattern], str]:
    """The pattern of 'NAME' or 'NAME:ARGUMENT', and the argument. Raises: AskError."""
    return named(asked, PATTERNS, "holes", "hole pattern")
