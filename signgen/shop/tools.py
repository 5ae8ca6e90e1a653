"""Cutters: what they are and what shape they leave."""

from __future__ import annotations

import math
from typing import Literal

from msgspec import Struct

from signgen.messages import Message, Mm, Num
from signgen.units import Limits

ToolKind = Literal["v-bit", "end-mill", "ball-nose", "drill", "keyhole"]

EdgeCut = Literal["up-cut", "down-cut", "compression", "straight"]
"""Which way an end mill's edges throw chips: up and out, down into the slot, up at the tip and down above it so that
both faces stay clean, or sideways."""

ToolMetal = Literal["carbide", "steel"]
EDGE_CUTS: tuple[EdgeCut, ...] = ("up-cut", "down-cut", "compression", "straight")
TOOL_METALS: tuple[ToolMetal, ...] = ("carbide", "steel")

V_BIT_ANGLES = Limits(least=15, greatest=150)
"""Full angles of V-bits: a sharper tip breaks off, a blunter bit leaves no groove to speak of."""

MISSING_V_BIT = "no-v-bit"
"""The name of the V-bit of a shop that has none: nothing is cut by it."""

STOUTEST_MM = 6.35
"""The largest shank and cutter that a small router's collet takes; no wider cutter is chosen unasked (common
practice)."""


class Tool(Struct, frozen=True, kw_only=True):
    """One cutter. Every length positive; `angle_deg` is the full angle of a V-bit's cone or a drill's point, None for
    the rest; `tip_mm` the diameter of a V-bit's flat tip; `cutting_length_mm` how far its edges reach above the tip.
    `cut` is an end mill's, None where nobody said; one that is `only_named` the planner never takes by itself. A
    keyhole cutter is a head of its diameter, `head_mm` high, on a neck of diameter `neck_mm`; both are 0 for the
    rest. `can_plunge` is known to be so, not hoped: a cutter without it goes down along ramps.
    """

    name: str
    kind: ToolKind
    diameter_mm: float
    shank_mm: float
    cutting_length_mm: float
    flutes: int
    angle_deg: float | None = None
    tip_mm: float = 0.0
    stickout_mm: float
    can_plunge: bool = True
    cut: EdgeCut | None = None
    metal: ToolMetal = "carbide"
    only_named: bool = False
    neck_mm: float = 0.0
    head_mm: float = 0.0
    source: str

    @property
    def label(self) -> str:
        """What a person calls it in English, in ASCII: '90 degree V-bit, 12 mm', '6 mm end mill', '5 mm drill'."""
        return str(self.called)

    @property
    def called(self) -> Message:
        """What a person calls it."""
        size = Mm(self.diameter_mm)
        if self.kind != "v-bit":
            edges = f"{self.kind}.{self.cut}" if self.cut and self.cut != "up-cut" else self.kind
            return Message(f"tool.{edges}", size=size)
        angle = Num(self.angle_deg or 0.0)
        if self.tip_mm:
            return Message("v-bit.flat", size=size, angle=angle, tip=Mm(self.tip_mm))
        return Message("v-bit.pointed", size=size, angle=angle)

    @property
    def radius_mm(self) -> float:
        return self.diameter_mm / 2

    @property
    def slope(self) -> float:
        """Half width gained for each millimetre up the cone: tan(angle / 2). Source: plane geometry of cones."""
        if self.angle_deg is None:
            raise ValueError(f"{self.name} has no angle")
        return math.tan(math.radians(self.angle_deg) / 2)

    def depth_for_radius_mm(self, radius_mm: float) -> float:
        """Depth at which a V-bit is `radius_mm` wide at the surface: (r - tip / 2) / tan(angle / 2), at least 0."""
        return max(0.0, (radius_mm - self.tip_mm / 2) / self.slope)

    def radius_at_depth_mm(self, depth_mm: float) -> float:
        """Half width at the surface of a V-bit at a depth."""
        return depth_mm * self.slope + self.tip_mm / 2

    @property
    def point_length_mm(self) -> float:
        """How far a drill's point leads its full diameter: D / 2 x cot(angle / 2), 0.3004 D at 118
        degrees (plane geometry, and as handbooks have it)."""
        return 0.0 if self.angle_deg is None or self.kind != "drill" else self.radius_mm / self.slope

    @property
    def reach_mm(self) -> float:
        """How deep it can cut: its cutting length, and no deeper than a V-bit's cone is high."""
        if self.kind != "v-bit":
            return self.cutting_length_mm
        return min(self.cutting_length_mm, self.depth_for_radius_mm(self.radius_mm))
