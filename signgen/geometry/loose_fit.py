"""Chains of x, y, w to few lines and helical arcs whose w keeps to the chain's, but need not pass through its
points.

`arcs.fit` ends every line and arc on a point of the chain. Along a medial axis that is dear: its clearance w
bends far more than its way across the board, and a chord of a bent curve between two of its points lies all
on one side of it. Here the ends keep to the chain across XY and may leave it in w, so that a chord has the
curve on both sides and may be longer by a factor of sqrt(2) for the same error.

For a line or arc from point i to point j let e be the chain's w less that of the straight rise from w_i to
w_j, and h what the tolerance leaves after the error across XY. Any offset o with e - h <= o <= e + h at every
point is allowed at both its ends, and so is any pair of such offsets: an interval [A, B] for each line or
arc. The chain is walked greedily with the longest whose interval has an offset in common with the interval of
the one before, which is then used at their common point.

Two-sided, as in `arcs`: every point of the chain is matched with one of the path (same place along a line,
same angle on an arc, both in order), and |distance across XY| + |difference in w| is within the tolerance for
all, between the chain's points too.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.geometry.arcs import MAX_RADIUS_MM, MIN_RADIUS_MM
from signgen.geometry.paths import CCW, CW, LINE, FloatArray, Path
from signgen.geometry.voronoi import IntArray

_NOISE_MM = 1e-9
"""Noise of the arithmetic: a chain may run backward along its line or arc by this much."""

_FIRST_STEP = 4

_FEW, _SOME = 8, 40
"""Searches going on at once up to which three or two questions are asked together."""


class Stretch(Struct, frozen=True):
    """A chain (n, 3) of x, y, w. `above_mm` and `below_mm`: how far the path may lie on either side of it (in
    |XY| + w above, in w below). `tip_mm`: at points of this w or less the path never ends below the chain, for a disc
    that runs out early by e there leaves e / sin(a / 2) of a corner of angle a. `most_mm`: w is no more anywhere on the
    path, if it is not on the chain."""

    points: FloatArray
    above_mm: float
    below_mm: float
    tip_mm: float = -1.0
    most_mm: float = np.inf


class _Segments(Struct, frozen=True):
    """m lines and arcs of one stretch: through (m + 1, 3) points, bulge (m,) tan(sweep / 4), low, high (m,)
    their intervals of offsets, sharp (m + 1,) where the offset may not be less than 0."""

    through: FloatArray
    bulge: FloatArray
    low: FloatArray
    high: FloatArray
    sharp: NDArray[np.bool_]


def fit_loosely(runs: Sequence[Sequence[Stretch]]) -> list[Path]:
    """Each run of stretches, every one starting where the one before it ends, as one path; what a run gives
    does not depend on the others."""
    stretches = [stretch for run in runs for stretch in run]
    segments = iter(_segments_of(stretches))
    return [_joined([next(segments) for _ in run]) for run in runs]


def fit_counts(stretches: Sequence[Stretch]) -> list[int]:
    """How many lines and arcs each stretch takes on its own."""
    return [len(segments.bulge) for segments in _segments_of(stretches)]


def _segments_of(stretches: Sequence[Stretch]) -> list[_Segments]:
    kept = []
    for stretch in stretches:
        moves = np.any(stretch.points[1:, :2] != stretch.points[:-1, :2], axis=1)
        kept.append(stretch.points[np.concatenate([[True], moves])])
    sizes = np.array([len(points) for points in kept], np.intp)
    firsts = np.cumsum(sizes) - sizes
    points = np.concatenate([np.zeros((0, 3)), *kept])
    above = np.array([stretch.above_mm for stretch in stretches])
    below = np.array([stretch.below_mm for stretch in stretches])
    tips = np.repeat([stretch.tip_mm for stretch in stretches], sizes)
    sharp = points[:, 2] <= tips + _NOISE_MM
    # How much higher than the chain the path may be at each point.
    room = np.concatenate(
        [np.zeros(0), *(np.maximum(s.most_mm - p[:, 2], 0.0) for s, p in zip(stretches, kept, strict=True))]
    )
    steps: list[list[tuple[int, float, float, float]]] = [[] for _ in stretches]
    who = np.flatnonzero(sizes > 1)
    head, guess = firsts[who], np.full(len(who), _FIRST_STEP)
    last = firsts + sizes - 1
    low, high = np.full(len(who), -np.inf), np.full(len(who), np.inf)
    while len(who):
        reach, bulge, low, high = _longest(
            points, sharp, room, head, last[who], guess, above[who], below[who], low, high
        )
        for i, *step in zip(who.tolist(), reach.tolist(), bulge.tolist(), low.tolist(), high.tolist(), strict=True):
            steps[i].append(tuple(step))
        going = reach < last[who]
        guess = (reach - head)[going]
        who, head, low, high = who[going], reach[going], low[going], high[going]
    found = []
    for i, own in enumerate(steps):
        at = [firsts[i], *(int(step[0]) for step in own)]
        table = np.array([step[1:] for step in own]).reshape(-1, 3)
        found.append(_Segments(points[at], table[:, 0], table[:, 1], table[:, 2], sharp[at]))
    return found


def _longest(
    points: FloatArray,
    sharp: NDArray[np.bool_],
    room: FloatArray,
    head: IntArray,
    last: IntArray,
    guess: IntArray,
    above: FloatArray,
    below: FloatArray,
    low: FloatArray,
    high: FloatArray,
) -> tuple[IntArray, FloatArray, FloatArray, FloatArray]:
    """For each head the furthest point, `last` at most, that a line or arc can be found to; its bulge, low
    and high."""
    final = np.empty(len(head), np.int64)
    result = np.empty((3, len(head)))
    who = np.arange(len(head))
    reach, beyond = head.copy(), last + 1
    known = np.zeros((3, len(head)))
    step = np.maximum(guess, 1)
    while len(who):
        start = head[who]
        ahead = 3 if len(who) <= _FEW else 2 if len(who) <= _SOME else 1
        # What each answer leads to is asked along with it, for a question costs more than its points: node i of a
        # tree goes on to 2 i + 1 when it fits and to 2 i + 2 when not.
        trials: list[IntArray] = []
        tree = [(reach, beyond, step)]
        for i in range(2**ahead - 1):
            near, far, wide = tree[i]
            # Wider and wider while nothing was too far (step > 0), halving afterwards (step == 0).
            trial = np.where(wide > 0, np.minimum(start + wide, far - 1), (near + far) // 2)
            trials.append(np.maximum(trial, start + 1))
            tree += [(trials[i], far, 2 * wide), (near, trials[i], np.zeros_like(wide))]
        asked = np.concatenate(trials)
        starts, each = np.tile(start, len(trials)), np.tile(who, len(trials))
        fits, values = _try(points, room, starts, asked, above[each], below[each])
        fits &= np.maximum(values[1], low[each]) <= np.minimum(values[2], high[each])
        fits &= (values[2] >= 0) | ~(sharp[starts] | sharp[asked])
        row = own = np.arange(len(who))
        for _ in range(ahead):
            going = beyond - reach > 1
            yes, no = fits[row] & going, ~fits[row] & going
            reach, beyond = np.where(yes, asked[row], reach), np.where(no, asked[row], beyond)
            step = np.where(yes, 2 * step, np.where(no, 0, step))
            known = np.where(yes, values[:, row], known)
            row = 2 * row - own + np.where(fits[row], 1, 2) * len(who)
        going = beyond - reach > 1
        done = who[~going]
        final[done], result[:, done] = reach[~going], known[:, ~going]
        who, reach, beyond, known, step = who[going], reach[going], beyond[going], known[:, going], step[going]
    return final, result[0], result[1], result[2]


def _try(
    points: FloatArray, room: FloatArray, start: IntArray, end: IntArray, above: FloatArray, below: FloatArray
) -> tuple[NDArray[np.bool_], FloatArray]:
    """For each pair of points: whether a line or an arc between them keeps to the chain; (3, n) its bulge,
    low and high."""
    size = end - start + 1
    first = np.cumsum(size) - size
    at = np.arange(size.sum()) + np.repeat(start - first, size)
    chord = points[end] - points[start]
    length = np.hypot(chord[:, 0], chord[:, 1])
    unit = chord[:, :2] / np.maximum(length, 1e-300)[:, None]
    own = points[at]
    begin = points[start]
    x, y, w = (own[:, axis] - np.repeat(begin[:, axis], size) for axis in range(3))
    ux, uy = np.repeat(unit[:, 0], size), np.repeat(unit[:, 1], size)
    along, across = ux * x + uy * y, ux * y - uy * x
    rise = chord[:, 2]

    values = np.zeros((3, len(start)))
    error = w - along * np.repeat(rise / np.maximum(length, 1e-300), size)
    off = np.abs(across)
    values[1] = np.maximum.reduceat(error + off, first) - below
    ceiling = np.minimum(room[start], room[end])
    values[2] = np.minimum(np.minimum.reduceat(error - off, first) + above, ceiling)
    forward = np.diff(along, prepend=0.0)
    forward[first] = 0.0
    fits = (values[1] <= values[2]) & (length > 0)
    fits &= np.minimum.reduceat(forward, first) >= -_NOISE_MM
    pair = size == 2
    fits |= pair
    values[1, pair], values[2, pair] = -below[pair], np.minimum(above, ceiling)[pair]

    bent = np.flatnonzero(~fits & (length > 0))
    if len(bent):
        chosen = np.zeros(len(start), bool)
        chosen[bent] = True
        rows = np.repeat(chosen, size)
        arc_fits, arc_values = _try_arcs(
            along[rows],
            across[rows],
            w[rows],
            size[bent],
            length[bent] / 2,
            rise[bent],
            above[bent],
            below[bent],
            ceiling[bent],
        )
        fits[bent] = arc_fits
        values[:, bent] = arc_values
    return fits, values


def _try_arcs(
    along: FloatArray,
    across: FloatArray,
    w: FloatArray,
    size: IntArray,
    half: FloatArray,
    rise: FloatArray,
    above: FloatArray,
    below: FloatArray,
    ceiling: FloatArray,
) -> tuple[NDArray[np.bool_], FloatArray]:
    """As `_try`, for arcs over chords from 0 to 2 half along."""
    first = np.cumsum(size) - size
    edge = np.ones(len(along), bool)
    edge[first + size - 1] = False
    edges = np.flatnonzero(edge)
    spans = size - 1
    edge_first = first - np.arange(len(size))
    halves = np.repeat(half, size)
    u = along - halves

    # The arc whose sagitta fits the chain best by least squares, each point weighed by the length of chain
    # around it.
    du, dv = np.diff(u)[edges], np.diff(across)[edges]
    span = np.hypot(du, dv)
    weight = np.zeros(len(u))
    weight[edges] += span
    weight[edges + 1] += span
    shape = np.maximum(1 - (u / halves) ** 2, 0.0)
    weight *= shape
    sagitta = np.add.reduceat(weight * across, first) / np.maximum(np.add.reduceat(weight * shape, first), 1e-300)
    turn = np.sign(sagitta)
    flattest = half / (np.maximum(MAX_RADIUS_MM, half) + np.sqrt(np.maximum(MAX_RADIUS_MM**2 - half**2, 0.0)))
    tightest = half / (np.maximum(MIN_RADIUS_MM, half) + np.sqrt(np.maximum(MIN_RADIUS_MM**2 - half**2, 0.0)))
    k = np.abs(sagitta) / half
    possible = (k >= flattest) & (k <= tightest) & (half <= MAX_RADIUS_MM)
    k = np.where(possible, k, 0.5)
    centre, radius, sweep = half * (k * k - 1) / (2 * k), half * (k * k + 1) / (2 * k), 4 * np.arctan(k)

    up = across * np.repeat(turn, size) - np.repeat(centre, size)
    dv = dv * np.repeat(turn, spans)
    off = np.abs(np.hypot(u, up) - np.repeat(radius, size))
    angle = np.arctan2(u, up)
    error = w - (angle / np.repeat(sweep, size) + 0.5) * np.repeat(rise, size)
    radii = np.repeat(radius, spans)
    u, up = u[edges], up[edges]
    span = np.maximum(span, 1e-300)
    before = (u * du + up * dv) / span
    after = before + span
    nearest = np.abs(u * dv - up * du) / span
    dip = np.where((before < 0) & (after > 0), radii - nearest, 0.0)
    # Along a straight edge the angle is not quite linear: |d2(angle)/dx2| <= 2 max|x| / p^3 at a distance p.
    lag = span**2 / 4 * np.maximum(np.abs(before), np.abs(after)) / np.maximum(nearest, 1e-9) ** 3
    worst = np.maximum(np.maximum(off[edges], off[edges + 1]), dip)
    worst += lag * np.repeat(np.abs(rise / sweep), spans)
    values = np.zeros((3, len(size)))
    values[0] = k * turn
    values[1] = np.maximum.reduceat(np.maximum(error[edges], error[edges + 1]) + worst, edge_first) - below
    values[2] = np.minimum.reduceat(np.minimum(error[edges], error[edges + 1]) - worst, edge_first) + above
    values[2] = np.minimum(values[2], ceiling)
    forward = np.diff(angle)[edges] * radii
    fits = possible & (values[1] <= values[2])
    return fits & (np.minimum.reduceat(forward, edge_first) >= -_NOISE_MM), values


def _joined(parts: Sequence[_Segments]) -> Path:
    """One path: at each point the offset nearest to 0 that the lines and arcs on both sides allow.

    Where one stretch ends and the next begins there may be none: a step straight up or down then joins them.
    """
    through = np.concatenate([parts[0].through[:1], *(part.through[1:] for part in parts)])
    bulge = np.concatenate([part.bulge for part in parts])
    low = np.concatenate([part.low for part in parts])
    high = np.concatenate([part.high for part in parts])
    if not len(bulge):
        return Path(points_mm=through.copy(), kinds=np.zeros(0, np.uint8), centres_mm=np.zeros((0, 2)))
    floor = np.maximum(np.append(low[0], low), np.append(low, low[-1]))
    ceiling = np.minimum(np.append(high[0], high), np.append(high, high[-1]))
    common = floor <= ceiling
    shared = np.clip(0.0, floor, np.maximum(floor, ceiling))
    leaving = np.where(common[:-1], shared[:-1], np.clip(0.0, low, high))
    arriving = np.where(common[1:], shared[1:], np.clip(0.0, low, high))

    starts, ends = through[:-1].copy(), through[1:].copy()
    starts[:, 2] += leaving
    ends[:, 2] += arriving
    kinds = np.where(bulge == 0, LINE, np.where(bulge > 0, CW, CCW)).astype(np.uint8)
    gap = ends[:, :2] - starts[:, :2]
    with np.errstate(divide="ignore", invalid="ignore"):
        side = ((bulge * bulge - 1) / (4 * bulge))[:, None]
        centres = (starts[:, :2] + ends[:, :2]) / 2 + side * np.column_stack([-gap[:, 1], gap[:, 0]])
    centres[bulge == 0] = np.nan
    stepped = np.flatnonzero(~common[1:-1])
    return Path(
        points_mm=np.insert(np.concatenate([starts[:1], ends]), stepped + 2, starts[stepped + 1], axis=0),
        kinds=np.insert(kinds, stepped + 1, LINE).astype(np.uint8),
        centres_mm=np.insert(centres, stepped + 1, np.nan, axis=0),
    )
