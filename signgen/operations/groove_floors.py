"""The flat floors of wide grooves: whether an end mill of the job clears them, and what it leaves to the V-bit."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove, Stroke
from signgen.geometry.offsets import Area, area_of, polygons
from signgen.messages import Message, Mm, Num, Typed
from signgen.operations.choose import Cutters
from signgen.operations.clear_floor import ClearFloor, Floor
from signgen.operations.clearing_cutter import ClearingChoice, choose_clearing_cutter
from signgen.operations.engrave import allowance_mm, passes, shapes
from signgen.operations.engrave_floor import split_floor
from signgen.shop.feeds import cutting_data
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec

GROOVE_RANK = 50
"""After recesses, which one cutter clears too."""

WORTH_FITTING_MIN = 2.0
"""A cutter that the job does not use is fitted when it saves at least this, its change counted; when the user named
another, it is worth a remark."""


class Compared(Struct, frozen=True, kw_only=True):
    """How long the flat floors of grooves take, with the V-bit's share: by the cutter chosen (`tool`, None when the
    V-bit does it alone), and `others`, thickest first: each end mill of the shop that is deep enough, with minutes that
    include fitting it where the job has no other use for it."""

    tool: Tool | None
    minutes: float
    others: tuple[tuple[Tool, float], ...]


class Clearing(Struct, frozen=True, kw_only=True):
    """What one end mill clears of the grooves' floors, an operation for each depth; `cleared` is what the V-bit need
    not do. `remarks`: whole sentences about other cutters. `compared`: the time it takes beside that of other cutters;
    None when there is no floor."""

    operations: tuple[ClearFloor, ...] = ()
    cleared: Area | None = None
    remarks: tuple[Message, ...] = ()
    compared: Compared | None = None


def clearing_of(drawing: Drawing, cutters: Cutters, spec: SignSpec) -> Clearing:
    """The end mill that clears the floors of grooves soonest, fitting it included: of those that the job uses anyway,
    or another of the shop where that saves minutes; none when there is no floor, or when the V-bit alone is about as
    quick."""
    floors = groove_floors(drawing, spec)
    if not floors:
        return Clearing()
    used = cutters.through
    chosen = _choice(floors, used, used, spec)
    alone = sum(floor.area.area for own in floors.values() for floor in own) / _rest_mm2_per_min(spec)
    is_worth_it = chosen is not None and chosen.best.reached_mm2 > 0 and chosen.best.total_minutes < alone
    minutes = chosen.best.total_minutes if chosen is not None and is_worth_it else alone
    remarks: tuple[Message, ...] = ()
    overall = _choice(floors, spec.shop.tools, used, spec)
    if spec.end_mill is None and overall and overall.best.total_minutes <= minutes - WORTH_FITTING_MIN:
        chosen, is_worth_it, minutes = overall, True, overall.best.total_minutes
    tool = chosen.best.tool if chosen is not None and is_worth_it else None
    compared = Compared(
        tool=tool,
        minutes=minutes,
        others=tuple(
            (option.tool, option.total_minutes)
            for option in (overall.options if overall else ())
            if option.tool != tool
        ),
    )
    if spec.end_mill is not None:
        remarks = _remarks(overall, minutes)
    if spec.end_mill is not None and not is_worth_it and chosen is not None and not chosen.best.reached_mm2:
        none = Message(
            "cut.end_mill_reaches_none_letters", diameter=Mm(spec.end_mill.diameter_mm), minutes=Num(alone, 0)
        )
        remarks = (none, *remarks)
    if chosen is None or not is_worth_it:
        return Clearing(remarks=remarks, compared=compared)
    operations = tuple(
        ClearFloor(
            floors=own,
            tool=chosen.best.tool,
            cutting=chosen.best.cutting,
            thickness_mm=drawing.thickness_mm,
            depth_mm=depth,
            tolerances=spec.tolerances,
            rank=GROOVE_RANK + number,
        )
        for number, (depth, own) in enumerate(floors.items())
    )
    parts = [part for operation in operations for part in polygons(operation.reached())]
    return Clearing(
        operations=tuple(operation for operation in operations if not operation.reached().is_empty),
        cleared=area_of(tuple(parts)),
        remarks=remarks,
        compared=compared,
    )


def groove_floors(drawing: Drawing, spec: SignSpec) -> dict[float, tuple[Floor, ...]]:
    """The flat floors of all grooves by their depth, shallowest first."""
    found: dict[float, list[Floor]] = {}
    for shape in shapes([groove for groove in drawing.of(Groove) if not isinstance(groove, Stroke)]):
        parts = split_floor(shape.polygon, shape.max_depth_mm, spec.v_bit.slope, spec.tolerances)
        if parts:
            found.setdefault(shape.max_depth_mm, []).append(Floor(name=shape.feature, area=area_of(parts)))
    return {depth: tuple(found[depth]) for depth in sorted(found)}


def _choice(
    floors: dict[float, tuple[Floor, ...]], tools: Sequence[Tool], used: Sequence[Tool], spec: SignSpec
) -> ClearingChoice | None:
    """The quickest of some cutters. Floors of all depths are reckoned at the greatest; a job rarely has two."""
    mills = [tool for tool in tools if tool.kind == "end-mill"]
    return choose_clearing_cutter(
        [floor for own in floors.values() for floor in own],
        [(tool, cutting_data(tool, spec.material, spec.machine)) for tool in mills],
        depth_mm=max(floors),
        rest_mm2_per_min=_rest_mm2_per_min(spec),
        fitted=used,
    )


def _rest_mm2_per_min(spec: SignSpec) -> float:
    """How much floor the V-bit clears: lines as far apart as the cusps allow, before the last pass coarser ones."""
    cutting = cutting_data(spec.v_bit, spec.material, spec.machine)
    fine, coarse = (
        2 * high * spec.v_bit.slope + spec.v_bit.tip_mm
        for high in (spec.cusp_height_mm, max(spec.cusp_height_mm, allowance_mm(cutting.stepdown_mm)))
    )
    return cutting.feed_mm_per_min / (1 / fine + (passes(spec.depth_mm, cutting.stepdown_mm) - 1) / coarse)


def _remarks(overall: ClearingChoice | None, minutes: float) -> tuple[Message, ...]:
    """What the shop's best cutter would save."""
    if overall is None or overall.best.total_minutes > minutes - WORTH_FITTING_MIN:
        return ()
    tool = overall.best.tool
    return (
        Message(
            "cut.another_would_clear_in",
            diameter=Mm(tool.diameter_mm),
            typed=Typed(tool.diameter_mm),
            best=Num(overall.best.total_minutes, 0),
            minutes=Num(minutes, 0),
        ),
    )
