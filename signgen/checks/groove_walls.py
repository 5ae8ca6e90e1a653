"""C116: the V-bit's way is measured against the outlines of letters, exactly."""

from __future__ import annotations

import math

import numpy as np
import shapely
from numpy.typing import NDArray

from signgen.checks.check import Case, CheckResult, Finding, Severity, verdict
from signgen.checks.places import at, feature_at, nearest_line, worst_apart
from signgen.checks.tip_path import TipPath, joined
from signgen.features.edge import Bevel
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.distance import FloatArray, IntArray, distance_to_segments, nearest_segment, segments_of
from signgen.messages import Message, Mm
from signgen.tolerances import CHECK_MM

STEP_MM = 0.25
"""Places looked at along the tip's way and along the outlines: between two of them a distance changes evenly but for
the curvature of an outline, which at this spacing is far below the tolerance."""

CORNER_DEG = 5.0
"""A turn of an outline from which on it is looked at itself; less is a chord of a curve."""

SPARE = 1.2
EXTRA_MM = 0.003
"""What is allowed: the job's tolerance and a fifth more, and the chords of arcs with the decimals of programs."""

REMEDY = Message("groove_walls.make_programs_again_if_they")


class GrooveWalls:
    code = "C116"
    name = "groove_walls"
    severity: Severity = "error"
    needs_drawing = True
    explanation = """\
Without any grid, from the motions alone. At a depth d a V-bit is d tan(A / 2) + tip / 2 wide on either side at the
board's face. (1) At every place of its way that width must fit between the outlines of the letter: distance to the
outline no less than the width, and no place may be deeper than drawn; a flat cutter that clears a floor must keep
clear of the sloping wall beside it likewise. (2) Every place of every outline must be touched by the bit somewhere
along its way. Both hold to the job's tolerance (0.01 mm by default) and a fifth. A flat tip cannot touch the inside
of a sharp corner; what it leaves there is allowed.

A failure means that a wall stands in the wrong place: wrong depth, wrong bit, a move left out or changed.

What to do: fit the bit that the sheet names; make the programs again.

Least error seen: 0.015 mm across the board at the default tolerance, that is 0.015 mm of depth at 90 degrees."""

    def run(self, case: Case) -> CheckResult:
        grooves = case.drawing.of(Groove)
        if not grooves:
            return verdict(self, [], Message("checks.no_letters_ornament_drawn"))
        outlines = [segments_of(groove.area) for groove in grooves]
        allowed = SPARE * case.tolerance_mm + EXTRA_MM
        findings, worst_out, count_in = _too_wide(case, outlines, allowed)
        missed, worst_short, count_out = _not_reached(case, outlines, allowed)
        return verdict(
            self,
            [*findings, *missed],
            Message(
                "groove_walls.walls_most_outside_places_way",
                worst_out=Mm(worst_out, 4),
                count_in=count_in,
                worst_short=Mm(worst_short, 4),
                count_out=count_out,
                allowed=Mm(allowed, 4),
            ),
        )


