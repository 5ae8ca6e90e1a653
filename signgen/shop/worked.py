"""Speeds and feeds shown step by step, so that somebody can follow them with a pocket calculator."""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from signgen.shop.feeds import MOST_THINNING, chip_load_mm, cutting_data, thin_feed_mm_per_min, thinning
from signgen.shop.materials import CuttingData, Machine, Material
from signgen.shop.strain import CORE_RATIO, EFFICIENCY, STIFFNESS_N_PER_MM2, Strain, strain
from signgen.shop.tools import Tool


class WorkedStep(Struct, frozen=True, kw_only=True):
    """One line of the calculation: `working` is an expression in numbers, + - x / ( ) and sqrt, whose value is `value`;
    `result` says what becomes of it, with its unit; `why` where that is another figure."""

    name: str
    working: str
    value: float
    result: str
    why: str = ""


def worked(
    tool: Tool, material: Material, machine: Machine, depth_mm: float | None = None, width_mm: float | None = None
) -> tuple[WorkedStep, ...]:
    """The calculation of `cutting_data`, and of what the cut asks of cutter and spindle.

    `depth_mm` of a pass and `width_mm` of the cut are the usual pass and a slot when they are not given.
    """
    data = cutting_data(tool, material, machine)
    depth = data.stepdown_mm if depth_mm is None else depth_mm
    width = tool.diameter_mm if width_mm is None else min(width_mm, tool.diameter_mm)
    steps = [*_chip(tool, material), *(_drilled if tool.kind == "drill" else _milled)(tool, material, machine, data)]
    steps.append(_cutting_speed(tool, data))
    if tool.kind in ("end-mill", "ball-nose"):
        steps += _thin(tool, machine, data, width)
        found = strain(tool, material, machine, data, depth, width)
        if found is not None:
            steps += _strain(tool, material, machine, data, depth, width, found)
    return tuple(steps)


def _chip(tool: Tool, material: Material) -> Iterator[WorkedStep]:
    chip = chip_load_mm(tool, material)
    if tool.kind == "keyhole":
        yield WorkedStep(
            name="Feed per tooth", working=f"{material.chip_load_ratio:g} x {tool.neck_mm:g}", value=chip,
            result=f"{chip:.4g} mm", why="the material's ratio times the neck's diameter: it is the weakest part",
        )  # fmt: skip
        return
    if tool.kind != "v-bit":
        yield WorkedStep(
            name="Feed per tooth", working=f"{material.chip_load_ratio:g} x {tool.diameter_mm:g}", value=chip,
            result=f"{chip:.4g} mm", why="the material's ratio times the diameter",
        )  # fmt: skip
        return
    depth = min(material.v_step_mm, tool.reach_mm)
    half = tool.radius_at_depth_mm(depth)
    mean = material.chip_load_ratio * (half + tool.tip_mm / 2)
    yield WorkedStep(
        name="Mean diameter of a V-bit", working=f"{half:.6g} + {tool.tip_mm:g} / 2", value=half + tool.tip_mm / 2,
        result=f"{half + tool.tip_mm / 2:.4g} mm", why=f"half of its width {depth:g} mm deep, and half of its tip",
    )  # fmt: skip
    yield WorkedStep(
        name="Feed per tooth", working=f"{material.chip_load_ratio:g} x {half + tool.tip_mm / 2:.6g}", value=mean,
        result=f"{chip:.4g} mm", why="" if chip == mean else "raised to the least chip that does not rub",
    )  # fmt: skip


def _milled(tool: Tool, material: Material, machine: Machine, data: CuttingData) -> Iterator[WorkedStep]:
    chip, flutes = chip_load_mm(tool, material), tool.flutes
    top = min(machine.top_feed_mm_per_min[:2])
    wanted = material.spindle_rpm * flutes * chip
    yield WorkedStep(
        name="Feed at the wanted speed", working=f"{material.spindle_rpm:g} x {flutes} x {chip:.6g}", value=wanted,
        result=f"{wanted:.0f} mm/min", why=f"the machine reaches {top:g}",
    )  # fmt: skip
    if wanted > top:
        keeps = top / (flutes * chip)
        why = "so slow that the chip keeps its thickness at the machine's top feed, in hundreds"
        if data.spindle_rpm > keeps:
            why = "the spindle goes no slower, so that the chip gets thinner"
        yield WorkedStep(
            name="Spindle speed", working=f"{top:g} / ({flutes} x {chip:.6g})", value=keeps,
            result=f"{data.spindle_rpm:.0f} rpm", why=why,
        )  # fmt: skip
    else:
        why = f"the machine has {machine.spindle_min_rpm:g} to {machine.spindle_max_rpm:g}"
        yield WorkedStep(
            name="Spindle speed", working=f"{material.spindle_rpm:g}", value=material.spindle_rpm,
            result=f"{data.spindle_rpm:.0f} rpm", why=why,
        )  # fmt: skip
    feed = data.spindle_rpm * flutes * chip
    yield WorkedStep(
        name="Feed", working=f"{data.spindle_rpm:g} x {flutes} x {chip:.6g}", value=feed,
        result=f"{data.feed_mm_per_min:.0f} mm/min", why="in tens, never over the machine's",
    )  # fmt: skip
    plunge = data.feed_mm_per_min * material.plunge_ratio
    yield WorkedStep(
        name="Straight down", working=f"{data.feed_mm_per_min:g} x {material.plunge_ratio:g}", value=plunge,
        result=f"{data.plunge_mm_per_min:.0f} mm/min", why=f"Z reaches {machine.top_feed_mm_per_min[2]:g}",
    )  # fmt: skip
    ramp = data.feed_mm_per_min * material.ramp_ratio
    yield WorkedStep(
        name="Along a ramp", working=f"{data.feed_mm_per_min:g} x {material.ramp_ratio:g}", value=ramp,
        result=f"{data.ramp_mm_per_min:.0f} mm/min", why=f"{material.entry_deg:g} degrees at the steepest",
    )  # fmt: skip
    ratio = material.stepdown_ratio
    if tool.kind == "v-bit":
        yield WorkedStep(
            name="Depth of a pass", working=f"{material.v_step_mm:g}", value=material.v_step_mm,
            result=f"{data.stepdown_mm:g} mm", why="no deeper than its cone",
        )  # fmt: skip
        return
    if tool.kind == "keyhole":
        yield WorkedStep(
            name="Depth of a pass", working=f"{tool.head_mm:g}", value=tool.head_mm,
            result=f"{data.stepdown_mm:g} mm", why="the height of its head, in a slot that is milled open before",
        )  # fmt: skip
        return
    yield WorkedStep(
        name="Depth of a pass", working=f"{ratio:g} x {tool.diameter_mm:g}", value=ratio * tool.diameter_mm,
        result=f"{data.stepdown_mm:g} mm", why="no deeper than its edges",
    )  # fmt: skip


