"""Bezier curves to chords, many at a time, no further from the curve than a tolerance.

Both functions split each curve evenly in its parameter. The bound is that of linear interpolation: a chord
over a parameter step h strays from the curve by at most h^2 / 8 times the greatest second derivative.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from signgen.geometry.paths import FloatArray

IntArray = NDArray[np.int64]


def _pieces(second_difference: FloatArray, factor: float, tolerance_mm: float) -> IntArray:
    """(n,) chords that each curve needs: ceil(sqrt(factor |second difference| / tolerance)), at least 1."""
    if not tolerance_mm > 0:
        raise ValueError(f"chord tolerance must be positive, not {tolerance_mm}")
    return np.maximum(1, np.ceil(np.sqrt(factor * second_difference / tolerance_mm))).astype(np.int64)


def _parameters(counts: IntArray) -> tuple[IntArray, FloatArray, IntArray]:
    """For every point its curve and its parameter in (0, 1]; (n + 1,) where each curve's points start."""
    starts = np.concatenate([[0], np.cumsum(counts)])
    owner = np.repeat(np.arange(len(counts)), counts)
    return owner, (np.arange(starts[-1]) - starts[owner] + 1) / counts[owner], starts


def flatten_quadratics(p0: ArrayLike, p1: ArrayLike, p2: ArrayLike, tolerance_mm: float) -> tuple[FloatArray, IntArray]:
    """Chords of n quadratic curves; p0, p1, p2 are (n, 2): start, control point, end.

    Returns (points, starts): points (m, 2) of all curves in order, each without its first point and with its
    last (exactly p2); curve i owns points[starts[i]:starts[i + 1]], starts is (n + 1,). Chains therefore need
    no trimming.

    Source: linear interpolation error bound (any numerical analysis text); B'' = 2 (p0 - 2 p1 + p2) for a
    quadratic.
    """
    a, b, c = (np.asarray(p, dtype=np.float64).reshape(-1, 2) for p in (p0, p1, p2))
    bend = a - 2 * b + c
    counts = _pieces(np.hypot(bend[:, 0], bend[:, 1]), 1 / 4, tolerance_mm)
    owner, t, starts = _parameters(counts)
    t = t[:, None]
    points = a[owner] + t * (2 * (b - a)[owner] + t * bend[owner])
    points[starts[1:] - 1] = c
    return points, starts


def flatten_cubics(
    p0: ArrayLike, p1: ArrayLike, p2: ArrayLike, p3: ArrayLike, tolerance_mm: float
) -> tuple[FloatArray, IntArray]:
    """Chords of n cubic curves; p0 to p3 are (n, 2): start, two control points, end. Returns as
    `flatten_quadratics`.

    Source: as there; |B''| <= 6 max(|p0 - 2 p1 + p2|, |p1 - 2 p2 + p3|) for a cubic.
    """
    a, b, c, d = (np.asarray(p, dtype=np.float64).reshape(-1, 2) for p in (p0, p1, p2, p3))
    first, second = a - 2 * b + c, b - 2 * c + d
    worst = np.maximum(np.hypot(first[:, 0], first[:, 1]), np.hypot(second[:, 0], second[:, 1]))
    counts = _pieces(worst, 3 / 4, tolerance_mm)
    owner, t, starts = _parameters(counts)
    t = t[:, None]
    points = a[owner] + t * (3 * (b - a)[owner] + t * (3 * first[owner] + t * (second - first)[owner]))
    points[starts[1:] - 1] = d
    return points, starts
