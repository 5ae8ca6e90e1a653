"""The greatest depth of grooves, where nobody stated it and letters are wide enough to get flat floors: by the letters'
height, the board and the time that walls and floors take."""

from __future__ import annotations

import math
from collections.abc import Iterator

import shapely
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove, Stroke
from signgen.geometry.offsets import polygons
from signgen.operations.choose import Cutters
from signgen.operations.clearing_cutter import CHANGE_MIN
from signgen.shop.feeds import cutting_data
from signgen.spec.finish import most_depth_mm
from signgen.spec.sign_spec import SignSpec

FLAT_MM = 3.0
"""Flat floors of large letters need be no deeper to throw a shadow (common practice)."""

LEAST_MM, PER_CAPITAL = 2.0, 1 / 30
"""The least for letters with flat floors, and over the height of their capitals, up to FLAT_MM (common practice)."""

MOST_RATIO = 0.5
"""Of the thickness: the deepest that is tried, where letters come out without floors then."""

WORTH_MIN, WORTH_RATIO = 1.0, 0.8
"""Another depth than the usual one is taken when it saves a minute and a fifth of the time."""

STEP_MM, COARSE_MM = 0.5, 0.1

WALLS_RATIO, MILL_RATIO = 2.5, 1.5
"""What walls and floors take over their length and area at full feed: ways down, turns and lifts (measured on twenty
signs: within a third)."""


def quicker_depth_mm(drawing: Drawing, spec: SignSpec, cutters: Cutters) -> float | None:
    """The depth that makes the grooves soonest; None when the usual one is about as quick."""
    usual = minutes_at(spec.depth_mm, drawing, spec, cutters)
    if usual <= WORTH_MIN:
        return None
    timed = [(minutes_at(depth, drawing, spec, cutters), depth) for depth in depths(drawing, spec)]
    minutes, depth = min(timed, default=(math.inf, 0.0))
    return depth if minutes <= min(usual - WORTH_MIN, WORTH_RATIO * usual) else None


def depths(drawing: Drawing, spec: SignSpec) -> Iterator[float]:
    """What is tried beside the usual depth."""
    high = max((line.cap_height_mm for line in drawing.lines), default=0.0)
    least = min(FLAT_MM, max(LEAST_MM, math.ceil(high * PER_CAPITAL / STEP_MM) * STEP_MM))
    most = min(spec.v_bit.reach_mm, most_depth_mm(spec.thickness_mm), MOST_RATIO * spec.thickness_mm)
    for depth in dict.fromkeys((FLAT_MM, least, math.floor(most / STEP_MM) * STEP_MM)):
        if 0 < depth <= most:
            yield depth


def minutes_at(depth_mm: float, drawing: Drawing, spec: SignSpec, cutters: Cutters) -> float:
    """About how long grooves of that greatest depth take: walls by the V-bit, floors by the quickest end mill, a change
    of cutter counted, or by the V-bit too."""
    bit = spec.v_bit
    cutting = cutting_data(bit, spec.material, spec.machine)
    walls, wide = 0.0, []
    for groove in drawing.of(Groove):
        for part in () if isinstance(groove, Stroke) else polygons(groove.area):
            natural = part.area / part.length / bit.slope  # half of the stroke's usual width
            has_floor = natural > depth_mm
            passes = math.ceil(min(depth_mm, natural) / cutting.stepdown_mm - 1e-9)
            walls += passes * part.length * (1.0 if has_floor else 0.5)
            wide.append(part.simplify(COARSE_MM))
    minutes = WALLS_RATIO * walls / cutting.feed_mm_per_min
    floors = _shrunk(shapely.union_all(wide), bit.radius_at_depth_mm(depth_mm))
    if floors.is_empty:
        return minutes
    passes = math.ceil(depth_mm / cutting.stepdown_mm - 1e-9)
    by_bit = (2 * spec.cusp_height_mm * bit.slope + bit.tip_mm) * cutting.feed_mm_per_min / passes
    ways = [floors.area / by_bit]
    for tool in (*cutters.through, *(() if spec.end_mill else spec.shop.tools)):
        if tool.kind != "end-mill" or (tool.only_named and tool not in cutters.through):
            continue
        reached = _shrunk(floors, tool.radius_mm).buffer(tool.radius_mm, quad_segs=2).area
        data = cutting_data(tool, spec.material, spec.machine)
        rounds = math.ceil(depth_mm / data.stepdown_mm - 1e-9)
        own = rounds * reached / (data.stepover_mm * data.feed_mm_per_min)
        change = 0.0 if tool in cutters.through else CHANGE_MIN
        ways.append(MILL_RATIO * own + change + max(0.0, floors.area - reached) / by_bit)
    return float(minutes + min(ways))


def _shrunk(area: BaseGeometry, by_mm: float) -> BaseGeometry:
    smaller: BaseGeometry = area.buffer(-by_mm, quad_segs=2, join_style="mitre")
    return smaller
