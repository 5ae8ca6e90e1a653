"""Which cutters make a round hole or a slot of a given width, and the hole next in size that the shop can make."""

from __future__ import annotations

from collections.abc import Iterable

from signgen.shop.tools import STOUTEST_MM, Tool

SAME_SIZE_MM = 0.02
"""A hole no more than this larger or smaller than a drill is its hole."""

LEAST_HELIX_MM = 0.15
"""Radius of the smallest helix: what a 4 mm cutter has in the holes for an M4 (4.3 mm) or a No. 8 screw. On a smaller
one the entry angle would take hundreds of turns."""


def fits(hole_diameter_mm: float, tool: Tool, *, slot: bool = False) -> bool:
    """Whether a cutter can make a hole of this width: a drill of the same size, or an end mill that has room in it for
    a helix (in a slot, which has room for a ramp, one no wider). An end mill does not drill: its chips have no way
    out, it burns wood and melts plastics, and few are ground for it (common practice)."""
    if tool.kind == "drill":
        return not slot and abs(tool.diameter_mm - hole_diameter_mm) <= SAME_SIZE_MM
    room = 0.0 if slot else 2 * LEAST_HELIX_MM
    return tool.kind == "end-mill" and tool.diameter_mm + room <= hole_diameter_mm + 1e-9


def makers(diameter_mm: float, tools: Iterable[Tool], reach_mm: float, *, slot: bool = False) -> list[Tool]:
    """Those of the cutters that make such a hole `reach_mm` deep."""
    return [
        tool
        for tool in tools
        if tool.cutting_length_mm >= reach_mm + tool.point_length_mm
        and fits(diameter_mm, tool, slot=slot)
        and tool.diameter_mm <= max(STOUTEST_MM, diameter_mm)
    ]


def next_bore_mm(diameter_mm: float, tools: Iterable[Tool], reach_mm: float) -> float | None:
    """The diameter itself where a cutter makes it, else the next larger one that a cutter does; None when none does."""
    offered = list(tools)
    if makers(diameter_mm, offered, reach_mm):
        return diameter_mm
    sizes = {tool.diameter_mm + (0.0 if tool.kind == "drill" else 2 * LEAST_HELIX_MM) for tool in offered}
    return next(
        (round(size, 4) for size in sorted(sizes) if size > diameter_mm and makers(size, offered, reach_mm)), None
    )
