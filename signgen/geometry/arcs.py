"""Chains of points to few long lines and helical arcs that stay within a tolerance of them.

Greedy: from each point the longest line or arc to a later point that keeps to the chain, found by doubling
and bisection. "Keeps to" is two-sided: every point of the new curve is matched with one of the chain (same
projection on a line, same angle on an arc, both in order), and |distance across XY| + |difference in w| is at
most the tolerance for all of them, between the chain's points too. A centre and a radius off by that much
together move a V-bit's wall by no more.

What follows a point depends on that point alone, so many runners work at once, from every corner and from
many a place between, in batches of numpy; one that reaches a point that another started from stops there. The
chain that is read off in the end is the same as if a single runner had walked it.

An arc through two given ends has one freedom, k = tan(sweep / 4) = sagitta / half chord. That a point lies
within e of it is a quadratic inequality in k, so each point gives an interval and their intersection is what
is possible; its middle is then tried exactly.

On rounding (Source: NIST IR 6556, 3.5.3 with appendix: radii at both ends within 0.002 mm; check-values 1.8):
four decimals in X, Y, I and J make the two radii differ by at most 4 sqrt(2) x 0.00005 = 0.00029 mm, whatever
the arc, as long as the numbers themselves are exact: hence MAX_RADIUS_MM.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import ArrayLike, NDArray

from signgen.geometry.paths import CCW, CW, LINE, FloatArray, Path
from signgen.tolerances import CORNER_DEG

USED_RATIO = 0.9
"""Part of the tolerance that the fit uses; the rest is for the program's decimals."""

MIN_RADIUS_MM = 0.1
"""Tighter turns stay lines. Below this a rounded centre bends the arc's direction by more than a thousandth,
and the whole turn is shorter than the spacing at which plain controllers cut arcs into lines themselves."""

MAX_RADIUS_MM = 1000.0
"""Flatter curves stay lines. Many small controllers compute in 32-bit floats, which resolve 0.00006 mm here
and 0.001 mm at ten times as much: there the two radii of an arc would no longer agree."""

STRAIGHT_MM, STRAIGHT_RATIO = 3.0, 4.0
"""A piece this long, and this many times as long as both its neighbours, is a straight of the design: it keeps its
ends, so that an arc begins where the straight ends and not a little before it."""

ON_CIRCLE_MM = 2e-4
"""Points this near to one circle are a circle's: twice the grid that programs are written on."""

_FIRST_STEP = 8
_LONG_CHAIN = 256
_SAMPLES = 12
_TRACK_SEGMENTS = 12
_BACKWARD_MM = 1e-9
"""A chain may run backward along its line or arc by this much: noise of the arithmetic."""

IntArray = NDArray[np.int64]


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
    """Indices of points that a line or arc must not run past: ends of chains, corners and ends of straights, ascending."""
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
            fits, joined_k = _try(points, travelled, start[late], other, tolerance)
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
        fits, trial_k = _try(points, travelled, start, trial, tolerance)
        reach, k = np.where(fits, trial, reach), np.where(fits, trial_k, k)
        too_far, step = np.where(fits, too_far, trial), np.where(fits, 2 * step, 0)
        going = too_far - reach > 1
        done = who[~going]
        final[done], final_k[done] = reach[~going], k[~going]
        who, start, reach, too_far = who[going], start[going], reach[going], too_far[going]
        k, step = k[going], step[going]
    return final, final_k


def _try(
    points: FloatArray, travelled: FloatArray, start: IntArray, end: IntArray, tolerance: float
) -> tuple[NDArray[np.bool_], FloatArray]:
    """For each pair of points: whether a line or an arc between them keeps to the chain, and its k (0 for a line)."""
    size = end - start + 1
    first = np.cumsum(size) - size
    owner = np.repeat(np.arange(len(start)), size)
    at = np.arange(len(owner)) - (first - start)[owner]
    chord = points[end] - points[start]
    length = np.hypot(chord[:, 0], chord[:, 1])
    unit = chord[:, :2] / np.maximum(length, 1e-300)[:, None]
    x, y, w = (points[at] - points[start][owner]).T
    ux, uy = unit[owner].T
    along, across = ux * x + uy * y, ux * y - uy * x

    per_length = np.divide(chord[:, 2], length, out=np.zeros(len(length)), where=length > 0)
    off = np.abs(across) + np.abs(w - along * per_length[owner])
    forward = np.diff(along, prepend=0.0)
    forward[first] = 0.0
    line = (np.maximum.reduceat(off, first) <= tolerance) & (length > 0)
    line &= np.minimum.reduceat(forward, first) >= -_BACKWARD_MM
    line |= size == 2
    k = np.zeros(len(start))
    bent = ~line & (length > 0)
    if not bent.any():
        return line, k
    of_bent = bent[owner]
    turn = np.sign(np.add.reduceat(across, first))[bent]
    index = np.cumsum(bent) - 1
    total = np.maximum((travelled[end] - travelled[start])[bent], 1e-300)
    whose = index[owner[of_bent]]
    fits, arc_k = _try_arcs(
        along[of_bent] - (length[bent] / 2)[whose],
        across[of_bent] * turn[whose],
        w[of_bent],
        (travelled[at[of_bent]] - travelled[start[bent]][whose]) / total[whose],
        whose,
        length[bent] / 2,
        chord[bent, 2],
        tolerance,
    )
    line[bent] = fits
    k[bent] = np.where(fits, arc_k * turn, 0.0)
    return line, k


