"""C111: the sign comes out in its size and shape, and free but for its tabs."""

from __future__ import annotations

import numpy as np
import shapely

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, nearest_line, worst_apart
from signgen.checks.tip_path import THROUGH_MM, Nearby, TipPath
from signgen.features.edge import Bevel
from signgen.features.tab import Tab
from signgen.geometry.distance import FloatArray, nearest_segment
from signgen.messages import Message, Mm, Sides
from signgen.tolerances import CHECK_MM

STEP_MM = 1.0
"""Places looked at along the edge, every corner among them; what is narrower the virtual board shows (C109)."""

FAR_MM = 2.0
"""A rim farther than this from a place has not been meant to cut there."""

FOOT_MM = 0.01
"""How far above the end of a bevel the V-bit is looked at, whose tip may end just there."""

BLOCK = 2048
"""Places compared at once."""

SHORT_MM = 5.0
"""Pieces up to this length are sorted by where their ends lie."""

REMEDY = Message("edge_size.make_programs_again_if_they")


class EdgeSize:
    code = "C111"
    name = "edge_size"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
From the motions alone, at a place on every millimetre of the drawn edge: no cutter may come nearer than its radius
(the sign would be too small there), and at the board's bottom some cutter must come as near as that (else it is too
large, or not cut free). Where a tab stands, or a skin holds the sign all round, the same is asked just above that.

A failure names the place and by how much the edge is off. Corners outside the sign may be round: the cutter rolls
round them, and the sign's own corner stays sharp.

What to do: make the programs again; measure the cutter, for an edge that is off all round by the same amount.

