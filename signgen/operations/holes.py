"""Round holes right through the board: bored by an end mill on a helix, or drilled by a drill of their size."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray

from signgen.features.hole import Hole
from signgen.geometry.paths import CCW, CW, FloatArray, Path, joined, polyline
from signgen.messages import Message, Mm
from signgen.shop.bores import LEAST_HELIX_MM
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import APPROACH_MM, Cut, Piece, Strung, Toolpath, strung
from signgen.toolpath.passes import levels
from signgen.toolpath.pecks import pecks
from signgen.toolpath.remarks import Remark, deep, passes_of

BoolArray = NDArray[np.bool_]

STAGE = 50
"""After letters and floors, before the edge."""

CORE_RATIO = 0.9
"""Largest helix over the cutter's radius: beyond 1 a core would stand in the middle and come loose."""


class BoreHoles(Struct, frozen=True, kw_only=True):
    """Holes with one cutter. The helix turns counter-clockwise going down, which is climb milling inside a hole
    (`climb` False turns it round), and ends with a full circle at the bottom; then the cutter leaves the wall on an
    arc and lifts from the middle.

    `finish_mm`: what is left on the wall for one more circle of full depth, at `finish_feed_mm_per_min`, on to which
    the cutter comes on an arc as well.
    """

    holes: tuple[Hole, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    breakthrough_mm: float
    finish_mm: float = 0.0
    finish_feed_mm_per_min: float | None = None
    climb: bool = True

    @property
    def description(self) -> Message:
        sizes = tuple(map(Mm, sorted({hole.diameter_mm for hole in self.holes})))
        return Message("does.makes_holes", count=len(self.holes), sizes=sizes)

    def toolpath(self) -> Toolpath:
        cuts = tuple(cut for hole in self.holes for cut in self._cuts(hole))
        return Toolpath(operation="holes", tool=self.tool, cuts=cuts)

    def _cuts(self, hole: Hole) -> Iterator[Cut]:
        radius = (hole.diameter_mm - self.tool.diameter_mm) / 2
        if self.tool.kind == "drill":
            yield self._pecked(hole)
        else:
            way, entering = (self._helix if radius <= CORE_RATIO * self.tool.radius_mm else self._widened)(hole, radius)
            yield Cut(
                path=way.path, feeds_mm_per_min=way.feeds_mm_per_min, feature=hole.name, stage=STAGE,
                entering=entering, remarks=way.told(hole.name),
            )  # fmt: skip

    @property
    def _bottom_mm(self) -> float:
        """A drill's point goes further, so that the full diameter reaches the breakthrough depth."""
        return -self.breakthrough_mm - self.tool.point_length_mm

    def _helix(self, hole: Hole, radius: float) -> tuple[Strung, BoolArray]:
        """Half turns down, a full circle at the bottom, then to the middle. The helix itself is what cuts the hole."""
        rough = self._rough(radius)
        down = self._down(hole, rough, self.thickness_mm, self._bottom_mm)
        depth = deep(self.thickness_mm - self._bottom_mm)
        pieces: list[Piece] = [
            (down, self.cutting.ramp_mm_per_min, Message("remark.helix", count=len(down) // 2, depth=depth)),
            (
                self._turns(hole, rough, np.full(3, self._bottom_mm)), self.cutting.feed_mm_per_min,
                Message("remark.bottom_round", depth=depth),
            ),
        ]  # fmt: skip
        way = strung([*pieces, *self._last(hole, radius, rough)])
        return way, np.zeros(len(way.path), np.bool_)

    def _widened(self, hole: Hole, radius: float) -> tuple[Strung, BoolArray]:
        """A hole so wide that one helix would leave a loose core: at each level a helix in the middle, then rings
        outwards."""
        inner, rough = CORE_RATIO * self.tool.radius_mm, self._rough(radius)
        step = min(self.cutting.stepover_mm, self.tool.radius_mm)
        radii = np.linspace(inner, rough, math.ceil(max(rough - inner, 0.0) / step - 1e-9) + 1)
        pieces: list[Piece] = []
        above = self.thickness_mm
        depths = levels(self.thickness_mm, self._bottom_mm, self.cutting.stepdown_mm)
        for level, said in passes_of(depths, self.thickness_mm):
            pieces.append((self._down(hole, inner, above, level), self.cutting.ramp_mm_per_min, said.ramp))
            rings = [self._turns(hole, float(ring), np.full(3, level)) for ring in radii]
            pieces.append((joined(rings), self.cutting.feed_mm_per_min, said.cut))
            if level != depths[-1]:
                pieces.append((self._across(hole, rough, inner, level), self.cutting.feed_mm_per_min))
            above = level
        way = strung([*pieces, *self._last(hole, radius, rough)])
        return way, np.diff(way.path.points_mm[:, 2]) < 0

    def _rough(self, radius: float) -> float:
        """Radius of the cutter's way before the finishing circle; the wall's own where a hole has no room for one."""
        rough = radius - self.finish_mm
        return rough if rough >= LEAST_HELIX_MM else radius

    def _last(self, hole: Hole, radius: float, rough: float) -> list[Piece]:
        """From the rough circle at the bottom to the middle, by way of the finishing circle where there is one."""
        feed = self.cutting.feed_mm_per_min
        if rough == radius:
            return [(self._half_way(hole, radius, out=False), feed, Message("remark.off_wall"))]
        fine = self.finish_feed_mm_per_min or feed
        return [
            (self._across(hole, rough, 0.0, self._bottom_mm), feed),
            (
                self._half_way(hole, radius, out=True), fine,
                Message("remark.finishing", depth=deep(self.thickness_mm - self._bottom_mm)),
            ),
            (self._turns(hole, radius, np.full(3, self._bottom_mm)), fine),
            (self._half_way(hole, radius, out=False), fine, Message("remark.off_wall")),
        ]  # fmt: skip

    def _half_way(self, hole: Hole, radius: float, *, out: bool) -> Path:
        """Half a turn on a circle that touches the wall: from the middle out on to it, or off it to the middle."""
        ends = [(hole.x_mm, hole.y_mm, self._bottom_mm), (hole.x_mm + radius, hole.y_mm, self._bottom_mm)]
        return Path(
            points_mm=np.array(ends if out else ends[::-1]),
            kinds=np.full(1, self._turning, np.uint8),
            centres_mm=np.array([[hole.x_mm + radius / 2, hole.y_mm]]),
        )

    @property
    def _turning(self) -> int:
        return CCW if self.climb else CW

    def _down(self, hole: Hole, radius: float, top: float, bottom: float) -> Path:
        """A helix no steeper than the material's entry angle and no coarser than the stepdown. The pitch's angle:
        atan(pitch / (2 pi R)). Source: plane geometry, derived here."""
        pitch = min(self.cutting.stepdown_mm, 2 * math.pi * radius * math.tan(math.radians(self.cutting.entry_deg)))
        halves = 2 * math.ceil((top - bottom) / pitch - 1e-9)
        return self._turns(hole, radius, np.linspace(top, bottom, halves + 1))

    def _turns(self, hole: Hole, radius: float, z: FloatArray) -> Path:
        """Half turns through the heights z, from the side of +X."""
        n = len(z) - 1
        side = np.where(np.arange(n + 1) % 2 == 0, radius, -radius)
        return Path(
            points_mm=np.column_stack([hole.x_mm + side, np.full(n + 1, hole.y_mm), z]),
            kinds=np.full(n, self._turning, np.uint8),
            centres_mm=np.tile([hole.x_mm, hole.y_mm], (n, 1)),
        )

    def _across(self, hole: Hole, start: float, end: float, z: float) -> Path:
        return polyline([(hole.x_mm + start, hole.y_mm, z), (hole.x_mm + end, hole.y_mm, z)])

    def _pecked(self, hole: Hole) -> Cut:
        """Straight down in pecks by a drill, from the height at which a plunge begins; ends at the bottom."""
        path, feeds, peck = pecks(
            hole.x_mm,
            hole.y_mm,
            self.thickness_mm + APPROACH_MM,
            self._bottom_mm,
            self.cutting.stepdown_mm,
            self.cutting.plunge_mm_per_min,
        )
        nothing = np.zeros(len(path), np.bool_)
        said = Message("remark.pecks", step=deep(peck), depth=deep(self.thickness_mm - self._bottom_mm))
        return Cut(
            path=path, feeds_mm_per_min=feeds, feature=hole.name, stage=STAGE, entering=nothing, peck_mm=peck,
            remarks=(Remark(feature=hole.name, says=said),),
        )  # fmt: skip
