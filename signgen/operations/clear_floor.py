"""Clearing flat floors with an end mill: rings from the inside out, walls last, down by helix or ramp."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

import numpy as np
from msgspec import Struct
from shapely.geometry import Polygon

from signgen.geometry.arcs import fit_all
from signgen.geometry.offsets import Area, area_of, inward, outward
from signgen.geometry.paths import Path, joined, polyline
from signgen.geometry.pocket import PocketChain, PocketRun, rings_within
from signgen.messages import Message, Mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import ABOVE_CLEARED_MM, FAST, Cut, Piece, Toolpath, strung
from signgen.toolpath.entry import at_height, helix_into, ramp_into
from signgen.toolpath.order import tour
from signgen.toolpath.passes import levels
from signgen.toolpath.remarks import Level, moved_on, passes_of

FIRST_STAGE = -1000
"""Before holes and the edge: floors are cut while the board is whole. A stage for each depth, the shallowest first, so
that deeper ones begin on a cleared floor."""

CORE_RATIO, LEAST_HELIX_RATIO = 0.9, 0.25
"""Largest and smallest helix over the cutter's radius: beyond 1 a core would stand in the middle; a small one takes
very many turns, and a ramp along the first lap is quicker."""

LEAST_LAP_RATIO = 1.0
"""Shortest lap over the cutter's radius that is worth a ramp: on a shorter one the cutter goes straight down."""

NEARLY_HALF_RATIO = 0.95
"""Steps up to a twentieth more than the cutter's radius become this part of it: then rings alone cover everything."""

LIFT_OVER_MM = 2.0
"""How high over the board the cutter passes between runs of one floor, where neither clamps nor screws can stand."""

LOOSE_CORNER_DEG = 45.0
"""A turn that rings away from walls may round off, within what they may stray."""


class Floor(Struct, frozen=True, kw_only=True):
    """A flat floor: everything within `area` lies at one depth. Floors do not overlap."""

    name: str
    area: Area


