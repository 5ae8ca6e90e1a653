"""Corners that a round cutter leaves in recesses, cleaned by the V-bit."""

from __future__ import annotations

import math

import numpy as np
from msgspec import Struct

from signgen.features.recess import Recess
from signgen.geometry.clip import clipped
from signgen.geometry.medial import medial_axis
from signgen.geometry.offsets import polygons
from signgen.geometry.paths import FloatArray, Path
from signgen.geometry.walk import runs_along
from signgen.messages import Message
from signgen.operations.engrave_fit import Leeway, fitted
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.remarks import Level, Remark

LIFT_MM = 40.0
"""Walking that costs as long as lifting out, moving on and plunging again (common practice)."""


class SharpenCorners(Struct, frozen=True, kw_only=True):
    """The medial axis of recesses, as far as they are narrower than the end mill, at the depth that the walls allow.

    A place that no disc of the end mill's radius sweeps lies in a disc that touches the wall and is smaller: its
    middle is on the part of the axis walked here. There the V-bit leaves walls that slope up to the drawn outline.
    """

    recesses: tuple[Recess, ...]
    mill_radius_mm: float
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    tolerances: Tolerances

    @property
    def description(self) -> Message:
        return Message("does.sharpens_corners")

    def toolpath(self) -> Toolpath:
        """Passes, each deeper by no more than the bit may take; all places of a pass before the next."""
        cuts = []
        runs, depths, names = [], [], []
        for recess in self.recesses:
            for polygon in polygons(recess.area):
                axis = medial_axis(polygon, self.tolerances)
                part = clipped(axis, self.tool.tip_mm / 2, self.mill_radius_mm)
                for run in runs_along(part, (), LIFT_MM):
                    runs.append(run)
                    depths.append(recess.depth_mm)
                    names.append(recess.name)
        leeway = Leeway(
            deeper_mm=self.tolerances.deeper_mm, short_mm=self.tolerances.fit_mm, most_mm=self.mill_radius_mm,
            tip_mm=self.tool.tip_mm / 2,
        )  # fmt: skip
        paths = fitted(runs, [leeway] * len(runs))
        for path, limit, name in zip(paths, depths, names, strict=True):
            deepest = min(limit, self.tool.depth_for_radius_mm(float(path.points_mm[:, 2].max())))
            count = max(1, math.ceil(deepest / self.cutting.stepdown_mm - 1e-9))
            for level in range(1, count + 1):
                most = deepest * level / count if level < count else limit
                said = Level(number=level, count=count, depth_mm=min(most, deepest))
                cuts.append(self._cut(path, most, name, said))
        return Toolpath(operation="sharpen", tool=self.tool, cuts=tuple(sorted(cuts, key=lambda cut: cut.stage)))

    def _cut(self, path: Path, most_mm: float, name: str, said: Level) -> Cut:
        """One pass over a run whose third coordinate is the bit's half width at the surface."""
        points = path.points_mm.copy()
        depth = np.minimum((points[:, 2] - self.tool.tip_mm / 2) / self.tool.slope, most_mm)
        points[:, 2] = self.thickness_mm - depth
        placed = Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=path.centres_mm.copy())
        return Cut(
            path=placed, feeds_mm_per_min=self._feeds(placed), feature=name, stage=said.number,
            remarks=(Remark(feature=name, says=said.cut),),
        )  # fmt: skip

    def _feeds(self, path: Path) -> FloatArray:
        """Full feed, but going down never faster than the plunge feed in Z."""
        length = path.lengths_mm
        fall = -np.diff(path.points_mm[:, 2])
        sine = np.divide(fall, length, out=np.zeros_like(fall), where=length > 0)
        full, plunge = self.cutting.feed_mm_per_min, self.cutting.plunge_mm_per_min
        return np.where(sine * full > plunge, plunge / np.maximum(sine, 1e-9), full)


def widest_mill_mm(recess: Recess, v_bit: Tool) -> float:
    """The thickest end mill whose corners the V-bit can clean: at the floor's depth it must be as wide, or wood stays
    between the two."""
    return 2 * min(v_bit.radius_at_depth_mm(recess.depth_mm), v_bit.radius_mm)
