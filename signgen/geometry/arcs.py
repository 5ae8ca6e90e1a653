"""Chains of points to few long lines and helical arcs that stay within a tolerance of them.

Greedy: from each point the longest line or arc to a later point that keeps to the chain, found by doubling
and bisection. "Keeps to" is two-sided: every point of the new curve is matched with one of the chain (same
projection on a line, same angle on an arc, both in order), and |distance across XY| + |difference in w| is at
most the tolerance for all of them, between the chain's points too. A centre and a radius off by that much
together move a V-bit's wall by no more.

What follows a point depends on that point alone, so many runners work at once, from every corner and from
many a place between, in batches of numpy; one that reaches a point where another has been stops there, for the
rest is known. Two runners meet within a few steps on all but the evenest curves; there one steps a little shorter,
onto the other's track. Whether one line or arc keeps to its points is tried in `arc_trial`.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike

from signgen.geometry.arc_trial import MAX_RADIUS_MM as MAX_RADIUS_MM
from signgen.geometry.arc_trial import MIN_RADIUS_MM as MIN_RADIUS_MM
from signgen.geometry.arc_trial import IntArray, try_spans
from signgen.geometry.paths import CCW, CW, LINE, FloatArray, Path
from signgen.tolerances import CORNER_DEG

USED_RATIO = 0.9
"""Part of the tolerance that the fit uses; the rest is for the program's decimals."""

STRAIGHT_MM, STRAIGHT_RATIO = 3.0, 4.0
"""A piece this long, and this many times as long as both its neighbours, is a straight of the design: it keeps its
ends, so that an arc begins where the straight ends and not a little before it."""

_FIRST_STEP = 8
_LONG_CHAIN = 256
_SAMPLES = 12
_TRACK_SEGMENTS = 12


def fit(points: ArrayLike, tolerance_mm: float, corner_deg: float = CORNER_DEG) -> Path:
    """The chain through (n, 3) points x, y, w as lines and arcs; n >= 1, both ends kept exactly.

    w is whatever changes along the path, a radius or a height, in mm; it becomes the path's third coordinate
    and goes in proportion to the arc's angle. Turns of more than `corner_deg` stay where they are. Every end
    of a line or arc is one of the points given.

    Raises: ValueError when an array is not (n, 3) with n >= 1 and finite, or the tolerance is not positive.
    """
    return fit_all([points], tolerance_mm, corner_deg)[0]


def fit_ring(points: ArrayLike, tolerance_mm: float, corner_deg: float = CORNER_DEG) -> Path:
    """A closed loop through (n, 3) points, n >= 2, closing point optional, walked in the order given.

    It starts at the sharpest corner, or where the longest straight piece starts if it has none, and ends
    exactly there.
    """
    return fit_rings([points], tolerance_mm, corner_deg)[0]


def fit_rings(rings: Sequence[ArrayLike], tolerance_mm: float, corner_deg: float = CORNER_DEG) -> list[Path]:
    """`fit_ring` for many loops at once, which is much quicker than one by one."""
    return fit_all([_opened(ring, corner_deg) for ring in rings], tolerance_mm, corner_deg)


def fit_all(chains: Sequence[ArrayLike], tolerance_mm: float, corner_deg: float = CORNER_DEG) -> list[Path]:
    """`fit` for many chains at once, which is much quicker than one by one."""
    if not tolerance_mm > 0:
        raise ValueError(f"tolerance must be positive, not {tolerance_mm}")
    parts = [_without_repeats(_checked(chain)) for chain in chains]
    if not parts:
        return []
    points = np.concatenate(parts)
    # Chain by chain, so that no chain's rounding depends on its company.
    travelled = np.concatenate([_travelled(part) for part in parts])
    last = np.cumsum([len(part) for part in parts]) - 1
    stops = _stops(points, last, corner_deg)
    following, bulge = _greedy(points, travelled, last, stops, tolerance_mm * USED_RATIO)
    return [
        _assembled(points, following, bulge, int(end) - len(part) + 1, int(end))
        for part, end in zip(parts, last, strict=True)
    ]


