"""An open face as data: what draws its letters, and what they measure."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec import Struct

if TYPE_CHECKING:
    from signgen.geometry.paths import FloatArray

Lines = tuple["FloatArray", ...]
"""Polylines (k, 2) in em that a pen follows; one that ends where it begins is closed."""


class Glyphs(Struct, frozen=True, kw_only=True, eq=False):
    """What draws the letters of a face. Lengths in em (the font's own square is 1 em); equal only to itself.

    `name` is what the user typed, `label` what the font calls itself. `font` is HarfBuzz's (uharfbuzz.Font), in font
    units, for the modules of this package. `lines_of`: of a face whose letters are drawn in lines, those of a glyph;
    such a face has bounds and no areas.
    """

    name: str
    label: str
    path: Path
    number: int
    font: Any
    lines_of: Callable[[int], Lines] | None = None

    @property
    def units_per_em(self) -> int:
        upem: int = self.font.face.upem
        return upem


class Face(Glyphs, frozen=True, kw_only=True, eq=False):
    """`characters`: code points that the face has a glyph for; shaping can compose a few more from their parts.

    `height_letter`: by which the height of capitals is measured, H unless the face has none; `cap_height_em` the top of
    its outline above the baseline, never the height that the font declares. `x_height_em`, `digit_height_em`: the same
    of x and of the lining figure 1; None where the face has none.
    """

    characters: frozenset[int]
    height_letter: str
    cap_height_em: float
    x_height_em: float | None
    digit_height_em: float | None

    def has(self, character: str) -> bool:
        return ord(character) in self.characters

    @property
    def digit_height_ratio(self) -> float | None:
        """Height of the figure 1 over the height of a capital, or None if the face has no 1."""
        return None if self.digit_height_em is None else self.digit_height_em / self.cap_height_em
