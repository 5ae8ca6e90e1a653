"""Lines and arcs: time, blocks, and how far greedy is from the fewest possible. `python tests/bench/bench_fit.py`.

The fewest is found by dynamic programming over every pair of points (exact for this family of lines and arcs), on the
shorter chains only: it is slow.
"""

from __future__ import annotations

import time

import numpy as np

from signgen.geometry import arcs
from signgen.geometry.arc_trial import try_spans
from signgen.geometry.paths import LINE


def wave(n: int, length: float = 200.0, *, with_w: bool = True) -> np.ndarray:
    s = np.linspace(0, length, n)
    x, y = s + 3 * np.sin(s / 3), 8 * np.sin(s / 5) + 2 * np.cos(s * 1.3)
    return np.stack([x, y, 2 + np.sin(s / 2) if with_w else 0 * s], axis=1)


def spiral(n: int) -> np.ndarray:
    t = np.linspace(0, 12 * np.pi, n)
    return np.stack([(4 + t) * np.cos(t), (4 + t) * np.sin(t), 0 * t], axis=1)


def fewest(points: np.ndarray, tolerance: float, window: int = 220) -> int:
    """The least number of lines and arcs from the first point to the last."""
    n = len(points)
    travelled = arcs._travelled(points)
    best = np.full(n, n)
    best[0] = 0
    stops = arcs._stops(points, np.array([n - 1]), 20.0)
    for i in range(n - 1):
        limit = min(int(stops[np.searchsorted(stops, i, side="right")]), i + window)
        ends = np.arange(i + 1, limit + 1)
        fits, _ = try_spans(points, travelled, np.full(len(ends), i), ends, tolerance * arcs.USED_RATIO)
        best[ends[fits]] = np.minimum(best[ends[fits]], best[i] + 1)
    return int(best[-1])


def main() -> None:
    print(f"{'chain':28}{'points':>8}{'tol':>8}{'ms':>8}{'blocks':>8}{'arcs':>7}{'fewest':>8}{'ratio':>7}")
    cases = [
        ("wave, flat", wave(10_000, with_w=False), 0.0038, False),
        ("wave, w", wave(10_000), 0.0038, False),
        ("spiral", spiral(10_000), 0.0038, False),
        ("wave, flat, coarse", wave(1500, 100, with_w=False), 0.0038, True),
        ("wave, w, coarse", wave(1500, 100), 0.0038, True),
        ("spiral, coarse", spiral(1500), 0.01, True),
    ]
    for name, points, tolerance, compare in cases:
        times = []
        for _ in range(5):
            begin = time.perf_counter()
            path = arcs.fit(points, tolerance)
            times.append(time.perf_counter() - begin)
        least = fewest(points, tolerance) if compare else 0
        bent = int((path.kinds != LINE).sum())
        print(
            f"{name:28}{len(points):8}{tolerance:8.4f}{min(times) * 1000:8.1f}{len(path):8}{bent:7}"
            + (f"{least:8}{len(path) / least:7.3f}" if compare else "")
        )
    many = [wave(40, 20) + np.array([7.0 * k, 0, 0]) for k in range(400)]
    begin = time.perf_counter()
    paths = arcs.fit_all(many, 0.0038)
    print(f"400 chains of 40 together: {(time.perf_counter() - begin) * 1000:.1f} ms, {sum(map(len, paths))} blocks")


if __name__ == "__main__":
    main()
