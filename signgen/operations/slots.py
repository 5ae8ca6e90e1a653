"""Slots right through the board: milled round and round by a ramp, like a hole that was pulled long."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct

from signgen.features.hole import Hole
from signgen.geometry.paths import CCW, LINE, FloatArray, Path, joined, polyline
from signgen.messages import Message, Sides
from signgen.operations.holes import CORE_RATIO, STAGE
from signgen.shop.bores import SAME_SIZE_MM
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut, Piece, Toolpath, strung
from signgen.toolpath.entry import at_height, ramp_into
from signgen.toolpath.loop import Loop
from signgen.toolpath.passes import levels
from signgen.toolpath.remarks import passes_of


class MillSlots(Struct, frozen=True, kw_only=True):
    """Slots with one end mill. It ramps down along the slot, never steeper than the material's entry angle and never
    more than a stepdown at once, counter-clockwise (climb milling inside), goes right round at the bottom, and lifts
    clear of the wall."""

    slots: tuple[Hole, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    breakthrough_mm: float

    @property
    def description(self) -> Message:
        sizes = sorted({(slot.diameter_mm, slot.diameter_mm + slot.span_mm) for slot in self.slots})
        return Message("does.mills_slots", count=len(self.slots), sizes=tuple(map(Sides, sizes)))

    def toolpath(self) -> Toolpath:
        return Toolpath(operation="slots", tool=self.tool, cuts=tuple(self._cut(slot) for slot in self.slots))

    def _cut(self, slot: Hole) -> Cut:
        radius = (slot.diameter_mm - self.tool.diameter_mm) / 2
        pieces = self._along(slot) if radius <= SAME_SIZE_MM / 2 else self._around(slot, radius)
        way = strung(pieces)
        return Cut(
            path=way.path, feeds_mm_per_min=way.feeds_mm_per_min, feature=slot.name, stage=STAGE,
            remarks=way.told(slot.name),
        )  # fmt: skip

    def _along(self, slot: Hole) -> list[Piece]:
        """To and fro along the middle line, for a slot as wide as the cutter: down to each level, then along it."""
        ends = slot.ends_mm
        pieces: list[Piece] = []
        above = self.thickness_mm
        for level, said in passes_of(self._levels, self.thickness_mm):
            way = ramp_into(polyline([(*end, level) for end in ends]), above, level, self.cutting.entry_deg)
            pieces.append((way.part(0, len(way) - 1), self.cutting.ramp_mm_per_min, said.ramp))
            pieces.append((polyline(way.points_mm[-2:]), self.cutting.feed_mm_per_min, said.cut))
            ends, above = (ends[1], ends[0]), level
        return pieces

    def _around(self, slot: Hole, radius: float) -> list[Piece]:
        """Down round the middle, then ring by ring out to the wall, so that no core is left: in one go when the first
        ring is the wall, else level by level."""
        inner = min(radius, CORE_RATIO * self.tool.radius_mm)
        step = min(self.cutting.stepover_mm, self.tool.radius_mm)
        radii = np.linspace(inner, radius, math.ceil((radius - inner) / step - 1e-9) + 1)
        rings = [_stadium(slot, float(each)) for each in radii]
        depths = self._levels if len(rings) > 1 else self._levels[-1:]
        pieces: list[Piece] = []
        above = self.thickness_mm
        for level, said in passes_of(depths, self.thickness_mm):
            pieces.append((self._down(rings[0], above, level), self.cutting.ramp_mm_per_min, said.ramp))
            flat = joined([at_height(ring, level) for ring in rings])
            pieces.append((flat, self.cutting.feed_mm_per_min, said.cut))
            inwards = flat.points_mm[0] if level != depths[-1] else (*slot.ends_mm[0], level)
            if len(rings) > 1 or level == depths[-1]:
                pieces.append((polyline([flat.points_mm[-1], inwards]), self.cutting.feed_mm_per_min))
            above = level
        return pieces

    def _down(self, ring: Path, above: float, level: float) -> Path:
        """Whole rounds of a ring down to its start at a level, none taking more than a stepdown."""
        loop = Loop.of(ring)
        a_round = min(loop.length_mm * math.tan(math.radians(self.cutting.entry_deg)), self.cutting.stepdown_mm)
        rounds = math.ceil((above - level) / a_round - 1e-9)
        way = loop.walk([(-rounds * loop.length_mm, above), (0.0, level)])
        points = way.points_mm.copy()
        points[[0, -1]] = [(*ring.points_mm[0, :2], above), (*ring.points_mm[0, :2], level)]
        return Path(points_mm=points, kinds=way.kinds.copy(), centres_mm=way.centres_mm.copy())

    @property
    def _levels(self) -> tuple[float, ...]:
        return levels(self.thickness_mm, -self.breakthrough_mm, self.cutting.stepdown_mm)


def _stadium(slot: Hole, radius: float) -> Path:
    """The closed way at a distance from the slot's middle line, counter-clockwise, from the right of its first end."""
    turn = math.radians(slot.angle_deg)
    right = (radius * math.sin(turn), -radius * math.cos(turn))
    (x0, y0), (x1, y1) = slot.ends_mm
    corners = [
        (x0 + right[0], y0 + right[1]), (x1 + right[0], y1 + right[1]),
        (x1 - right[0], y1 - right[1]), (x0 - right[0], y0 - right[1]),
    ]  # fmt: skip
    points: FloatArray = np.array([(*corner, 0.0) for corner in [*corners, corners[0]]])
    return Path(
        points_mm=points,
        kinds=np.array([LINE, CCW, LINE, CCW], np.uint8),
        centres_mm=np.array([(np.nan, np.nan), (x1, y1), (np.nan, np.nan), (x0, y0)]),
    )
