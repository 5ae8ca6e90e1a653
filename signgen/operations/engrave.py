"""Engraving: a V-bit along the medial axis of each area, as deep as the area is wide there, with flat floors
at the limit."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry import Polygon

from signgen.errors import CannotMakeError, Problem
from signgen.features.groove import Groove
from signgen.geometry.loose_fit import Stretch, fit_loosely
from signgen.geometry.medial import MedialAxis, medial_axes, medial_axis
from signgen.geometry.offsets import Area, area_of, inward, polygons
from signgen.geometry.paths import FloatArray, Path
from signgen.messages import Message, Mm, Num
from signgen.operations.engrave_detours import with_detours
from signgen.operations.engrave_floor import STRAY_RATIO, floor_runs
from signgen.operations.engrave_runs import RunRecipe, ShapeRun, shape_runs
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import Cut, Toolpath
from signgen.toolpath.remarks import Remark, deep

LIFT_MM = 40.0
"""Walking that costs as long as lifting out, moving on and plunging again, on a small router: 2 s at 1200
mm/min (common practice)."""


ALLOWANCE_MM = 0.2
"""Depth that roughing passes leave for the last one, so that walls are cut clean in one go (common practice).
"""


class EngravedShape(Struct, frozen=True, kw_only=True):
    """Areas of grooves that touch, as one polygon, under the names of all of them."""

    names: tuple[str, ...]
    polygon: Polygon
    max_depth_mm: float

    @property
    def feature(self) -> str:
        return " ".join(self.names)


class Engrave(Struct, frozen=True, kw_only=True):
    """Grooves cut by one V-bit.

    `cusp_height_mm`: how high the ridges may stand that the V-bit leaves on a flat floor; `cleared`: the part of
    the floor that an end mill clears, None when there is none. `lift_mm`: the length of walking in cut
    grooves that one lift is worth.
    """

    grooves: tuple[Groove, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    tolerances: Tolerances
    cusp_height_mm: float = 0.05
    cleared: Area | None = None
    lift_mm: float = LIFT_MM

    @property
    def description(self) -> Message:
        """What it does, in the operator's words."""
        letters = any(groove.is_letter for groove in self.grooves)
        ornament = any(not groove.is_letter for groove in self.grooves)
        if letters and ornament:
            return Message("does.engraves_letters_and_lines")
        return Message("does.engraves_letters" if letters else "does.engraves_lines")

    def toolpath(self) -> Toolpath:
        """The cuts: roughing passes, deeper and deeper; floors; and last of all the walls, in one go to full
        depth.

        Raises: CannotMakeError when the bit is not the one that a groove is drawn for, or a groove would be
        deeper than the bit or the board.
        """
        self._refuse_impossible()
        found = shapes(self.grooves)
        axes = medial_axes([shape.polygon for shape in found], self.tolerances)
        levels = [self._levels_mm(shape, axis) for shape, axis in zip(found, axes, strict=True)]
        roughing = max(map(len, levels), default=0)
        jobs = [
            (i, level, self._roughing(found[i], depth))
            for i, depths in enumerate(levels)
            for level, depth in enumerate(depths)
        ]
        jobs += [(i, roughing, self._finishing(shape)) for i, shape in enumerate(found)]
        floors = self._floors(found, levels, roughing)
        cuts = []
        for (i, stage, _), runs in zip(
            jobs, shape_runs([(found[i].polygon, recipe) for i, _, recipe in jobs], self.tolerances), strict=True
        ):
            # Floors that no run comes by are cut before the walls.
            before, last = 2 * stage, 2 * stage + 1
            walls, alone = list(runs), floors.get((i, stage), [])
            if alone:
                walls, alone = with_detours(walls, alone, self._room(found[i]), self.lift_mm)
            place = (len(levels[i]) if stage == roughing else stage) + 1, len(levels[i]) + 1
            cuts += [self._cut(run, found[i].feature, before, "floor", place) for run in alone]
            cuts += [self._cut(run, found[i].feature, last, "groove", place) for run in walls]
        return Toolpath(operation="engrave", tool=self.tool, cuts=tuple(sorted(cuts, key=lambda cut: cut.stage)))

    def _levels_mm(self, shape: EngravedShape, axis: MedialAxis) -> tuple[float, ...]:
        """Depths of the roughing passes, equal steps of which none, nor the last cut's, is more than the bit
        may take."""
        deepest = min(shape.max_depth_mm, self.tool.depth_for_radius_mm(axis.widest_mm))
        # Where a pass would come closer than the allowance it is left out, and the last cut takes that much
        # more.
        count = passes(deepest, self.cutting.stepdown_mm)
        return tuple(deepest * level / count for level in range(1, count))

    @property
    def _allowance_mm(self) -> float:
        return allowance_mm(self.cutting.stepdown_mm)

    def _roughing(self, shape: EngravedShape, depth_mm: float) -> RunRecipe:
        return RunRecipe(
            least_mm=self.tool.radius_at_depth_mm(depth_mm + self._allowance_mm),
            limit_mm=self._limit_mm(shape),
            cap_mm=self.tool.radius_at_depth_mm(depth_mm),
            fit_mm=self._allowance_mm * self.tool.slope / 4,
            deeper_mm=self._allowance_mm * self.tool.slope / 4,
            lift_mm=self.lift_mm,
        )

    def _finishing(self, shape: EngravedShape) -> RunRecipe:
        return RunRecipe(
            least_mm=self.tool.tip_mm / 2,
            limit_mm=self._limit_mm(shape),
            cap_mm=self._limit_mm(shape),
            fit_mm=self.tolerances.fit_mm,
            deeper_mm=self.tolerances.deeper_mm,
            lift_mm=self.lift_mm,
        )

    def _floors(
        self, found: Sequence[EngravedShape], levels: Sequence[tuple[float, ...]], roughing: int
    ) -> dict[tuple[int, int], list[ShapeRun]]:
        """The V-bit's share of the flat floors, by shape and stage: at every roughing depth and at the full one.
        Before the last pass ridges may stand as high as the depth that is left for it."""
        wide = [
            i
            for i, shape in enumerate(found)
            if medial_axis(shape.polygon, self.tolerances).widest_mm > self._limit_mm(shape)
        ]
        floors: dict[tuple[int, int], list[ShapeRun]] = {}
        rough = [i for i in wide if levels[i]]
        coarse = self._step_to_mm(max(self.cusp_height_mm, self._allowance_mm))
        for some, step in ((rough, coarse), (wide, self._step_mm)):
            for i, paths in zip(some, self._floor_paths([found[i] for i in some], step), strict=True):
                last = ((roughing, found[i].max_depth_mm),)
                for path in paths:
                    for stage, depth in last if some is wide else enumerate(levels[i]):
                        points = path.points_mm.copy()
                        points[:, 2] = self.tool.radius_at_depth_mm(depth)
                        level = Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=path.centres_mm.copy())
                        floors.setdefault((i, stage), []).append(ShapeRun(path=level, either_way=True))
        return floors

    def _floor_paths(self, wide: Sequence[EngravedShape], step_mm: float) -> list[list[Path]]:
        """For each shape its lines, so far apart."""
        runs = [
            floor_runs(
                shape.polygon,
                self.cleared,
                self._limit_mm(shape),
                self.tool.tip_mm,
                step_mm,
                self.lift_mm,
                self.tolerances,
            )
            for shape in wide
        ]
        # Line by line, so that many are fitted at once; floors are flat, so they need no step between them.
        stray = step_mm * STRAY_RATIO
        paths = iter(
            fit_loosely([[Stretch(piece.points, stray, stray) for piece in run] for own in runs for run in own])
        )
        return [[next(paths) for _ in own] for own in runs]

    def _centres(self, shape: EngravedShape) -> Area:
        """Where the bit may stand at the shape's full depth."""
        return area_of(inward(shape.polygon, self._limit_mm(shape), self.tolerances.branch_mm))

    def _room(self, shape: EngravedShape) -> Area:
        """Where it may go on its way to a floor: not across what the end mill will clear, where all the wood still
        stands."""
        room = shapely.buffer(self._centres(shape), self.tolerances.fit_mm)
        return room if self.cleared is None else area_of(polygons(room.difference(self.cleared.buffer(-self._step_mm))))

    @property
    def _step_mm(self) -> float:
        """Between lines of a floor that leave ridges of the height that was asked for."""
        return self._step_to_mm(self.cusp_height_mm)

    def _step_to_mm(self, cusp_height_mm: float) -> float:
        return 2 * cusp_height_mm * self.tool.slope + self.tool.tip_mm

    def _limit_mm(self, shape: EngravedShape) -> float:
        """Half width of the bit at the surface when it is as deep as it may be."""
        return self.tool.radius_at_depth_mm(shape.max_depth_mm)

    def _cut(self, run: ShapeRun, feature: str, stage: int, over: str, place: tuple[int, int]) -> Cut:
        """One run; `place`: which pass of how many of its shape, `over` its floor or along the groove."""
        points = run.path.points_mm.copy()
        # Not clipped at the top: clipping one end of a line or arc would press down what lies between its
        # ends.
        depth = (points[:, 2] - self.tool.tip_mm / 2) / self.tool.slope
        points[:, 2] = self.thickness_mm - depth
        path = Path(points_mm=points, kinds=run.path.kinds.copy(), centres_mm=run.path.centres_mm.copy())
        feeds = self._feeds(path)
        # Walked from its other end it must be as easy to enter, and fall no faster anywhere.
        same = abs(depth[0] - depth[-1]) <= self.tolerances.total_mm
        two_way = run.either_way and same and bool(np.array_equal(self._feeds(path.reversed())[::-1], feeds))
        said = Message(f"remark.pass.{over}", number=place[0], count=place[1], depth=deep(float(depth.max())))
        return Cut(
            path=path, feeds_mm_per_min=feeds, feature=feature, stage=stage, two_way=two_way,
            remarks=(Remark(feature=feature, says=said),),
        )  # fmt: skip

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
                        what=Message(
                            "cut.drawn_degree_bit_tip_another",
                            name=groove.name,
                            angle=Num(groove.angle_deg),
                            tip=Mm(groove.tip_mm),
                            bit=self.tool.called,
                        ),
                        remedy=Message("cut.draw_sign_bit_cuts"),
                    )
                )
            elif groove.max_depth_mm > self.tool.reach_mm * (1 + 1e-9):
                problems.append(
                    Problem(
                        where="depth",
                        what=Message(
                            "cut.may_deep_reaches",
                            name=groove.name,
                            max_depth=Mm(groove.max_depth_mm),
                            bit=self.tool.called,
                            reach=Mm(self.tool.reach_mm),
                        ),
                        remedy=Message(
                            "cut.use_depth_less_larger_bit", most=Mm(math.floor(self.tool.reach_mm * 10) / 10)
                        ),
                    )
                )
            elif groove.max_depth_mm >= self.thickness_mm:
                problems.append(
                    Problem(
                        where="depth",
                        what=Message(
                            "cut.may_deep_board",
                            name=groove.name,
                            max_depth=Mm(groove.max_depth_mm),
                            thickness=Mm(self.thickness_mm),
                        ),
                        remedy=Message("cut.use_smaller_depth"),
                    )
                )
        if problems:
            raise CannotMakeError(problems)


