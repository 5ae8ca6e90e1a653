"""C134: the bevel of the edge is as wide and as deep as drawn, all round."""

from __future__ import annotations

import numpy as np
import shapely

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, deepest_line, nearest_line, worst_apart
from signgen.checks.tip_path import Nearby, joined
from signgen.features.edge import Bevel
from signgen.geometry.distance import FloatArray, distance_to_segments, nearest_segment, segments_of
from signgen.geometry.offsets import area_of, inward
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm
from signgen.tolerances import CHECK_MM

STEP_MM = 1.0
"""Places looked at along the bevel's upper line, every corner among them."""

FAR_MM = 2.0
"""A flank farther than this from a place has not been meant to cut there."""

REMEDY = Message("edge_bevelled.make_programs_again_if_they")


class EdgeBevelled:
    code = "C134"
    name = "edge_bevelled"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
The bevel is measured twice. From the motions alone, at a place on every millimetre of its upper line: at the board's
top the V-bit's rim must pass through it, and come no nearer to the sign's middle. On the virtual board: between that
line and the edge, the surface must fall evenly, as deep at the edge as the bit's angle makes it.

A failure means a bevel that is too wide or too narrow, steps in it, or one that is not cut all round.

What to do: make the programs again; if the V-bit measures otherwise than its data say, mend the data.

Least error seen: 0.05 mm in width and depth."""

    def run(self, case: Case) -> CheckResult:
        chamfer = case.drawing.first(Bevel)
        if chamfer is None:
            return verdict(self, [], Message("edge_bevelled.no_bevel_drawn"))
        rim, off, count = _upper_line(case, chamfer)
        face, deep = _surface(case, chamfer)
        detail = Message("edge_bevelled.upper_line_off_most_places", off=Mm(off, 3), count=count, deep=Mm(deep, 3))
        return verdict(self, rim or face, detail)


def _upper_line(case: Case, chamfer: Bevel) -> tuple[list[Finding], float, int]:
    """What is wrong along the line where the bevel meets the face, by how much at worst, and places looked at."""
    top = case.stock.thickness_mm
    inner = [
        part for outline in case.drawing.outlines for part in inward(outline, chamfer.width_mm, case.tolerance_mm / 2)
    ]
    rings = [shapely.segmentize(ring, STEP_MM) for part in inner for ring in (part.exterior, *part.interiors)]
    places = np.concatenate([shapely.get_coordinates(ring)[:-1] for ring in rings])
    gap = np.full(len(places), FAR_MM)
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        sunk = cuts.below(top - 1e-6)
        if program.tool.kind != "v-bit" or not len(sunk):
            continue
        reach = program.tool.radius_mm + FAR_MM
        own = Nearby(joined([sunk])).touching(places.min(axis=0) - reach, places.max(axis=0) + reach)
        if len(own):
            found, _ = nearest_segment(places, own.plan_mm, FAR_MM, own.radii_mm(program.tool, top))
            gap = np.minimum(gap, found)
    findings = []
    bad = np.flatnonzero(np.abs(gap) > CHECK_MM)
    for k in bad[worst_apart(np.abs(gap[bad]), places[bad], 20.0)]:
        x, y = float(places[k, 0]), float(places[k, 1])
        message = Message("edge_bevelled.bevel_too_narrow", gap=Mm(gap[k], 3), place=at(x, y))
        if gap[k] >= FAR_MM:
            message = Message("edge_bevelled.edge_not_bevelled", place=at(x, y))
        elif gap[k] < 0:
            message = Message("edge_bevelled.bevel_too_wide", gap=Mm(-gap[k], 3), place=at(x, y))
        file, line = nearest_line(case, x, y)
        findings.append(Finding(message=message, file=file, line=line, place_mm=(x, y), remedy=REMEDY))
    return findings, float(np.abs(gap).max(initial=0.0)), len(places)


def _surface(case: Case, chamfer: Bevel) -> tuple[list[Finding], float]:
    """What is wrong with the bevel on the virtual board, and by how much at worst."""
    grid, top = case.ideal.grid, case.stock.thickness_mm
    found: list[Finding] = []
    worst = 0.0
    for outline in case.drawing.outlines:
        outer = area_of(inward(outline, CHECK_MM, CHECK_MM / 10))
        inner = area_of(inward(outline, max(chamfer.width_mm - CHECK_MM, CHECK_MM), CHECK_MM / 10))
        cells = cells_inside(outer.difference(inner), grid)
        if not len(cells):
            continue
        places: FloatArray = grid.centres_mm(cells)
        away = distance_to_segments(places, segments_of(outline))
        error = top - case.boards[-1].z_mm.ravel()[cells] - (chamfer.width_mm - away) / chamfer.slope
        worst = max(worst, float(np.abs(error).max()))
        # What lies across the board by no more than the tolerance is deeper by that much over the slope.
        bad = np.flatnonzero(np.abs(error) > CHECK_MM * max(1.0, 1 / chamfer.slope))
        for k in bad[worst_apart(np.abs(error[bad]), places[bad], 20.0)]:
            x, y = float(places[k, 0]), float(places[k, 1])
            message = Message(
                "edge_bevelled.too_deep" if error[k] > 0 else "edge_bevelled.too_shallow",
                error=Mm(abs(error[k]), 3),
                place=at(x, y),
            )
            file, line = deepest_line(case, x, y) if error[k] > 0 else nearest_line(case, x, y)
            found.append(Finding(message=message, file=file, line=line, place_mm=(x, y), remedy=REMEDY))
    return found, worst
