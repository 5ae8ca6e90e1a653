"""Long text broken into lines at its spaces: as few lines as a width allows, and these as even as they can be."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

_BREAKS = re.compile("[ \u1680\u2000-\u2006\u2008-\u200a\u205f\u3000]+")
"""Spaces at which a line may end: all but those that hold words together (U+00A0, U+2007, U+202F)."""


def words(text: str) -> tuple[str, ...]:
    """The parts of a text that stay whole."""
    return tuple(part for part in _BREAKS.split(text) if part)


def wrapped(text: str, most: float, width_of: Callable[[str], float]) -> tuple[str, ...] | None:
    """The lines of a text, none wider than `most` by `width_of`; None when a single word is wider.

    As few lines as can be, and among those the ones whose widest line is narrowest; where that leaves a choice, the
    lines above are filled up first. A text that is not wider than `most` comes back as it is.
    """
    if width_of(text) <= most:
        return (text,)
    parts = words(text)
    count = len(parts)

    @cache
    def width(start: int, end: int) -> float:
        return width_of(" ".join(parts[start:end]))

    if any(width(i, i + 1) > most for i in range(count)):
        return None
    # best[n]: how the first n words stand in (lines, their widest), and where the last of these lines begins
    best: list[tuple[int, float]] = [(0, 0.0)]
    begin = [0]
    for end in range(1, count + 1):
        found: tuple[int, float] | None = None
        for start in range(end - 1, -1, -1):
            wide = width(start, end)
            if wide > most:
                break  # another word would only make it wider
            this = (best[start][0] + 1, max(best[start][1], wide))
            if found is None or this < found:
                found = this
                at = start
        assert found is not None
        best.append(found)
        begin.append(at)
    lines: list[str] = []
    end = count
    while end:
        lines.append(" ".join(parts[begin[end] : end]))
        end = begin[end]
    return tuple(reversed(lines))
