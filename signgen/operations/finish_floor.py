"""Finishing floors that a thicker end mill has cleared: the narrow places that it could not enter, then one lap along
every wall."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property

import numpy as np
import shapely
from msgspec import Struct
from shapely.geometry import LinearRing, Polygon
from shapely.geometry.base import BaseGeometry
from shapely.geometry.polygon import orient

from signgen.geometry.arcs import fit_ring
from signgen.geometry.offsets import Area, area_of, inward, outward, polygons
from signgen.geometry.paths import Path, polyline
from signgen.messages import Message, Mm
from signgen.operations.clear_floor import FIRST_STAGE, ClearFloor, Floor, as_one
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.tolerances import Tolerances
from signgen.toolpath.cut import ABOVE_CLEARED_MM, FAST, Cut, Piece, Toolpath, strung
from signgen.toolpath.lead import lead_in, lead_out
from signgen.toolpath.loop import Loop
from signgen.toolpath.order import tour
from signgen.toolpath.remarks import Remark, deep

ALLOWANCE_MM = 0.3
"""What the thicker cutter leaves at walls: more than it is bent, little enough for one lap of full depth (common
practice)."""

LEAD_MM = 0.5
"""How far beside the wall a lap is begun and left: clear of what stands there."""

OVERLAP_MM = 1.0
"""How far a lap goes on over its beginning, so that no mark is left there (common practice)."""

SLIVER_MM = 0.1
"""How far the cutter keeps from what still stands where it comes down quickly: more than laps away from walls stray."""

LEAD_TRIES = 48
"""Places along a wall that are tried for a beginning in the clear."""


class Rough(Struct, frozen=True, kw_only=True):
    """What a thicker cutter has cleared of each floor, by the floor's name; it keeps off walls by the allowance."""

    cleared: tuple[tuple[str, Area], ...]

    def of(self, floor: Floor) -> Area:
        return dict(self.cleared)[floor.name]


