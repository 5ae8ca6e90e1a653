"""Affine maps of the plane, as SVG writes them."""

from __future__ import annotations

import math
import re

Matrix = tuple[float, float, float, float, float, float]
"""(a, b, c, d, e, f): x' = a x + c y + e, y' = b x + d y + f. Source: SVG 1.1, 7.4."""

IDENTITY: Matrix = (1, 0, 0, 1, 0, 0)

NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?", re.ASCII)
_STEP = re.compile(r"\s*,?\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)", re.ASCII)


def times(first: Matrix, then: Matrix) -> Matrix:
    """The matrix that applies `then` to a point and `first` to what comes out (as nested transforms do)."""
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return (
        a * g + c * h, b * g + d * h,
        a * i + c * j, b * i + d * j,
        a * k + c * m + e, b * k + d * m + f,
    )  # fmt: skip


def transform_of(text: str) -> Matrix | None:
    """A transform list; None when it makes no sense."""
    matrix, at = IDENTITY, 0
    text = text.strip()
    if text == "none":
        return matrix
    while at < len(text):
        step = _STEP.match(text, at)
        one = one_transform(step[1], [float(n) for n in NUMBER.findall(step[2])]) if step else None
        if step is None or one is None:
            return None
        matrix, at = times(matrix, one), step.end()
    return matrix


def one_transform(name: str, n: list[float]) -> Matrix | None:
    """One step of a transform list; None when it has numbers too many or too few. Source: SVG 1.1, 7.6."""
    match name, len(n):
        case "matrix", 6:
            return (n[0], n[1], n[2], n[3], n[4], n[5])
        case "translate", 1 | 2:
            return (1, 0, 0, 1, n[0], n[1] if len(n) == 2 else 0)
        case "scale", 1 | 2:
            return (n[0], 0, 0, n[-1], 0, 0)
        case "rotate", 1 | 3:
            turn = math.radians(n[0])
            spin: Matrix = (math.cos(turn), math.sin(turn), -math.sin(turn), math.cos(turn), 0, 0)
            if len(n) == 1:
                return spin
            return times(times((1, 0, 0, 1, n[1], n[2]), spin), (1, 0, 0, 1, -n[1], -n[2]))
        case "skewX", 1:
            return (1, 0, math.tan(math.radians(n[0])), 1, 0, 0)
        case "skewY", 1:
            return (1, math.tan(math.radians(n[0])), 0, 1, 0, 0)
    return None
