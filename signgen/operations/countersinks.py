"""Cones for screws' heads at the tops of holes, cut by the V-bit before the holes are bored."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct

from signgen.features.hole import Countersink, Hole
from signgen.geometry.paths import CCW, FloatArray, Path, joined
from signgen.messages import Message, Mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.passes import levels
from signgen.toolpath.remarks import Remark, deep

STAGE = 10
"""After the letters, and in any case before the hole, whose rim it makes clean."""

BITE_RATIO = 0.5
"""Of the stepdown, from one ring to the next: the tip comes down on wood that the last ring's flank has cut half as
deep."""


class SinkHeads(Struct, frozen=True, kw_only=True):
    """Countersinks with one V-bit of their angle: rings of falling radius and growing depth, its flank on the cone's
    wall throughout, so that the head may be wider than the bit. The wood inside the last ring is the hole's."""

    holes: tuple[Hole, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float

    @property
    def description(self) -> Message:
        sizes = sorted({hole.sink.diameter_mm for hole in self.holes if hole.sink})
        return Message("does.sinks_heads", count=len(self.holes), sizes=tuple(Mm(size, 2, trim=True) for size in sizes))

    def toolpath(self) -> Toolpath:
        cuts = tuple(self._cut(hole, hole.sink) for hole in self.holes if hole.sink)
        return Toolpath(operation="countersinks", tool=self.tool, cuts=cuts)

    def _cut(self, hole: Hole, sink: Countersink) -> Cut:
        """Ring after ring, from the first one's depth down; between them along the wall. The bit's tip is on the wall's
        side of the hole's rim by half its width at last."""
        step = BITE_RATIO * self.cutting.stepdown_mm
        depths = [
            self.thickness_mm - z for z in levels(self.thickness_mm, self.thickness_mm - hole.sink_depth_mm, step)
        ]
        radii = [sink.diameter_mm / 2 - self.tool.tip_mm / 2 - depth * sink.slope for depth in depths]
        pieces = [_ring(hole, max(r, 0.0), self.thickness_mm - depth) for r, depth in zip(radii, depths, strict=True)]
        path = joined(pieces)
        falls = np.diff(path.points_mm[:, 2]) < 0
        feeds = np.where(falls, self.cutting.plunge_mm_per_min, self.cutting.feed_mm_per_min)
        said = Message("remark.rings", count=len(depths), depth=deep(depths[-1]))
        return Cut(
            path=path, feeds_mm_per_min=feeds, feature=hole.name, stage=STAGE, entering=falls,
            remarks=(Remark(feature=hole.name, says=said),),
        )  # fmt: skip


def _ring(hole: Hole, radius: float, z: float) -> Path:
    """A full circle counter-clockwise (climb milling inside) in two halves, from the side of +X."""
    if math.isclose(radius, 0.0, abs_tol=1e-6):
        radius = 0.0
    side: FloatArray = np.array([radius, -radius, radius])
    if radius == 0.0:
        return Path(
            points_mm=np.array([(hole.x_mm, hole.y_mm, z)]),
            kinds=np.zeros(0, np.uint8),
            centres_mm=np.zeros((0, 2)),
        )
    return Path(
        points_mm=np.column_stack([hole.x_mm + side, np.full(3, hole.y_mm), np.full(3, z)]),
        kinds=np.full(2, CCW, np.uint8),
        centres_mm=np.tile([hole.x_mm, hole.y_mm], (2, 1)),
    )