Least error seen: 0.05 mm in shape, 0.002 mm in depth."""

    def run(self, case: Case) -> CheckResult:
        rings = [shapely.segmentize(outline.exterior, STEP_MM) for outline in case.drawing.outlines]
        places = np.concatenate([shapely.get_coordinates(ring)[:-1] for ring in rings])
        top = case.stock.thickness_mm
        drawn = case.drawing.first(Bevel)
        if drawn is None:
            near, near_line = _nearest(case, places, top - 1e-6, top)
        else:
            # The V-bit is on the bevel above the upright edge: what it does there is C134's matter.
            foot = top - drawn.depth_mm + FOOT_MM
            near, near_line = _nearest(case, places, top - 1e-6, top, v_bits=False)
            bevel, bevel_line = _nearest(case, places, foot, foot, v_bits=True)
            near_line = [b if v < n else a for a, b, n, v in zip(near_line, bevel_line, near, bevel, strict=True)]
            near = np.minimum(near, bevel)
        bottom = case.drawing.skin_mm + CHECK_MM if case.drawing.skin_mm else THROUGH_MM
        through, _ = _nearest(case, places, bottom, bottom)
        beside = np.zeros(len(places), dtype=np.bool_)
        for height in sorted({tab.height_mm for tab in case.drawing.of(Tab)}):
            own = np.zeros(len(places), dtype=np.bool_)
            for tab in case.drawing.of(Tab):
                if tab.height_mm == height:
                    own |= _at_tab(case, tab, places)
            through[own] = _nearest(case, places[own], height + CHECK_MM, height + CHECK_MM)[0]
            beside |= own
        findings = []
        floor = "skin" if case.drawing.skin_mm else "bottom"
        bad = np.flatnonzero(near < -CHECK_MM)
        for k in bad[worst_apart(-near[bad], places[bad], 20.0)]:
            x, y = float(places[k, 0]), float(places[k, 1])
            message = Message("edge_size.cutter_takes_off_sign_s", near=Mm(-near[k], 3), place=at(x, y))
            file, line = near_line[k] if near_line[k] else nearest_line(case, x, y)
            findings.append(Finding(message=message, file=file, line=line, place_mm=(x, y), remedy=REMEDY))
        bad = np.flatnonzero(through > CHECK_MM) if not case.drawing.is_blank else np.zeros(0, dtype=np.intp)
        for k in bad[worst_apart(through[bad], places[bad], 20.0)]:
            x, y = float(places[k, 0]), float(places[k, 1])
            level = Message("edge_size.above_tab" if beside[k] else f"edge_size.down_to_{floor}")
            message = Message("edge_size.edge_not_cut", level=level, place=at(x, y))
            if np.isfinite(through[k]) and through[k] < 1.0:
                message = Message("edge_size.edge_stands_too_far_out", through=Mm(through[k], 3), place=at(x, y))
            file, line = nearest_line(case, x, y)
            findings.append(Finding(message=message, file=file, line=line, place_mm=(x, y), remedy=REMEDY))
        size = _size(case, places, through)
        return verdict(self, findings, Message("edge_size.compared_places_edge", size=size, count=len(places)))


def _nearest(
    case: Case, places: FloatArray, below_mm: float, at_mm: float, v_bits: bool | None = None
) -> tuple[FloatArray, list[tuple[str, int] | None]]:
    """(n,) distance of places from the rim, at a height, of any cutter while its tip is at or below another; with the
    file and line of the nearest. `v_bits`: of V-bits alone, or of all others alone."""
    best = np.full(len(places), np.inf)
    where: list[tuple[str, int] | None] = [None] * len(places)
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        if v_bits is not None and (program.tool.kind == "v-bit") is not v_bits:
            continue
        low = _outer(case, cuts.below(below_mm), program.tool.radius_mm + FAR_MM)
        if not len(low) or not len(places):
            continue
        nearby = Nearby(low)
        reach = program.tool.radius_mm + FAR_MM
        # Places that follow each other lie together: on a sheet of signs each block looks at what is near it alone.
        for first in range(0, len(places), BLOCK):
            block = places[first : first + BLOCK]
            own = nearby.touching(block.min(axis=0) - reach, block.max(axis=0) + reach)
            if not len(own):
                continue
            away, which = nearest_segment(block, own.plan_mm, FAR_MM, own.radii_mm(program.tool, at_mm))
            for k in np.flatnonzero((away < best[first : first + BLOCK]) & (which >= 0)):
                best[first + k] = away[k]
                where[first + k] = (program.file, int(own.line[which[k]]))
    return best, where


def _outer(case: Case, cuts: TipPath, reach_mm: float) -> TipPath:
    """The pieces that may come within a distance of the edge: not the short ones with both ends well inside."""
    inner = case.drawing.edge.buffer(-reach_mm - SHORT_MM)
    shapely.prepare(inner)
    inside = shapely.contains_xy(inner, cuts.start_mm[:, :2]) & shapely.contains_xy(inner, cuts.end_mm[:, :2])
    short = np.hypot(*(cuts.end_mm - cuts.start_mm)[:, :2].T) <= SHORT_MM
    return cuts.where(~(inside & short))


def _at_tab(case: Case, tab: Tab, places: FloatArray) -> np.ndarray:
    """(n,) True where the cutter is, or may be, lifted over a tab."""
    reach = max((program.tool.radius_mm for program in case.programs), default=0.0)
    away = places - [tab.x_mm, tab.y_mm]
    along = away @ [tab.along_x, tab.along_y]
    across = away @ [tab.along_y, -tab.along_x]
    half = tab.width_mm / 2 + tab.foot_mm + reach + 2 * CHECK_MM
    return (np.abs(along) <= half) & (np.abs(across) <= reach)


def _size(case: Case, places: FloatArray, through: FloatArray) -> Message:
    """The outside size as the lowest cuts leave it at the places furthest out: `through` is how far they stand off."""
    if not np.isfinite(through).any():
        return Message("edge_size.a_blank" if case.drawing.is_blank else "edge_size.nothing_cut_through")
    size = []
    for axis in range(2):
        along = places[:, axis]
        ends = [np.isclose(along, end) & np.isfinite(through) for end in (along.min(), along.max())]
        size.append(np.ptp(along) + sum(float(np.median(through[end])) for end in ends if end.any()))
    return Message(
        "edge_size.outside_size_x_drawn",
        size=Sides((float(size[0]), float(size[1])), 3),
        drawn=Sides((case.drawing.width_mm, case.drawing.height_mm)),
    )