def allowance_mm(stepdown_mm: float) -> float:
    """What roughing passes leave for the last one."""
    return min(ALLOWANCE_MM, stepdown_mm / 4)


def passes(deepest_mm: float, stepdown_mm: float) -> int:
    """How many go down to a depth, the last among them."""
    if deepest_mm <= stepdown_mm * (1 + 1e-9):
        return 1
    return math.ceil(deepest_mm / (stepdown_mm - allowance_mm(stepdown_mm)) - 1e-9)


def shapes(grooves: Sequence[Groove]) -> tuple[EngravedShape, ...]:
    """The polygons of all grooves, those of equal depth that touch made one, from left to right (then bottom
    to top).

    What overlaps or shares an edge has one groove between its outer edges, not two that cut into each other's
    walls.
    """
    found: list[EngravedShape] = []
    for depth in sorted({groove.max_depth_mm for groove in grooves}):
        parts = [
            (part, groove.name) for groove in grooves if groove.max_depth_mm == depth for part in polygons(groove.area)
        ]
        for group in _touching([part for part, _ in parts]):
            names = tuple(dict.fromkeys(parts[i][1] for i in group))
            whole = parts[group[0]][0] if len(group) == 1 else shapely.union_all([parts[i][0] for i in group])
            found += [EngravedShape(names=names, polygon=part, max_depth_mm=depth) for part in polygons(whole)]
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
