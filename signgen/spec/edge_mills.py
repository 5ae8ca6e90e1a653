"""Which end mills may cut the outside."""

from __future__ import annotations

from signgen.shop.tools import STOUTEST_MM, Tool
from signgen.spec.sign_spec import SignSpec

EDGE_DEPTH_RATIO = 3.0
"""How deep, in its own diameters, a cutter is sent round an edge unasked: a thinner one bends, and in a slot its
chips do not get out (common practice). In a hole it is held all round by its helix and may go deeper."""


def edge_mills(spec: SignSpec) -> tuple[Tool, ...]:
    """The stoutest first: the one that was named, or those that the planner may take. () when none is long enough."""
    if spec.end_mill is not None:
        return (spec.end_mill,)
    reach = spec.thickness_mm + spec.breakthrough_mm
    mills = [
        tool
        for tool in spec.shop.tools
        if tool.kind == "end-mill"
        and not tool.only_named
        and tool.cutting_length_mm >= reach
        and tool.diameter_mm <= STOUTEST_MM
    ]
    # In a board that is thick for all of them, the stoutest has to do.
    stout = [tool for tool in mills if reach <= EDGE_DEPTH_RATIO * tool.diameter_mm] or mills
    return tuple(sorted(stout, key=lambda tool: -tool.diameter_mm))
