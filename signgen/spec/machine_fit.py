"""Whether the machine can hold the cutters and reach over the sign at all; the programs themselves are judged later."""

from __future__ import annotations

from signgen.messages.figures import plain
from signgen.shop.collets import SERIES, collet_for
from signgen.shop.materials import Machine
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked


def must_fit_collet(a: Asked, key: str, tool: Tool, machine: Machine) -> None:
    """Keep a problem when the machine's collets do not take the shank of a cutter."""
    if collet_for(tool.shank_mm, machine.collet_series) is None:
        size = SERIES[machine.collet_series]
        a.cannot(
            key, f"The {plain(tool.shank_mm)} mm shank of {tool.name} does not go into the collets of {machine.name}.",
            f"They take {plain(size.least_mm)} to {plain(size.greatest_mm)} mm.",
        )  # fmt: skip


def must_fit_travel(a: Asked, machine: Machine, size_mm: tuple[float, float]) -> None:
    """Keep a problem when the sign alone is larger than the machine's travel."""
    x, y = machine.travel_mm[:2]
    if size_mm[0] > x or size_mm[1] > y:
        a.cannot(
            "size", f"{plain(size_mm[0])} x {plain(size_mm[1])} mm is more than {machine.name} travels: "
            f"{plain(x)} x {plain(y)} mm.", "Make it smaller, or give another machine.",
        )  # fmt: skip


def must_fit_height(a: Asked, machine: Machine, thickness_mm: float, clearance_mm: float, through_mm: float) -> None:
    """Keep a problem when the way from below the board to the travel height is longer than the machine's Z."""
    needed = thickness_mm + clearance_mm + through_mm
    if needed > machine.travel_mm[2]:
        a.cannot(
            "thickness", f"{plain(thickness_mm)} mm with {plain(clearance_mm)} mm of clearance needs {plain(needed)} "
            f"mm of travel in Z; {machine.name} has {plain(machine.travel_mm[2])} mm.",
            "Use a thinner board or less clearance, or give another machine.",
        )  # fmt: skip
