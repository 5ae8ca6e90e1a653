"""The flat floors of wide grooves: which there are, and the V-bit's share of clearing them."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.geometry.clip import clipped
from signgen.geometry.medial import medial_axis
from signgen.geometry.offsets import Area, area_of, inward, outward, polygons
from signgen.geometry.paths import FloatArray
from signgen.geometry.walk import Run, WalkPiece
from signgen.tolerances import Tolerances

STRAY_RATIO = 1 / 16
"""How far a floor line may stray from its place, in steps."""


MOST_THIN_MM = 0.005
"""Half the width of slivers of floor that get no line: half of the usual tolerance."""


def split_floor(area: BaseGeometry, depth_mm: float, slope: float, tolerances: Tolerances) -> tuple[Polygon, ...]:
    """The flat floor of an area engraved to `depth_mm` at most; () when the walls meet before they are that
    deep.

    `slope` is tan(angle / 2). Whatever the bit's tip: the wall rises from the floor's edge at the cutter's
    angle.
    """
    return inward(area, depth_mm * slope, tolerances.chord_mm)


def floor_runs(
    polygon: Polygon,
    cleared: Area | None,
    limit_mm: float,
    tip_mm: float,
    step_mm: float,
    lift_mm: float,
    tolerances: Tolerances,
) -> tuple[Run, ...]:
    """Runs of a V-bit's tip over what `cleared` leaves of a polygon's floor, `step_mm` apart, w = `limit_mm`
    throughout.

    Rings at equal distances from the wall, and the medial axis where rings end in corners: every point of the
    floor that is not cleared lies within step / 2 of the wall's run or of one of these.
    """
    centres = area_of(inward(polygon, limit_mm, tolerances.branch_mm))
    floor = area_of(inward(polygon, limit_mm - tip_mm / 2, tolerances.branch_mm))
    # Nobody sees whether a ridge stands a little to the left: lines may stray by this, and stand closer by as much.
    stray = step_mm * STRAY_RATIO
    spacing = step_mm - 3 * stray
    # The wall's own run takes what lies within half a step of it.
    left: BaseGeometry = area_of(inward(centres, spacing / 2, stray)).intersection(floor)
    if cleared is not None:
        left = left.difference(cleared)
    # What is thinner gets no line of its own, and the ridge there stands higher by it: so little, however coarse the
    # tolerance.
    thin = min(tolerances.total_mm / 2, MOST_THIN_MM)
    left = area_of(outward(area_of(inward(left, thin, thin)), thin + spacing / 2, stray))
    if left.is_empty:
        return ()
    shapely.prepare(left)
    lines: list[FloatArray] = []
    for ring in _rings(centres, spacing, stray):
        lines += _within(ring, left)
    axis = medial_axis(polygon, tolerances)
    for branch in clipped(axis, limit_mm, np.inf).branches:
        lines += _within(branch[:, :2], left)
    ways = centres if cleared is None else centres.difference(cleared.buffer(-step_mm))
    return _chained(lines, ways, limit_mm, lift_mm)


def _rings(centres: BaseGeometry, spacing_mm: float, stray_mm: float) -> list[FloatArray]:
    """Rings one from the last; what each is simplified by is made up for by its inset, so that none drifts outwards."""
    rings = []
    parts = inward(centres, spacing_mm, stray_mm / 2)
    while parts:
        area = shapely.simplify(area_of(parts), stray_mm / 2)
        rings += [shapely.get_coordinates(ring) for part in polygons(area) for ring in (part.exterior, *part.interiors)]
        parts = inward(area, spacing_mm - stray_mm / 2, stray_mm / 2)
    return rings


def _within(line: FloatArray, area: BaseGeometry) -> list[FloatArray]:
    """The parts of a line inside an area, pieces that meet end to end joined."""
    whole = LineString(line)
    if shapely.covers(area, whole):
        return [line]
    inside = shapely.line_merge(shapely.intersection(whole, area))
    return [
        shapely.get_coordinates(part)
        for part in shapely.get_parts(inside)
        if isinstance(part, LineString) and part.length > 0
    ]


def _chained(lines: Sequence[FloatArray], centres: BaseGeometry, limit_mm: float, lift_mm: float) -> tuple[Run, ...]:
    """Each line once, the next always the nearest that can be reached across the floor for less than a lift."""
    if not lines:
        return ()
    room = shapely.buffer(centres, 1e-6)
    shapely.prepare(room)
    waiting = list(range(len(lines)))
    closed = np.array([len(line) > 3 and np.array_equal(line[0], line[-1]) for line in lines])
    heads, tails = np.array([line[0] for line in lines]), np.array([line[-1] for line in lines])
    runs: list[list[FloatArray]] = []
    place: FloatArray | None = None
    while waiting:
        rows = np.array(waiting)
        pick, line = rows[0], lines[rows[0]]
        linked = False
        if place is not None:
            to_head, to_tail = np.hypot(*(heads[rows] - place).T), np.hypot(*(tails[rows] - place).T)
            best = int(np.argmin(np.minimum(to_head, to_tail)))
            candidate = lines[rows[best]]
            if closed[rows[best]]:
                turn = int(np.argmin(np.hypot(*(candidate[:-1] - place).T)))
                candidate = np.concatenate([candidate[turn:-1], candidate[: turn + 1]])
            elif to_tail[best] < to_head[best]:
                candidate = candidate[::-1]
            way = LineString([place, candidate[0]])
            pick, line = rows[best], candidate
            linked = bool(way.length <= lift_mm and (way.length == 0 or shapely.covers(room, way)))
        if linked:
            runs[-1].append(line)
        else:
            runs.append([line])
        place = line[-1]
        waiting.remove(int(pick))
    return tuple(_run(run, limit_mm) for run in runs)


def _run(lines: Sequence[FloatArray], limit_mm: float) -> Run:
    """A piece for each line, which begins where the one before it ended."""
    starts = [lines[0][:0], *(line[-1:] for line in lines)]
    whole = [np.concatenate([start, line]) for start, line in zip(starts, lines, strict=False)]
    return tuple(WalkPiece(np.column_stack([points, np.full(len(points), limit_mm)]), False) for points in whole)
