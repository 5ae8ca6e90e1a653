"""What a cut asks of the spindle and of the cutter: power, force, and how far the cutter bends.

The figures that go in are rough (specific forces scatter by half), so what comes out is good for warnings, not for
promises.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from msgspec import Struct

from signgen.messages import Message, Mm, Num
from signgen.shop.materials import CuttingData, Machine, Material
from signgen.shop.tools import Tool

EFFICIENCY = 0.8
"""Of a spindle: what of its power reaches the edge (common practice)."""

STIFFNESS_N_PER_MM2 = {"carbide": 600_000.0, "steel": 205_000.0}
"""Young's modulus, from memory of handbooks."""

CORE_RATIO = 0.8
"""Diameter of a solid bar that bends as a fluted cutter does, over the cutter's: 0.7 to 0.8. Common practice."""

MOST_POWER_RATIO = 0.7
MOST_BEND_MM = 0.05
"""Above these somebody should know: share of the spindle's power, bend that is seen at the edge. Common practice."""


CHIP_ROUNDING = 0.9


class Strain(Struct, frozen=True, kw_only=True):
    """Of one cut. `available_w` is the spindle's power at the speed that it turns at, None where nobody gave it."""

    removal_mm3_per_min: float
    power_w: float
    available_w: float | None
    force_n: float
    bend_mm: float
    slenderness: float


def strain(
    tool: Tool, material: Material, machine: Machine, data: CuttingData, depth_mm: float, width_mm: float
) -> Strain | None:
    """A cut `depth_mm` deep and `width_mm` wide at the feed of `data`; None where the material's specific force is not
    known. Source of the formulas: textbook identities and the bending of a cantilever."""
    specific = material.specific_force_n_per_mm2
    if specific is None:
        return None
    removal = depth_mm * width_mm * data.feed_mm_per_min
    force = specific * depth_mm * data.chip_load_mm
    return Strain(
        removal_mm3_per_min=removal,
        power_w=removal / 60 * specific / 1000 / EFFICIENCY,
        available_w=available_power_w(machine, data.spindle_rpm),
        force_n=force,
        bend_mm=bend_mm(tool, force),
        slenderness=tool.stickout_mm / tool.diameter_mm,
    )


def available_power_w(machine: Machine, rpm: float) -> float | None:
    """A router spindle's motor keeps its torque and loses power with speed (common practice)."""
    if machine.spindle_power_w is None:
        return None
    return machine.spindle_power_w * min(1.0, rpm / machine.spindle_max_rpm)


def bend_mm(tool: Tool, force_n: float) -> float:
    """How far a force at the tip bends a cutter that the collet holds: F L^3 / (3 E I), I = pi d^4 / 64, with the
    core's diameter for d. Source: textbook bending of a cantilever."""
    inertia = math.pi * (CORE_RATIO * tool.diameter_mm) ** 4 / 64
    return force_n * tool.stickout_mm**3 / (3 * STIFFNESS_N_PER_MM2[tool.metal] * inertia)


def strain_warnings(
    tool: Tool, material: Material, machine: Machine, data: CuttingData, depth_mm: float
) -> tuple[Message, ...]:
    """Whole sentences about a slot as wide as the cutter, where it asks too much; nothing where nobody knows."""
    found = strain(tool, material, machine, data, depth_mm, tool.diameter_mm)
    slot = Message("shop.at_a_pass_in", depth=Mm(float(f"{depth_mm:.2g}")), material=material.label)
    said = []
    if found and found.available_w is not None and found.power_w > MOST_POWER_RATIO * found.available_w:
        said.append(
            Message(
                "shop.spindle_is_weak",
                tool=tool.called,
                watts=Num(found.power_w, 0),
                slot=slot,
                available=Num(found.available_w, 0),
                rpm=round(data.spindle_rpm),
            )
        )
    if found and found.bend_mm > MOST_BEND_MM:
        said.append(
            Message(
                "shop.cutter_bends",
                tool=tool.called,
                bend=Mm(found.bend_mm, 2),
                newtons=Num(found.force_n, 0),
                slot=slot,
                stickout=Mm(tool.stickout_mm),
            )
        )
    return (*said, *_chip_warnings(tool, material, data))


def _chip_warnings(tool: Tool, material: Material, data: CuttingData) -> Iterator[Message]:
    """Chips outside the range in which an edge cuts well. A V-bit's chip is a mean that says little of its tip."""
    if tool.kind == "v-bit":
        return
    chip, least = data.chip_load_mm, material.least_chip_mm
    takes = Message("shop.each_edge_takes", tool=tool.called, chip=Mm(chip, 3), material=material.label)
    # Feeds are rounded down to tens, which makes a chip thinner by a few per cent.
    if least is not None and chip < least * CHIP_ROUNDING:
        yield Message("shop.chip_rubs", takes=takes, least=Mm(least))
    most = None if material.most_chip_ratio is None else material.most_chip_ratio * tool.diameter_mm
    if most is not None and chip > most:
        yield Message("shop.chip_breaks_out", takes=takes, most=Mm(most, 3))
