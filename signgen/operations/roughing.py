"""Whether a thicker end mill of the job clears recesses before the thin one that their narrow places need."""

from __future__ import annotations

from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.features.recess import Recess
from signgen.geometry.offsets import area_of, inward
from signgen.messages import Message, Mm, Num
from signgen.operations.choose import Cutters
from signgen.operations.clear_floor import ClearFloor, Floor
from signgen.operations.clearing_cutter import CHANGE_MIN, option_of
from signgen.operations.finish_floor import ALLOWANCE_MM, FinishFloor, Rough
from signgen.operations.recesses import depth_of, recess_operations
from signgen.shop.feeds import cutting_data
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec

WORTH_MIN = 2.0
"""What it must save, the cutter that is fitted twice reckoned in."""


class Roughing(Struct, frozen=True, kw_only=True):
    """What the thicker cutter clears, and what the thin one finishes; how long they take, the cutter's second fitting
    with them, and how long the thin one alone would take."""

    tool: Tool
    rough: tuple[ClearFloor, ...]
    finish: tuple[FinishFloor, ...]
    minutes: float
    alone_minutes: float

    @property
    def remark(self) -> Message:
        return Message(
            "cut.roughing_saves",
            rough=Mm(self.tool.diameter_mm),
            thin=Mm(self.finish[0].tool.diameter_mm),
            minutes=Num(self.minutes, 0),
            alone=Num(self.alone_minutes, 0),
        )


def roughing_of(drawing: Drawing, cutters: Cutters, spec: SignSpec) -> Roughing | None:
    """The quickest; None where the thin cutter alone is about as quick, or no other is thicker."""
    thin = cutters.clear
    if thin is None or any(drawing.is_through(recess) for recess in drawing.of(Recess)):
        return None
    used = cutters.through
    deepest = max(depth_of(recess, drawing, spec) for recess in drawing.of(Recess))
    thicker = [
        tool
        for tool in used
        if tool.kind == "end-mill" and tool.diameter_mm > thin.diameter_mm and tool.cutting_length_mm >= deepest
    ]
    alone = recess_operations(drawing, spec, thin, cutting_data(thin, spec.material, spec.machine))
    found = [each for tool in thicker if (each := _with(tool, alone, spec)) is not None]
    best = min(found, key=lambda each: each.minutes, default=None)
    return best if best and best.minutes + WORTH_MIN <= best.alone_minutes and _is_whole(best) else None


def _is_whole(roughing: Roughing) -> bool:
    return all(operation.is_whole for operation in roughing.finish)


def _with(tool: Tool, alone: tuple[ClearFloor, ...], spec: SignSpec) -> Roughing | None:
    cutting = cutting_data(tool, spec.material, spec.machine)
    rough, finish = [], []
    minutes, alone_minutes = CHANGE_MIN, 0.0
    for operation in alone:
        shrunk = tuple(
            Floor(name=floor.name, area=area_of(inward(floor.area, ALLOWANCE_MM, 0.01))) for floor in operation.floors
        )
        first = ClearFloor(
            floors=shrunk, tool=tool, cutting=cutting, thickness_mm=operation.thickness_mm, depth_mm=operation.depth_mm,
            tolerances=operation.tolerances, rank=operation.rank, left_mm=ALLOWANCE_MM,
        )  # fmt: skip
        cleared = {floor.name: first.reached_of(floor) for floor in shrunk}
        if all(area.is_empty for area in cleared.values()):
            return None
        last = FinishFloor(
            floors=operation.floors, rough=Rough(cleared=tuple(cleared.items())), tool=operation.tool,
            cutting=operation.cutting, thickness_mm=operation.thickness_mm, depth_mm=operation.depth_mm,
            tolerances=operation.tolerances, rank=operation.rank,
        )  # fmt: skip
        rough.append(first)
        finish.append(last)
        depth = operation.depth_mm
        alone_minutes += option_of(operation.floors, operation.tool, operation.cutting, depth).minutes
        minutes += option_of(shrunk, tool, cutting, depth).minutes
        minutes += option_of(last.narrow_floors, operation.tool, operation.cutting, depth).minutes
        minutes += last.laps_mm / operation.cutting.feed_mm_per_min
    return Roughing(
        tool=tool, rough=tuple(rough), finish=tuple(finish), minutes=minutes, alone_minutes=alone_minutes
    )  # fmt: skip
