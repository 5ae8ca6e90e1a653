"""Holes and slots in words."""

from __future__ import annotations

from collections.abc import Sequence

from signgen.drawing.drawing import Hole
from signgen.numbers import figure, joined_words


def hole_noun(holes: Sequence[Hole]) -> str:
    """'hole', 'holes', 'slots', or 'holes and slots'."""
    slots = sum(hole.span_mm > 0 for hole in holes)
    rest = len(holes) - slots
    return joined_words(tuple(f"{noun}{'s' * (n > 1)}" for noun, n in (("hole", rest), ("slot", slots)) if n))


def hole_sizes(holes: Sequence[Hole], mark: str = "") -> str:
    """Every size once, in millimetres: '7', '6.6 × 12' for slots, '5.5 sunk to 10.4'; the mark before diameters."""
    return joined_words(tuple(dict.fromkeys(_size(hole, mark) for hole in sorted(holes, key=_order))))


def _order(hole: Hole) -> tuple[float, float]:
    return hole.diameter_mm, hole.span_mm


def _size(hole: Hole, mark: str) -> str:
    across = figure(hole.diameter_mm, 2)
    if hole.span_mm:
        return f"{across}\u00a0×\u00a0{figure(hole.diameter_mm + hole.span_mm, 2)}"
    return f"{mark}{across}" + (f" sunk to {mark}{figure(hole.sink.diameter_mm, 2)}" if hole.sink else "")
