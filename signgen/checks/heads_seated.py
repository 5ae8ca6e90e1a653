"""C120: every countersink lets its screw's head lie flush."""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry import Point

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, deepest_line, nearest_line
from signgen.features.hole import Countersink, Hole
from signgen.geometry.distance import FloatArray, nearest_segment
from signgen.geometry.raster import cells_inside
from signgen.messages import Message, Mm
from signgen.tolerances import CHECK_MM

DIRECTIONS = 72
REMEDY = Message("heads_seated.make_programs_again_if_they")


class HeadsSeated:
    code = "C120"
    name = "heads_seated"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
Each countersink is measured twice. From the motions alone: at the board's top the V-bit's rim must pass through the
drawn circle in 72 directions, and nowhere reach beyond it. On the virtual board: between that circle and the hole,
the surface must be the drawn cone.

A failure means a screw whose head stands out of the sign or sinks too deep, or that sits crooked.

What to do: make the programs again; if the V-bit measures otherwise than its data say, mend the data.

Least error seen: 0.05 mm in place, radius and depth."""

    def run(self, case: Case) -> CheckResult:
        sunk = [(hole, hole.sink) for hole in case.drawing.of(Hole) if hole.sink]
        if not sunk:
            return verdict(self, [], Message("heads_seated.no_countersinks_drawn"))
        findings: list[Finding] = []
        worst_rim, worst_depth = 0.0, 0.0
        for hole, sink in sunk:
            found, off = _rim(case, hole, sink)
            worst_rim = max(worst_rim, off)
            wall, deep = _cone(case, hole, sink)
            worst_depth = max(worst_depth, deep)
            findings += found or wall
        return verdict(
            self,
            findings,
            Message(
                "heads_seated.countersinks_measured_rims_off_cones",
                count=len(sunk),
                worst_rim=Mm(worst_rim, 3),
                worst_depth=Mm(worst_depth, 3),
            ),
        )


def _rim(case: Case, hole: Hole, sink: Countersink) -> tuple[list[Finding], float]:
    """What is wrong with the rim at the board's top, and by how much at worst."""
    top, radius = case.stock.thickness_mm, sink.diameter_mm / 2
    middle = np.array([hole.x_mm, hole.y_mm])
    angle = np.arange(DIRECTIONS) * 2 * np.pi / DIRECTIONS
    rim = middle + radius * np.stack([np.cos(angle), np.sin(angle)], axis=1)
    gap: FloatArray = np.full(DIRECTIONS, np.inf)
    beyond, culprit = 0.0, ("", 0)
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        if program.tool.kind != "v-bit":
            continue
        pieces = shapely.linestrings(np.stack([cuts.start_mm[:, :2], cuts.end_mm[:, :2]], axis=1))
        near = np.flatnonzero(shapely.distance(Point(middle), pieces) < radius)
        own = cuts.where(near).below(top - 1e-6)
        if not len(own):
            continue
        radii = own.radii_mm(program.tool, top)
        gap = np.minimum(gap, nearest_segment(rim, own.plan_mm, radii=radii)[0])
        ends = np.concatenate([own.start_mm[:, :2], own.end_mm[:, :2]]) - middle
        out = np.hypot(*ends.T) + radii.T.ravel() - radius
        k = int(out.argmax())
        if out[k] > beyond:
            beyond, culprit = float(out[k]), (program.file, int(own.line[k % len(own)]))
    k = int(gap.argmax())
    if not np.isfinite(gap[k]):
        message = Message("heads_seated.has_no_countersink", hole=hole.called, place=at(hole.x_mm, hole.y_mm))
    elif beyond > CHECK_MM:
        message = Message("heads_seated.v_bit_reaches_beyond_rim", hole=hole.called, beyond=Mm(beyond, 3))
        return [_finding(hole, message, *culprit)], beyond
    elif gap[k] > CHECK_MM:
        message = Message("heads_seated.countersink_too_small", hole=hole.called, gap=Mm(gap[k], 3), place=at(*rim[k]))
    else:
        return [], max(beyond, float(gap[k]))
    return [_finding(hole, message, *nearest_line(case, hole.x_mm, hole.y_mm))], max(beyond, min(float(gap[k]), radius))


def _cone(case: Case, hole: Hole, sink: Countersink) -> tuple[list[Finding], float]:
    """What is wrong with the cone on the virtual board, and by how much at worst."""
    grid, top = case.ideal.grid, case.stock.thickness_mm
    middle = Point(hole.x_mm, hole.y_mm)
    outer = middle.buffer(sink.diameter_mm / 2 - CHECK_MM, quad_segs=64)
    inner = middle.buffer(hole.diameter_mm / 2 + CHECK_MM, quad_segs=64)
    cells = cells_inside(outer.difference(inner), grid)
    if not len(cells):
        return [], 0.0
    places = grid.centres_mm(cells)
    away = np.hypot(*(places - [hole.x_mm, hole.y_mm]).T)
    drawn = (sink.diameter_mm / 2 - away) / sink.slope
    error = top - case.boards[-1].z_mm.ravel()[cells].astype(np.float64) - drawn
    k = int(np.abs(error).argmax())
    worst = float(abs(error[k]))
    if worst <= CHECK_MM:
        return [], worst
    x, y = float(places[k, 0]), float(places[k, 1])
    message = Message(
        "heads_seated.too_deep" if error[k] > 0 else "heads_seated.too_shallow",
        hole=hole.called,
        worst=Mm(worst, 3),
        place=at(x, y),
    )
    line = deepest_line(case, x, y) if error[k] > 0 else nearest_line(case, x, y)
    return [_finding(hole, message, *line)], worst


def _finding(hole: Hole, message: Message, file: str, line: int | None) -> Finding:
    return Finding(message=message, file=file, line=line, place_mm=(hole.x_mm, hole.y_mm), remedy=REMEDY)
