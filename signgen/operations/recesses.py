"""Recesses by an end mill: which cutters have room in them, and the operations that clear them."""

from __future__ import annotations

import functools
import math
from collections.abc import Iterator, Sequence

import shapely
from shapely.geometry import MultiPolygon, Polygon

from signgen.drawing.drawing import Drawing
from signgen.errors import Problem
from signgen.features.recess import Recess
from signgen.geometry.offsets import inward, outward, polygons
from signgen.messages import Message, Mm
from signgen.operations.clear_floor import ClearFloor, Floor
from signgen.operations.sharpen import widest_mill_mm
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec

TOLERANCE_MM = 0.01
"""How closely areas are looked at to see whether a cutter has room."""

FURTHEST_RATIO = 3.0
"""How far a corner that stays round may reach, in the cutter's radii: one of 30 degrees has 1 / sin 15 - 1 = 2.9
(plane geometry). What reaches further is a stroke, not a corner."""

MOST_LEFT_RATIO = 0.15
"""Of a recess: a cutter that leaves more of it standing makes another shape."""

LEAST_NAMED_MM = 0.5
"""Thinner end mills are not worth naming: nobody sells them for wood (common practice)."""

LEAST_REACHED_RATIO = 0.6
"""Of a recess whose corners the V-bit cleans: the end mill must reach so much, so that it is a floor, not a groove."""

TRIES = 14
"""Halvings in the search for the largest cutter: from 50 mm down to 3 microns."""

Area = Polygon | MultiPolygon


@functools.lru_cache(maxsize=4096)
def has_room(area: Area, radius_mm: float) -> bool:
    """Whether a cutter makes the shape but for its corners: it gets into every part and stroke, round every island."""
    for part in polygons(area):
        reach = [
            each for inner in inward(part, radius_mm, TOLERANCE_MM) for each in outward(inner, radius_mm, TOLERANCE_MM)
        ]
        if len(reach) != 1 or len(reach[0].interiors) != len(part.interiors):
            return False
        if len(inward(part, radius_mm, TOLERANCE_MM)) != 1:
            return False
        left = shapely.difference(part, reach[0])
        if left.area > MOST_LEFT_RATIO * part.area:
            return False
        outline = shapely.points(shapely.get_coordinates(part))
        if float(shapely.distance(outline, reach[0]).max()) > FURTHEST_RATIO * radius_mm:
            return False
    return True


@functools.lru_cache(maxsize=4096)
def reaches_most(area: Area, radius_mm: float) -> bool:
    """Whether a cutter clears most of a recess; the V-bit, as deep as the walls let it, makes the narrow places where
    the cutter has no room: gaps between letters that stand, their counters."""
    reached = sum(
        each.area
        for part in polygons(area)
        for inner in inward(part, radius_mm, TOLERANCE_MM)
        for each in outward(inner, radius_mm, TOLERANCE_MM)
    )
    return bool(reached >= LEAST_REACHED_RATIO * area.area)


def makes(recess: Recess, radius_mm: float) -> bool:
    """Whether a cutter makes a recess, with the V-bit's help where its corners are to be sharp."""
    return (reaches_most if recess.sharp else has_room)(recess.area, radius_mm)


def largest_cutter_mm(area: Area) -> float:
    """Diameter of the thickest cutter that has room, rounded down to a hundredth; 0 when none has."""
    x0, y0, x1, y1 = area.bounds
    low, high = 0.0, min(x1 - x0, y1 - y0, 50.0)
    for _ in range(TRIES):
        middle = (low + high) / 2
        low, high = (middle, high) if has_room(area, middle / 2) else (low, middle)
    return math.floor(low * 100) / 100


def depth_of(recess: Recess, drawing: Drawing, spec: SignSpec) -> float:
    """How deep the cutter goes: into the spoilboard where a recess is cut right through."""
    return spec.thickness_mm + spec.breakthrough_mm if drawing.is_through(recess) else recess.depth_mm


def clearers(drawing: Drawing, spec: SignSpec, tools: Sequence[Tool]) -> list[Tool]:
    """Those end mills that have room in every recess and reach its floor; where none has, those that make it with the
    V-bit's help."""
    if not drawing.of(Recess):
        return []
    deepest = max(depth_of(recess, drawing, spec) for recess in drawing.of(Recess))
    mills = [
        tool
        for tool in tools
        if tool.kind == "end-mill"
        and tool.cutting_length_mm >= deepest
        and tool.diameter_mm <= widest_mm(drawing, spec) + 1e-9
    ]
    whole = [tool for tool in mills if all(has_room(recess.area, tool.radius_mm) for recess in drawing.of(Recess))]
    return whole or [tool for tool in mills if all(makes(recess, tool.radius_mm) for recess in drawing.of(Recess))]