def _drilled(tool: Tool, material: Material, machine: Machine, data: CuttingData) -> Iterator[WorkedStep]:
    chip = chip_load_mm(tool, material)
    yield WorkedStep(
        name="Spindle speed", working=f"{machine.spindle_min_rpm:g}", value=machine.spindle_min_rpm,
        result=f"{data.spindle_rpm:.0f} rpm", why="the slowest that the machine has: drills want few turns",
    )  # fmt: skip
    down = data.spindle_rpm * tool.flutes * chip * material.plunge_ratio
    yield WorkedStep(
        name="Feed", working=f"{data.spindle_rpm:g} x {tool.flutes} x {chip:.6g} x {material.plunge_ratio:g}",
        value=down, result=f"{data.feed_mm_per_min:.0f} mm/min", why=f"Z reaches {machine.top_feed_mm_per_min[2]:g}",
    )  # fmt: skip
    yield WorkedStep(
        name="Depth of a peck", working=f"{material.peck_ratio:g} x {tool.diameter_mm:g}",
        value=material.peck_ratio * tool.diameter_mm, result=f"{data.stepdown_mm:g} mm",
    )  # fmt: skip


def _cutting_speed(tool: Tool, data: CuttingData) -> WorkedStep:
    speed = math.pi * tool.diameter_mm * data.spindle_rpm / 1000
    return WorkedStep(
        name="Speed at the rim",
        working=f"3.14159265 x {tool.diameter_mm:g} x {data.spindle_rpm:g} / 1000",
        value=speed,
        result=f"{speed:.0f} m/min",
    )


def _thin(tool: Tool, machine: Machine, data: CuttingData, width: float) -> Iterator[WorkedStep]:
    ratio = thinning(width, tool.diameter_mm)
    if ratio <= 1:
        return
    share = width / tool.diameter_mm
    feed = thin_feed_mm_per_min(tool, data, machine, width)
    yield WorkedStep(
        name="Thin chip", working=f"1 / (2 x sqrt({share:.6g} x (1 - {share:.6g})))", value=ratio,
        result=f"{feed:.0f} mm/min", why=f"times the feed, up to {MOST_THINNING:g} times and the machine's",
    )  # fmt: skip


def _strain(
    tool: Tool, material: Material, machine: Machine, data: CuttingData, depth: float, width: float, found: Strain
) -> Iterator[WorkedStep]:
    specific = material.specific_force_n_per_mm2 or 0.0
    yield WorkedStep(
        name="Removed", working=f"{depth:g} x {width:g} x {data.feed_mm_per_min:g}", value=found.removal_mm3_per_min,
        result=f"{found.removal_mm3_per_min / 1000:.3g} cm3/min",
    )  # fmt: skip
    spindle = "" if found.available_w is None else f"the spindle has {found.available_w:.0f} W at this speed"
    yield WorkedStep(
        name="Power", working=f"{found.removal_mm3_per_min:.6g} / 60 x {specific:g} / 1000 / {EFFICIENCY:g}",
        value=found.power_w, result=f"{found.power_w:.0f} W", why=spindle,
    )  # fmt: skip
    yield WorkedStep(
        name="Force", working=f"{specific:g} x {depth:g} x {data.chip_load_mm:.6g}", value=found.force_n,
        result=f"{found.force_n:.1f} N",
    )  # fmt: skip
    core = CORE_RATIO * tool.diameter_mm
    out, stiff = tool.stickout_mm, STIFFNESS_N_PER_MM2[tool.metal]
    cube, fourth = " x ".join([f"{out:g}"] * 3), " x ".join([f"{core:g}"] * 4)
    yield WorkedStep(
        name="Bend", working=f"{found.force_n:.6g} x {cube} / (3 x {stiff:g} x 3.14159265 x {fourth} / 64)",
        value=found.bend_mm, result=f"{found.bend_mm:.3f} mm",
        why=f"{out:g} mm out of the collet, {found.slenderness:.1f} diameters; above 4 it may chatter",
    )  # fmt: skip
