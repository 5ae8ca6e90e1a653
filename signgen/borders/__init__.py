"""Outlines of signs. To add one: a file with a frozen value that knows its outline, and its line in BORDERS."""

from __future__ import annotations

from typing import ClassVar, Protocol

from shapely.geometry import Polygon


class Border(Protocol):
    """A border read from a spec. Its fields are its options, in millimetres."""

    name: ClassVar[str]

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The outline inside the rectangle from (0, 0) to (width, height), touching all four of its sides,
        counter-clockwise; curves within `chord_mm`. Raises: CannotMakeError with the option that does not fit."""
        ...
