"""What the setup sheet tells about one lying of the board, as figures."""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

from signgen.dialects import dialect_named
from signgen.drawing.drawing import Drawing
from signgen.fastening.fastening import fastening_on
from signgen.fastening.keep_out import Cutters
from signgen.instructions import Begins, Corner, Cutter, Datum, Holding, LaidBoard, Point, SetUp, Step, Touch
from signgen.numbers import rounded
from signgen.replay.measure import extents
from signgen.replay.motion import Replay
from signgen.shop.collets import collet_of_tool
from signgen.shop.feeds import stepdown_mm
from signgen.shop.materials import CuttingData
from signgen.shop.stock import CLAMP_STANDS_MM, HEAD_STANDS_MM, SCREW_HEAD_MM, Stock, WorkZero
from signgen.shop.tools import Tool
from signgen.spec.sign_spec import SignSpec

METAL_MM = 1.0
"""Spoilboard between the deepest cut and any metal under it (common practice)."""

SCREW_GRIP_MM = 10.0
"""Of a screw in the spoilboard at the least: two and a half times as much as it is thick (common practice)."""

SCREW_LENGTHS_MM = (16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100)
"""Wood screws are sold in these lengths (from memory of DIN 7997)."""

CONTINUOUS_RATIO = 0.6
"""Where the deepest bite is a smaller share of an even pass, the cutter goes down all the time, as on a helix."""

ONE_GO_RATIO = 0.75
"""Where bites are looked at, no less than this of what is cut at one go is seen."""


class ToldRun(Struct, frozen=True, kw_only=True):
    """One cutter's program. `bite_mm`: the most that it takes at once."""

    file: str
    tool: Tool
    cutting: CuttingData
    replay: Replay
    bite_mm: float


def set_up_of(
    *,
    spec: SignSpec,
    drawing: Drawing,
    stock: Stock,
    zero: WorkZero,
    runs: Sequence[ToldRun],
    touches: Sequence[Sequence[Touch]],
    screws_mm: Sequence[Point],
    shown: tuple[Tool, Replay] | None,
    outline: str,
    number: int,
    face_down: bool,
) -> SetUp:
    """Rounded as it is printed. `touches[i]`: the ways to set Z for run i's cutter; `shown`: the cutter and the
    program that show the place first, None on a blank, `outline` then ''."""
    cutters = [*([shown] if shown else []), *((run.tool, run.replay) for run in runs)]
    below = up_to(max(0.0, -min(_lowest_mm(run.replay) for run in runs) - zero.z_mm), 1)
    return SetUp(
        number=number,
        board=LaidBoard(
            width_mm=rounded(stock.width_mm, 2),
            height_mm=rounded(stock.height_mm, 2),
            thickness_mm=rounded(stock.thickness_mm, 3),
            face_up=not face_down,
        ),
        datum=_datum(stock, zero, face_down),
        holding=_holding(spec, drawing, stock, zero, cutters, touches, screws_mm),
        into_spoilboard_mm=below,
        metal_free_mm=below + METAL_MM,
        outline=outline,
        steps=tuple(_step(spec, stock, zero, runs, n, touches[n]) for n in range(len(runs))),
    )


HAIR = 0.01
"""Of the last place printed: less is rounding, as of inches."""


def up_to(value_mm: float, places: int) -> float:
    """Rounded up: what is stated is never less than what is meant."""
    steps: float = 10.0**places
    return math.ceil(value_mm * steps - HAIR) / steps


def _datum(stock: Stock, zero: WorkZero, face_down: bool) -> Datum:
    left, front, right, _ = stock.bounds_mm
    corner: Corner = "front right" if face_down else "front left"
    across = right - zero.x_mm if face_down else zero.x_mm - left
    return Datum(corner=corner, x_mm=rounded(across, 2), y_mm=rounded(zero.y_mm - front, 2))


def _holding(
    spec: SignSpec,
    drawing: Drawing,
    stock: Stock,
    zero: WorkZero,
    cutters: Cutters,
    touches: Sequence[Sequence[Touch]],
    screws_mm: Sequence[Point],
) -> Holding:
    fast = fastening_on(drawing, stock, zero, cutters, spec.machine.collet_series, touches)
    line = list(fast.clamp_line.exterior.coords)[:-1] if fast.takes_clamps else []
    wanted = stock.thickness_mm + SCREW_GRIP_MM
    return Holding(
        screws_mm=tuple(screws_mm),
        head_mm=SCREW_HEAD_MM,
        stands_mm=HEAD_STANDS_MM,
        screw_mm=next((length for length in SCREW_LENGTHS_MM if length >= wanted), math.ceil(wanted)),
        clamp_line_mm=tuple((round(x - zero.x_mm, 3), round(y - zero.y_mm, 3)) for x, y in line),
        clamp_stands_mm=CLAMP_STANDS_MM,
    )


def _step(
    spec: SignSpec, stock: Stock, zero: WorkZero, runs: Sequence[ToldRun], n: int, touches: Sequence[Touch]
) -> Step:
    run, change = runs[n], dialect_named(spec.dialect).change
    goes_on = n > 0 and runs[n - 1].file == run.file
    begins: Begins = "start" if not goes_on else "changer" if change == "lengths" else "pause"
    lowest = _lowest_mm(run.replay)
    deep = stock.thickness_mm - zero.z_mm - lowest
    passes = max(1, math.ceil(deep / stepdown_mm(run.tool, spec.material) - 1e-9)) if deep > 0 else 0
    if passes == 1 and CONTINUOUS_RATIO * deep <= run.bite_mm < ONE_GO_RATIO * deep:
        # A drill's pecks begin above the board, so that there may be one more of them than of passes.
        passes = math.ceil(deep / run.bite_mm - 1e-9)
    # What is cut at one go is as deep as that, wherever the bites were looked at.
    bite = deep if passes == 1 else run.bite_mm
    if run.bite_mm < CONTINUOUS_RATIO * deep / max(passes, 1):
        passes = 0
    return Step(
        file=run.file,
        begins=begins,
        cutter=cutter_of(run.tool, n + 1, spec.machine.collet_series),
        sets_xy=n == 0,
        # A changer knows how long each cutter is: Z is set with the first, and holds for all.
        sets_z=() if change == "lengths" and n else tuple(touches),
        spindle_rpm=run.cutting.spindle_rpm,
        feed_mm_per_min=run.cutting.feed_mm_per_min,
        plunge_mm_per_min=run.cutting.plunge_mm_per_min,
        fastest_mm_per_min=up_to(float(run.replay.motions.feed_mm_per_min.max(initial=0.0)), 0),
        lowest_z_mm=rounded(lowest, 4),
        passes=passes,
        pass_mm=up_to(bite, 2) if passes else up_to(run.bite_mm, 2),
    )


def cutter_of(tool: Tool, place: int, collet_series: int) -> Cutter:
    """As it is fitted. Raises: CannotMakeError when the machine's collets do not take its shank."""
    collet = collet_of_tool(tool, collet_series)
    return Cutter(
        place=place,
        name=tool.name,
        kind=tool.kind,
        diameter_mm=tool.diameter_mm,
        angle_deg=tool.angle_deg,
        tip_mm=tool.tip_mm,
        shank_mm=tool.shank_mm,
        collet=collet.label,
        grip_mm=collet.grip_mm,
        stick_out_mm=tool.stickout_mm,
    )


def _lowest_mm(replay: Replay) -> float:
    extent = extents(replay.motions)
    return extent.z_mm[0] if extent else 0.0
