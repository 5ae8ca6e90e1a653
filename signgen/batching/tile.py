"""One sign on the contact sheet."""

from __future__ import annotations

from msgspec import Struct


class Tile(Struct, frozen=True, kw_only=True):
    """A row's sign as it will look: an SVG, and what stands below it; `problem` when it cannot be made as asked."""

    row: int
    words: str
    copies: int = 1
    size_mm: tuple[float, float, float] = (0.0, 0.0, 0.0)
    material: str = ""
    warnings: tuple[str, ...] = ()
    picture: str = ""
    problem: str = ""
