"""A curve through points that were drawn as chords: arcs that pass through every point and join without a kink."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence

import numpy as np

from signgen.geometry.paths import FloatArray

CORNER_DEG = 60.0
"""A turn that is meant as a corner. Coarse chords of small curves turn by up to 53 degrees."""

LONG_RATIO = 2.0
"""A chord so much longer than both its neighbours is a straight line that the curve runs into."""

LONG_CORNER_DEG = 20.0
"""A turn between two chords that are long for the drawing is a corner from here on."""


def smoothed(points: FloatArray, tolerance: float, long: float = math.inf) -> FloatArray:
    """(m, 2) the curve through (n, 2) points as fine chords, all of which lie within `tolerance` of it.

    Corners stay, and so do straight lines; between them two arcs lead from each point to the next, with the direction
    there that the circle through it and its neighbours has. `long`: the length from which on chords are long. When the
    first point is the last again the curve closes without a kink. Fewer than three different points come back as they
    are.

    Source: biarcs with equal tangent lengths, K. M. Bolton, Biarc curves, Computer-Aided Design 7 (1975); here from
    memory.
    """
    chain = _without_repeats(np.asarray(points, dtype=np.float64))
    if len(chain) < 3:
        return chain
    closed = bool(np.array_equal(chain[0], chain[-1]))
    step = np.diff(chain, axis=0)
    length = np.hypot(step[:, 0], step[:, 1])
    heading = step / length[:, None]
    corner = _corners(heading, length, closed, long)
    straight = _straights(length, corner, closed)
    before, after = _directions(heading, length, corner, straight, closed)
    parts = [chain[:1]]
    for i in range(len(step)):
        if straight[i]:
            parts.append(chain[i + 1 : i + 2])
        else:
            parts.append(biarc(chain[i], after[i], chain[i + 1], before[i + 1], tolerance))
    return np.concatenate(parts)


def _without_repeats(points: FloatArray) -> FloatArray:
    keep = np.ones(len(points), dtype=bool)
    keep[1:] = np.any(points[1:] != points[:-1], axis=1)
    return points[keep]


def _corners(heading: FloatArray, length: FloatArray, closed: bool, long: float) -> np.ndarray:
    """(n,) which points are corners; the ends of an open chain are."""
    incoming, outgoing = np.roll(heading, 1, axis=0), heading
    cross = incoming[:, 0] * outgoing[:, 1] - incoming[:, 1] * outgoing[:, 0]
    turn = np.degrees(np.abs(np.arctan2(cross, np.einsum("ij,ij->i", incoming, outgoing))))
    both_long = (length >= long) & (np.roll(length, 1) >= long)
    corner = (turn > CORNER_DEG) | (both_long & (turn > LONG_CORNER_DEG))
    corner = np.append(corner, corner[0])
    if not closed:
        corner[[0, -1]] = True
    return corner


def _straights(length: FloatArray, corner: np.ndarray, closed: bool) -> np.ndarray:
    """(n - 1,) which chords are straight lines: those between two corners, and long ones."""
    n = len(length)
    straight = corner[:-1] & corner[1:]
    for i in range(n):
        beside = [length[i - 1]] if not corner[i] and (i or closed) else []
        beside += [length[(i + 1) % n]] if not corner[i + 1] else []
        if beside and length[i] >= LONG_RATIO * max(beside):
            straight[i] = True
    return np.asarray(straight)


def _directions(
    heading: FloatArray, length: FloatArray, corner: np.ndarray, straight: np.ndarray, closed: bool
) -> tuple[FloatArray, FloatArray]:
    """(n, 2) twice: the direction in which the curve comes to each point, and in which it leaves it."""
    n = len(heading)
    before, after = np.full((n + 1, 2), np.nan), np.full((n + 1, 2), np.nan)
    for i in range(n + 1):
        if corner[i]:
            continue
        one, other = (i - 1) % n, i % n
        if straight[one]:
            direction = heading[one]
        elif straight[other]:
            direction = heading[other]
        else:
            # The circle through three points: angles to its chords go by their lengths.
            direction = heading[one] * length[other] + heading[other] * length[one]
        before[i] = after[i] = direction / np.hypot(*direction)
    for i in range(n):  # ends of a curve: as its other end mirrored at the chord
        if np.isnan(after[i, 0]) and not straight[i]:
            after[i] = _mirrored(before[i + 1], heading[i])
        if np.isnan(before[i + 1, 0]) and not straight[i]:
            before[i + 1] = _mirrored(after[i], heading[i])
    return before, after


def _mirrored(direction: FloatArray, chord: FloatArray) -> FloatArray:
    return np.asarray(2 * np.dot(direction, chord) * chord - direction)


def biarc(start: FloatArray, leaving: FloatArray, end: FloatArray, arriving: FloatArray, tol: float) -> FloatArray:
    """Chords of the two arcs from one point to the next, without the first point."""
    across = end - start
    both = leaving + arriving
    a, b = 2 * (1 - float(np.dot(leaving, arriving))), float(np.dot(across, both))
    c = float(np.dot(across, across))
    if a < 1e-9:
        if b <= 0:
            return end[None, :]
        reach = c / (2 * b)
    else:
        reach = (-b + math.sqrt(b * b + a * c)) / a
    middle = ((start + reach * leaving) + (end - reach * arriving)) / 2
    first = _arc(start, leaving, middle, tol)
    second = _arc(end, -arriving, middle, tol)[::-1]
    return np.concatenate([first[1:], second[1:]])


def _arc(start: FloatArray, leaving: FloatArray, end: FloatArray, tol: float) -> FloatArray:
    """Chords of the arc that leaves one point in a direction and ends at another, both included."""
    across = end - start
    left = np.array([-leaving[1], leaving[0]])
    aside = float(np.dot(across, left))
    chord = float(np.hypot(*across))
    if abs(aside) <= 1e-9 * max(chord, 1e-12):
        return np.stack([start, end])
    radius = chord * chord / (2 * aside)  # signed: positive turns to the left
    turn = 2 * math.atan2(aside, float(np.dot(across, leaving)))
    rows = arc_points(start, start + radius * left, turn, tol)
    rows[-1] = end
    return rows


def arc_points(start: FloatArray, centre: FloatArray, turn_rad: float, tol: float) -> FloatArray:
    """Chords of an arc about a centre, its start and its end included; positive angles turn to the left."""
    x, y = start - centre
    radius = math.hypot(x, y)
    step = 2 * math.acos(max(-1.0, 1 - tol / radius)) if tol < radius else math.pi / 2
    angles = np.linspace(0.0, turn_rad, max(1, math.ceil(abs(turn_rad) / step)) + 1)
    cos, sin = np.cos(angles), np.sin(angles)
    rows: FloatArray = centre + np.stack([x * cos - y * sin, x * sin + y * cos], axis=1)
    rows[0] = start
    return rows


def chained(lines: Sequence[FloatArray]) -> list[FloatArray]:
    """Polylines joined where exactly two of them end at the same place, so that a pen lifts less often."""
    left = [np.asarray(line) for line in lines]
    ends = Counter(end for line in left if not _is_closed(line) for end in _ends(line))
    done: list[FloatArray] = []
    while left:
        line, grown = left.pop(0), True
        while grown and not _is_closed(line):
            grown = False
            for i, other in enumerate(left):
                joined = None if _is_closed(other) else _joined(line, other, ends)
                if joined is not None:
                    line, grown = joined, True
                    left.pop(i)
                    break
        done.append(line)
    return done


def _joined(line: FloatArray, other: FloatArray, ends: Counter[tuple[float, float]]) -> FloatArray | None:
    """Two polylines as one, None when no end of one is an end of the other and of no third."""
    first, last = _ends(line)
    for way in (other, other[::-1]):
        begins, _ = _ends(way)
        if ends[begins] == 2 and begins == last:
            return np.concatenate([line, way[1:]])
        if ends[begins] == 2 and begins == first:
            return np.concatenate([way[::-1], line[1:]])
    return None


def _ends(line: FloatArray) -> tuple[tuple[float, float], tuple[float, float]]:
    (x0, y0), (x1, y1) = line[0].tolist(), line[-1].tolist()
    return (x0, y0), (x1, y1)


def _is_closed(line: FloatArray) -> bool:
    return bool(np.array_equal(line[0], line[-1]))
