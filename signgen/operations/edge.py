"""Cutting the sign out of the board: outside the edge, in equal passes, over tabs at the end."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from shapely.geometry import Polygon

from signgen.drawing.drawing import Tab
from signgen.errors import CannotMakeError
from signgen.geometry.arcs import fit_ring
from signgen.geometry.offsets import outward
from signgen.geometry.paths import Path
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import FREEING_STAGE, Cut, Toolpath, strung
from signgen.toolpath.loop import Loop
from signgen.toolpath.passes import levels


@dataclass(frozen=True, slots=True)
class Gap:
    """Where a tab interrupts the path: from `start_mm`, in [0, length), for `width_mm`, at the tab's top."""

    start_mm: float
    width_mm: float
    top_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutOut:
    """The outside cut with one end mill, clockwise seen from above: climb milling, the sign on the right of travel.

    A pass above the tabs ramps down along the path and then goes right round at its depth, so that no wedge is left
    and the cutter never lifts. A pass below the tabs' tops goes from tab to tab: over a tab at its top, down along
    the path at the entry angle, back to the tab at depth, on to the next.
    """

    edge: Polygon
    tabs: tuple[Tab, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    breakthrough_mm: float
    tolerances: Tolerances

    @property
    def does(self) -> str:
        return f"cuts the sign out, leaving {len(self.tabs)} tabs" if self.tabs else "cuts the sign out"

    def toolpath(self) -> Toolpath:
        """One cut, from the top to the last pass. Raises: CannotMakeError when the tabs leave no path between
        them."""
        path, feeds = strung(list(self._pieces(Loop.of(self._ring()))))
        cut = Cut(path=path, feeds_mm_per_min=feeds, feature="edge", stage=FREEING_STAGE)
        return Toolpath(operation="edge", tool=self.tool, cuts=(cut,))

    def _ring(self) -> Path:
        """The way of the cutter's centre, clockwise."""
        (ring,) = outward(self.edge, self.tool.radius_mm, self.tolerances.chord_mm)
        points = np.asarray(ring.exterior.coords)[::-1, :2]
        return fit_ring(np.column_stack([points, np.zeros(len(points))]), self.tolerances.fit_mm)

    def _pieces(self, loop: Loop) -> Iterator[tuple[Path, float]]:
        """Connected pieces of the path, each with its feed."""
        gaps = self._gaps(loop)
        depths = levels(self.thickness_mm, -self.breakthrough_mm, self.cutting.stepdown_mm)
        top_of_tabs = max((gap.top_mm for gap in gaps), default=-math.inf)
        upper = [z for z in depths if z >= top_of_tabs]
        slope = math.tan(math.radians(self.cutting.entry_deg))

        # Each upper pass starts a ramp's length further on than the last. Begin so that the last ends just behind a
        # tab.
        z = self.thickness_mm
        s = gaps[0].start_mm + gaps[0].width_mm if gaps else 0.0
        s -= (z - upper[-1]) / slope if upper else 0.0
        for level in upper:
            down = (z - level) / slope
            yield loop.walk([(s, z), (s + down, level)]), self.cutting.ramp_mm_per_min
            yield (
                loop.walk([(s + down, level), (s + down + loop.length_mm, level)]),
                self.cutting.feed_mm_per_min,
            )
            s, z = s + down + loop.length_mm, level
        for level in depths[len(upper) :]:
            for here, following in zip(gaps, gaps[1:] + gaps[:1], strict=True):
                end = s + self._span(loop, here, following)
                yield loop.walk(zigzag(s, end, z, level, slope)), self.cutting.ramp_mm_per_min
                yield loop.walk([(s, level), (end, level)]), self.cutting.feed_mm_per_min
                yield loop.walk([(end, level), (end, following.top_mm)]), self.cutting.ramp_mm_per_min
                s, z = end + following.width_mm, following.top_mm
                yield loop.walk([(end, z), (s, z)]), self.cutting.feed_mm_per_min

    def _gaps(self, loop: Loop) -> tuple[Gap, ...]:
        """The tabs in the order of travel. A gap is the tab's width and the cutter's diameter, for the cutter eats
        half its diameter from both ends of what it leaves. Source: check-values section 10 (derived)."""
        middles = [(loop.nearest(tab.x_mm, tab.y_mm), tab) for tab in self.tabs]
        width = self.tool.diameter_mm
        gaps = [
            Gap((s - (tab.width_mm + width) / 2) % loop.length_mm, tab.width_mm + width, tab.height_mm)
            for s, tab in middles
        ]
        return tuple(sorted(gaps, key=lambda gap: gap.start_mm))

    def _span(self, loop: Loop, here: Gap, following: Gap) -> float:
        """Length of path from the end of one gap to the start of the next."""
        ahead = (following.start_mm - here.start_mm) % loop.length_mm or loop.length_mm
        if ahead - here.width_mm < self.tool.radius_mm:
            raise CannotMakeError.at(
                "tabs",
                f"{len(self.tabs)} tabs of {self.tabs[0].width_mm:g} mm do not fit round this edge with a "
                f"{self.tool.diameter_mm:g} mm cutter.",
                "Use fewer or narrower tabs, or a thinner cutter.",
            )
        return ahead - here.width_mm


def zigzag(s: float, end: float, z: float, level: float, slope: float) -> list[tuple[float, float]]:
    """Knots that go down from z at `s` to `level`, never steeper than `slope`, between `s` and `end`, and come back
    to `s` at depth."""
    if z <= level:
        return [(s, z), (s, level)]
    needed = (z - level) / slope
    legs = max(1, math.ceil(needed / (end - s) - 1e-9))
    turn = min(needed, end - s)
    drops = [z - (z - level) * i / legs for i in range(legs + 1)]
    knots = list(zip(itertools.cycle([s, s + turn]), drops, strict=False))
    return knots if knots[-1][0] == s else [*knots, (s, level)]
