"""The bevelled edge: the V-bit round the outside of the sign, before anything cuts it free."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
from msgspec import Struct

from signgen.features.edge import BEVEL_BELOW_MM, Bevel
from signgen.geometry.arcs import fit_ring
from signgen.geometry.offsets import outward
from signgen.messages import Message, Mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut, Piece, Toolpath, strung
from signgen.toolpath.loop import Loop
from signgen.toolpath.passes import levels
from signgen.toolpath.remarks import passes_of

STAGE = 20
"""After letters and countersinks: a board that the edge has been bevelled of is not touched again by this cutter."""


class BevelEdge(Struct, frozen=True, kw_only=True):
    """The bevel of one sign's edge, or of every sign's on a sheet: the flank of the V-bit lies on it in the last round,
    and earlier ones go round on the same way less deep, each down a ramp and then the whole way.

    At depth D the flank is D tan(A / 2) + tip / 2 wide at the face. For a bevel w wide the middle runs that much less w
    outside the edge. Source: plane geometry of cones.
    """

    bevels: tuple[Bevel, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    tolerances: Tolerances
    climb: bool = True

    @property
    def description(self) -> Message:
        return Message("does.bevels_the_edge", width=Mm(self.bevels[0].width_mm, 2, trim=True))

    @property
    def depth_mm(self) -> float:
        """Of the tip."""
        return bevel_depth_mm(self.bevels[0], self.tool)

    def toolpath(self) -> Toolpath:
        """One cut for each outline."""
        cuts = []
        for bevel in self.bevels:
            way = strung(list(self._rounds(bevel)))
            cuts.append(
                Cut(
                    path=way.path,
                    feeds_mm_per_min=way.feeds_mm_per_min,
                    feature=bevel.name,
                    stage=STAGE,
                    remarks=way.told(bevel.name),
                )
            )
        return Toolpath(operation="bevel", tool=self.tool, cuts=tuple(cuts))

    def _rounds(self, bevel: Bevel) -> Iterator[Piece]:
        loop = self._loop(bevel)
        slope = math.tan(math.radians(self.cutting.entry_deg))
        s, z = self._quiet_place(loop), self.thickness_mm
        depths = levels(self.thickness_mm, self.thickness_mm - self.depth_mm, self.cutting.stepdown_mm)
        for level, said in passes_of(depths, self.thickness_mm):
            down = s + (z - level) / slope
            yield loop.walk([(s, z), (down, level)]), self.cutting.ramp_mm_per_min, said.ramp
            yield loop.walk([(down, level), (down + loop.length_mm, level)]), self.cutting.feed_mm_per_min, said.cut
            s, z = down + loop.length_mm, level

    def _loop(self, bevel: Bevel) -> Loop:
        beyond = middle_outside_mm(bevel, self.tool)
        (ring,) = outward(bevel.edge, beyond, self.tolerances.chord_mm)
        points = np.asarray(ring.exterior.coords)[:: -1 if self.climb else 1, :2]
        return Loop.of(fit_ring(np.column_stack([points, np.zeros(len(points))]), self.tolerances.fit_mm))

    def _quiet_place(self, loop: Loop) -> float:
        """The middle of the longest straight or bend, where a beginning shows least."""
        lengths = np.diff(loop.ends_mm)
        longest = int(np.argmax(np.round(lengths, 6)))
        return float(loop.ends_mm[longest] + lengths[longest] / 2)


def bevel_depth_mm(bevel: Bevel, tool: Tool) -> float:
    """How deep the tip goes: a little below the bevel, as far as its cone reaches."""
    return min(bevel.depth_mm + BEVEL_BELOW_MM, max(tool.reach_mm, bevel.depth_mm))


def middle_outside_mm(bevel: Bevel, tool: Tool) -> float:
    """How far outside the edge the bit's middle goes round."""
    return max(0.0, tool.radius_at_depth_mm(bevel_depth_mm(bevel, tool)) - bevel.width_mm)


def bevel_beyond_mm(bevel: Bevel, tool: Tool) -> float:
    """How far outside the edge the bit cuts at the face."""
    return middle_outside_mm(bevel, tool) + tool.radius_at_depth_mm(bevel_depth_mm(bevel, tool))
