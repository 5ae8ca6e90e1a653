"""Letters of single lines: the V-bit's tip along each at one depth."""

from __future__ import annotations

import math

import numpy as np
import shapely
from msgspec import Struct

from signgen.features.groove import Stroke
from signgen.geometry.arcs import fit_all
from signgen.messages import Message, Mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.entry import at_height
from signgen.toolpath.remarks import Level, Remark

FIRST_STAGE = 1000
"""After engraving, which the same bit does; a stage for each pass."""


class FollowLines(Struct, frozen=True, kw_only=True):
    """Strokes by one V-bit: straight down, along the line as lines and arcs, and up."""

    strokes: tuple[Stroke, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    tolerances: Tolerances

    @property
    def description(self) -> Message:
        depths = sorted({stroke.max_depth_mm for stroke in self.strokes})
        least, most = Mm(depths[0], 2, trim=True), Mm(depths[-1], 2, trim=True)
        if len(depths) == 1:
            return Message("does.follows_lines", depth=most)
        return Message("does.follows_lines_from_to", least=least, most=most)

    def toolpath(self) -> Toolpath:
        """A cut for each line and pass, in steps alike that the bit may take; all lines of a pass before the next."""
        lines = [(stroke, line) for stroke in self.strokes for line in stroke.lines.geoms]
        paths = fit_all(
            [np.column_stack([shapely.get_coordinates(line), np.zeros(len(line.coords))]) for _, line in lines],
            self.tolerances.fit_mm,
        )
        cuts = []
        for (stroke, _), path in zip(lines, paths, strict=True):
            count = max(1, math.ceil(stroke.max_depth_mm / self.cutting.stepdown_mm - 1e-9))
            for level in range(1, count + 1):
                depth = stroke.max_depth_mm * level / count
                placed = at_height(path, self.thickness_mm - depth)
                said = Level(number=level, count=count, depth_mm=depth)
                cuts.append(
                    Cut(
                        path=placed,
                        feeds_mm_per_min=np.full(len(placed), self.cutting.feed_mm_per_min),
                        feature=stroke.name,
                        stage=FIRST_STAGE + level,
                        two_way=True,
                        remarks=(Remark(feature=stroke.name, says=said.cut),),
                    )
                )
        return Toolpath(operation="stroke", tool=self.tool, cuts=tuple(sorted(cuts, key=lambda cut: cut.stage)))
