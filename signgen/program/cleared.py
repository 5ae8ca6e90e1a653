"""How far down a V-bit meets nothing, for it has been there before."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from signgen.geometry.paths import CCW, LINE, FloatArray, Path
from signgen.shop.tools import Tool
from signgen.toolpath.cut import FAST, Cut

Bounds = tuple[float, float, float, float]

BESIDE_MM, ALONG_MM = 0.25, 0.2
"""How far beside a place where the bit has been it goes down quickly, and how much further along its way it must have
been as deep: what an operator would call the same place, and the checks, which look at the tip's places every 0.4 mm in
squares of 0.5 mm, do too. A way may fall as steeply as the bit's flank, so a narrow bit stays higher."""


class Cleared:
    """The cuts that one V-bit has made so far, asked for what they cleared over a place.

    A cone that stands `d` beside a place where it has been with its tip at z fits into what it cleared there as soon as
    its own tip is at z + d / slope: the walls of what it left rise no faster. That goes for a flat tip too, and however
    thick the board is, for it rests on where the bit has been, not on where the board's top is. Only the cone counts: a
    bit so deep that its shank may have been in the wood, which ends below `highest_mm`, cleared nothing here. Other
    cutters have upright sides, for which only the very same place would do: for them nothing is cleared here.
    """

    def __init__(self, tool: Tool, highest_mm: float) -> None:
        self.tool = tool
        self.margin_mm = ALONG_MM / tool.slope if tool.kind == "v-bit" else 0.0
        self._deepest_mm = highest_mm - tool.reach_mm if tool.kind == "v-bit" else math.inf
        self._cuts: list[tuple[Bounds, Path, NDArray[np.bool_]]] = []

    def add(self, cut: Cut) -> None:
        if self.tool.kind != "v-bit":
            return
        x, y = cut.path.points_mm[:, 0], cut.path.points_mm[:, 1]
        # An arc bulges beyond its ends by its radius at most.
        radii = np.hypot(*(cut.path.points_mm[:-1, :2] - cut.path.centres_mm).T)
        out = 2 * float(np.nanmax(radii, initial=0.0)) + self.tool.radius_mm
        out = min(out, float(cut.path.lengths_mm.max(initial=0.0)) + self.tool.radius_mm)
        box = (float(x.min()) - out, float(y.min()) - out, float(x.max()) + out, float(y.max()) + out)
        self._cuts.append((box, cut.path, cut.feeds_mm_per_min != FAST))

    def over_mm(self, x_mm: float, y_mm: float) -> float:
        """The lowest height of the tip over a place at which the bit meets no wood; infinite where it has not been."""
        found = math.inf
        for (x0, y0, x1, y1), path, fed in self._cuts:
            if x0 <= x_mm <= x1 and y0 <= y_mm <= y1 and fed.any():
                found = min(found, float(self._heights(path, x_mm, y_mm)[fed].min()))
        return found

    def _heights(self, path: Path, x_mm: float, y_mm: float) -> FloatArray:
        """(n,) for each segment, what its point nearest to the place allows: not always the best of its points, but
        one of them."""
        place = np.array([x_mm, y_mm])
        start, end = path.points_mm[:-1], path.points_mm[1:]
        step = end[:, :2] - start[:, :2]
        square = np.einsum("ij,ij->i", step, step)
        along = np.divide(
            np.einsum("ij,ij->i", place - start[:, :2], step), square, out=np.zeros(len(step)), where=square > 0
        )
        share = np.clip(along, 0.0, 1.0)
        near = start[:, :2] + share[:, None] * step
        arc = path.kinds != LINE
        if arc.any():
            share[arc], near[arc] = _on_arcs(path, arc, place)
        away = np.hypot(*(near - place).T)
        z = start[:, 2] + share * (end[:, 2] - start[:, 2])
        known = (z >= self._deepest_mm) & (away <= BESIDE_MM)
        return np.asarray(np.where(known, z + away / self.tool.slope, np.inf))


def _on_arcs(path: Path, arc: NDArray[np.bool_], place: FloatArray) -> tuple[FloatArray, FloatArray]:
    """(share of the sweep, point) of each arc that lies nearest to a place, its ends where the place is beside it."""
    centres = path.centres_mm[arc]
    first = path.points_mm[:-1][arc, :2] - centres
    radius = np.hypot(*first.T)
    sign = np.where(path.kinds[arc] == CCW, 1.0, -1.0)
    sweep = np.abs(path.sweeps_rad[arc])
    spoke = place - centres
    begin = np.arctan2(first[:, 1], first[:, 0])
    turned = np.mod((np.arctan2(spoke[:, 1], spoke[:, 0]) - begin) * sign, 2 * math.pi)
    # Beyond its end: back to the end, or on to the start, whichever is nearer round the circle.
    turned = np.where(turned <= sweep, turned, np.where(turned - sweep < 2 * math.pi - turned, sweep, 0.0))
    angle = begin + sign * turned
    return turned / sweep, centres + radius[:, None] * np.column_stack([np.cos(angle), np.sin(angle)])
