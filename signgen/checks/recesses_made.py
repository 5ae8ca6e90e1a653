"""C126: every recess has its floor at one depth and its walls where they are drawn."""

from __future__ import annotations

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, deepest_line, floor_over_mm, nearest_line, worst_apart
from signgen.checks.tip_path import THROUGH_MM, TipPath, joined
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.distance import FloatArray, distance_to_segments, nearest_segment, segments_of
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm, Mm2, Num
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

STEP_MM = 0.25
"""Places looked at along the tip's way and along the outlines."""

QUARTER = 64
"""Chords of a quarter circle where areas are grown and shrunk here: at 5 mm they err by 0.0004 mm."""

SPARE, EXTRA_MM = 1.2, 0.003
"""What walls are allowed: the job's tolerance and a fifth more, and chords of arcs with the decimals of programs."""

CLEARED_RATIO = 0.5
"""At least so much of a recess must be within the cutter's reach: less is not what was drawn."""

REMEDY = Message("recesses_made.make_programs_again_if_they")


class RecessesMade:
    code = "C126"
    name = "recesses_made"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
Recesses are letters sunk flat into the face or cut right through, and the ground of panels. On the virtual board the
floor of each must lie at its depth, to 0.05 mm, wherever the thinnest end mill that cuts there can reach: what a disc
of its radius can sweep without leaving the recess. At every place of every cutter's way, from the motions alone, the
cutter may reach no further than the drawn wall; and every place of the wall that the disc can touch must be touched.
Both hold to the job's tolerance and a fifth. Corners that no round cutter reaches may stand; the check says how much.

A failure means a wall in the wrong place, a floor too deep or too shallow, or a part left standing.

What to do: fit the cutter that the sheet names; make the programs again.

Least error seen: 0.05 mm in depth, a patch of one cell; 0.015 mm at the walls."""

    def run(self, case: Case) -> CheckResult:
        recesses = case.drawing.of(Recess)
        if not recesses:
            return verdict(self, [], Message("recesses_made.no_recesses_drawn"))
        findings: list[Finding] = []
        left, worst = 0.0, 0.0
        ways = _ways(case)
        for recess in recesses:
            mouth = case.stock.thickness_mm - floor_over_mm(case.drawing, recess.area, recess.depth_mm) - THROUGH_MM
            own = [(tool, _over(way.below(mouth), recess.area), index) for tool, way, index in ways]
            own = [(tool, way, index) for tool, way, index in own if len(way)]
            mills = [tool for tool, _, _ in own if tool.kind == "end-mill"]
            if not mills:
                x, y = (float(v) for v in shapely.get_coordinates(shapely.point_on_surface(recess.area))[0])
                findings.append(
                    Finding(
                        message=Message("recesses_made.not_cut", recess=recess.called), place_mm=(x, y), remedy=REMEDY
                    )
                )
                continue
            radius = min(tool.radius_mm for tool in mills)
            reach = _opened(recess.area, radius)
            left += recess.area.area - reach.area
            if reach.area < CLEARED_RATIO * recess.area.area:
                findings.append(
                    Finding(
                        message=Message(
                            "recesses_made.cutter_reaches_only",
                            cutter=Mm(2 * radius),
                            share=Num(100 * reach.area / recess.area.area, 0),
                            recess=recess.called,
                        ),
                        remedy=Message("recesses_made.use_thinner_end_mill"),
                    )
                )
            findings += _floor(case, recess, reach)
            if recess.sharp:
                findings += _corners(case, recess, reach)
            beyond, over = _beyond(case, recess, own)
            findings += beyond
            findings += _untouched(case, recess, own, radius)
            worst = max(worst, over)
        return verdict(
            self,
            findings,
            Message(
                "recesses_made.recess_walls_most_outside_in",
                count=len(recesses),
                worst=Mm(max(worst, 0.0), 4),
                left=Mm2(left, 1),
            ),
        )


def _ways(case: Case) -> list[tuple[Tool, TipPath, int]]:
    """Each program's cutter with the parts of its way below the board's top."""
    top = case.stock.thickness_mm
    return [
        (program.tool, cuts.below(top - 1e-6), number)
        for number, (program, cuts) in enumerate(zip(case.programs, case.cuts, strict=True))
    ]


def _over(way: TipPath, area: BaseGeometry) -> TipPath:
    """The pieces that begin or end in an area. None crosses it from outside to outside: what is drawn lies apart."""
    if not len(way):
        return way
    shapely.prepare(area)
    inside = shapely.contains_xy(area, *way.start_mm[:, :2].T) | shapely.contains_xy(area, *way.end_mm[:, :2].T)
    return way.where(inside)


def _opened(area: BaseGeometry, radius_mm: float) -> BaseGeometry:
    """All that a disc can sweep within an area."""
    opened: BaseGeometry = area.buffer(-radius_mm, quad_segs=QUARTER).buffer(radius_mm, quad_segs=QUARTER)
    return opened


def _floor(case: Case, recess: Recess, reach: BaseGeometry) -> list[Finding]:
    """Cells at the wrong depth. Those in holes and other recesses deeper down are not this recess's."""
    grid, top = case.ideal.grid, case.stock.thickness_mm
    heights = case.boards[-1].z_mm.ravel()
    through = case.drawing.is_through(recess)
    others = [each.area.buffer(CHECK_MM) for each in case.drawing.of(Recess) if each.depth_mm > recess.depth_mm]
    others += [_hole_area(case, number) for number in range(len(case.drawing.of(Hole)))]
    others = [each for each in others if each.intersects(recess.area)]
    apart = shapely.union_all(others) if others else None
    findings = []
    margin = CHECK_MM
    for area, is_reach in ((recess.area, False), (reach, True)):
        area = area.buffer(-margin)
        if apart is not None:
            area = area.difference(apart)
        cells = cells_inside(area, grid)
        if not len(cells):
            continue
        depth = top - heights[cells].astype(np.float64)
        if is_reach:
            wrong = (recess.depth_mm if not through else top - THROUGH_MM) - depth
            allowed = CHECK_MM if not through else 0.0
        elif through:
            continue
        else:
            wrong = depth - recess.depth_mm
            allowed = CHECK_MM
        bad = np.flatnonzero(wrong > allowed)
        places = grid.centres_mm(cells[bad])
        for k in worst_apart(wrong[bad], places):
            x, y = float(places[k, 0]), float(places[k, 1])
            file, line = nearest_line(case, x, y) if is_reach else deepest_line(case, x, y)
            findings.append(
                Finding(
                    message=Message(
                        "recesses_made.wood_stands_above_floor" if is_reach else "recesses_made.too_much_removed",
                        recess=recess.called,
                        wrong=Mm(wrong[bad][k], 3),
                        place=at(x, y),
                    ),
                    file=file,
                    line=line,
                    place_mm=(x, y),
                    remedy=REMEDY,
                )
            )
    return findings


