"""Travel between cuts: time, and the ratio to the best way known. `python tests/bench/bench_travel.py`.

The best known is the better of a search up to fifty times as long by the same code, and OR-tools' guided local search
(`pip install -e '.[bench]'`; left out when it is not there: its wheel is 30 MB). Times are of the processor.
"""

from __future__ import annotations

import time
from collections.abc import Sequence
from unittest import mock

import numpy as np

from signgen.toolpath import order

ORTOOLS_S = 20
LONG_SHAKES = 20_000


def length(way: Sequence[tuple[int, bool]], starts: list[complex], ends: list[complex]) -> float:
    at, total = 0j, 0.0
    for i, turned in way:
        a, b = (ends[i], starts[i]) if turned else (starts[i], ends[i])
        total, at = total + abs(a - at), b
    return total


def by_ortools(starts: list[complex], ends: list[complex], two_way: bool) -> float | None:
    """Two nodes a two-way cut, one of which must be visited; in units of a thousandth."""
    try:
        from ortools.constraint_solver import pywrapcp, routing_enums_pb2
    except ImportError:
        return None
    n = len(starts)
    enter = [*starts, *ends] if two_way else starts
    leave = [*ends, *starts] if two_way else ends
    m = len(enter)
    table = np.abs(np.array([*leave, 0j])[:, None] - np.array([*enter, 0j])[None, :])
    table[:, m] = 0  # the way back is free
    table = np.rint(table * 1000).astype(int).tolist()
    manager = pywrapcp.RoutingIndexManager(m + 1, 1, m)
    routing = pywrapcp.RoutingModel(manager)
    transit = routing.RegisterTransitCallback(lambda i, j: table[manager.IndexToNode(i)][manager.IndexToNode(j)])
    routing.SetArcCostEvaluatorOfAllVehicles(transit)
    if two_way:
        for i in range(n):
            routing.AddDisjunction([manager.NodeToIndex(i), manager.NodeToIndex(i + n)], 10**9)
    search = pywrapcp.DefaultRoutingSearchParameters()
    search.first_solution_strategy = routing_enums_pb2.FirstSolutionStrategy.PATH_CHEAPEST_ARC
    search.local_search_metaheuristic = routing_enums_pb2.LocalSearchMetaheuristic.GUIDED_LOCAL_SEARCH
    search.time_limit.seconds = ORTOOLS_S
    answer = routing.SolveWithParameters(search)
    return answer.ObjectiveValue() / 1000 if answer else None


def main() -> None:
    print(f"{'cuts':>6} {'kind':8}{'ms':>8}{'nearest':>9}{'ours':>9}{'long':>9}{'OR-tools':>10}{'ratio':>7}")
    for n in (50, 200, 1000):
        for kind in ("closed", "two-way", "one-way"):
            random = np.random.default_rng(n)
            starts = [complex(*p) for p in random.uniform(0, 300, (n, 2))]
            shift = random.normal(0, 8, (n, 2)) if kind != "closed" else np.zeros((n, 2))
            ends = [a + complex(*p) for a, p in zip(starts, shift, strict=True)]
            both = [kind == "two-way"] * n
            greedy = length(
                [(x >> 1, bool(x & 1)) for x in order._Search(starts, ends, both, 0j).order[1:-1]], starts, ends
            )
            begin = time.process_time()
            ours = length(order.tour(starts, ends, both, 0j), starts, ends)
            took = time.process_time() - begin
            with mock.patch.multiple(order, SHAKES_PER_CUT=200, MOST_SHAKES=LONG_SHAKES):
                long = length(order.tour(starts, ends, both, 0j), starts, ends)
            other = by_ortools(starts, ends, kind == "two-way")
            best = min(long, other or long)
            print(
                f"{n:6} {kind:8}{took * 1000:8.0f}{greedy / best:9.3f}{ours:9.0f}{long:9.0f}"
                + (f"{other:10.0f}" if other else f"{'-':>10}")
                + f"{ours / best:7.3f}",
                flush=True,
            )


if __name__ == "__main__":
    main()