class ClearFloor(Struct, frozen=True, kw_only=True):
    """Floors of one depth with one end mill, as far as it reaches; `allowance_mm` is left at walls until the last lap.
    `rank` orders the floors of several depths that one cutter clears; `through`: they are cut right through the board;
    `left_mm`: how much smaller than the sign's the floors are, for another cutter to finish.

    Each piece of a floor is cleared level by level: down by a helix or along the first lap, rings outwards, walls
    last, climb milling throughout. Nothing outside the floors is cut.
    """

    floors: tuple[Floor, ...]
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    depth_mm: float
    tolerances: Tolerances
    allowance_mm: float = 0.0
    rank: int = 0
    through: bool = False
    left_mm: float = 0.0

    @property
    def description(self) -> Message:
        if self.through:
            return Message("does.cuts_through")
        if self.left_mm:
            return Message(
                "does.roughs_floors",
                count=len(self.floors),
                depth=Mm(self.depth_mm, 2, trim=True),
                left=Mm(self.left_mm, 2, trim=True),
            )
        return Message("does.clears_floors", count=len(self.floors), depth=Mm(self.depth_mm, 2, trim=True))

    def reached(self) -> Area:
        """All that the cutter clears: the floors without the corners and narrow places where it does not fit."""
        radius, chord = self.tool.radius_mm, self.tolerances.chord_mm
        return area_of(
            tuple(part for floor in self.floors for part in outward(area_of(self._free(floor)), radius, chord))
        )

    def reached_of(self, floor: Floor) -> Area:
        """All that the cutter clears of one floor."""
        return area_of(outward(area_of(self._free(floor)), self.tool.radius_mm, self.tolerances.chord_mm))

    def toolpath(self) -> Toolpath:
        """A cut for each piece of floor, in an order with little travel from the sign's corner."""
        stage = FIRST_STAGE + self.rank
        pieces = [
            as_one(piece, self.thickness_mm, self.cutting, stage)
            for floor in self.floors
            for piece in self._pieces(floor)
        ]
        starts = [complex(*piece.path.points_mm[0, :2]) for piece in pieces]
        ends = [complex(*piece.path.points_mm[-1, :2]) for piece in pieces]
        order = tour(starts, ends, [False] * len(pieces), 0j)
        return Toolpath(operation="clear", tool=self.tool, cuts=tuple(pieces[index] for index, _ in order))

    def _free(self, floor: Floor) -> tuple[Polygon, ...]:
        """Where the cutter's centre may be. One that cannot plunge has no way into a place hardly larger than
        itself."""
        parts = inward(floor.area, self.tool.radius_mm, self.tolerances.chord_mm)
        least = 0.0 if self.tool.can_plunge else self._least_lap_mm
        return tuple(part for part in parts if part.exterior.length >= least)

    @property
    def _least_lap_mm(self) -> float:
        return LEAST_LAP_RATIO * self.tool.radius_mm

    def _pieces(self, floor: Floor) -> Iterator[tuple[Cut, ...]]:
        """Cuts of each piece of a floor, in order."""
        radius, step = self.tool.radius_mm, self.cutting.stepover_mm
        if NEARLY_HALF_RATIO * radius < step <= (2 - NEARLY_HALF_RATIO) * radius:
            step = NEARLY_HALF_RATIO * radius
        pocket = rings_within(self._free(floor), radius, step, self.allowance_mm, self.tolerances.chord_mm)
        bottoms = levels(self.thickness_mm, self.thickness_mm - self.depth_mm, self.cutting.stepdown_mm)
        told = passes_of(bottoms, self.thickness_mm)
        all_chains = [chain for piece in pocket.pieces for run in piece for chain in run.chains]
        chains = iter(self._fitted(all_chains, pocket.loose_mm))
        for piece in pocket.pieces:
            fitted = [(run, [next(chains) for _ in run.chains]) for run in piece]
            yield tuple(
                self._cut(floor.name, run, paths, above, bottom, said)
                for above, (bottom, said) in zip((self.thickness_mm, *bottoms), told, strict=False)
                for run, paths in fitted
            )

    def _fitted(self, chains: list[PocketChain], loose_mm: float) -> list[Path]:
        """Chains as flat lines and arcs, as closely as each must be kept to."""
        flat = [np.column_stack([chain.points_mm, np.zeros(len(chain.points_mm))]) for chain in chains]
        close = [points for points, chain in zip(flat, chains, strict=True) if not chain.is_loose]
        loose = [points for points, chain in zip(flat, chains, strict=True) if chain.is_loose]
        fitted_closely = iter(fit_all(close, self.tolerances.fit_mm))
        fitted_loosely = iter(fit_all(loose, loose_mm, LOOSE_CORNER_DEG))
        return [next(fitted_loosely if chain.is_loose else fitted_closely) for chain in chains]

    def _cut(
        self, name: str, run: PocketRun, chains: Sequence[Path], above: float, bottom: float, said: Level
    ) -> Cut:  # fmt: skip
        """One run at one level. Where it starts below the board's top, the way down is fast, through what the level
        above has cleared; beside a lap of the same level slivers stand, by which that lap strayed, and it is slow."""
        feed = self.cutting.feed_mm_per_min
        pieces: list[Piece] = [] if run.in_the_clear else self._down(run, chains[0], above, bottom, said)
        later = chains if run.in_the_clear else chains[1:]
        flat = [at_height(chain, bottom) for chain in later]
        if run.in_the_clear:
            pieces.append((flat.pop(0), feed, said.cut))
        pieces += [(lap, feed) for lap in flat]
        x, y, z = pieces[0][0].points_mm[0]
        if run.in_the_clear:
            slow = polyline([(x, y, self.thickness_mm), (x, y, z)])
            pieces = [(slow, self.cutting.plunge_mm_per_min), *pieces]
        elif z < self.thickness_mm - ABOVE_CLEARED_MM:
            slow = polyline([(x, y, z + ABOVE_CLEARED_MM), (x, y, z)])
            fast = polyline([(x, y, self.thickness_mm), (x, y, z + ABOVE_CLEARED_MM)])
            pieces = [(fast, FAST), (slow, self.cutting.plunge_mm_per_min), *pieces]
        way = strung(pieces)
        return Cut(
            path=way.path,
            feeds_mm_per_min=way.feeds_mm_per_min,
            feature=name,
            stage=FIRST_STAGE,
            remarks=way.told(name),
        )

    def _down(self, run: PocketRun, lap: Path, above: float, bottom: float, said: Level) -> list[Piece]:
        """The way down, and the first lap, with their feeds."""
        radius = min(CORE_RATIO * self.tool.radius_mm, run.room_mm)
        ramp, feed = self.cutting.ramp_mm_per_min, self.cutting.feed_mm_per_min
        start, flat = lap.points_mm[0, :2], at_height(lap, bottom)
        if radius >= LEAST_HELIX_RATIO * self.tool.radius_mm:
            helix = helix_into(*run.middle_mm, radius, above, bottom, self.cutting.entry_deg)
            across = polyline([helix.points_mm[-1], (*start, bottom)])
            return [(helix, ramp, said.ramp), (across, feed, said.cut), (flat, feed)]
        if lap.length_mm >= self._least_lap_mm:
            down = ramp_into(lap, above, bottom, self.cutting.entry_deg)
            falls = np.diff(down.points_mm[:, 2]) < 0
            level = int(np.flatnonzero(falls).max(initial=-1)) + 1
            return [
                (down.part(0, level), np.where(falls[:level], ramp, feed), said.ramp),
                (down.part(level, len(down)), feed, said.cut),
            ]
        plunge = polyline([(*start, above), (*start, bottom)])
        return [(plunge, self.cutting.plunge_mm_per_min), (flat, feed, said.cut)]


def as_one(cuts: Sequence[Cut], top_mm: float, cutting: CuttingData, stage: int) -> Cut:
    """Runs that rely on each other's order as one cut, which lifts over the board between them."""
    over = top_mm + LIFT_OVER_MM
    paths, feeds = [cuts[0].path], [cuts[0].feeds_mm_per_min]
    remarks = list(cuts[0].remarks)
    for before, after in itertools.pairwise(cuts):
        (x0, y0, z0), (x1, y1, z1) = before.path.points_mm[-1], after.path.points_mm[0]
        link = polyline([(x0, y0, z0), (x0, y0, over), (x1, y1, over), (x1, y1, z1)])
        paths += [link, after.path]
        feeds += [np.array([FAST, FAST, cutting.plunge_mm_per_min]), after.feeds_mm_per_min]
        remarks += moved_on(after.remarks, sum(map(len, paths[:-1])))
    return Cut(
        path=joined(paths), feeds_mm_per_min=np.concatenate(feeds), feature=cuts[0].feature, stage=stage,
        remarks=tuple(remarks),
    )  # fmt: skip
