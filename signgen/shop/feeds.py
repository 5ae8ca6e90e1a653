"""Speeds, feeds and depths of one cutter in one material on one machine.

Source: textbook identity, vf = n x z x fz (feed = speed x teeth x feed per tooth); the figures that go in
are those of the shop's data, each with its own source there.
"""

from __future__ import annotations

import math

from signgen.shop.materials import CuttingData, Machine, Material
from signgen.shop.tools import Tool

_RPM_STEP = 100
"""Spindles are set in hundreds."""
_FEED_STEP = 10
"""Feeds are written in tens: a finer figure would pretend to knowledge that nobody has."""


def cutting_data(tool: Tool, material: Material, machine: Machine) -> CuttingData:
    """How the cutter runs: never over the machine's limits, never over the material's chip load.

    Where the machine cannot feed as fast as the speed wants, the spindle is slowed down to keep the chip, since a
    cutter that only rubs gets hot and burns the work; at the spindle's slowest speed the chip gets thinner instead.
    """
    if tool.kind == "drill":
        return _drill(tool, material, machine)
    top_feed = min(machine.top_feed_mm_per_min[:2])
    chip = chip_load_mm(tool, material)
    wanted = min(material.spindle_rpm, top_feed / (chip * tool.flutes))
    rpm = _speed(wanted, machine)
    feed = _down(min(rpm * tool.flutes * chip, top_feed), _FEED_STEP)
    return CuttingData(
        spindle_rpm=rpm,
        chip_load_mm=feed / (rpm * tool.flutes),
        feed_mm_per_min=feed,
        plunge_mm_per_min=_down(min(feed * material.plunge_ratio, machine.top_feed_mm_per_min[2]), _FEED_STEP),
        ramp_mm_per_min=_down(
            min(
                feed * material.ramp_ratio,
                machine.top_feed_mm_per_min[2] / math.sin(math.radians(material.entry_deg)),
            ),
            _FEED_STEP,
        ),
        stepdown_mm=stepdown_mm(tool, material),
        stepover_mm=material.stepover_ratio * tool.diameter_mm,
        entry_deg=material.entry_deg,
    )


MOST_THINNING = 1.75
"""How many times the feed may be raised where the chip gets thin: past it the cut shows every tooth, and a check
allows twice the chip load (common practice)."""


def thinning(width_mm: float, diameter_mm: float) -> float:
    """How much faster a cut of less than half the cutter's width may feed so that the chip at its thickest is as
    thick as in a slot: 1 / (2 sqrt(a (1 - a))), a = width over diameter; 1 from half on.

    Source: geometry of the chip: h = 2 fz sqrt(a (1 - a)).

    >>> round(thinning(0.6, 6.0), 3)
    1.667
    """
    share = width_mm / diameter_mm
    if not 0 < share < 0.5:
        return 1.0
    return 1 / (2 * math.sqrt(share * (1 - share)))


def thin_feed_mm_per_min(tool: Tool, data: CuttingData, machine: Machine, width_mm: float) -> float:
    """The feed of a cut that takes only `width_mm` from a wall, within the machine's."""
    wanted = data.feed_mm_per_min * min(thinning(width_mm, tool.diameter_mm), MOST_THINNING)
    return _down(min(wanted, *machine.top_feed_mm_per_min[:2]), _FEED_STEP)


def chip_load_mm(tool: Tool, material: Material) -> float:
    """Feed per tooth: the material's ratio times the diameter; of a V-bit, times the mean diameter of one pass
    (common practice: its cone is widest at the top and a point at the bottom, and the mean stands for both), but
    never so thin that it rubs. A keyhole cutter is no stronger than its neck, whose diameter counts."""
    if tool.kind == "keyhole":
        return material.chip_load_ratio * tool.neck_mm
    if tool.kind != "v-bit":
        return material.chip_load_ratio * tool.diameter_mm
    depth = min(material.v_step_mm, tool.reach_mm)
    by_mean = material.chip_load_ratio * (tool.radius_at_depth_mm(depth) + tool.tip_mm / 2)
    return max(by_mean, material.least_chip_mm or 0.0)


def stepdown_mm(tool: Tool, material: Material) -> float:
    """Greatest depth of one pass: of a V-bit the material's own figure, of a drill a peck, of a keyhole cutter the
    height of its head; never beyond its reach."""
    if tool.kind == "keyhole":
        return tool.head_mm
    if tool.kind == "v-bit":
        return min(material.v_step_mm, tool.reach_mm)
    ratio = material.peck_ratio if tool.kind == "drill" else material.stepdown_ratio
    return min(ratio * tool.diameter_mm, tool.reach_mm)


def _drill(tool: Tool, material: Material, machine: Machine) -> CuttingData:
    """A drill goes straight down, at the slowest speed that the spindle has: drills want a few thousand turns (common
    practice), which few routers go down to. Feed per turn = teeth x feed per tooth, as above."""
    rpm = _speed(machine.spindle_min_rpm, machine)
    chip = material.chip_load_ratio * tool.diameter_mm
    wanted = min(rpm * tool.flutes * chip * material.plunge_ratio, machine.top_feed_mm_per_min[2])
    feed = _down(wanted, _FEED_STEP)
    return CuttingData(
        spindle_rpm=rpm,
        chip_load_mm=feed / (rpm * tool.flutes),
        feed_mm_per_min=feed,
        plunge_mm_per_min=feed,
        ramp_mm_per_min=feed,
        stepdown_mm=stepdown_mm(tool, material),
        stepover_mm=material.stepover_ratio * tool.diameter_mm,
        entry_deg=material.entry_deg,
    )


def _speed(wanted: float, machine: Machine) -> float:
    """A speed in hundreds within the machine's range, at most the one wanted where the range allows."""
    return min(max(_down(wanted, _RPM_STEP), machine.spindle_min_rpm), machine.spindle_max_rpm)


def _down(value: float, step: int) -> float:
    """Rounded down to a step, but never to nothing."""
    steps = math.floor(value / step + 1e-9)
    return float(steps * step) if steps else value
