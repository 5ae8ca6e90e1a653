"""Keyholes from the sign's back: an end mill opens entry and slot, then a keyhole cutter widens the slot inside."""

from __future__ import annotations

import numpy as np
from msgspec import Struct

from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.geometry.paths import polyline
from signgen.messages import Message, Mm
from signgen.operations.holes import STAGE, BoreHoles
from signgen.operations.slots import MillSlots
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.remarks import Remark, deep


class _OnKeyholes(Struct, frozen=True, kw_only=True):
    keyholes: tuple[Keyhole, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float


class OpenKeyholes(_OnKeyholes, frozen=True, kw_only=True):
    """Entries bored and slots milled with an end mill, both to the keyholes' depth, so that the keyhole cutter need
    neither plunge nor cut with its neck."""

    @property
    def description(self) -> Message:
        one = self.keyholes[0]
        return Message(
            "does.opens_keyholes", count=len(self.keyholes),
            entry=Mm(one.entry_mm), slot=Mm(one.slot_mm), depth=Mm(one.depth_mm),
        )  # fmt: skip

    def toolpath(self) -> Toolpath:
        cuts: list[Cut] = []
        for keyhole in self.keyholes:
            floor = self.thickness_mm - keyhole.depth_mm
            x, y = keyhole.entry_at_mm
            entry = Hole(name=keyhole.entry_name, x_mm=x, y_mm=y, diameter_mm=keyhole.entry_mm)
            slot = Hole(
                name=keyhole.slot_name,
                x_mm=x,
                y_mm=y + keyhole.travel_mm / 2,
                diameter_mm=keyhole.slot_mm,
                span_mm=keyhole.travel_mm,
                angle_deg=90.0,
            )
            bored = BoreHoles(
                holes=(entry,), tool=self.tool, cutting=self.cutting, thickness_mm=self.thickness_mm,
                breakthrough_mm=-floor,
            )  # fmt: skip
            milled = MillSlots(
                slots=(slot,), tool=self.tool, cutting=self.cutting, thickness_mm=self.thickness_mm,
                breakthrough_mm=-floor,
            )  # fmt: skip
            cuts += [*bored.toolpath().cuts, *milled.toolpath().cuts]
        return Toolpath(operation="keyholes opened", tool=self.tool, cuts=tuple(cuts))


class UndercutKeyholes(_OnKeyholes, frozen=True, kw_only=True):
    """Each undercut in one go: straight down in the open entry, along the slot to where the screw hangs, back along
    the same line, and up in the entry, the only place where the head comes out."""

    @property
    def description(self) -> Message:
        one = self.keyholes[0]
        return Message("does.undercuts_keyholes", count=len(self.keyholes), width=Mm(one.undercut_mm))

    def toolpath(self) -> Toolpath:
        return Toolpath(operation="keyholes undercut", tool=self.tool, cuts=tuple(map(self._cut, self.keyholes)))

    def _cut(self, keyhole: Keyhole) -> Cut:
        z = self.thickness_mm - keyhole.depth_mm + keyhole.free_mm
        entry, seat = (*keyhole.entry_at_mm, z), (keyhole.x_mm, keyhole.y_mm, z)
        return Cut(
            path=polyline([entry, seat, entry]),
            feeds_mm_per_min=np.full(2, self.cutting.feed_mm_per_min),
            feature=keyhole.name,
            stage=STAGE,
            remarks=(
                Remark(
                    feature=keyhole.name,
                    says=Message("remark.undercut", depth=deep(self.thickness_mm - z)),
                ),
            ),
        )
