"""Patterns of holes. To add one: a file with a frozen value that knows its centres, and its line in PATTERNS."""

from __future__ import annotations

from typing import ClassVar, Protocol


class HolePattern(Protocol):
    """A pattern read from a spec."""

    name: ClassVar[str]

    @property
    def diameter_mm(self) -> float: ...

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        """(name, x, y) of each hole, names unique ('bottom left', ...). Empty for no holes."""
        ...