def _checked(chain: ArrayLike) -> FloatArray:
    points = np.asarray(chain, dtype=np.float64)
    if points.ndim != 2 or points.shape[1] != 3 or not len(points):
        raise ValueError(f"a chain is (n, 3) with n >= 1, not {points.shape}")
    if not np.isfinite(points).all():
        raise ValueError("a chain has a coordinate that is not a finite number")
    return points


def _without_repeats(points: FloatArray) -> FloatArray:
    keep = np.ones(len(points), dtype=bool)
    keep[1:] = np.any(points[1:] != points[:-1], axis=1)
    return points[keep]


def _travelled(points: FloatArray) -> FloatArray:
    """(n,) how far across XY each point is along the chain."""
    step = np.diff(points[:, :2], axis=0)
    return np.concatenate([[0.0], np.cumsum(np.hypot(step[:, 0], step[:, 1]))])


def _turns_rad(before: FloatArray, after: FloatArray) -> FloatArray:
    """(n,) how far each of (n, 2) steps turns to the next, 0 to pi; standing still turns nowhere."""
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    turn: FloatArray = np.arctan2(cross, np.einsum("ij,ij->i", before, after))
    return np.abs(turn)


def _opened(ring: ArrayLike, corner_deg: float) -> FloatArray:
    """The ring rolled to its best start, with the closing point."""
    points = _without_repeats(_checked(ring))
    if len(points) > 1 and np.array_equal(points[0], points[-1]):
        points = points[:-1]
    step = np.roll(points, -1, axis=0)[:, :2] - points[:, :2]
    turn = _turns_rad(np.roll(step, 1, axis=0), step)
    start = int(np.argmax(turn))
    if turn[start] <= np.radians(corner_deg):
        length = np.hypot(step[:, 0], step[:, 1])
        start = int(np.argmax(length >= length.max() * (1 - 1e-9)))
    rolled = np.roll(points, -start, axis=0)
    return np.concatenate([rolled, rolled[:1]])


def _stops(points: FloatArray, last: IntArray, corner_deg: float) -> IntArray:
    """Indices of points that no line or arc may run past: ends of chains, corners, ends of straights; ascending."""
    step = np.diff(points[:, :2], axis=0)
    corner = np.zeros(len(points), dtype=bool)
    if len(points) > 2:
        corner[1:-1] = _turns_rad(step[:-1], step[1:]) > np.radians(corner_deg)
        length = np.hypot(step[:, 0], step[:, 1])
        length[last[:-1]] = 0.0  # the steps from chain to chain are not there
        beside = np.maximum(np.append(length[1:], 0.0), np.append(0.0, length[:-1]))
        straight = np.flatnonzero((length >= STRAIGHT_MM) & (length >= STRAIGHT_RATIO * beside))
        corner[straight] = True
        corner[straight + 1] = True
    corner[last] = True
    corner[0] = True
    corner[np.minimum(last[:-1] + 1, len(points) - 1)] = True
    return np.flatnonzero(corner)


def _greedy(
    points: FloatArray, travelled: FloatArray, last: IntArray, stops: IntArray, tolerance: float
) -> tuple[IntArray, FloatArray]:
    """For each point that is reached: the index of the end of its line or arc (-1 elsewhere), and that one's k.

    k is tan(sweep / 4), positive when the arc bulges to the left of its chord (clockwise), 0 for a line.
    """
    n = len(points)
    following = np.full(n, -1, dtype=np.int64)
    bulge = np.zeros(n)
    end_of = stops[np.minimum(np.searchsorted(stops, np.arange(n), side="right"), len(stops) - 1)]
    start, limit = _runners(points, travelled, last, end_of, tolerance)
    begun = np.zeros(n, dtype=bool)
    begun[start] = True
    while len(start):
        reach, k = _longest(points, travelled, start, end_of[start], tolerance)
        late = np.flatnonzero(start >= limit)
        if len(late):
            # Runners in equal steps along an even curve may never meet: step a little shorter, onto another's track.
            known = np.flatnonzero(begun)
            other = known[np.searchsorted(known, reach[late], side="right") - 1]
            late, other = late[other > start[late]], other[other > start[late]]
            fits, joined_k = try_spans(points, travelled, start[late], other, tolerance)
            reach[late[fits]], k[late[fits]] = other[fits], joined_k[fits]
        following[start], bulge[start] = reach, k
        fresh, first = np.unique(reach, return_index=True)
        new = ~begun[fresh] & (end_of[fresh] > fresh)
        start, limit = fresh[new], limit[first[new]]
        begun[start] = True
    return following, bulge


