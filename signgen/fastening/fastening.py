"""What the sheet says about holding the board: swept areas, the line for clamps, and how high the nut stays."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec import Struct

from signgen.fastening.keep_out import swept_outside
from signgen.job.facts import JobFacts
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.stock import CLAMP_STANDS_MM, HEAD_STANDS_MM

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

CLAMP_GRIP_MM = 8.0
"""Less board than this under a clamp's toe does not hold (common practice)."""


class Fastening(Struct, frozen=True, kw_only=True):
    """Areas in sign coordinates. `swept`: the sign and all that cutters take around it. `clamp_line`: outline without
    bays around every place where a cutter or the nut passes lower than CLAMP_STANDS_MM, on its way out too.
    `from_sign_mm`: how far the nut reaches outside the sign while it cuts. `clamp_room_mm`: the widest strip of board
    outside the line, 0 when there is none."""

    swept: BaseGeometry
    clamp_line: BaseGeometry
    from_sign_mm: float
    clamp_room_mm: float

    @property
    def takes_clamps(self) -> bool:
        return self.clamp_room_mm >= CLAMP_GRIP_MM


def fastening_of(facts: JobFacts) -> Fastening:
    cutters = [(program.tool, program.replay) for program in facts.programs]
    if facts.outline is not None:
        cutters = [(facts.outline.tool, facts.outline.replay), *cutters]
    nut = NUT_DIAMETER_MM[facts.spec.machine.collet_series]
    drawing, zero = facts.drawing, facts.zero
    by_nut = swept_outside(drawing, zero, cutters, CLAMP_STANDS_MM, nut_mm=nut)
    # the sheet has the head stand over the sign before each program, so no way in comes from outside
    by_cutter = swept_outside(drawing, zero, cutters, CLAMP_STANDS_MM)
    line = by_nut.union(by_cutter).convex_hull
    low_x, low_y, high_x, high_y = by_nut.bounds
    left, front, right, back = facts.stock.bounds_mm
    room = (line.bounds[0] - left, line.bounds[1] - front, right - line.bounds[2], back - line.bounds[3])
    return Fastening(
        swept=swept_outside(drawing, zero, cutters, HEAD_STANDS_MM),
        clamp_line=line,
        from_sign_mm=max(-low_x, -low_y, high_x - drawing.width_mm, high_y - drawing.height_mm),
        clamp_room_mm=max(0.0, *room),
    )
