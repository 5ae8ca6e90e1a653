"""Cuts of one tool -> its program: travel between them, entries from above, the end high and out of the way."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import LINE, FloatArray
from signgen.messages import Message, Sentence
from signgen.program.blocks import CUTTING, ENTRY, RAPID, TRAVEL, WRITTEN_MM, Drilled, Moves, ToolProgram
from signgen.program.cleared import Cleared
from signgen.program.travel import Travel
from signgen.shop.materials import CuttingData
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool
from signgen.tolerances import HAIR_CHORD_MM
from signgen.toolpath.cut import ABOVE_CLEARED_MM, APPROACH_MM, FAST, FREEING_STAGE, Cut, Toolpath
from signgen.toolpath.remarks import Remark

LEAST_FALL_MM = 1.0
"""A way down through what is cleared that is shorter is not worth a block of its own."""

NAMELESS: Mapping[str, Sentence] = MappingProxyType({})

Kinds = NDArray[np.uint8]
Place = tuple[float, float, float]


def assemble(
    *,
    heading: tuple[str, ...],
    toolpaths: Sequence[Toolpath],
    cutting: CuttingData,
    spindle_start_s: float,
    spindle_least_rpm: float = 0.0,
    zero: WorkZero,
    travel: Travel,
    top_z_feed_mm_per_min: float,
    park_xy_mm: tuple[float, float],
    number: int = 1,
    grid_mm: float = WRITTEN_MM,
    set_at: Sentence = "",
    arc_chord_mm: float = HAIR_CHORD_MM,
    own_heading: tuple[str, ...] = (),
    language: str = "en",
    called: Mapping[str, Sentence] = NAMELESS,
) -> ToolProgram:
    """The program for toolpaths that share one tool, in their order.

    Heights and places come in sign coordinates and leave as program coordinates (shifted by `zero`), on a grid of
    `grid_mm`. Every cut is entered straight down and left straight up. No feed asks the Z axis for more than it can
    do, and none goes down into wood faster than the plunge feed, whichever way a cut is walked. Where the bit has been
    before it goes down at the cutting feed, to a little above what it has cleared: not as a rapid, for chips and
    loose slivers may lie in the groove, and a feed can be held. `called`: what people call a feature, by its name.
    """
    tool = toolpaths[0].tool
    draft = _Draft(tool, cutting, travel.written(grid_mm, zero.z_mm))
    for owner, toolpath in enumerate(toolpaths):
        for cut in toolpath.cuts:
            draft.add(cut, owner)
    draft.park(park_xy_mm)
    kinds, exact, centres, feeds, roles, owners = draft.columns()
    shift = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    # On the written grid, so that what follows holds for the text too: rounding tilts a move of a hundredth.
    ends = np.round((exact - shift) / grid_mm) * grid_mm
    kinds = _without_closed_arcs(kinds, exact, ends)
    plunge = np.where(roles == TRAVEL, np.inf, cutting.plunge_mm_per_min)
    feeds = _within_reach(ends, feeds, plunge, top_z_feed_mm_per_min)
    return ToolProgram(
        heading=heading,
        own_heading=own_heading,
        language=language,
        number=number,
        tool=tool,
        cutting=cutting,
        spindle_start_s=spindle_start_s,
        spindle_least_rpm=spindle_least_rpm,
        grid_mm=grid_mm,
        arc_chord_mm=arc_chord_mm,
        set_at=set_at,
        moves=Moves(
            kinds=kinds,
            ends_mm=ends,
            centres_mm=centres - shift[:2],
            feeds_mm_per_min=feeds,
        ),
        notes=tuple((at, called.get(str(feature), feature)) for at, feature in draft.notes),
        remarks=tuple(
            (at, Message("remark.of", says=remark.says, feature=called.get(remark.feature, remark.feature)))
            for at, remark in draft.remarks
        ),
        operations=tuple(toolpath.operation for toolpath in toolpaths),
        owners=owners,
        roles=roles,
        drilled=tuple(_drilled(first, cut, ends, feeds, grid_mm) for first, cut in draft.drilled),
    )


class _Draft:
    """Moves as they are added, in sign coordinates: (kinds, ends, centres, feeds, role of each, owner)."""

    def __init__(self, tool: Tool, cutting: CuttingData, travel: Travel) -> None:
        self.tool, self.cutting, self.travel = tool, cutting, travel
        self.parts: list[tuple[Kinds, FloatArray, FloatArray, FloatArray, Kinds, NDArray[np.intp]]] = []
        self.notes: list[tuple[int, Sentence]] = []
        self.drilled: list[tuple[int, Cut]] = []
        self.remarks: list[tuple[int, Remark]] = []
        self.count = 0
        self.at: Place | None = None
        self.freed = False
        self.cleared = Cleared(tool, travel.top_mm + APPROACH_MM)

    def add(self, cut: Cut, owner: int) -> None:
        """Travel to a cut, down into it, and the cut itself."""
        x, y, z = _place(cut.path.points_mm[0])
        down_to = max(z, self.travel.top_mm + APPROACH_MM)
        if self.at is None:
            self._rapid(owner, (x, y, self.travel.park_mm))
        else:
            # A piece that is cut free may have lifted.
            low = not self.freed
            height = self.travel.height_mm(self.at[:2], (x, y)) if low else self.travel.safe_mm
            self._rapid(owner, (*self.at[:2], max(height, self.at[2])))
        self.notes.append((self.count, cut.feature))
        self.remarks += [(self.count, remark) for remark in cut.remarks if remark.at is None]
        height = self.parts[-1][1][-1, 2]
        self._rapid(owner, (x, y, height), (x, y, down_to))
        empty_to = max(z, self.cleared.over_mm(x, y) + self.cleared.margin_mm) + ABOVE_CLEARED_MM
        if empty_to <= down_to - LEAST_FALL_MM:
            self._feed(owner, LINE, (x, y, empty_to), self.cutting.feed_mm_per_min, TRAVEL)
        if z < down_to:
            self._feed(owner, LINE, (x, y, z), self.cutting.plunge_mm_per_min, ENTRY)
        if cut.peck_mm is not None:
            self.drilled.append((self.count, cut))
        self.remarks += [(self.count + remark.at, remark) for remark in cut.remarks if remark.at is not None]
        n = len(cut.path)
        fast = cut.feeds_mm_per_min == FAST
        kinds = np.where(fast, RAPID, cut.path.kinds).astype(np.uint8)
        roles = np.where(fast, TRAVEL, np.where(cut.enters(self.tool), ENTRY, CUTTING)).astype(np.uint8)
        feeds = np.where(fast, 0.0, cut.feeds_mm_per_min)
        self._append((kinds, cut.path.points_mm[1:], cut.path.centres_mm, feeds, roles, np.full(n, owner, np.intp)))
        if cut.peck_mm is not None:
            self._rapid(owner, (x, y, z))
        self.at = _place(cut.path.points_mm[-1]) if cut.peck_mm is None else (x, y, z)
        self.freed = self.freed or cut.stage >= FREEING_STAGE
        self.cleared.add(cut)

    def park(self, xy: tuple[float, float]) -> None:
        """Up and away at the end."""
        assert self.at is not None
        # A dot is a cut without a segment.
        owner = next(int(owners[-1]) for *_, owners in reversed(self.parts) if len(owners))
        high = self.travel.park_mm
        self._rapid(owner, (*self.at[:2], high), (*xy, high))

    def columns(self) -> tuple[Kinds, FloatArray, FloatArray, FloatArray, Kinds, NDArray[np.intp]]:
        kinds, ends, centres, feeds, roles, owners = zip(*self.parts, strict=True)
        return (
            np.concatenate(kinds),
            np.concatenate(ends),
            np.concatenate(centres),
            np.concatenate(feeds),
            np.concatenate(roles),
            np.concatenate(owners),
        )

    def _rapid(self, owner: int, *places: Place) -> None:
        for place in places:
            self._feed(owner, RAPID, place, 0.0, TRAVEL)

    def _feed(self, owner: int, kind: int, end: Place, feed: float, role: int) -> None:
        self._append(
            (
                np.full(1, kind, np.uint8),
                np.array([end], dtype=np.float64),
                np.full((1, 2), np.nan),
                np.full(1, feed),
                np.full(1, role, np.uint8),
                np.full(1, owner, np.intp),
            )
        )

    def _append(self, part: tuple[Kinds, FloatArray, FloatArray, FloatArray, Kinds, NDArray[np.intp]]) -> None:
        self.parts.append(part)
        self.count += len(part[0])


def _place(point: FloatArray) -> Place:
    x, y, z = point.tolist()
    return x, y, z


def _within_reach(ends: FloatArray, feeds: FloatArray, plunge: FloatArray, top_z_feed: float) -> FloatArray:
    """Feeds of tilted moves, limited to what the Z axis can do and the cutter bears going down (`plunge`, for each).
    Straight length is a little short on a helix, so the limit errs downwards."""
    step = np.diff(ends, axis=0, prepend=ends[:1])
    straight = np.sqrt((step**2).sum(axis=1))
    share = np.divide(step[:, 2], straight, out=np.zeros_like(straight), where=straight > 0)
    limit = np.where(share < 0, np.minimum(plunge, top_z_feed), top_z_feed)
    return np.asarray(np.minimum(feeds, limit / np.maximum(np.abs(share), 1e-9)))


def _without_closed_arcs(kinds: Kinds, exact: FloatArray, ends: FloatArray) -> Kinds:
    """Arcs so short that rounding makes their ends agree would be read as full circles: they become lines."""

    def stands(places: FloatArray) -> NDArray[np.bool_]:
        return np.append(False, np.all(places[1:, :2] == places[:-1, :2], axis=1))

    return np.where((kinds != RAPID) & stands(ends) & ~stands(exact), LINE, kinds).astype(np.uint8)


def _drilled(first: int, cut: Cut, ends: FloatArray, feeds: FloatArray, grid_mm: float) -> Drilled:
    """A drilled hole as the cycle that its moves are."""
    assert cut.peck_mm is not None
    x, y, bottom = ends[first + len(cut.path) - 1].tolist()
    return Drilled(
        first=first,
        last=first + len(cut.path),
        x_mm=x,
        y_mm=y,
        clear_mm=float(ends[first - 1, 2]),
        bottom_mm=bottom,
        peck_mm=round(cut.peck_mm / grid_mm) * grid_mm,
        feed_mm_per_min=float(feeds[first]),
    )
