"""Cutting the sign out of the board: outside the edge, in equal passes, over tabs or down to a skin at the end."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry import LineString, Polygon

from signgen.errors import CannotMakeError
from signgen.features.tab import Tab
from signgen.geometry.arcs import fit_ring
from signgen.geometry.offsets import outward
from signgen.geometry.paths import Path
from signgen.messages import Message, Mm
from signgen.shop.materials import CuttingData
from signgen.shop.stock import LEAD_MM
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import FREEING_STAGE, Cut, Piece, Toolpath, strung
from signgen.toolpath.gaps import Gap, Rates, between_tabs, round_over_tabs, span_mm
from signgen.toolpath.lead import lead_in, lead_out
from signgen.toolpath.loop import Loop
from signgen.toolpath.passes import levels
from signgen.toolpath.remarks import Level, deep, over_tab, passes_of

OVERLAP_MM = 2.0
"""How far a finishing pass runs over its own beginning, so that no step is seen there (common practice)."""

BEND = 1.5
"""How much longer the outer of two ways beside each other may be along a bend that a tab stands on."""

STRAIGHT = 1e-6
"""Sine of the turn below which the way is as straight as the tab."""

MOST_SPARED, SPARED_STEP_MM = 2.0, 0.05
"""How far to both sides of a tab's middle, in lengths of way that it takes on a straight, and how finely, a bent way is
looked at."""

Pieces = Iterator[Piece]


class CutOut(Struct, frozen=True, kw_only=True):
    """The outside cut with one end mill. Climb milling goes clockwise seen from above, the sign on the right of travel;
    `climb` False goes the other way round.

    A pass above the tabs ramps down along the path and then goes right round at its depth, so that no wedge is left
    and the cutter never lifts. A pass below the tabs' tops goes from tab to tab: over a tab at its top, down along
    the path at the entry angle, back to the tab at depth, on to the next. The first way down begins, and the last pass
    ends, on an arc beside the edge.

    `skin_mm`: the passes end that far above the board's bottom, and there are no tabs. `finish_mm`: what the passes
    leave on the sign, for one more of full depth at `finish_feed_mm_per_min` to take.
    """

    edge: Polygon
    tabs: tuple[Tab, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    breakthrough_mm: float
    tolerances: Tolerances
    skin_mm: float = 0.0
    finish_mm: float = 0.0
    finish_feed_mm_per_min: float | None = None
    climb: bool = True

    @property
    def description(self) -> Message:
        if self.skin_mm:
            return Message("does.cuts_to_skin", skin=Mm(self.skin_mm))
        return (
            Message("does.cuts_sign_out_with_tabs", count=len(self.tabs))
            if self.tabs
            else Message("does.cuts_sign_out")
        )

    def toolpath(self) -> Toolpath:
        """One cut, from the top to the last pass. Raises: CannotMakeError when the tabs leave no path between
        them."""
        return _toolpath(self)

    @property
    def _bottom_mm(self) -> float:
        return self.skin_mm or -self.breakthrough_mm

    @property
    def _finishing(self) -> Message:
        return Message("remark.finishing", depth=deep(self.thickness_mm - self._bottom_mm))

    @property
    def _rates(self) -> Rates:
        return Rates(
            slope=math.tan(math.radians(self.cutting.entry_deg)),
            ramp=self.cutting.ramp_mm_per_min,
            feed=self.cutting.feed_mm_per_min,
        )

    def pieces(self) -> Pieces:
        """Connected pieces of the path, each with its feed and what is worth saying of it."""
        loop = self._loop(self.finish_mm)
        gaps = self._gaps(loop)
        depths = levels(self.thickness_mm, self._bottom_mm, self.cutting.stepdown_mm)
        tops = max((gap.top_mm for gap in gaps), default=-math.inf)
        upper = [z for z in depths if z >= tops]
        rates = self._rates
        z = self.thickness_mm
        s = gaps[0].start_mm + gaps[0].width_mm if gaps else self._quiet_place(loop)
        # Each upper pass starts a ramp's length further on than the last. Begin so that the last ends just behind a
        # tab, where the next goes on.
        s -= (z - upper[-1]) / rates.slope if upper else 0.0
        yield from self._led_in(loop, s, z, rates.feed)
        said = passes_of(depths, self.thickness_mm)
        for level, each in said[: len(upper)]:
            down = s + (z - level) / rates.slope
            yield loop.walk([(s, z), (down, level)]), rates.ramp, each.ramp
            yield loop.walk([(down, level), (down + loop.length_mm, level)]), rates.feed, each.cut
            s, z = down + loop.length_mm, level
        for n, (level, each) in enumerate(said[len(upper) :]):
            if n:
                yield from _on_to(loop, gaps, s, z, rates)
                yield loop.walk([(s, gaps[0].top_mm), (s + gaps[0].width_mm, gaps[0].top_mm)]), rates.feed
                s, z = s + gaps[0].width_mm, gaps[0].top_mm
            yield from between_tabs(loop, gaps, s, z, level, rates, each)
            s, z = s + loop.length_mm - gaps[0].width_mm, level
        if self.finish_mm:
            yield from self._finished(loop, s)
        else:
            yield from self._away(loop, gaps, s, rates)

    def _away(self, loop: Loop, gaps: Sequence[Gap], s: float, rates: Rates) -> Pieces:
        """Off the edge at the end of the last pass: beyond the tab that lies ahead, if there is one."""
        if not gaps:
            yield from self._led_out(loop, s, self._bottom_mm, rates.feed)
            return
        top, beyond = gaps[0].top_mm, s + gaps[0].width_mm
        yield from _on_to(loop, gaps, s, self._bottom_mm, rates)
        yield loop.walk([(s, top), (beyond, top)]), rates.feed
        yield from self._led_out(loop, beyond, top, rates.feed)

    def _finished(self, rough: Loop, s: float) -> Pieces:
        """One pass of full depth along the sign itself, after the others have ended at `s` of theirs: on to it by an
        arc, once round, and off by an arc. Behind a tab it goes down in the way of the other passes, where only the
        allowance stands: no wall is passed twice but for the overlap. Where the next tab is too near for that, it comes
        over the tab itself."""
        loop, behind = self._loop(0.0), self._gaps(rough)
        gaps = self._gaps(loop)
        feed = self.finish_feed_mm_per_min or self.cutting.feed_mm_per_min
        bottom = self._bottom_mm
        # As far on as the arc needs to come over from the way of the other passes.
        on = math.sqrt(self.finish_mm * (2 * self.tool.radius_mm - self.finish_mm))
        if behind:
            # The other passes ended before the first tab; this one begins behind it.
            gap, rates = behind[0], self._rates
            over = s + gap.width_mm
            down = over + gap.foot_mm(bottom)
            begun = self._behind(rough, loop, gaps[0], down)
            start = loop.nearest(*rough.at(begun)) + on
            if not self._lies_before_the_next(loop, gaps, start):
                yield from self._finished_over_tab(rough, loop, s, feed)
                return
            yield from _on_to(rough, behind, s, bottom, rates)
            yield rough.walk([(s, gap.top_mm), (over, gap.top_mm)]), rates.feed
            yield rough.walk([(over, gap.top_mm), (down, bottom)]), rates.ramp, Message("remark.down_behind_tab")
            if begun > down:
                yield rough.walk([(down, bottom), (begun, bottom)]), rates.feed
        else:
            start = loop.nearest(*rough.at(s)) + on
        yield from self._led_in(loop, start, bottom, feed, self.finish_mm)
        slope = math.inf if self.tool.can_plunge else self._rates.slope
        rates = Rates(slope=slope, ramp=self.cutting.ramp_mm_per_min, feed=feed)
        end = start + loop.length_mm + OVERLAP_MM
        yield from round_over_tabs(loop, gaps, start, end, bottom, rates, self._finishing)
        yield from self._led_out(loop, end, bottom, feed)

    def _behind(self, rough: Loop, loop: Loop, gap: Gap, s: float) -> float:
        """How far along the other passes' way from `s`, the end of their gap, the finishing pass's gap is over too: on
        a bend it may be wider."""
        off = (loop.nearest(*rough.at(s)) - gap.start_mm) % loop.length_mm
        short = gap.width_mm + gap.foot_mm(self._bottom_mm) - off
        # On bends the outer way is the longer one, by no more than this.
        return s + max(0.0, short) * rough.length_mm / loop.length_mm * BEND if off < loop.length_mm / 2 else s

    def _lies_before_the_next(self, loop: Loop, gaps: Sequence[Gap], start: float) -> bool:
        """Whether a pass that begins at `start` has its beginning, its overlap and the arc off it between the first gap
        and the one after."""
        first, following = gaps[0], gaps[1 % len(gaps)]
        off = math.sqrt(LEAD_MM * (2 * self.tool.radius_mm - LEAD_MM))
        room = first.width_mm + span_mm(loop, first, following) - following.foot_mm(self._bottom_mm)
        gone = (start - first.start_mm) % loop.length_mm
        least = first.width_mm + first.foot_mm(self._bottom_mm) - self.tolerances.total_mm
        return least <= gone and gone + OVERLAP_MM + off + self.tolerances.total_mm <= room

    def _finished_over_tab(self, rough: Loop, loop: Loop, s: float, feed: float) -> Pieces:
        """The pass from tab to tab, begun and ended over the first of them."""
        gaps, bottom = self._gaps(loop), self._bottom_mm
        rates = Rates(slope=self._rates.slope, ramp=self.cutting.ramp_mm_per_min, feed=feed)
        start, top, width = gaps[0].start_mm, gaps[0].top_mm, gaps[0].width_mm
        last = Level(number=1, count=1, depth_mm=self.thickness_mm - bottom)
        yield from _on_to(rough, self._gaps(rough), s, bottom, rates)
        yield loop.walk([(start, top), (start + width, top)]), feed, self._finishing
        yield from between_tabs(loop, gaps, start + width, top, bottom, rates, last)
        yield from self._away(loop, gaps, start + loop.length_mm, rates)

    def _loop(self, allowance_mm: float) -> Loop:
        """The way of the cutter's centre, so far outside the sign."""
        (ring,) = outward(self.edge, self.tool.radius_mm + allowance_mm, self.tolerances.chord_mm)
        points = np.asarray(ring.exterior.coords)[:: -1 if self.climb else 1, :2]
        return Loop.of(fit_ring(np.column_stack([points, np.zeros(len(points))]), self.tolerances.fit_mm))

    def _gaps(self, loop: Loop) -> tuple[Gap, ...]:
        """The tabs in the order of travel. A gap is the tab's width and the cutter's diameter, for the cutter eats
        half its diameter from both ends of what it leaves. Derived here.

        Raises: CannotMakeError when they leave no way between them.
        """
        gaps = []
        for tab in self.tabs:
            start, width = self._spared(loop, tab)
            slope = (tab.height_mm - self._bottom_mm) / tab.foot_mm if tab.foot_mm else math.inf
            gaps.append(Gap(start, width, tab.height_mm, slope))
        gaps.sort(key=lambda gap: gap.start_mm)
        for here, following in zip(gaps, gaps[1:] + gaps[:1], strict=True):
            feet = here.foot_mm(self._bottom_mm) + following.foot_mm(self._bottom_mm)
            if span_mm(loop, here, following) - feet < self.tool.radius_mm:
                raise CannotMakeError.at(
                    "tabs",
                    Message(
                        "cut.tabs_do_not_fit_round",
                        count=len(self.tabs),
                        width=Mm(self.tabs[0].width_mm),
                        diameter=Mm(self.tool.diameter_mm),
                    ),
                    Message("cut.use_fewer_narrower_tabs_thinner"),
                )
        return tuple(gaps)

    def _spared(self, loop: Loop, tab: Tab) -> tuple[float, float]:
        """(start, width) of the way that the cutter must not go at depth. On a straight, the tab's width and the
        cutter's diameter; where the way bends, as much as touches the tab anywhere between the edge and the far side of
        the cut: outside a bow its sides would lean in, and in a hollow the way cuts corners."""
        middle = loop.nearest(tab.x_mm, tab.y_mm)
        width = tab.width_mm + self.tool.diameter_mm
        ends = [loop.heading(middle + way * width / 2) for way in (-1, 0, 1)]
        along = (tab.along_x, tab.along_y)
        if all(abs(x * along[1] - y * along[0]) < STRAIGHT for x, y in ends):
            return (middle - width / 2) % loop.length_mm, width
        half, across = tab.width_mm / 2, self.tool.diameter_mm
        corners = [
            (tab.x_mm + u * along[0] + v * along[1], tab.y_mm + u * along[1] - v * along[0])
            for u, v in ((-half, 0.0), (half, 0.0), (half, across), (-half, across))
        ]
        off = np.arange(-MOST_SPARED, MOST_SPARED, SPARED_STEP_MM / width) * width
        places = shapely.points([loop.at(middle + float(each)) for each in off])
        touching = off[shapely.distance(Polygon(corners), places) < self.tool.radius_mm + self.tolerances.total_mm]
        first = min(-width / 2, float(touching.min(initial=0.0)) - SPARED_STEP_MM)
        last = max(width / 2, float(touching.max(initial=0.0)) + SPARED_STEP_MM)
        return (middle + first) % loop.length_mm, last - first

    def _quiet_place(self, loop: Loop) -> float:
        """The middle of the longest straight or bend, where a beginning shows least."""
        lengths = np.diff(loop.ends_mm)
        longest = int(np.argmax(np.round(lengths, 6)))
        return float(loop.ends_mm[longest] + lengths[longest] / 2)

    def _led_in(self, loop: Loop, s: float, z: float, feed: float, away_mm: float = LEAD_MM) -> Pieces:
        """The way on to the loop at `s`, from beside it; nothing where there is no room."""
        (x, y), along = loop.at(s), loop.heading(s)
        lead = lead_in((x, y, z), along, away_mm, self.tool.radius_mm, left=self.climb)
        if self._has_room(lead):
            yield lead, feed, Message("remark.lead_in")

    def _led_out(self, loop: Loop, s: float, z: float, feed: float) -> Pieces:
        (x, y), along = loop.at(s), loop.heading(s)
        lead = lead_out((x, y, z), along, LEAD_MM, self.tool.radius_mm, left=self.climb)
        if self._has_room(lead):
            yield lead, feed, Message("remark.lead_out")

    def _has_room(self, lead: Path) -> bool:
        """Whether the cutter stays off the sign: beside a narrow notch it may not."""
        away = shapely.distance(self.edge, LineString(lead.points_mm[:, :2]))
        return bool(away >= self.tool.radius_mm - self.tolerances.total_mm)


@lru_cache(maxsize=64)
def _toolpath(cut_out: CutOut) -> Toolpath:
    """Signs of one size differ in their texts, not in their edges: those of a batch are made once."""
    way = strung(list(cut_out.pieces()))
    feeds = way.feeds_mm_per_min
    feeds.setflags(write=False)
    cut = Cut(path=way.path, feeds_mm_per_min=feeds, feature="edge", stage=FREEING_STAGE, remarks=way.told("edge"))
    return Toolpath(operation="edge", tool=cut_out.tool, cuts=(cut,))


def _on_to(loop: Loop, gaps: Sequence[Gap], s: float, z: float, rates: Rates) -> Pieces:
    """Up the side of the first tab, which begins at `s`, from a height."""
    gap = gaps[0]
    yield loop.walk([(s - gap.foot_mm(z), z), (s, gap.top_mm)]), rates.ramp, over_tab(1, len(gaps))
