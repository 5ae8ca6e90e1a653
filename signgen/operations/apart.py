"""Cutting a sheet of signs apart: one outside cut after the other, each piece held by the sheet until its own."""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from signgen.messages import Message
from signgen.operations.edge import CutOut
from signgen.shop.tools import Tool
from signgen.toolpath.cut import FREEING_STAGE, Toolpath


class CutApart(Struct, frozen=True, kw_only=True):
    """The outside cuts of several pieces with one end mill, from the middle of the sheet outwards: what is still to be
    cut then hangs together with the sheet's rim, where it is held. `cuts` are named by `pieces`."""

    cuts: tuple[CutOut, ...]
    pieces: tuple[str, ...]

    @property
    def tool(self) -> Tool:
        return self.cuts[0].tool

    @property
    def description(self) -> Message:
        tabs = {len(cut.tabs) for cut in self.cuts}
        if tabs == {0}:
            return Message("does.cuts_signs_out", count=len(self.cuts))
        if len(tabs) == 1:
            return Message("does.cuts_signs_out_with_tabs", count=len(self.cuts), tabs=min(tabs))
        return Message("does.cuts_signs_out_with_some_tabs", count=len(self.cuts), least=min(tabs), most=max(tabs))

    def toolpath(self) -> Toolpath:
        """One cut for each piece; each is a stage of its own, so that their order stays."""
        cuts = []
        for rank, i in enumerate(self._from_the_middle()):
            (cut,) = self.cuts[i].toolpath().cuts
            cuts.append(replace(cut.under(f"{self.pieces[i]}: edge"), stage=FREEING_STAGE + 1 + rank))
        return Toolpath(operation="edge", tool=self.tool, cuts=tuple(cuts))

    def _from_the_middle(self) -> list[int]:
        """Ring after ring round the middle of all pieces, each ring gone round once, so that travel stays short."""
        boxes = [cut.edge.bounds for cut in self.cuts]
        middles = [((x0 + x1) / 2, (y0 + y1) / 2) for x0, y0, x1, y1 in boxes]
        middle_x = (min(box[0] for box in boxes) + max(box[2] for box in boxes)) / 2
        middle_y = (min(box[1] for box in boxes) + max(box[3] for box in boxes)) / 2
        ring = max(math.hypot(x1 - x0, y1 - y0) for x0, y0, x1, y1 in boxes)

        def rank(i: int) -> tuple[int, float, int]:
            x, y = middles[i][0] - middle_x, middles[i][1] - middle_y
            return math.floor(math.hypot(x, y) / ring + 0.5), round(math.atan2(y, x), 6), i

        return sorted(range(len(self.cuts)), key=rank)
