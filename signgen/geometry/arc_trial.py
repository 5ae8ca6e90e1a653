"""Whether one line or arc keeps to the points of a chain between two of them: many pairs at once.

An arc through two given ends has one freedom, k = tan(sweep / 4) = sagitta / half chord. That a point lies
within e of it is a quadratic inequality in k, so each point gives an interval and their intersection is what
is possible; its middle is then tried exactly.

On rounding (Source: NIST IR 6556, 3.5.3 with appendix: radii at both ends within 0.002 mm):
four decimals in X, Y, I and J make the two radii differ by at most 4 sqrt(2) x 0.00005 = 0.00029 mm, whatever
the arc, as long as the numbers themselves are exact: hence MAX_RADIUS_MM.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray

MIN_RADIUS_MM = 0.1
"""Tighter turns stay lines. Below this a rounded centre bends the arc's direction by more than a thousandth,
and the whole turn is shorter than the spacing at which plain controllers cut arcs into lines themselves."""

MAX_RADIUS_MM = 1000.0
"""Flatter curves stay lines. Many small controllers compute in 32-bit floats, which resolve 0.00006 mm here
and 0.001 mm at ten times as much: there the two radii of an arc would no longer agree."""

ON_CIRCLE_MM = 2e-4
"""Points this near to one circle are a circle's: twice the grid that programs are written on."""

_BACKWARD_MM = 1e-9
"""A chain may run backward along its line or arc by this much: noise of the arithmetic."""

IntArray = NDArray[np.int64]


def try_spans(
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
    # A circle of the design, given by points that lie on it, comes back as that circle, not as one between its chords.
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
