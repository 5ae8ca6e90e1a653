"""Speeds and feeds shown step by step, so that somebody can follow them with a pocket calculator."""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from signgen.messages import Message, Mm, Num, Sentence
from signgen.shop.feeds import MOST_THINNING, chip_load_mm, cutting_data, thin_feed_mm_per_min, thinning
from signgen.shop.materials import CuttingData, Machine, Material
from signgen.shop.strain import CORE_RATIO, EFFICIENCY, STIFFNESS_N_PER_MM2, Strain, strain
from signgen.shop.tools import Tool


class WorkedStep(Struct, frozen=True, kw_only=True):
    """One line of the calculation: `working` is an expression in numbers, + - x / ( ) and sqrt, whose value is `value`;
    `result` says what becomes of it, with its unit; `why` where that is another figure."""

    name: Message
    working: str
    value: float
    result: str
    why: Sentence = ""


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
            name=Message("worked.feed_per_tooth"),
            working=f"{material.chip_load_ratio:g} x {tool.neck_mm:g}",
            value=chip,
            result=f"{chip:.4g} mm",
            why=Message("worked.material_s_ratio_times_neck"),
        )
        return
    if tool.kind != "v-bit":
        yield WorkedStep(
            name=Message("worked.feed_per_tooth"),
            working=f"{material.chip_load_ratio:g} x {tool.diameter_mm:g}",
            value=chip,
            result=f"{chip:.4g} mm",
            why=Message("worked.material_s_ratio_times_diameter"),
        )
        return
    depth = min(material.v_step_mm, tool.reach_mm)
    half = tool.radius_at_depth_mm(depth)
    mean = material.chip_load_ratio * (half + tool.tip_mm / 2)
    yield WorkedStep(
        name=Message("worked.mean_diameter_v_bit"),
        working=f"{half:.6g} + {tool.tip_mm:g} / 2",
        value=half + tool.tip_mm / 2,
        result=f"{half + tool.tip_mm / 2:.4g} mm",
        why=Message("worked.half_width_deep_half_tip", depth=Mm(depth)),
    )
    yield WorkedStep(
        name=Message("worked.feed_per_tooth"),
        working=f"{material.chip_load_ratio:g} x {half + tool.tip_mm / 2:.6g}",
        value=mean,
        result=f"{chip:.4g} mm",
        why="" if chip == mean else Message("worked.raised_least_chip_that_does"),
    )


def _milled(tool: Tool, material: Material, machine: Machine, data: CuttingData) -> Iterator[WorkedStep]:
    chip, flutes = chip_load_mm(tool, material), tool.flutes
    top = min(machine.top_feed_mm_per_min[:2])
    wanted = material.spindle_rpm * flutes * chip
    yield WorkedStep(
        name=Message("worked.feed_wanted_speed"),
        working=f"{material.spindle_rpm:g} x {flutes} x {chip:.6g}",
        value=wanted,
        result=f"{wanted:.0f} mm/min",
        why=Message("worked.machine_reaches", top=Num(top)),
    )
    if wanted > top:
        keeps = top / (flutes * chip)
        why = Message("worked.so_slow_that_chip_keeps")
        if data.spindle_rpm > keeps:
            why = Message("worked.spindle_goes_no_slower_so")
        yield WorkedStep(
            name=Message("worked.spindle_speed"),
            working=f"{top:g} / ({flutes} x {chip:.6g})",
            value=keeps,
            result=f"{data.spindle_rpm:.0f} rpm",
            why=why,
        )
    else:
        why = Message("worked.machine_has", least=Num(machine.spindle_min_rpm), most=Num(machine.spindle_max_rpm))
        yield WorkedStep(
            name=Message("worked.spindle_speed"),
            working=f"{material.spindle_rpm:g}",
            value=material.spindle_rpm,
            result=f"{data.spindle_rpm:.0f} rpm",
            why=why,
        )
    feed = data.spindle_rpm * flutes * chip
    yield WorkedStep(
        name=Message("worked.feed"),
        working=f"{data.spindle_rpm:g} x {flutes} x {chip:.6g}",
        value=feed,
        result=f"{data.feed_mm_per_min:.0f} mm/min",
        why=Message("worked.in_tens_never_over_machine"),
    )
    plunge = data.feed_mm_per_min * material.plunge_ratio
    yield WorkedStep(
        name=Message("worked.straight_down"),
        working=f"{data.feed_mm_per_min:g} x {material.plunge_ratio:g}",
        value=plunge,
        result=f"{data.plunge_mm_per_min:.0f} mm/min",
        why=Message("worked.z_reaches", top=Num(machine.top_feed_mm_per_min[2])),
    )
    ramp = data.feed_mm_per_min * material.ramp_ratio
    yield WorkedStep(
        name=Message("worked.along_ramp"),
        working=f"{data.feed_mm_per_min:g} x {material.ramp_ratio:g}",
        value=ramp,
        result=f"{data.ramp_mm_per_min:.0f} mm/min",
        why=Message("worked.degrees_steepest", degrees=Num(material.entry_deg)),
    )
    ratio = material.stepdown_ratio
    if tool.kind == "v-bit":
        yield WorkedStep(
            name=Message("worked.depth_pass"),
            working=f"{material.v_step_mm:g}",
            value=material.v_step_mm,
            result=f"{data.stepdown_mm:g} mm",
            why=Message("worked.no_deeper_than_cone"),
        )
        return
    if tool.kind == "keyhole":
        yield WorkedStep(
            name=Message("worked.depth_pass"),
            working=f"{tool.head_mm:g}",
            value=tool.head_mm,
            result=f"{data.stepdown_mm:g} mm",
            why=Message("worked.height_head_in_slot_that"),
        )
        return
    yield WorkedStep(
        name=Message("worked.depth_pass"),
        working=f"{ratio:g} x {tool.diameter_mm:g}",
        value=ratio * tool.diameter_mm,
        result=f"{data.stepdown_mm:g} mm",
        why=Message("worked.no_deeper_than_edges"),
    )