def _too_wide(case: Case, outlines: list[FloatArray], allowed: float) -> tuple[list[Finding], float, int]:
    """(1) of the explanation: (findings, worst overshoot, places looked at)."""
    top, grooves = case.stock.thickness_mm, case.drawing.of(Groove)
    findings: list[Finding] = []
    worst, count = 0.0, 0
    outline = np.concatenate(outlines)
    groove_of_segment = np.repeat(np.arange(len(outlines)), [len(own) for own in outlines])
    slope = np.array([math.tan(math.radians(groove.angle_deg) / 2) for groove in grooves])
    area = shapely.union_all([groove.area for groove in grooves])
    shapely.prepare(area)
    widest = max((program.tool.radius_mm for program in case.programs), default=0.0) + 1.0
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        sunk, _ = cuts.below(top - 1e-6).within(case.stock.bounds_mm)
        tip, piece = _places_along(sunk)
        inside = shapely.contains_xy(area, tip[:, 0], tip[:, 1])
        # Holes, their countersinks, recesses and the edge are other checks' matter.
        own = ~_elsewhere(case, tip) if program.tool.kind == "v-bit" else inside
        tip, piece, inside = tip[own], piece[own], inside[own]
        if not len(tip):
            continue
        depth = top - tip[:, 2]
        room, segment = nearest_segment(tip[:, :2], outline, widest + float(depth.max()) * float(slope.max()))
        room = np.where(inside, room, -room)
        groove = groove_of_segment[segment]
        far = np.flatnonzero(segment < 0)  # further from every outline than was looked: by the groove that it lies in
        hit, owner = shapely.STRtree([each.area for each in grooves]).query(
            shapely.points(tip[far, :2]), predicate="within"
        )
        groove[far[hit]] = owner
        if program.tool.kind == "v-bit":
            width = np.minimum(depth * program.tool.slope + program.tool.tip_mm / 2, program.tool.radius_mm)
        else:
            width = program.tool.radius_mm + depth * slope[groove]
        limit = np.array([own.max_depth_mm for own in grooves])[groove]
        over = np.maximum(width - room, (depth - limit) * slope[groove])
        worst, count = max(worst, float(over.max())), count + len(tip)
        bad = np.flatnonzero(over > allowed)
        for k in bad[worst_apart(over[bad], tip[bad, :2])]:
            x, y = float(tip[k, 0]), float(tip[k, 1])
            findings.append(
                Finding(
                    message=Message(
                        "groove_walls.depth_cuts_over_drawn_wall",
                        tool=program.tool.name,
                        depth=Mm(depth[k], 3),
                        over=Mm(over[k], 3),
                        place=at(x, y),
                        what=feature_at(case.drawing, x, y),
                    ),
                    file=program.file,
                    line=int(sunk.line[piece[k]]),
                    place_mm=(x, y),
                    remedy=REMEDY,
                )
            )
    return findings, worst, count


def _elsewhere(case: Case, tip: FloatArray) -> NDArray[np.bool_]:
    """(n,) which places lie within the rim of a countersink at the board's top, in a recess, or on or
    outside an edge that is bevelled."""
    found = np.zeros(len(tip), dtype=np.bool_)
    for hole in case.drawing.of(Hole):
        if hole.sink:
            found |= np.hypot(tip[:, 0] - hole.x_mm, tip[:, 1] - hole.y_mm) < hole.face_radius_mm
    if case.drawing.first(Bevel):
        # The bevel's rounds run on the edge or outside it; they are C134's matter.
        within = case.drawing.edge.buffer(-CHECK_MM)
        found |= ~shapely.contains_xy(within, tip[:, 0], tip[:, 1])
    for recess in case.drawing.of(Recess):
        # A bit that cleans a corner comes up on the outline itself, whose walls C126 measures.
        found |= shapely.contains_xy(recess.area.buffer(case.tolerance_mm), tip[:, 0], tip[:, 1])
    return found


def _places_along(pieces: TipPath) -> tuple[FloatArray, IntArray]:
    """(n, 3) places STEP_MM apart along the pieces, and both ends of every motion; which piece each lies on."""
    step = pieces.end_mm - pieces.start_mm
    owner, share = _every_step(np.hypot(step[:, 0], step[:, 1]))
    ends = np.ones(len(pieces), dtype=np.bool_)
    ends[:-1] = pieces.motion[1:] != pieces.motion[:-1]
    last = np.flatnonzero(ends)
    first = np.flatnonzero(np.concatenate([ends[-1:], ends[:-1]]))
    places = pieces.start_mm[owner] + share[:, None] * step[owner]
    return (
        np.concatenate([places, pieces.end_mm[last], pieces.start_mm[first]]),
        np.concatenate([owner, last, first]),
    )


def _every_step(length: FloatArray) -> tuple[IntArray, FloatArray]:
    """Places STEP_MM apart along pieces laid end to end: (n,) which piece, (n,) how far along it, 0 to 1."""
    gone = np.cumsum(length)
    before = gone - length
    first = np.floor(before / STEP_MM)
    count = (np.floor(gone / STEP_MM) - first).astype(np.intp)
    owner = np.repeat(np.arange(len(length)), count)
    number = np.arange(len(owner)) - (np.cumsum(count) - count)[owner] + 1
    along = (first[owner] + number) * STEP_MM - before[owner]
    return owner, np.clip(along / length[owner], 0.0, 1.0)


