"""What the sheet says about holding the board: swept areas, the line for clamps, and how high the nut stays."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.keep_out import NUT_DIAMETER_MM, swept_outside
from signgen.sheet.screws import HEAD_STANDS_MM

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

CLAMP_STANDS_MM = 30.0
"""How high a clamp with its bolt stands over the board: common practice for step clamps and cam clamps."""
CLAMP_GRIP_MM = 8.0
"""Less board than this under a clamp's toe does not hold (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fastening:
    """Areas in sign coordinates. `swept`: the sign and all that cutters take around it. `clamp_line`: where
    cutters or the
    nut pass lower than CLAMP_STANDS_MM, travel included. `from_sign_mm`: how far that line lies outside the
    sign at most. `clamp_room_mm`: the widest strip of board outside it, 0 when there is none."""

    swept: BaseGeometry
    clamp_line: BaseGeometry
    from_sign_mm: float
    clamp_room_mm: float

    @property
    def takes_clamps(self) -> bool:
        return self.clamp_room_mm >= CLAMP_GRIP_MM


def fastening_of(facts: JobFacts) -> Fastening:
    cutters = [(program.tool, program.replay) for program in facts.programs]
    nut = NUT_DIAMETER_MM[facts.spec.machine.collet_series]
    drawing, zero = facts.drawing, facts.zero
    lines = [
        swept_outside(drawing, zero, cutters, CLAMP_STANDS_MM, nut_mm=what, with_entries=True) for what in (None, nut)
    ]
    line = lines[0].union(lines[1])
    low_x, low_y, high_x, high_y = line.bounds
    left, front, right, back = facts.stock.bounds_mm
    return Fastening(
        swept=swept_outside(drawing, zero, cutters, HEAD_STANDS_MM),
        clamp_line=line,
        from_sign_mm=max(-low_x, -low_y, high_x - drawing.width_mm, high_y - drawing.height_mm),
        clamp_room_mm=max(0.0, low_x - left, low_y - front, right - high_x, back - high_y),
    )