def _drilled(tool: Tool, material: Material, machine: Machine, data: CuttingData) -> Iterator[WorkedStep]:
    chip = chip_load_mm(tool, material)
    yield WorkedStep(
        name=Message("worked.spindle_speed"),
        working=f"{machine.spindle_min_rpm:g}",
        value=machine.spindle_min_rpm,
        result=f"{data.spindle_rpm:.0f} rpm",
        why=Message("worked.slowest_that_machine_has_drills"),
    )
    down = data.spindle_rpm * tool.flutes * chip * material.plunge_ratio
    yield WorkedStep(
        name=Message("worked.feed"),
        working=f"{data.spindle_rpm:g} x {tool.flutes} x {chip:.6g} x {material.plunge_ratio:g}",
        value=down,
        result=f"{data.feed_mm_per_min:.0f} mm/min",
        why=Message("worked.z_reaches", top=Num(machine.top_feed_mm_per_min[2])),
    )
    yield WorkedStep(
        name=Message("worked.depth_peck"),
        working=f"{material.peck_ratio:g} x {tool.diameter_mm:g}",
        value=material.peck_ratio * tool.diameter_mm,
        result=f"{data.stepdown_mm:g} mm",
    )


def _cutting_speed(tool: Tool, data: CuttingData) -> WorkedStep:
    speed = math.pi * tool.diameter_mm * data.spindle_rpm / 1000
    return WorkedStep(
        name=Message("worked.speed_rim"),
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
        name=Message("worked.thin_chip"),
        working=f"1 / (2 x sqrt({share:.6g} x (1 - {share:.6g})))",
        value=ratio,
        result=f"{feed:.0f} mm/min",
        why=Message("worked.times_feed_up_times_machine", most=Num(MOST_THINNING)),
    )


def _strain(
    tool: Tool, material: Material, machine: Machine, data: CuttingData, depth: float, width: float, found: Strain
) -> Iterator[WorkedStep]:
    specific = material.specific_force_n_per_mm2 or 0.0
    yield WorkedStep(
        name=Message("worked.removed"),
        working=f"{depth:g} x {width:g} x {data.feed_mm_per_min:g}",
        value=found.removal_mm3_per_min,
        result=f"{found.removal_mm3_per_min / 1000:.3g} cm3/min",
    )
    spindle = (
        "" if found.available_w is None else Message("worked.spindle_has_w_speed", watts=Num(found.available_w, 0))
    )
    yield WorkedStep(
        name=Message("worked.power"),
        working=f"{found.removal_mm3_per_min:.6g} / 60 x {specific:g} / 1000 / {EFFICIENCY:g}",
        value=found.power_w,
        result=f"{found.power_w:.0f} W",
        why=spindle,
    )
    yield WorkedStep(
        name=Message("worked.force"),
        working=f"{specific:g} x {depth:g} x {data.chip_load_mm:.6g}",
        value=found.force_n,
        result=f"{found.force_n:.1f} N",
    )
    core = CORE_RATIO * tool.diameter_mm
    out, stiff = tool.stickout_mm, STIFFNESS_N_PER_MM2[tool.metal]
    cube, fourth = " x ".join([f"{out:g}"] * 3), " x ".join([f"{core:g}"] * 4)
    yield WorkedStep(
        name=Message("worked.bend"),
        working=f"{found.force_n:.6g} x {cube} / (3 x {stiff:g} x 3.14159265 x {fourth} / 64)",
        value=found.bend_mm,
        result=f"{found.bend_mm:.3f} mm",
        why=Message("worked.out_collet_diameters_above_4", out=Mm(out), ratio=Num(found.slenderness, 1)),
    )
