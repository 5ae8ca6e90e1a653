"""Cuts of one tool -> its program: travel between them, entries from above, the end high and out of the way."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import LINE, FloatArray
from signgen.program.blocks import RAPID, WRITTEN_MM, Moves, Program
from signgen.shop.materials import CuttingData
from signgen.shop.stock import WorkZero
from signgen.toolpath.cut import Toolpath

Kinds = NDArray[np.uint8]

APPROACH_MM = 1.0
"""Above the stock's top, where a rapid down ends and the plunge feed begins (common practice: a board is never quite
flat)."""

PARK_MM = 15.0
"""How much higher than the travel between cuts the program ends, so that hands and a vacuum reach the work."""


def assemble(
    *,
    heading: tuple[str, ...],
    toolpaths: Sequence[Toolpath],
    cutting: CuttingData,
    spindle_start_s: float,
    zero: WorkZero,
    top_mm: float,
    clearance_mm: float,
    top_z_feed_mm_per_min: float,
    park_xy_mm: tuple[float, float],
) -> Program:
    """The program for toolpaths that share one tool, in their order.

    Heights and places come in sign coordinates and leave as program coordinates (shifted by `zero`). Travel between
    cuts is at `top_mm + clearance_mm`; every cut is entered straight down and left straight up. No feed asks the Z
    axis for more than it can do, and none goes down faster than the plunge feed, whichever way a cut is walked.
    """
    safe = top_mm + clearance_mm
    parts: list[tuple[Kinds, FloatArray, FloatArray, FloatArray]] = []
    notes: list[tuple[int, str]] = []
    count = 0

    def travel(*places: tuple[float, float, float]) -> None:
        n = len(places)
        parts.append((np.full(n, RAPID, np.uint8), np.array(places), np.full((n, 2), np.nan), np.zeros(n)))

    for cut in (cut for toolpath in toolpaths for cut in toolpath.cuts):
        x, y, z = (float(v) for v in cut.path.points_mm[0])
        if not parts:
            travel((x, y, safe))
            count += 1
        notes.append((count, cut.feature))
        down_to = max(z, top_mm + APPROACH_MM)
        travel((x, y, safe), (x, y, down_to))
        parts.append(_plunge(x, y, z, down_to, cutting.plunge_mm_per_min))
        parts.append((cut.path.kinds, cut.path.points_mm[1:], cut.path.centres_mm, cut.feeds_mm_per_min))
        end_x, end_y, _ = (float(v) for v in cut.path.points_mm[-1])
        travel((end_x, end_y, safe))
        count += 2 + len(parts[-3][0]) + len(cut.path) + 1
    last = parts[-1][1][-1]
    travel((float(last[0]), float(last[1]), safe + PARK_MM), (*park_xy_mm, safe + PARK_MM))

    kinds, ends, centres, feeds = (np.concatenate(column) for column in zip(*parts, strict=True))
    # On the written grid, so that what follows holds for the text too: rounding tilts a move of a hundredth.
    exact, ends = ends, np.round(ends / WRITTEN_MM) * WRITTEN_MM
    kinds = _without_closed_arcs(kinds, exact, ends)
    rise = np.diff(ends[:, 2], prepend=ends[0, 2])
    # Tilted moves keep to what the Z axis can do; straight length is a little short on a helix, so the limit errs
    # downwards.
    straight = np.sqrt((np.diff(ends, axis=0, prepend=ends[:1]) ** 2).sum(axis=1))
    share = np.divide(rise, straight, out=np.zeros_like(rise), where=straight > 0)
    limit = np.where(rise < 0, min(cutting.plunge_mm_per_min, top_z_feed_mm_per_min), top_z_feed_mm_per_min)
    feeds = np.minimum(feeds, limit / np.maximum(np.abs(share), 1e-9))
    moves = Moves(
        kinds=kinds,
        ends_mm=ends - np.array([zero.x_mm, zero.y_mm, zero.z_mm]),
        centres_mm=centres - np.array([zero.x_mm, zero.y_mm]),
        feeds_mm_per_min=feeds,
    )
    return Program(
        heading=heading,
        tool=toolpaths[0].tool,
        cutting=cutting,
        spindle_start_s=spindle_start_s,
        moves=moves,
        notes=tuple(notes),
        features=tuple(feature for _, feature in notes),
    )


def _without_closed_arcs(kinds: Kinds, exact: FloatArray, ends: FloatArray) -> Kinds:
    """Arcs so short that rounding makes their ends agree would be read as full circles: they become lines."""

    def stands(places: FloatArray) -> NDArray[np.bool_]:
        return np.append(False, np.all(places[1:, :2] == places[:-1, :2], axis=1))

    return np.where((kinds != RAPID) & stands(ends) & ~stands(exact), LINE, kinds).astype(np.uint8)


def _plunge(
    x: float, y: float, z: float, down_to: float, feed: float
) -> tuple[Kinds, FloatArray, FloatArray, FloatArray]:
    """The straight way down into the work; nothing when the cut begins at the approach height."""
    n = int(z < down_to)
    return np.zeros(n, np.uint8), np.full((n, 3), [x, y, z]), np.full((n, 2), np.nan), np.full(n, feed)