def widest_mm(drawing: Drawing, spec: SignSpec) -> float:
    """The thickest end mill behind which the V-bit can clean corners; infinite when it need not."""
    sharp = [recess for recess in drawing.of(Recess) if recess.sharp]
    return min((widest_mill_mm(recess, spec.v_bit) for recess in sharp), default=math.inf)


def room_problems(drawing: Drawing, spec: SignSpec, tool: Tool | None) -> Iterator[Problem]:
    """Why a named cutter, or (None) every cutter in the shop, does not do for the recesses."""
    deepest = max((depth_of(recess, drawing, spec) for recess in drawing.of(Recess)), default=0.0)
    widest = widest_mm(drawing, spec)
    if tool is None and _with_room(drawing, spec):
        yield Problem(
            where="finish",
            what=Message(
                "cut.no_thin_end_mill_long_enough" if math.isfinite(widest) else "cut.no_end_mill_long_enough",
                deepest=Mm(deepest),
                thickest=Mm(widest, 3, trim=True),
            ),
            remedy=Message("cut.use_smaller_depth_thinner_board"),
        )
        return
    wanting = [recess for recess in drawing.of(Recess) if tool is None or not makes(recess, tool.radius_mm)]
    if wanting:
        largest, name = min((largest_cutter_mm(recess.area), recess.name) for recess in wanting)
        remedy = Message("cut.use_larger_bolder_letters_more")
        if largest >= LEAST_NAMED_MM:
            remedy = Message("cut.name_end_mill_less_long", largest=Mm(largest))
        yield Problem(
            where="end-mill" if tool else "finish",
            what=Message("cut.end_mill_has_no_room", diameter=Mm(tool.diameter_mm), name=name, largest=Mm(largest))
            if tool
            else Message("cut.no_end_mill_has_room", name=name, largest=Mm(largest)),
            remedy=remedy,
        )
    if not wanting and (tool.diameter_mm if tool else 0.0) > widest + 1e-9:
        yield Problem(
            where="sharp-corners",
            what=Message("cut.floor_s_depth_v_bit", widest=Mm(widest), diameter=Mm(tool.diameter_mm if tool else 0)),
            remedy=Message("cut.use_end_mill_less_larger", widest=Mm(widest)),
        )
    if tool and deepest > tool.cutting_length_mm:
        yield Problem(
            where="end-mill",
            what=Message(
                "cut.end_mill_cuts_deep_deepest",
                diameter=Mm(tool.diameter_mm),
                cutting_length=Mm(tool.cutting_length_mm),
                deepest=Mm(deepest),
            ),
            remedy=Message("cut.name_longer_cutter_use_smaller"),
        )


def _with_room(drawing: Drawing, spec: SignSpec) -> bool:
    """Whether a cutter that the planner may take has room everywhere, however short it is."""
    mills = [tool for tool in spec.shop.tools if tool.kind == "end-mill" and not tool.only_named]
    return any(all(makes(recess, tool.radius_mm) for recess in drawing.of(Recess)) for tool in mills)


def recess_operations(drawing: Drawing, spec: SignSpec, tool: Tool, cutting: CuttingData) -> tuple[ClearFloor, ...]:
    """An operation for each depth, the shallowest first, so that deeper ones begin on a cleared floor."""
    by_depth: dict[float, list[Floor]] = {}
    for recess in drawing.of(Recess):
        floor = Floor(name=recess.name, area=recess.area)
        by_depth.setdefault(depth_of(recess, drawing, spec), []).append(floor)
    return tuple(
        ClearFloor(
            floors=tuple(by_depth[depth]),
            tool=tool,
            cutting=cutting,
            thickness_mm=drawing.thickness_mm,
            depth_mm=depth,
            tolerances=spec.tolerances.upright,
            rank=rank,
            through=depth > drawing.thickness_mm,
        )
        for rank, depth in enumerate(sorted(by_depth))
    )


def standing_mm2(drawing: Drawing, radius_mm: float) -> float:
    """Area of all corners that stay round."""
    left = 0.0
    for recess in drawing.of(Recess):
        inner = inward(recess.area, radius_mm, TOLERANCE_MM)
        left += recess.area.area - sum(each.area for part in inner for each in outward(part, radius_mm, TOLERANCE_MM))
    return left
