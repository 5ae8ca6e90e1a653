"""Bezier curves to chords, many at a time, no further from the curve than a tolerance.

Chords are short where a curve is bent and long where it is flat, so that they all stray about as far: a fifth fewer
for a letter than with points spread evenly in the parameter. A chord over a small step h of it strays by h^2 / 8 times
the second derivative's part across the curve, so points stand as close as the root of that part. It is only the way
to a good guess: what counts is how far each chord does stray, by the control points of its own piece of the curve.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from signgen.geometry.paths import FloatArray

IntArray = NDArray[np.int64]

LINE, QUADRATIC, CUBIC = 1, 2, 3
"""The number of control points after the first."""

_SAMPLES = 32
"""Places on a curve where its bend is looked at."""

_TRIALS = 4
"""How often a curve gets one more chord before its points are spread evenly."""


def flatten_mixed(kinds: IntArray, controls: FloatArray, tolerance_mm: float) -> tuple[FloatArray, IntArray]:
    """Chords of n lines and curves: kinds (n,) LINE, QUADRATIC or CUBIC; controls (n, 4, 2), of which a line reads the
    last, a quadratic the first two and the last.

    Returns as `flatten_quadratics`.
    """
    if not len(kinds):
        return np.empty((0, 2)), np.zeros(1, np.int64)
    is_line, is_quadratic, is_cubic = (np.flatnonzero(kinds == kind) for kind in (LINE, QUADRATIC, CUBIC))
    quadratics, cubics = np.moveaxis(controls[is_quadratic], 1, 0), np.moveaxis(controls[is_cubic], 1, 0)
    pieces = (
        (is_line, controls[is_line, 3], np.arange(len(is_line) + 1)),
        (is_quadratic, *flatten_quadratics(quadratics[0], quadratics[1], quadratics[3], tolerance_mm)),
        (is_cubic, *flatten_cubics(cubics[0], cubics[1], cubics[2], cubics[3], tolerance_mm)),
    )
    counts = np.empty(len(kinds), dtype=np.int64)
    for chosen, _, within in pieces:
        counts[chosen] = np.diff(within)
    first = np.concatenate([[0], np.cumsum(counts)])
    points = np.empty((first[-1], 2))
    for chosen, some, within in pieces:
        number = np.arange(len(some)) - np.repeat(within[:-1], np.diff(within))
        points[np.repeat(first[chosen], counts[chosen]) + number] = some
    return points, first


def flatten_quadratics(p0: ArrayLike, p1: ArrayLike, p2: ArrayLike, tolerance_mm: float) -> tuple[FloatArray, IntArray]:
    """Chords of n quadratic curves; p0, p1, p2 are (n, 2): start, control point, end.

    Returns (points, starts): points (m, 2) of all curves in order, each without its first point and with its
    last (exactly p2); curve i owns points[starts[i]:starts[i + 1]], starts is (n + 1,). Chains therefore need
    no trimming.
    """
    a, b, c = (np.asarray(p, dtype=np.float64).reshape(-1, 2) for p in (p0, p1, p2))
    return _flattened(np.stack([a, 2 * (b - a), a - 2 * b + c], axis=1), c, tolerance_mm)


def flatten_cubics(
    p0: ArrayLike, p1: ArrayLike, p2: ArrayLike, p3: ArrayLike, tolerance_mm: float
) -> tuple[FloatArray, IntArray]:
    """Chords of n cubic curves; p0 to p3 are (n, 2): start, two control points, end. Returns as
    `flatten_quadratics`.
    """
    a, b, c, d = (np.asarray(p, dtype=np.float64).reshape(-1, 2) for p in (p0, p1, p2, p3))
    return _flattened(np.stack([a, 3 * (b - a), 3 * (a - 2 * b + c), d - 3 * (c - b) - a], axis=1), d, tolerance_mm)


def _flattened(powers: FloatArray, ends: FloatArray, tolerance: float) -> tuple[FloatArray, IntArray]:
    """Chords of n curves from the coefficients (n, degree + 1, 2) of their powers of t."""
    if not tolerance > 0:
        raise ValueError(f"chord tolerance must be positive, not {tolerance}")
    even = _even_counts(powers, tolerance)
    counts, spread = even.copy(), np.zeros((len(powers), _SAMPLES + 1))
    spread[:] = np.linspace(0.0, 1.0, _SAMPLES + 1)
    left = np.flatnonzero(even > 1)
    if len(left):
        density = _density(powers[left], tolerance)
        total = density.sum(axis=1)
        wanted = np.maximum(1, np.ceil(total - 1e-9)).astype(np.int64)
        graded = np.concatenate([np.zeros((len(left), 1)), np.cumsum(density, axis=1)], axis=1)
        graded /= np.maximum(graded[:, -1:], 1e-300)
        graded[:, -1] = 1.0
        for _ in range(_TRIALS):
            fewer = wanted < even[left]
            left, wanted, graded = left[fewer], wanted[fewer], graded[fewer]
            if not len(left):
                break
            holds = _holds(powers[left], *_parameters(wanted, graded), tolerance)
            counts[left[holds]], spread[left[holds]] = wanted[holds], graded[holds]
            left, wanted, graded = left[~holds], wanted[~holds] + 1, graded[~holds]
    t, starts = _parameters(counts, spread)
    points = _at(powers[np.repeat(np.arange(len(counts)), counts)], t)
    points[starts[1:] - 1] = ends
    return points, starts


def _even_counts(powers: FloatArray, tolerance: float) -> IntArray:
    """(n,) chords that do for each curve when its points are spread evenly in t, at least 1.

    Source: linear interpolation over a step h errs by at most h^2 / 8 times the greatest second derivative (any text
    on numerical analysis); a Bezier curve's is greatest at an end, for it is linear in t.
    """
    bend = 2 * powers[:, 2]
    worst = np.hypot(bend[:, 0], bend[:, 1])
    if powers.shape[1] == 4:
        bend = bend + 6 * powers[:, 3]
        worst = np.maximum(worst, np.hypot(bend[:, 0], bend[:, 1]))
    return np.maximum(1, np.ceil(np.sqrt(worst / (8 * tolerance)))).astype(np.int64)


def _density(powers: FloatArray, tolerance: float) -> FloatArray:
    """(n, _SAMPLES) chords wanted in each part of each curve.

    Source: knots for piecewise linear interpolation are best spread as the root of the second derivative (de Boor, A
    Practical Guide to Splines, on the placement of knots; from memory).
    """
    t = (np.arange(_SAMPLES) + 0.5) / _SAMPLES
    slope, bend = _slope(powers[:, None], t), 2 * powers[:, None, 2] + np.zeros((_SAMPLES, 1))
    if powers.shape[1] == 4:
        bend = bend + 6 * t[:, None] * powers[:, None, 3]
    length = np.maximum(np.hypot(slope[..., 0], slope[..., 1]), 1e-300)
    across = np.abs(slope[..., 0] * bend[..., 1] - slope[..., 1] * bend[..., 0]) / length
    found: FloatArray = np.sqrt(across / (8 * tolerance)) / _SAMPLES
    return found


def _parameters(counts: IntArray, spread: FloatArray) -> tuple[FloatArray, IntArray]:
    """The parameter in (0, 1] of every point, and (n + 1,) where each curve's points start. `spread` (n, _SAMPLES + 1):
    the share of a curve's points up to each of the evenly spaced places."""
    starts = np.concatenate([[0], np.cumsum(counts)])
    owner = np.repeat(np.arange(len(counts)), counts)
    share = (np.arange(starts[-1]) - starts[owner] + 1) / counts[owner]
    # All curves' tables in one ascending row, so that one search serves all.
    table = (spread[:, :-1] + np.arange(len(spread))[:, None]).ravel()
    cell = np.searchsorted(table, share + owner, side="right") - 1 - owner * _SAMPLES
    cell = np.clip(cell, 0, _SAMPLES - 1)
    low, high = spread[owner, cell], spread[owner, cell + 1]
    t = (cell + np.clip((share - low) / np.maximum(high - low, 1e-300), 0.0, 1.0)) / _SAMPLES
    t[starts[1:] - 1] = 1.0
    return t, starts