def _corners(case: Case, recess: Recess, reach: BaseGeometry) -> list[Finding]:
    """Cells beyond the end mill's reach that stand above the V-bit's sloping walls: at a distance s from the outline
    the surface lies (s - tip / 2) / tan(angle / 2) deep, down to the floor. Source: plane geometry of cones."""
    bits = [program.tool for program in case.programs if program.tool.kind == "v-bit"]
    cells = cells_inside(recess.area.difference(reach), case.ideal.grid)
    grid = case.ideal.grid
    places = grid.centres_mm(cells)
    away = distance_to_segments(places, segments_of(recess.area))
    if not bits:
        # What the end mill leaves of an O is the fringe of its curves.
        has_corners = bool((away > CHECK_MM).any())
        return [
            Finding(message=Message("recesses_made.no_v_bit_sharpens_corners", recess=recess.called), remedy=REMEDY)
        ] * has_corners
    if not len(cells):
        return []
    bit = bits[0]
    wanted = np.clip((away - bit.tip_mm / 2) / bit.slope, 0.0, recess.depth_mm)
    depth = case.stock.thickness_mm - case.boards[-1].z_mm.ravel()[cells].astype(np.float64)
    short = wanted - depth
    bad = np.flatnonzero(short > max(CHECK_MM, 1.5 * case.tolerance_mm / bit.slope))
    findings = []
    for k in bad[worst_apart(short[bad], places[bad])]:
        x, y = float(places[k, 0]), float(places[k, 1])
        file, line = nearest_line(case, x, y)
        findings.append(
            Finding(
                message=Message(
                    "recesses_made.wood_stands_in_corner_that",
                    recess=recess.called,
                    short=Mm(short[k], 3),
                    place=at(x, y),
                ),
                file=file,
                line=line,
                place_mm=(x, y),
                remedy=REMEDY,
            )
        )
    return findings


def _hole_area(case: Case, number: int) -> BaseGeometry:
    hole = case.drawing.of(Hole)[number]
    area: BaseGeometry = LineString(hole.ends_mm).buffer(hole.face_radius_mm + CHECK_MM)
    return area


