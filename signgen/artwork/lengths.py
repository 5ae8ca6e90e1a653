"""Lengths of SVG in user units. Source: CSS 2.1 section 4.3.2: 1 px = 1/96 in; W3C, SVG 1.1 (second edition), 7.10."""

from __future__ import annotations

import math
import re

PX_MM = 25.4 / 96
_PX = {"": 1.0, "px": 1.0, "pt": 96 / 72, "pc": 16.0, "in": 96.0, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 96 / 101.6}
_LENGTH = re.compile(r"\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z]*|%)\s*", re.ASCII)

View = tuple[float, float]
"""Width and height of the nearest viewport, of which per cents are parts."""


def length_px(text: str, whole: float) -> float | None:
    """A length in user units; `whole`: what 100 % is. None when it makes no sense or is in a unit of text (em ...)."""
    found = _LENGTH.fullmatch(text)
    if not found:
        return None
    value = float(found[1])
    if found[2] == "%":
        value *= whole / 100
    elif found[2].casefold() in _PX:
        value *= _PX[found[2].casefold()]
    else:
        return None
    return value if math.isfinite(value) else None


def across(view: View) -> float:
    """What 100 % of a length is that goes neither along X nor along Y. Source: SVG 1.1, 7.10."""
    return math.hypot(*view) / math.sqrt(2)
