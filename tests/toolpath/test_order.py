"""Every cut once, stages kept, only two-way cuts turned, and little travel."""

import itertools
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.geometry.paths import polyline
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.order import in_order, order_of, tour, turned_round


def travel_mm(cuts: Sequence[Cut], start_xy: tuple[float, float]) -> float:
    """Way across XY between the cuts in the order given, from `start_xy` to the start of the last."""
    leave = np.array([start_xy, *(cut.path.points_mm[-1, :2] for cut in cuts[:-1])])
    arrive = np.array([cut.path.points_mm[0, :2] for cut in cuts])
    return float(np.hypot(*(arrive - leave).T).sum())


def cut(start, end, *, stage=0, two_way=False, feature="x"):
    path = polyline([(*start, 5), (*end, 4)])
    return Cut(path=path, feeds_mm_per_min=np.array([600.0]), feature=feature, stage=stage, two_way=two_way)


def ordered(cuts, start_xy):
    """The cuts alone in the order to make them; unlike a job's, the way need not come back."""
    turned = order_of(cuts, start_xy)
    return tuple(turned_round(cuts[i]) if back else cuts[i] for i, back in turned)


def some_cuts(seed, n, stages=1, share_two_way=0.5, size=8):
    random = np.random.default_rng(seed)
    starts = random.uniform(0, 300, (n, 2))
    ends = starts + random.normal(0, size, (n, 2))
    return [
        cut(a, b, stage=int(random.integers(stages)), two_way=bool(random.random() < share_two_way), feature=str(i))
        for i, (a, b) in enumerate(zip(starts, ends, strict=True))
    ]


def shortest(cuts, start):
    """By trying everything."""
    best = np.inf
    for row in itertools.permutations(cuts):
        for turned in itertools.product(*([False, True] if c.two_way else [False] for c in row)):
            at, total = np.array(start), 0.0
            for c, back in zip(row, turned, strict=True):
                a, b = c.path.points_mm[0, :2], c.path.points_mm[-1, :2]
                a, b = (b, a) if back else (a, b)
                total += np.hypot(*(a - at))
                at = b
            best = min(best, total)
    return best


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 10**6), st.integers(0, 60), st.integers(1, 4))
def test_every_cut_is_there_once_in_its_stage_and_only_two_way_ones_are_turned(seed, n, stages):
    cuts = some_cuts(seed, n, stages)
    out = ordered(cuts, (0, 0))
    assert sorted(c.feature for c in out) == sorted(c.feature for c in cuts)
    assert [c.stage for c in out] == sorted(c.stage for c in out)
    before = {c.feature: c for c in cuts}
    for c in out:
        same = np.array_equal(c.path.points_mm, before[c.feature].path.points_mm)
        turned = np.array_equal(c.path.points_mm[::-1], before[c.feature].path.points_mm)
        assert same or (turned and c.two_way)


@settings(max_examples=15, deadline=None)
@given(st.integers(0, 10**6), st.integers(1, 5))
def test_a_few_cuts_are_in_the_best_order_there_is(seed, n):
    cuts = some_cuts(seed, n, size=60)
    assert travel_mm(ordered(cuts, (0, 0)), (0, 0)) == pytest.approx(shortest(cuts, (0, 0)))


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 10**6))
def test_the_order_is_the_same_every_time(seed):
    cuts = some_cuts(seed, 40)
    assert [c.feature for c in ordered(cuts, (0, 0))] == [c.feature for c in ordered(cuts, (0, 0))]


def test_a_row_of_grooves_is_walked_to_and_fro():
    cuts = [cut((0, 10 * i), (100, 10 * i), two_way=True) for i in range(6)]
    assert travel_mm(ordered(cuts, (0, 0)), (0, 0)) == 50


def test_a_row_of_one_way_grooves_is_not():
    cuts = [cut((0, 10 * i), (100, 10 * i)) for i in range(3)]
    assert travel_mm(ordered(cuts, (0, 0)), (0, 0)) == pytest.approx(2 * np.hypot(100, 10))