def _beyond(case: Case, recess: Recess, own: list[tuple[Tool, TipPath, int]]) -> tuple[list[Finding], float]:
    """Where a cutter reaches beyond the wall: (findings, the worst). Holes within the recess are bored by others."""
    outline = segments_of(recess.area)
    allowed = SPARE * case.tolerance_mm + EXTRA_MM
    findings: list[Finding] = []
    worst = 0.0
    for tool, way, number in own:
        tip, piece = _places_along(way)
        keep = shapely.contains_xy(recess.area, tip[:, 0], tip[:, 1])
        tip, piece = tip[keep], piece[keep]
        if not len(tip):
            continue
        depth = case.stock.thickness_mm - tip[:, 2]
        if tool.kind == "v-bit":
            width = np.minimum(depth * tool.slope + tool.tip_mm / 2, tool.radius_mm)
        else:
            width = np.full(len(tip), tool.radius_mm)
        over = width - distance_to_segments(tip[:, :2], outline, tool.radius_mm + 1.0)
        worst = max(worst, float(over.max()))
        bad = np.flatnonzero(over > allowed)
        for k in bad[worst_apart(over[bad], tip[bad, :2])]:
            x, y = float(tip[k, 0]), float(tip[k, 1])
            findings.append(
                Finding(
                    message=Message(
                        "recesses_made.cuts_into_wall",
                        tool=tool.name,
                        over=Mm(over[k], 3),
                        recess=recess.called,
                        place=at(x, y),
                    ),
                    file=case.programs[number].file,
                    line=int(way.line[piece[k]]),
                    place_mm=(x, y),
                    remedy=REMEDY,
                )
            )
    return findings, worst


def _untouched(case: Case, recess: Recess, own: list[tuple[Tool, TipPath, int]], radius_mm: float) -> list[Finding]:
    """Places of the wall that the cutter can touch and does not, at the floor's depth."""
    top, allowed = case.stock.thickness_mm, SPARE * case.tolerance_mm + EXTRA_MM
    floor_z = top - min(recess.depth_mm, top) + CHECK_MM
    places = _places_on(recess.area)
    centres = segments_of(recess.area.buffer(-radius_mm, quad_segs=QUARTER))
    if not len(centres):
        return []
    can = distance_to_segments(places, centres, 2 * radius_mm + 1.0) <= radius_mm + EXTRA_MM
    places = places[can]
    ways, radii = [], []
    for tool, way, _ in own:
        low = way.below(floor_z)
        if tool.kind == "end-mill" and len(low):
            ways.append(low)
            radii.append(np.full((len(low), 2), tool.radius_mm))
    farthest = radius_mm + 1.0
    gap = np.full(len(places), farthest)
    if ways and len(places):
        gap, _ = nearest_segment(places, joined(ways).plan_mm, farthest, np.concatenate(radii))
    bad = np.flatnonzero(gap > allowed)
    findings = []
    for k in bad[worst_apart(gap[bad], places[bad])]:
        x, y = float(places[k, 0]), float(places[k, 1])
        file, line = nearest_line(case, x, y)
        findings.append(
            Finding(
                message=Message(
                    "recesses_made.cutter_ends_short_wall", recess=recess.called, gap=Mm(gap[k], 3), place=at(x, y)
                ),
                file=file,
                line=line,
                place_mm=(x, y),
                remedy=REMEDY,
            )
        )
    return findings


def _places_along(way: TipPath) -> tuple[FloatArray, NDArray[np.intp]]:
    """(n, 3) places along the pieces, no further apart than STEP_MM, ends included; which piece each lies on."""
    length = np.hypot(*(way.end_mm - way.start_mm)[:, :2].T)
    count = np.maximum(np.ceil(length / STEP_MM).astype(np.intp), 1) + 1
    piece = np.repeat(np.arange(len(way), dtype=np.intp), count)
    number = np.arange(len(piece)) - (np.cumsum(count) - count)[piece]
    share = (number / (count - 1)[piece])[:, None]
    return way.start_mm[piece] + share * (way.end_mm - way.start_mm)[piece], piece


def _places_on(area: BaseGeometry) -> FloatArray:
    """(n, 2) places along an area's outlines."""
    rings = shapely.get_rings(shapely.get_parts(area))
    return np.asarray(shapely.get_coordinates(shapely.segmentize(rings, STEP_MM)))
