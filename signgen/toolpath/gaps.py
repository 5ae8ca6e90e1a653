"""Walking round a closed path over tabs: what lies between them is cut, they stay."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from signgen.messages import Message
from signgen.toolpath.cut import Piece
from signgen.toolpath.loop import Loop
from signgen.toolpath.remarks import Level, over_tab

Knots = list[tuple[float, float]]


class Gap(Struct, frozen=True):
    """Where a tab interrupts the path: from `start_mm`, in [0, length), for `width_mm`, at the tab's top. `slope` is
    how steeply its sides fall on both ends (height over length), infinite for upright ones."""

    start_mm: float
    width_mm: float
    top_mm: float
    slope: float = math.inf

    def foot_mm(self, level: float) -> float:
        """How far a side reaches beyond the gap at a height."""
        return 0.0 if math.isinf(self.slope) else max(0.0, self.top_mm - level) / self.slope


class Rates(Struct, frozen=True, kw_only=True):
    """Steepest way down into the work (drop over length), and the feeds of ways down and of cutting."""

    slope: float
    ramp: float
    feed: float


def span_mm(loop: Loop, here: Gap, following: Gap) -> float:
    """Length of path from the end of one gap to the start of the next; negative where they overlap."""
    ahead = (following.start_mm - here.start_mm) % loop.length_mm or loop.length_mm
    return ahead - here.width_mm


def between_tabs(
    loop: Loop, gaps: Sequence[Gap], s: float, above: float, level: float, rates: Rates, said: Level
) -> Iterator[Piece]:
    """One pass at a level below the tabs' tops, its pieces with what is `said` of them. Begins at `s`, the end of
    the first gap or that plus whole rounds, at the height `above`, and ends before the first gap again, at the level.

    After each tab the cutter goes down along the path as steeply as allowed, comes back to the tab at depth and goes
    on. The sides of tabs are only ever cut upwards, so that they may be steeper than a way down.
    """
    for n, (here, following) in enumerate(zip(gaps, (*gaps[1:], gaps[0]), strict=True)):
        if n:
            over = s + here.width_mm
            yield loop.walk([(s, here.top_mm), (over, here.top_mm)]), rates.feed
            s, above = over, here.top_mm
        end = s + span_mm(loop, here, following)
        foot, next_foot = s + here.foot_mm(level), end - following.foot_mm(level)
        down = descent(s, foot, next_foot, above, here.top_mm, level, rates.slope)
        yield loop.walk(down), rates.ramp, said.ramp
        yield loop.walk([(foot, level), (next_foot, level)]), rates.feed, said.cut
        s = end
        if n + 1 < len(gaps):
            yield loop.walk([(next_foot, level), (end, following.top_mm)]), rates.ramp, over_tab(n + 2, len(gaps))


def round_over_tabs(
    loop: Loop, gaps: Sequence[Gap], start: float, end: float, level: float, rates: Rates, said: Message
) -> Iterator[Piece]:
    """A finishing pass at a level from `start` to `end`, over every tab on the way, where earlier passes have cleared
    the way but for what stands at the wall: its pieces, of which `said` is said where it goes along the wall. With an
    infinite slope the cutter goes down behind a tab along its side and on; otherwise to and fro, as it must."""
    s = start
    ahead = sorted(gaps, key=lambda gap: (gap.start_mm - start) % loop.length_mm)
    begins = [start + (gap.start_mm - start) % loop.length_mm - gap.foot_mm(level) for gap in ahead]
    for gap, foot_at, until in zip(ahead, begins, [*begins[1:], end], strict=False):
        foot = gap.foot_mm(level)
        before = foot_at + foot
        over = before + gap.width_mm
        yield loop.walk([(s, level), (foot_at, level)]), rates.feed, said
        up = loop.walk([(foot_at, level), (before, gap.top_mm)])
        yield up, rates.ramp, over_tab(gaps.index(gap) + 1, len(gaps))
        yield loop.walk([(before, gap.top_mm), (over, gap.top_mm)]), rates.feed
        if math.isinf(rates.slope):
            down: Knots = [(over, gap.top_mm), (over + foot, level)]
        else:
            down = descent(over, over + foot, until, gap.top_mm, gap.top_mm, level, rates.slope)
        yield loop.walk(down), rates.ramp, Message("remark.down_behind_tab")
        s = over + foot
    yield loop.walk([(s, level), (end, level)]), rates.feed, said


def descent(s: float, foot: float, end: float, above: float, top: float, level: float, slope: float) -> Knots:
    """Knots (distance, height) that go down from (s, above) to (foot, level), never steeper than `slope`, in between
    to and fro no further than `end`. Where the foot lies beyond `s`, the tab's side is cut upwards from it to the tab's
    `top`, and the cutter comes down again along it."""
    if foot <= s:
        return zigzag(s, end, above, level, slope)
    begun = max(level, above - (foot - s) * slope)
    return [(s, above), *zigzag(foot, end, begun, level, slope), (s, min(above, top)), (foot, level)]


def zigzag(s: float, end: float, above: float, level: float, slope: float) -> Knots:
    """Knots that go down from `above` at `s` to `level`, never steeper than `slope`, between `s` and `end`, and come
    back to `s` at depth."""
    if above <= level:
        return [(s, above), (s, level)]
    needed = (above - level) / slope
    legs = max(1, math.ceil(needed / (end - s) - 1e-9))
    turn = min(needed, end - s)
    drops = [above - (above - level) * i / legs for i in range(legs + 1)]
    knots = list(zip(itertools.cycle([s, s + turn]), drops, strict=False))
    return knots if knots[-1][0] == s else [*knots, (s, level)]
