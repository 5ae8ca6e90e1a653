"""C110: every hole is at its place, of its size, and through."""

from __future__ import annotations

import numpy as np
import shapely
from shapely.geometry import LineString, Point

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, floor_over_mm, nearest_line
from signgen.checks.tip_path import THROUGH_MM, Nearby, TipPath
from signgen.features.hole import Hole
from signgen.geometry.distance import FloatArray, nearest_segment
from signgen.messages import Message, Mm, Mm2, Num
from signgen.tolerances import CHECK_MM

DIRECTIONS = 72
SIDE_STEP_MM = 0.5
"""Places looked at along the straight sides of a slot."""

REMEDY = Message("holes_made.make_programs_again_if_they")


class HolesMade:
    code = "C110"
    name = "holes_made"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
Each hole is measured from the motions alone: where the cutter is at the board's bottom or below, its rim must pass
through the drawn circle or slot in 72 directions, from which centre and diameter follow; higher up it may nowhere
reach beyond it, but for a V-bit in a countersink, which C120 judges. On the virtual board nothing may be left
standing inside.

A failure means a hole that is missing, not through, at the wrong place or of the wrong size.

What to do: make the programs again; if the cutter measures otherwise than its data say, mend the data.

Least error seen: 0.05 mm in place and diameter, 0.002 mm in depth."""

    def run(self, case: Case) -> CheckResult:
        holes = case.drawing.of(Hole)
        if not holes:
            return verdict(self, [], Message("holes_made.no_holes_drawn"))
        findings: list[Finding] = []
        off: list[float] = []
        wrong: list[float] = []
        nearby = [Nearby(cuts) for cuts in case.cuts]
        for hole in holes:
            found, centre, diameter = _measured(case, hole, nearby)
            if diameter > 0:
                off.append(float(np.hypot(*centre)))
                wrong.append(diameter - hole.diameter_mm)
            findings += found or _standing(case, hole)
        detail = Message("holes_made.holes_measured", count=len(off), holes=len(holes))
        if off:
            diameters = Mm(max(map(abs, wrong)), 3)
            detail = Message("holes_made.and_off_by", measured=detail, centres=Mm(max(off), 3), diameters=diameters)
        return verdict(self, findings, detail)


def _measured(case: Case, hole: Hole, nearby: list[Nearby]) -> tuple[list[Finding], FloatArray, float]:
    """(findings, centre relative to the drawn one, diameter); a diameter of 0 when nothing goes through there."""
    middle, radius = np.array([hole.x_mm, hole.y_mm]), hole.diameter_mm / 2
    top = case.stock.thickness_mm - floor_over_mm(case.drawing, Point(hole.x_mm, hole.y_mm))
    angle = np.arange(DIRECTIONS) * 2 * np.pi / DIRECTIONS
    direction = np.stack([np.cos(angle), np.sin(angle)], axis=1)
    # A slot reaches further out by half its span along itself; at right angles to that, its two ends are as far.
    half = np.array(hole.ends_mm[1]) - middle
    further = np.abs(direction @ half)
    rim = np.concatenate([middle + radius * direction + np.sign(direction @ half)[:, None] * half, _sides(hole)])
    gap = np.full(len(rim), np.inf)
    reach = np.full(DIRECTIONS, -np.inf)
    outside, culprit = 0.0, ("", 0)
    for program, cuts in zip(case.programs, nearby, strict=True):
        own = _near(cuts, hole, top)
        # What the V-bit does to a countersunk hole is another check's business.
        if not len(own) or (hole.sink and program.tool.kind == "v-bit"):
            continue
        ends = np.concatenate([own.start_mm[:, :2], own.end_mm[:, :2]])
        beyond = _from_middle_line(hole, ends) + own.radii_mm(program.tool, top).T.ravel() - radius
        k = int(beyond.argmax())
        if beyond[k] > outside:
            outside, culprit = float(beyond[k]), (program.file, int(own.line[k % len(own)]))
        through = own.below(THROUGH_MM)
        if len(through):
            radii = through.radii_mm(program.tool, THROUGH_MM)
            gap = np.minimum(gap, nearest_segment(rim, through.plan_mm, radii=radii)[0])
            ends = np.concatenate([through.start_mm[:, :2], through.end_mm[:, :2]]) - middle
            own_reach = (ends @ direction.T + radii.T.ravel()[:, None]).max(axis=0)
            reach = np.maximum(reach, own_reach - further)
    if not np.isfinite(reach).all() or (reach + np.roll(reach, DIRECTIONS // 2) <= 0).any():
        place = (hole.x_mm, hole.y_mm)
        file, line = nearest_line(case, *place)
        message = Message("holes_made.not_cut_through_board_s", hole=hole.called, place=at(*place))
        return [Finding(message=message, file=file, line=line, place_mm=place, remedy=REMEDY)], np.zeros(2), 0.0
    diameter = float((reach + np.roll(reach, DIRECTIONS // 2)).mean())
    centre = 2 / DIRECTIONS * (reach @ direction)
    found = []
    k = int(gap.argmax())
    if gap[k] > CHECK_MM:
        place = (float(rim[k, 0]), float(rim[k, 1]))
        file, line = nearest_line(case, *place)
        what = Message("holes_made.wood_stands_inside_rim", gap=Mm(gap[k], 3), place=at(*place))
        found.append(_wrong(case, hole, what, centre, diameter, file, line))
    if outside > CHECK_MM:
        what = Message("holes_made.cutter_reaches_beyond_rim", outside=Mm(outside, 3))
        found.append(_wrong(case, hole, what, centre, diameter, *culprit))
    return found, centre, diameter


def _near(cuts: Nearby, hole: Hole, top: float) -> TipPath:
    """The pieces below the hole's mouth whose tip comes nearer to the hole's middle line than its radius."""
    reach = (hole.diameter_mm + hole.span_mm) / 2
    middle = np.array([hole.x_mm, hole.y_mm])
    some = cuts.touching(middle - reach, middle + reach).below(top - THROUGH_MM)
    pieces = shapely.linestrings(np.stack([some.start_mm[:, :2], some.end_mm[:, :2]], axis=1))
    away = shapely.distance(LineString(hole.ends_mm), pieces)
    return some.where(np.flatnonzero(away < hole.diameter_mm / 2))


def _from_middle_line(hole: Hole, places: FloatArray) -> FloatArray:
    """(n,) distance of places from the line between the middles of a slot's ends, or from a round hole's middle."""
    start, end = (np.array(each) for each in hole.ends_mm)
    way, seen = end - start, places - start
    share = np.clip(seen @ way / (way @ way), 0.0, 1.0)[:, None] if hole.span_mm else 0.0
    away: FloatArray = np.hypot(*(seen - share * way).T)
    return away


def _sides(hole: Hole) -> FloatArray:
    """(k, 2) places on both straight sides of a slot, none for a round hole."""
    if not hole.span_mm:
        return np.zeros((0, 2))
    start, end = (np.array(each) for each in hole.ends_mm)
    along = (end - start) / hole.span_mm
    out = hole.diameter_mm / 2 * np.array([-along[1], along[0]])
    share = np.linspace(0.0, 1.0, max(2, int(np.ceil(hole.span_mm / SIDE_STEP_MM)) + 1))[:, None]
    line = start + share * (end - start)
    return np.concatenate([line + out, line - out])


def _wrong(
    case: Case, hole: Hole, what: Message, centre: FloatArray, diameter: float, file: str, line: int | None
) -> Finding:
    return Finding(
        message=Message(
            "holes_made.measures_with_centre_off_drawn",
            hole=hole.called,
            what=what,
            diameter=Mm(diameter, 3),
            off=Mm(np.hypot(*centre), 3),
            drawn=Mm(hole.diameter_mm),
            place=Message("place.at", x=Num(hole.x_mm, 2), y=Num(hole.y_mm, 2)),
        ),
        file=file,
        line=line,
        place_mm=(hole.x_mm, hole.y_mm),
        remedy=REMEDY,
    )


def _standing(case: Case, hole: Hole) -> list[Finding]:
    """What the virtual board still holds inside a hole whose rim is right: a core that came loose or was left."""
    drawn = case.ideal.of(hole)
    cells = drawn.cell[np.isinf(drawn.least_mm)]
    heights = case.boards[-1].z_mm.ravel()[cells]
    left = heights > 2 * THROUGH_MM
    if not left.any():
        return []
    k = int(heights.argmax())
    x, y = (float(value) for value in case.ideal.grid.centres_mm(cells[k : k + 1])[0])
    return [
        Finding(
            message=Message(
                "holes_made.wood_stands_inside_in_all",
                hole=hole.called,
                heights=Mm(heights[k], 2),
                place=at(x, y),
                left=Mm2(left.sum() * case.ideal.grid.cell_mm**2, 1),
            ),
            file=nearest_line(case, x, y)[0],
            line=nearest_line(case, x, y)[1],
            place_mm=(x, y),
            remedy=Message("holes_made.clear_hole_s_middle_well"),
        )
    ]
