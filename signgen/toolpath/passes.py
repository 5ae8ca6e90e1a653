"""Splitting a depth into equal passes."""

from __future__ import annotations

import math


def levels(top_mm: float, bottom_mm: float, stepdown_mm: float) -> tuple[float, ...]:
    """Heights of equal passes from below `top_mm` down to `bottom_mm`, each at most `stepdown_mm` lower than the
    last.

    The last is exactly `bottom_mm`. Empty when there is nothing to go down.
    """
    depth = top_mm - bottom_mm
    if depth <= 0:
        return ()
    count = math.ceil(depth / stepdown_mm - 1e-9)
    return (*(top_mm - depth * i / count for i in range(1, count)), bottom_mm)
