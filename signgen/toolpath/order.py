"""The order in which cuts are made, so that the cutter travels little between them.

Stage by stage. Within a stage: the nearest next, then improved by taking stretches out and putting them elsewhere,
turned round or not (2-opt, Or-opt), then shaken locally and improved again, as often as the number of cuts says. No
clock and no true randomness has a say: the same cuts give the same order.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from itertools import groupby

import numpy as np
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.toolpath.cut import Cut, Toolpath

NEIGHBOURS = 8
"""Cuts considered as next to each one: the best next is hardly ever further down the list."""

SHAKES_PER_CUT, MOST_SHAKES = 4, 1000
"""What brings 200 cuts within 0.03 of the best known in less than a second (tests/bench/bench_travel.py)."""

LONGEST_SHAKEN = 25
_LONGEST_TURNED = 50
"""Longest stretch turned round where one-way cuts make the turning itself cost something that must be added up."""

_SPANS = ((0, 0), (0, 1), (-1, 0), (0, 2), (-2, 0))
"""Stretches that are moved, relative to the cut at one of their ends."""
_GAIN_MM = 1e-7
"""Improvements smaller than this are rounding; accepting them could go on for ever."""


def in_order(toolpaths: Sequence[Toolpath], start_xy: tuple[float, float]) -> tuple[Toolpath, ...]:
    """The cuts of all toolpaths, which share one cutter, in the order to make them: each operation's cuts that follow
    each other as one toolpath. Operations whose cuts are of one stage may come in turns. The way begins and ends at
    `start_xy`."""
    owner = [n for n, toolpath in enumerate(toolpaths) for _ in toolpath.cuts]
    cuts = [cut for toolpath in toolpaths for cut in toolpath.cuts]
    found: list[Toolpath] = []
    for n, group in groupby(order_of(cuts, start_xy, start_xy), key=lambda step: owner[step[0]]):
        own = tuple(turned_round(cuts[i]) if turned else cuts[i] for i, turned in group)
        found.append(replace(toolpaths[n], cuts=own))
    return tuple(found)


def order_of(
    cuts: Sequence[Cut], start_xy: tuple[float, float], end_xy: tuple[float, float] | None = None
) -> list[tuple[int, bool]]:
    """(index, whether it is walked from its end) of each cut, in the order to make them: lower stages first, within a
    stage any order, `two_way` ones perhaps reversed. Where cuts start and end is taken from their paths; height plays
    no part.

    A stage before one of a single cut ends as near to its start as pays; the last one to `end_xy`, if given.
    """
    out: list[tuple[int, bool]] = []
    at = complex(*start_xy)
    by_stage = sorted(range(len(cuts)), key=lambda i: cuts[i].stage)
    stages = [list(group) for _, group in groupby(by_stage, key=lambda i: cuts[i].stage)]
    for n, stage in enumerate(stages):
        following = stages[n + 1] if n + 1 < len(stages) else []
        goal = complex(*end_xy) if end_xy and not following else None
        if len(following) == 1 and not cuts[following[0]].two_way:
            goal = complex(*cuts[following[0]].path.points_mm[0, :2])
        starts = [complex(*cuts[i].path.points_mm[0, :2]) for i in stage]
        ends = [complex(*cuts[i].path.points_mm[-1, :2]) for i in stage]
        both = [cuts[i].two_way for i in stage]
        out += [(stage[n], turned) for n, turned in tour(starts, ends, both, at, goal)]
        last, turned = out[-1]
        at = complex(*cuts[last].path.points_mm[0 if turned else -1, :2])
    return out


def turned_round(cut: Cut) -> Cut:
    """The same cut walked from its end."""
    feeds = cut.feeds_mm_per_min[::-1].copy()
    entering = None if cut.entering is None else cut.entering[::-1].copy()
    return replace(cut, path=cut.path.reversed(), feeds_mm_per_min=feeds, entering=entering)


def tour(
    starts: Sequence[complex],
    ends: Sequence[complex],
    two_way: Sequence[bool],
    origin: complex,
    goal: complex | None = None,
) -> list[tuple[int, bool]]:
    """A short way from `origin` through all cuts (and on to `goal`): (index, whether it is walked from its end), in
    order.

    Points are x + iy. Only cuts that are `two_way` are ever turned.
    """
    if not starts:
        return []
    search = _Search(starts, ends, two_way, origin, goal)
    search.improve(range(len(starts)))
    search.shake(min(SHAKES_PER_CUT * len(starts), MOST_SHAKES))
    return [(state >> 1, bool(state & 1)) for state in search.order[1:-1]]


class _Search:
    """An order under improvement.

    A state is 2 x the cut's index, + 1 when it is turned. `order` holds the states between two markers: the origin,
    and the goal, to which the way costs nothing when there is none.
    """

    def __init__(
        self,
        starts: Sequence[complex],
        ends: Sequence[complex],
        two_way: Sequence[bool],
        origin: complex,
        goal: complex | None = None,
    ) -> None:
        n = len(starts)
        self.n = n
        last = origin if goal is None else goal
        self.enter = [*(point for pair in zip(starts, ends, strict=True) for point in pair), origin, last]
        self.leave = [*(point for pair in zip(ends, starts, strict=True) for point in pair), origin, last]
        self.counts = [1.0] * (2 * n + 1) + [float(goal is not None)]
        self.turned = [state ^ 1 if two_way[state >> 1] else state for state in range(2 * n)]
        one_way = [start != end and not both for start, end, both in zip(starts, ends, two_way, strict=True)]
        self.lopsided = any(one_way)
        ends_of = np.stack([np.array(starts), np.array(ends)], axis=1)
        self.near = _nearest(ends_of, NEIGHBOURS)
        self.order = [2 * n, *self._greedy(np.array(starts), np.array(ends), np.array(two_way), origin), 2 * n + 1]
        self.place = [0] * n
        self._note_places(1, n)

    def _greedy(
        self, starts: NDArray[np.complex128], ends: NDArray[np.complex128], two_way: NDArray[np.bool_], at: complex
    ) -> list[int]:
        """The nearest next, from the origin on."""
        far = np.zeros(self.n)
        blocked = np.where(two_way, 0.0, np.inf)
        out = []
        for _ in range(self.n):
            forward, backward = np.abs(starts - at) + far, np.abs(ends - at) + far + blocked
            i, j = int(np.argmin(forward)), int(np.argmin(backward))
            state = 2 * i if forward[i] <= backward[j] else 2 * j + 1
            out.append(state)
            far[state >> 1] = np.inf
            at = self.leave[state]
        return out

    def _note_places(self, first: int, last: int) -> None:
        for position in range(first, last + 1):
            self.place[self.order[position] >> 1] = position

    def _way(self, before: int, after: int) -> float:
        """Travel between two states."""
        return abs(self.leave[before] - self.enter[after]) * self.counts[after]

    def _turning(self, first: int, last: int) -> float:
        """What turning a stretch round adds within it: nothing, unless a one-way cut starts and ends apart."""
        if not self.lopsided:
            return 0.0
        stretch = self.order[first : last + 1]
        back = [self.turned[state] for state in reversed(stretch)]
        way = self._way
        return sum(map(way, back, back[1:])) - sum(map(way, stretch, stretch[1:]))

    def improve(self, cuts: Sequence[int]) -> tuple[float, int, int]:
        """Improve around some cuts until nothing helps; (gain, first, last place that changed)."""
        waiting = list(cuts)
        is_waiting = set(waiting)
        gained, first, last = 0.0, self.n + 1, 0
        while waiting:
            cut = waiting.pop()
            is_waiting.discard(cut)
            while (found := self._better_turn(cut) or self._better_place(cut)) is not None:
                gain, low, high, stretch = found
                ends = {self.order[at] >> 1 for at in (low - 1, low, high, high + 1) if 1 <= at <= self.n}
                self.order[low : high + 1] = stretch
                self._note_places(low, high)
                ends |= {self.order[at] >> 1 for at in (low, high)}
                gained, first, last = gained + gain, min(first, low), max(last, high)
                fresh = sorted(ends - is_waiting)
                waiting += fresh
                is_waiting.update(fresh)
        return gained, first, last

    def _better_turn(self, cut: int) -> tuple[float, int, int, list[int]] | None:
        """A stretch next to this cut, or that begins or ends with it, better turned round (2-opt)."""
        order, turned, leave, enter, counts = self.order, self.turned, self.leave, self.enter, self.counts
        at = self.place[cut]
        here = order[at]
        into, out = self._way(order[at - 1], here), self._way(here, order[at + 1])
        tries = [(at, at, max(into, out))]
        for other, apart in self.near[cut]:
            if apart >= into and apart >= out:
                break
            there = self.place[other]
            # Turning one of two stretches makes the two cuts neighbours, in place of what is on one side of `cut`.
            if apart < out:
                tries.append((at + 1, there, out) if at < there else (there + 1, at, out))
            if apart < into:
                tries.append((at, there - 1, into) if at < there else (there, at - 1, into))
        for low, high, spared in tries:
            before, first, last, after = order[low - 1], order[low], order[high], order[high + 1]
            one = abs(leave[before] - enter[turned[last]])
            other_way = abs(leave[turned[first]] - enter[after]) * counts[after]
            if one >= spared and other_way >= spared:
                continue
            gain = abs(leave[before] - enter[first]) + abs(leave[last] - enter[after]) * counts[after]
            gain -= one + other_way
            if gain > _GAIN_MM and self.lopsided:
                if high - low > _LONGEST_TURNED:
                    continue
                gain -= self._turning(low, high)
            if gain > _GAIN_MM:
                return gain, low, high, [turned[state] for state in reversed(order[low : high + 1])]
        return None

    def _better_place(self, cut: int) -> tuple[float, int, int, list[int]] | None:
        """A few cuts in a row, this one at an end of them, better put beside one of its neighbours (Or-opt)."""
        order, turned, n = self.order, self.turned, self.n
        at = self.place[cut]
        for low, high in _SPANS:
            low, high = at + low, at + high
            if low < 1 or high > n:
                continue
            freed = self._way(order[low - 1], order[low]) + self._way(order[high], order[high + 1])
            freed -= self._way(order[low - 1], order[high + 1])
            if freed <= _GAIN_MM:
                continue
            for other, apart in self.near[cut]:
                if apart >= freed:
                    break
                there = self.place[other]
                if low <= there <= high:
                    continue
                for before in (there - 1, there):
                    # Between `before` and the place after it, as they are with the stretch still where it was.
                    if low - 1 <= before <= high:
                        continue
                    # Turned so that `cut` comes to lie beside `other`.
                    back = (before == there) != (at == low)
                    first, last = (turned[order[high]], turned[order[low]]) if back else (order[low], order[high])
                    left, right = order[before], order[before + 1]
                    cost = self._way(left, first) + self._way(last, right) - self._way(left, right)
                    if back and cost < freed:
                        cost += self._turning(low, high)
                    if freed - cost > _GAIN_MM:
                        moved = order[low : high + 1]
                        if back:
                            moved = [turned[state] for state in reversed(moved)]
                        if before > high:
                            return freed - cost, low, before, order[high + 1 : before + 1] + moved
                        return freed - cost, before + 1, high, moved + order[before + 1 : low]
        return None

    def shake(self, times: int) -> None:
        """Swap two neighbouring stretches somewhere and improve around there; go back when it did not help."""
        if self.n < 3:
            return
        dice = random.Random(self.n)
        longest = max(1, min(LONGEST_SHAKEN, self.n // 3))
        for _ in range(times):
            low = dice.randint(1, self.n - 1)
            middle = min(low + dice.randint(1, longest), self.n)
            high = min(middle + dice.randint(0, longest), self.n)
            saved = self.order.copy()
            a, b = saved[low:middle], saved[middle : high + 1]
            edges = ((low - 1, low), (middle - 1, middle), (high, high + 1))
            loss = -sum(self._way(saved[i], saved[j]) for i, j in edges)
            loss += self._way(saved[low - 1], b[0]) + self._way(b[-1], a[0]) + self._way(a[-1], saved[high + 1])
            self.order[low : high + 1] = b + a
            self._note_places(low, high)
            touched = {self.order[at] >> 1 for edge in edges for at in edge if 1 <= at <= self.n}
            touched |= {a[0] >> 1, a[-1] >> 1, b[0] >> 1, b[-1] >> 1}
            gain, first, last = self.improve(sorted(touched))
            if gain < loss - _GAIN_MM:
                self.order = saved
                self._note_places(min(first, low), max(last, high))


def _nearest(ends_of: NDArray[np.complex128], count: int) -> list[list[tuple[int, float]]]:
    """For each cut the `count` others whose ends come nearest to one of its own: (index, distance), nearest first."""
    n = len(ends_of)
    count = min(count, n - 1)
    rows = max(1, 4_000_000 // (4 * n))
    out: list[list[tuple[int, float]]] = []
    for first in range(0, n, rows):
        block = ends_of[first : first + rows]
        apart = np.full((len(block), n), math.inf)
        for mine in range(2):
            for theirs in range(2):
                apart = np.minimum(apart, np.abs(block[:, mine, None] - ends_of[None, :, theirs]))
        apart[np.arange(len(block)), first + np.arange(len(block))] = math.inf
        nearest = np.argsort(apart, axis=1, kind="stable")[:, :count]
        distances = np.take_along_axis(apart, nearest, axis=1)
        out += [list(zip(a, b, strict=True)) for a, b in zip(nearest.tolist(), distances.tolist(), strict=True)]
    return out
