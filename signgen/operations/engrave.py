"""Engraving: a V-bit along the medial axis of each area, as deep as the area is wide there, with flat floors
at the limit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import Polygon

from signgen.drawing.drawing import Groove
from signgen.errors import CannotMakeError, Problem
from signgen.geometry.offsets import Area, polygons
from signgen.geometry.paths import FloatArray, Path
from signgen.operations.engrave_runs import Widths, shape_runs
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut, Toolpath

LIFT_MM = 40.0
"""Walking that costs as long as lifting out, moving on and plunging again, on a small router: 2 s at 1200
mm/min (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """Areas of grooves that touch, as one polygon, under the names of all of them."""

    names: tuple[str, ...]
    polygon: Polygon
    max_depth_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Engrave:
    """Grooves cut by one V-bit.

    `ridge_mm`: how high the ridges may stand that the V-bit leaves on a flat floor; `cleared`: the part of
    the floor that an end mill clears, None when there is none. `lift_mm`: the length of walking in cut
    grooves that one lift is worth.
    """

    grooves: tuple[Groove, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    tolerances: Tolerances
    ridge_mm: float = 0.05
    cleared: Area | None = None
    lift_mm: float = LIFT_MM

    @property
    def does(self) -> str:
        """What it does, in the operator's words."""
        letters = any(groove.text for groove in self.grooves)
        ornament = any(not groove.text for groove in self.grooves)
        return "engraves the " + " and the ".join(["letters"] * letters + ["lines"] * ornament)

    def toolpath(self) -> Toolpath:
        """The cuts, shape by shape from left to right.

        Raises: CannotMakeError when the bit is not the one that a groove is drawn for, or a groove would be
        deeper than the bit or the board.
        """
        self._refuse_impossible()
        found = shapes(self.grooves)
        least = self.tool.tip_mm / 2
        runs = shape_runs(
            [
                (shape.polygon, Widths(least_mm=least, limit_mm=self.tool.radius_at_depth_mm(shape.max_depth_mm)))
                for shape in found
            ],
            self.lift_mm,
            self.tolerances,
        )
        cuts = [self._cut(run, " ".join(shape.names), 0) for shape, own in zip(found, runs, strict=True) for run in own]
        return Toolpath(operation="engrave", tool=self.tool, cuts=tuple(cuts))

    def _cut(self, run: Path, feature: str, stage: int) -> Cut:
        points = run.points_mm.copy()
        # Not clipped at the top: clipping one end of a line or arc would press down what lies between its ends.
        depth = (points[:, 2] - self.tool.tip_mm / 2) / self.tool.slope
        points[:, 2] = self.thickness_mm - depth
        path = Path(points_mm=points, kinds=run.kinds.copy(), centres_mm=run.centres_mm.copy())
        return Cut(path=path, feeds_mm_per_min=self._feeds(path), feature=feature, stage=stage, two_way=True)

    def _feeds(self, path: Path) -> FloatArray:
        """Full feed, but going down never faster than the plunge feed in Z."""
        length = path.lengths_mm
        fall = -np.diff(path.points_mm[:, 2])
        sine = np.divide(fall, length, out=np.zeros_like(fall), where=length > 0)
        full, plunge = self.cutting.feed_mm_per_min, self.cutting.plunge_mm_per_min
        return np.where(sine * full > plunge, plunge / np.maximum(sine, 1e-9), full)

    def _refuse_impossible(self) -> None:
        problems = []
        for groove in self.grooves:
            if groove.angle_deg != self.tool.angle_deg or groove.tip_mm != self.tool.tip_mm:
                problems.append(
                    Problem(
                        where="v-bit",
                        what=f"{groove.name} is drawn for a {groove.angle_deg:g} degree bit with a "
                        f"{groove.tip_mm:g} mm tip, and {self.tool.name} is another.",
                        remedy="Draw the sign for the bit that cuts it.",
                    )
                )
            elif groove.max_depth_mm > self.tool.reach_mm * (1 + 1e-9):
                problems.append(
                    Problem(
                        where="depth",
                        what=f"{groove.name} may be {groove.max_depth_mm:g} mm deep, and {self.tool.name} reaches "
                        f"{self.tool.reach_mm:.4g} mm.",
                        remedy=f"Use a depth of {math.floor(self.tool.reach_mm * 10) / 10:g} mm or less, "
                        "or a larger bit.",
                    )
                )
            elif groove.max_depth_mm >= self.thickness_mm:
                problems.append(
                    Problem(
                        where="depth",
                        what=f"{groove.name} may be {groove.max_depth_mm:g} mm deep in a board of "
                        f"{self.thickness_mm:g} mm.",
                        remedy="Use a smaller depth.",
                    )
                )
        if problems:
            raise CannotMakeError(problems)


def shapes(grooves: Sequence[Groove]) -> tuple[Shape, ...]:
    """The polygons of all grooves, those of equal depth that touch made one, from left to right (then bottom
    to top).

    What overlaps or shares an edge has one groove between its outer edges, not two that cut into each other's
    walls.
    """
    found: list[Shape] = []
    for depth in sorted({groove.max_depth_mm for groove in grooves}):
        parts = [
            (part, groove.name) for groove in grooves if groove.max_depth_mm == depth for part in polygons(groove.area)
        ]
        for group in _touching([part for part, _ in parts]):
            names = tuple(dict.fromkeys(parts[i][1] for i in group))
            whole = parts[group[0]][0] if len(group) == 1 else shapely.union_all([parts[i][0] for i in group])
            found += [Shape(names=names, polygon=part, max_depth_mm=depth) for part in polygons(whole)]
    return tuple(sorted(found, key=lambda shape: shape.polygon.bounds))


def _touching(parts: Sequence[Polygon]) -> list[list[int]]:
    """Groups of parts that touch, each ascending."""
    group = list(range(len(parts)))

    def find(i: int) -> int:
        while group[i] != i:
            group[i] = group[group[i]]
            i = group[i]
        return i

    tree = shapely.STRtree(parts)
    for a, b in tree.query(parts, predicate="intersects").T.tolist():
        group[max(find(a), find(b))] = min(find(a), find(b))
    groups: dict[int, list[int]] = {}
    for i in range(len(parts)):
        groups.setdefault(find(i), []).append(i)
    return list(groups.values())
