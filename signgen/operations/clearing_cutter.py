"""Which end mill should clear a floor: by what each reaches, how long it takes, and what it leaves to the V-bit."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence

from msgspec import Struct

from signgen.geometry.offsets import inward, outward
from signgen.messages import Message, Mm, Mm2, Num
from signgen.operations.clear_floor import Floor
from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool

LIFT_S = 4.0
"""Lifting, moving to the next piece and coming down again, on a small router (common practice)."""

CHANGE_MIN = 3.0
"""Fitting another cutter and setting Z again (common practice)."""

ESTIMATE_TOLERANCE_MM = 0.05
"""For areas and times that are rounded to minutes anyway."""


class ClearingOption(Struct, frozen=True, kw_only=True):
    """What one cutter would do: `minutes` with the change of cutter if it needs one, `rest_minutes` the V-bit's work on
    the `left_mm2` that it does not reach."""

    tool: Tool
    cutting: CuttingData
    reached_mm2: float
    left_mm2: float
    minutes: float
    rest_minutes: float

    @property
    def total_minutes(self) -> float:
        return self.minutes + self.rest_minutes


class ClearingChoice(Struct, frozen=True, kw_only=True):
    """The quickest option, and all that were looked at, thickest cutter first."""

    best: ClearingOption
    options: tuple[ClearingOption, ...]

    def remarks(self) -> tuple[Message, ...]:
        """What other cutters would gain or cost, a sentence each."""
        return tuple(_remark(option, self.best) for option in self.options if option != self.best)


def choose_clearing_cutter(
    floors: Sequence[Floor],
    candidates: Sequence[tuple[Tool, CuttingData]],
    *,
    depth_mm: float,
    rest_mm2_per_min: float,
    fitted: Collection[Tool] = (),
) -> ClearingChoice | None:
    """The cutter that makes the floors soonest; None when there is no candidate that reaches deep enough.

    `rest_mm2_per_min`: how fast the V-bit clears what is left; `fitted`: cutters that the job uses anyway and that
    cost no change. A cutter that fits nowhere leaves everything to the V-bit and is an option too, if a slow one.
    """
    options = [
        option_of(floors, tool, cutting, depth_mm, rest_mm2_per_min, tool in fitted)
        for tool, cutting in candidates
        if tool.kind == "end-mill" and not tool.only_named and tool.cutting_length_mm >= depth_mm
    ]
    if not options:
        return None
    options.sort(key=lambda option: (-option.tool.diameter_mm, option.tool.name))
    best = min(options, key=lambda option: option.total_minutes)
    return ClearingChoice(best=best, options=tuple(options))


def option_of(
    floors: Sequence[Floor],
    tool: Tool,
    cutting: CuttingData,
    depth: float,
    rest_mm2_per_min: float = math.inf,
    is_fitted: bool = True,
) -> ClearingOption:
    """Rings a step apart are area / step long; each level of each piece is entered by a ramp once."""
    radius, tolerance = tool.radius_mm, ESTIMATE_TOLERANCE_MM
    whole, reached, ways, pieces = 0.0, 0.0, 0.0, 0
    for floor in floors:
        whole += floor.area.area
        for part in inward(floor.area, radius, tolerance, roughly=True):
            pieces += 1
            reached += sum(area.area for area in outward(part, radius, tolerance))
            # The outermost ring is there in full, and half a step of every ring's width lies within it.
            ways += part.length + max(0.0, part.area / cutting.stepover_mm - part.length / 2)
    passes = math.ceil(depth / cutting.stepdown_mm - 1e-9)
    ramp = depth / math.tan(math.radians(cutting.entry_deg)) / cutting.ramp_mm_per_min
    minutes = passes * ways / cutting.feed_mm_per_min + pieces * (ramp + passes * LIFT_S / 60)
    left = max(0.0, whole - reached)
    return ClearingOption(
        tool=tool,
        cutting=cutting,
        reached_mm2=reached,
        left_mm2=left,
        minutes=minutes + (CHANGE_MIN if pieces and not is_fitted else 0.0),
        rest_minutes=left / rest_mm2_per_min,
    )


def _remark(option: ClearingOption, best: ClearingOption) -> Message:
    area = option.reached_mm2 - best.reached_mm2
    time = option.total_minutes - best.total_minutes
    return Message(
        "cut.would_clear_more" if area >= 0 else "cut.would_clear_less",
        diameter=Mm(option.tool.diameter_mm),
        area=Mm2(abs(area), 0),
        best=Mm(best.tool.diameter_mm),
        minutes=Num(time, 1),
    )