def _runners(
    points: FloatArray, travelled: FloatArray, last: IntArray, end_of: IntArray, tolerance: float
) -> tuple[IntArray, IntArray]:
    """Where runners start, ascending, and for each the point from which it should look for another's track.

    Beside those at corners they are set out so far apart that a track is some dozen lines and arcs, judged by a few
    samples of each long chain for itself: no chain's path depends on its company.
    """
    first = np.concatenate([[0], last[:-1] + 1])
    long = np.flatnonzero(last - first >= _LONG_CHAIN)
    extra, spacing = [np.empty(0, np.int64)], np.full(len(last), len(points))
    if len(long):
        share = np.arange(_SAMPLES) / _SAMPLES
        sample = (first[long, None] + share * (last - first)[long, None]).astype(np.int64)
        reach, _ = _longest(points, travelled, sample.ravel(), end_of[sample.ravel()], tolerance)
        gone = np.mean(reach.reshape(sample.shape) - sample, axis=1)
        spacing[long] = np.maximum(_FIRST_STEP, _TRACK_SEGMENTS * gone)
        extra += [np.arange(first[i], last[i], spacing[i]) for i in long]
    start = np.union1d(end_of, np.concatenate([first, *extra]))
    start = start[end_of[start] > start]
    return start, start + 2 * spacing[np.searchsorted(last, start)]


def _longest(
    points: FloatArray, travelled: FloatArray, start: IntArray, end: IntArray, tolerance: float
) -> tuple[IntArray, FloatArray]:
    """For each start the furthest point, `end` at most, that a line or arc can be found to; and its k."""
    final, final_k = start + 1, np.zeros(len(start))
    who = np.arange(len(start))
    reach, too_far, k = start + 1, end + 1, np.zeros(len(start))
    step = np.full(len(start), _FIRST_STEP)
    while len(who):
        # Doubling while nothing was too far (step > 0), bisecting afterwards (step == 0).
        trial = np.where(step > 0, np.minimum(start + step, too_far - 1), (reach + too_far) // 2)
        fits, trial_k = try_spans(points, travelled, start, trial, tolerance)
        reach, k = np.where(fits, trial, reach), np.where(fits, trial_k, k)
        too_far, step = np.where(fits, too_far, trial), np.where(fits, 2 * step, 0)
        going = too_far - reach > 1
        done = who[~going]
        final[done], final_k[done] = reach[~going], k[~going]
        who, start, reach, too_far = who[going], start[going], reach[going], too_far[going]
        k, step = k[going], step[going]
    return final, final_k


def _assembled(points: FloatArray, following: IntArray, bulge: FloatArray, start: int, end: int) -> Path:
    """The path read off from a chain's first point to its last."""
    stations = [start]
    while stations[-1] < end:
        stations.append(int(following[stations[-1]]))
    through = np.array(stations, dtype=np.int64)
    ends = points[through]
    k = bulge[through[:-1]]
    chord = np.diff(ends[:, :2], axis=0)
    with np.errstate(divide="ignore", invalid="ignore"):
        side = ((k * k - 1) / (4 * k))[:, None]
        centres = (ends[:-1, :2] + ends[1:, :2]) / 2 + side * np.stack([-chord[:, 1], chord[:, 0]], axis=1)
    centres[k == 0] = np.nan
    kinds = np.where(k == 0, LINE, np.where(k > 0, CW, CCW)).astype(np.uint8)
    return Path(points_mm=ends, kinds=kinds, centres_mm=centres)