class FinishFloor(Struct, frozen=True, kw_only=True, dict=True):
    """Floors of one depth, cleared before by a thicker cutter: `rough` says how far.

    Narrow places are cleared level by level like any floor, then every wall gets one lap of full depth, for nothing but
    the allowance stands there. Laps begin and end on arcs in what is cleared.
    """

    floors: tuple[Floor, ...]
    rough: Rough
    tool: Tool
    cutting: CuttingData
    thickness_mm: float
    depth_mm: float
    tolerances: Tolerances
    rank: int = 0
    through: bool = False

    @property
    def description(self) -> Message:
        return Message("does.finishes_floors", count=len(self.floors), depth=Mm(self.depth_mm, 2, trim=True))

    def toolpath(self) -> Toolpath:
        """Narrow places first, then laps, each with little travel."""
        cuts = list(self._narrow.toolpath().cuts) if self._narrow.floors else []
        laps = [cut for floor in self.floors for cut in self._laps(floor)]
        starts = [complex(*cut.path.points_mm[0, :2]) for cut in laps]
        ends = [complex(*cut.path.points_mm[-1, :2]) for cut in laps]
        order = tour(starts, ends, [False] * len(laps), 0j)
        stage = FIRST_STAGE + self.rank
        cuts += [laps[index] for index, _ in order]
        whole = (as_one(cuts, self.thickness_mm, self.cutting, stage),) if cuts else ()
        return Toolpath(operation="finish", tool=self.tool, cuts=whole)

    @property
    def is_whole(self) -> bool:
        """Whether every wall gets its lap, or lies in a narrow place that is cleared as a whole."""
        narrow = {each.name: each.area for each in self._narrow.floors}
        for floor in self.floors:
            own = narrow.get(floor.name)
            cleared = area_of(inward(own, self.tool.radius_mm - 0.05, 0.01)) if own is not None else None
            for ring, _, start in self._walls[floor.name]:
                if start is None and (cleared is None or not shapely.covers(cleared, ring)):
                    return False
        return True

    @property
    def narrow_floors(self) -> tuple[Floor, ...]:
        """What is cleared level by level."""
        return self._narrow.floors

    @property
    def laps_mm(self) -> float:
        """Length of all walls."""
        parts = [part for floor in self.floors for part in self._free(floor)]
        return float(sum(ring.length for part in parts for ring in (part.exterior, *part.interiors)))

    def _free(self, floor: Floor) -> tuple[Polygon, ...]:
        """Where the cutter's centre may be."""
        return inward(floor.area, self.tool.radius_mm, self.tolerances.chord_mm)

    @cached_property
    def _narrow(self) -> ClearFloor:
        """The floors that a lap along the walls does not clear: what stands wider than the allowance."""
        floors = []
        for floor in self.floors:
            rest = shapely.difference(floor.area, self.rough.of(floor))
            wide = outward(area_of(inward(rest, ALLOWANCE_MM, 0.02)), ALLOWANCE_MM, 0.02)
            if not wide:
                continue
            reach = area_of(outward(area_of(wide), self.tool.radius_mm, 0.02))
            free = polygons(shapely.intersection(area_of(self._free(floor)), reach))
            area = area_of(outward(area_of(free), self.tool.radius_mm, self.tolerances.chord_mm))
            area = area_of(polygons(shapely.intersection(area, floor.area)))
            if not area.is_empty:
                floors.append(Floor(name=floor.name, area=area))
        return ClearFloor(
            floors=tuple(floors), tool=self.tool, cutting=self.cutting, thickness_mm=self.thickness_mm,
            depth_mm=self.depth_mm, tolerances=self.tolerances, rank=self.rank, through=self.through,
        )  # fmt: skip

    @cached_property
    def _walls(self) -> dict[str, tuple[tuple[LinearRing, Loop, float | None], ...]]:
        return {floor.name: tuple(self._walls_of(floor)) for floor in self.floors}

    def _walls_of(self, floor: Floor) -> Iterator[tuple[LinearRing, Loop, float | None]]:
        """Every wall that the cutter can follow, the floor on its left (climb milling), and where a lap may begin."""
        narrow = {each.name: each.area for each in self._narrow.floors}
        clear = shapely.union_all([self.rough.of(floor), *([narrow[floor.name]] if floor.name in narrow else [])])
        room: BaseGeometry = area_of(inward(clear, self.tool.radius_mm + SLIVER_MM, 0.02))
        shapely.prepare(room)
        for part in self._free(floor):
            for number, ring in enumerate((part.exterior, *part.interiors)):
                way = orient(Polygon(ring), -1.0 if number else 1.0).exterior
                points = np.asarray(way.coords)[:, :2]
                loop = Loop.of(fit_ring(np.column_stack([points, np.zeros(len(points))]), self.tolerances.fit_mm))
                yield ring, loop, self._beginning(loop, room)

    def _laps(self, floor: Floor) -> Iterator[Cut]:
        z = self.thickness_mm - self.depth_mm
        feed = self.cutting.feed_mm_per_min
        for _, loop, start in self._walls[floor.name]:
            if start is None:
                continue
            end = start + loop.length_mm + OVERLAP_MM
            radius = self.tool.radius_mm
            pieces = [
                (lead_in((*loop.at(start), z), loop.heading(start), LEAD_MM, radius, left=True), feed),
                (loop.walk([(start, z), (end, z)]), feed),
                (lead_out((*loop.at(end), z), loop.heading(end), LEAD_MM, radius, left=True), feed),
            ]
            way = strung(_from_above(pieces, self.thickness_mm, self.cutting))
            said = Message("remark.wall_lap", depth=deep(self.depth_mm))
            yield Cut(
                path=way.path, feeds_mm_per_min=way.feeds_mm_per_min, feature=floor.name,
                stage=FIRST_STAGE + self.rank, remarks=(Remark(feature=floor.name, says=said),),
            )  # fmt: skip

    def _beginning(self, loop: Loop, room: BaseGeometry) -> float | None:
        """Where arcs on to the wall and off it lie in what is cleared; None where nowhere does, and then the narrow
        places' own laps have cut this wall."""
        for s in np.linspace(0.0, loop.length_mm, LEAD_TRIES, endpoint=False):
            ends = (float(s), float(s) + OVERLAP_MM)
            leads = [
                make((*loop.at(at), 0.0), loop.heading(at), LEAD_MM, self.tool.radius_mm, left=True)
                for make, at in zip((lead_in, lead_out), ends, strict=True)
            ]
            off = [lead.points_mm[0 if lead is leads[0] else -1, :2] for lead in leads]
            if all(room.covers(shapely.points(place)) for place in off):
                return ends[0]
        return None


def _from_above(pieces: Sequence[tuple[Path, float]], top: float, cutting: CuttingData) -> list[Piece]:
    """With a fast way down through what is cleared, slow at its end."""
    x, y, z = pieces[0][0].points_mm[0]
    fast = polyline([(x, y, top), (x, y, z + ABOVE_CLEARED_MM)])
    slow = polyline([(x, y, z + ABOVE_CLEARED_MM), (x, y, z)])
    return [(fast, FAST), (slow, cutting.plunge_mm_per_min), *pieces]