def _not_reached(case: Case, outlines: list[FloatArray], allowed: float) -> tuple[list[Finding], float, int]:
    """(2) of the explanation: (findings, worst shortfall, places looked at)."""
    top = case.stock.thickness_mm
    places, groove_of = _places_on(outlines)
    parts, radii = [], []
    for program, cuts in zip(case.programs, case.cuts, strict=True):
        sunk = cuts.below(top - 1e-6)
        if program.tool.kind == "v-bit" and len(sunk):
            parts.append(sunk)
            radii.append(sunk.radii_mm(program.tool, top))
    farthest = max(groove.limit_radius_mm for groove in case.drawing.of(Groove)) + 1.0
    if parts:
        pieces = joined(parts)
        gap, _ = nearest_segment(places, pieces.plan_mm, farthest, np.concatenate(radii))
    else:
        gap = np.full(len(places), farthest)
    bad = np.flatnonzero(gap > allowed)
    gap[bad] -= _left_by_tip(case.drawing.of(Groove), places[bad], groove_of[bad], case.tolerance_mm)
    bad = bad[gap[bad] > allowed]
    findings = []
    for k in bad[worst_apart(gap[bad], places[bad])]:
        x, y = float(places[k, 0]), float(places[k, 1])
        file, line = nearest_line(case, x, y)
        short = (
            Message("groove_walls.ends_short", gap=Mm(gap[k], 3))
            if gap[k] < farthest - 1e-6
            else Message("groove_walls.never_comes_near")
        )
        findings.append(
            Finding(
                message=Message(
                    "groove_walls.v_bit_outline",
                    of=case.drawing.of(Groove)[groove_of[k]].called,
                    short=short,
                    place=at(x, y),
                ),
                file=file,
                line=line,
                place_mm=(x, y),
                remedy=REMEDY,
            )
        )
    return findings, float(gap.max(initial=0.0)), len(places)


def _places_on(outlines: list[FloatArray]) -> tuple[FloatArray, IntArray]:
    """(n, 2) places STEP_MM apart on the outlines, and every corner; (n,) which groove each belongs to."""
    segments = np.concatenate(outlines)
    step = segments[:, 2:] - segments[:, :2]
    owner, share = _every_step(np.hypot(step[:, 0], step[:, 1]))
    heading = np.arctan2(step[:, 1], step[:, 0])
    turn = np.abs(np.mod(heading - np.roll(heading, 1) + np.pi, 2 * np.pi) - np.pi)
    corner = np.flatnonzero(turn > math.radians(CORNER_DEG))
    groove = np.repeat(np.arange(len(outlines)), [len(outline) for outline in outlines])
    places = np.concatenate([segments[owner, :2] + share[:, None] * step[owner], segments[corner, :2]])
    return places, groove[np.concatenate([owner, corner])]


def _left_by_tip(
    grooves: tuple[Groove, ...], places: FloatArray, groove_of: IntArray, tolerance_mm: float
) -> FloatArray:
    """(n,) how far a flat tip may end short of places on outlines: their distance from where its middle may go, less
    its radius. A stroke that tapers slowly opens to the tip anywhere along a long way, so a tip wider by the tolerance
    is asked for. Source: plane geometry, derived here (r (1 / sin(a / 2) - 1) in a corner)."""
    left = np.zeros(len(places))
    for number in np.unique(groove_of):
        groove = grooves[number]
        if groove.tip_mm > 0:
            own = np.flatnonzero(groove_of == number)
            radius = groove.tip_mm / 2 + tolerance_mm
            open_to_tip = groove.area.buffer(-radius)
            if not open_to_tip.is_empty:
                away = distance_to_segments(places[own], segments_of(open_to_tip))
                left[own] = np.maximum(away - radius, 0.0)
    return left