def _holds(powers: FloatArray, t: FloatArray, starts: IntArray, tolerance: float) -> NDArray[np.bool_]:
    """(n,) whether no chord of a curve strays further than the tolerance from its piece of the curve, nor the piece
    beyond the chord's ends.

    The piece between two parameters is a Bezier curve with control points of its own. Where these lie d (and e) off the
    chord, a quadratic strays by d / 2, and a cubic, by 3 t (1 - t)^2 d + 3 t^2 (1 - t) e, by no more than 3/4 of the
    greater. The piece ends where the chord does when they lie between its ends.
    """
    owner = np.repeat(np.arange(len(powers)), np.diff(starts))
    before = np.concatenate([[0.0], t[:-1]])
    before[starts[:-1]] = 0.0
    own = powers[owner]
    start, end, step = _at(own, before), _at(own, t), (t - before)[:, None]
    chord = end - start
    length = np.hypot(chord[:, 0], chord[:, 1])
    degree = powers.shape[1] - 1
    controls = [start + step / degree * _slope(own, before)]
    if degree == 3:
        controls.append(end - step / degree * _slope(own, t))
    good = length > 0
    for control in controls:
        x, y = (control - start).T
        along = x * chord[:, 0] + y * chord[:, 1]
        off = np.abs(x * chord[:, 1] - y * chord[:, 0]) / np.maximum(length, 1e-300)
        good &= (along >= 0) & (along <= length**2) & (off * (0.5 if degree == 2 else 0.75) <= tolerance)
    return np.logical_and.reduceat(good, starts[:-1])


def _at(powers: FloatArray, t: FloatArray) -> FloatArray:
    """The curves' points at t."""
    t = t[..., None]
    points = powers[..., -1, :]
    for k in range(powers.shape[-2] - 2, -1, -1):
        points = points * t + powers[..., k, :]
    return points


def _slope(powers: FloatArray, t: FloatArray) -> FloatArray:
    """The curves' first derivatives at t."""
    t = t[..., None]
    slope = powers[..., 1, :] + 2 * t * powers[..., 2, :]
    return slope + 3 * t * t * powers[..., 3, :] if powers.shape[-2] == 4 else slope