def _try_arcs(
    u: FloatArray,
    v: FloatArray,
    w: FloatArray,
    travelled: FloatArray,
    owner: IntArray,
    half: FloatArray,
    rise: FloatArray,
    tolerance: float,
) -> tuple[NDArray[np.bool_], FloatArray]:
    """Arcs over chords from (-half, 0) to (half, 0) that bulge to +v: which keep to their chain, and k > 0.

    u, v, w, travelled: the chains' points one after the other, ends included; w from 0 to `rise`, travelled
    from 0 to 1 in proportion to length. owner says whose they are, ascending.
    """
    first = np.searchsorted(owner, np.arange(len(half)))
    inner = np.ones(len(u) - 1, dtype=bool)
    inner[first[1:] - 1] = False
    edges = np.flatnonzero(inner)
    edge_first = first - np.arange(len(half))
    edge_owner = owner[edges]

    # 1. What k is possible. The share of w is taken from the way travelled, which the angle nearly equals.
    spare = np.maximum(tolerance - np.abs(w - travelled * rise[owner]), 0.0)
    low = np.maximum.reduceat(_k_reaching(u, v, spare, half[owner]), first)
    mid_u, mid_v = (u[edges] + u[edges + 1]) / 2, (v[edges] + v[edges + 1]) / 2
    mid_spare = np.minimum(spare[edges], spare[edges + 1])
    high = np.minimum.reduceat(_k_passing(mid_u, mid_v, mid_spare, half[edge_owner]), edge_first)
    flattest = _k_of_radius(np.maximum(MAX_RADIUS_MM, half), half)
    tightest = _k_of_radius(np.maximum(MIN_RADIUS_MM, half), half)
    possible = (low <= high) & (low <= tightest) & (high >= flattest) & (half <= MAX_RADIUS_MM)
    best = np.where(possible, (low + high) / 2, 0.5)
    # A circle of the design, given by points that lie on it, comes back as that circle and not as one between its chords.
    passes = _k_reaching(u, v, np.zeros(len(u)), half[owner])
    ends = np.append(first[1:], len(u)) - 1
    passes[first] = passes[ends] = np.inf
    least = np.minimum.reduceat(passes, first)
    passes[first] = passes[ends] = 0.0
    most = np.maximum.reduceat(passes, first)
    best = np.where((most - least) * half <= ON_CIRCLE_MM, np.clip((least + most) / 2, low, high), best)
    k = np.where(possible, np.clip(best, flattest, tightest), 0.5)

    # 2. Try it exactly.
    centre = half * (k * k - 1) / (2 * k)
    radius = half * (k * k + 1) / (2 * k)
    sweep = 4 * np.arctan(k)
    up = v - centre[owner]
    distance = np.hypot(u, up)
    angle = np.arctan2(u, up)
    off = np.abs(distance - radius[owner])
    off_w = np.abs(w - (angle / sweep[owner] + 0.5) * rise[owner])
    du, dv = u[edges + 1] - u[edges], v[edges + 1] - v[edges]
    length = np.maximum(np.hypot(du, dv), 1e-300)
    before = (u[edges] * du + up[edges] * dv) / length
    after = before + length
    nearest = np.abs(u[edges] * dv - up[edges] * du) / length
    dip = np.where((before < 0) & (after > 0), radius[edge_owner] - nearest, 0.0)
    # Along a straight edge the angle is not quite linear: |d2(angle)/dx2| <= 2 max|x| / p^3 at a distance p.
    lag = length**2 / 8 * 2 * np.maximum(np.abs(before), np.abs(after)) / np.maximum(nearest, 1e-9) ** 3
    worst = np.maximum(np.maximum(off[edges], off[edges + 1]), dip)
    worst += np.maximum(off_w[edges], off_w[edges + 1])
    worst += np.where(rise[edge_owner] == 0, 0.0, lag * np.abs(rise / sweep)[edge_owner])
    fits = possible & (np.maximum.reduceat(worst, edge_first) <= tolerance)
    forward = (angle[edges + 1] - angle[edges]) * radius[edge_owner]
    return fits & (np.minimum.reduceat(forward, edge_first) >= -_BACKWARD_MM), k


def _k_reaching(u: FloatArray, v: FloatArray, spare: FloatArray, half: FloatArray) -> FloatArray:
    """The least k whose arc comes within `spare` of points from below; 0 when the chord itself does."""
    b = spare**2 + half**2 - u**2 - v**2
    short = np.maximum(v - spare, 0.0) * half
    root = b + np.sqrt(np.maximum(b * b + 4 * (v + spare) * half * short, 0.0))
    return np.where(short > 0, 2 * short / np.maximum(root, 1e-300), 0.0)


def _k_passing(u: FloatArray, v: FloatArray, spare: FloatArray, half: FloatArray) -> FloatArray:
    """The greatest k, at most 2, whose arc passes points by no more than `spare` above them; below 0 for none."""
    b = spare**2 + half**2 - u**2 - v**2
    over = (v + spare) * half
    square = b * b + 4 * (v - spare) * half * over
    root = b + np.sqrt(np.maximum(square, 0.0))
    return np.where(square < 0, 2.0, np.minimum(2.0, 2 * over / np.where(root > 0, root, 1e-300)))


def _k_of_radius(radius: FloatArray, half: FloatArray) -> FloatArray:
    """k <= 1 of the lesser arc of this radius >= half over a chord, (R - sqrt(R^2 - h^2)) / h, without cancelling."""
    return half / (radius + np.sqrt(np.maximum(radius**2 - half**2, 0.0)))


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