def test_a_turned_cut_takes_its_feeds_along():
    path = polyline([(100, 0, 5), (60, 0, 5), (0, 0, 5)])
    c = Cut(path=path, feeds_mm_per_min=np.array([300.0, 900.0]), feature="x", stage=0, two_way=True)
    (out,) = ordered([c], (0, 0))
    assert out.path.points_mm[0].tolist() == [0, 0, 5]
    assert out.feeds_mm_per_min.tolist() == [900, 300]


def test_points_on_a_grid_are_near_the_least_possible():
    # 14 x 14 points 10 apart, from one of them: no way visits n points with less than n - 1 steps of 10.
    points = [complex(10 * x, 10 * y) for x in range(14) for y in range(14)]
    way = tour(points, points, [False] * 196, 0j)
    at = [points[i] for i, _ in way]
    assert sum(abs(b - a) for a, b in itertools.pairwise([0j, *at])) <= 1950 * 1.10


def test_no_cuts_are_no_way():
    assert ordered([], (0, 0)) == ()


def shortest_to(points, start, goal):
    """By trying everything: through all points from start, and on to goal."""
    ways = ([start, *row, goal] for row in itertools.permutations(points))
    return min(sum(abs(b - a) for a, b in itertools.pairwise(way)) for way in ways)


@settings(max_examples=25, deadline=None)
@given(st.integers(0, 10**6), st.integers(1, 6))
def test_with_a_goal_the_way_to_it_counts(seed, n):
    random = np.random.default_rng(seed)
    points = [complex(*p) for p in random.uniform(0, 100, (n, 2))]
    way = [points[i] for i, _ in tour(points, points, [False] * n, 0j, 90 + 10j)]
    length = sum(abs(b - a) for a, b in itertools.pairwise([0j, *way, 90 + 10j]))
    assert length == pytest.approx(shortest_to(points, 0j, 90 + 10j))


def test_holes_end_where_the_edge_begins():
    holes = [cut((x, 0), (x, 0), stage=50, feature=f"{x}") for x in (10, 50, 90)]
    edge = cut((0, 0), (0, 0), stage=90, feature="edge")
    assert [c.feature for c in ordered([edge, *holes], (100, 0))] == ["90", "50", "10", "edge"]


MILL = Tool(
    name="mill", kind="end-mill", diameter_mm=6, shank_mm=6, cutting_length_mm=20, flutes=2, stickout_mm=25, source="-"
)


def test_the_cuts_of_several_operations_are_ordered_together_and_keep_their_names():
    def toolpath(name, *cuts):
        return Toolpath(operation=name, tool=MILL, cuts=cuts)

    floors = toolpath("floors", cut((0, 0), (0, 0)), cut((200, 0), (200, 0)))
    grooves = toolpath("grooves", cut((100, 0), (100, 0)))
    edge = toolpath("edge", cut((50, 0), (50, 0), stage=90))
    found = in_order([edge, grooves, floors], (0, 0))
    assert [t.operation for t in found[:3]] in (["floors", "grooves", "floors"], ["floors", "grooves", "edge"])
    assert found[-1].operation == "edge"
    cuts = [c for t in (floors, grooves, edge) for c in t.cuts]
    assert sorted(id(c) for t in found for c in t.cuts) == sorted(map(id, cuts))


@pytest.mark.parametrize(("kind", "best_mm"), [("closed", 3149), ("two-way", 2466), ("one-way", 3284)])
def test_two_hundred_features_are_within_a_tenth_of_the_best_known(kind, best_mm):
    # The best of OR-tools 9.15 (guided local search, 20 s) and of a search fifty times as long:
    # tests/bench/bench_travel.py, whose features these are.
    random = np.random.default_rng(200)
    starts = [complex(*p) for p in random.uniform(0, 300, (200, 2))]
    shift = random.normal(0, 8, (200, 2)) if kind != "closed" else np.zeros((200, 2))
    ends = [a + complex(*p) for a, p in zip(starts, shift, strict=True)]
    way = tour(starts, ends, [kind == "two-way"] * 200, 0j)
    at, total = 0j, 0.0
    for i, turned in way:
        total += abs((ends[i] if turned else starts[i]) - at)
        at = starts[i] if turned else ends[i]
    assert 0.99 * best_mm <= total <= 1.10 * best_mm
