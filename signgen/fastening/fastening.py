"""What the sheet says about holding the board: swept areas, the line for clamps, and how high the nut stays."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from shapely import linestrings, multilinestrings
from shapely.geometry import Point, box
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from signgen.drawing.drawing import Drawing
from signgen.fastening.keep_out import Cutters, swept_outside, tip_lines
from signgen.instructions import Touch
from signgen.job.facts import JobFacts
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.stock import CLAMP_STANDS_MM, HEAD_STANDS_MM, Stock, WorkZero

CLAMP_GRIP_MM = 8.0
"""Less board than this under a clamp's toe does not hold (common practice)."""

CLAMP_AIR_MM = 1.2
"""Between what passes low and the line for clamps: nobody sets one more exactly than to a millimetre (common
practice), and the line is printed in chords."""


class Fastening(Struct, frozen=True, kw_only=True):
    """Areas in sign coordinates. `swept`: the sign and all that cutters take around it. `clamp_line`: outline without
    bays a little outside every place where a cutter or the nut passes lower than CLAMP_STANDS_MM, on its way out too.
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
    touches = [step.sets_z for step in facts.set_up.steps]
    series = facts.spec.machine.collet_series
    return fastening_on(facts.drawing, facts.stock, facts.zero, cutters, series, touches)


def fastening_on(
    drawing: Drawing,
    stock: Stock,
    zero: WorkZero,
    cutters: Cutters,
    collet_series: int,
    touches: Sequence[Sequence[Touch]] = (),
) -> Fastening:
    """What cutters sweep, and where clamps may stand: outside everything that the nut passes over low, here or while Z
    is set at `touches`. The head starts over the sign, as the sheet asks, and goes out over clamps."""
    nut = NUT_DIAMETER_MM[collet_series]
    swept, line, reach = (_round_pieces if drawing.pieces else _round_sign)(drawing, zero, cutters, nut)
    places = {(touch.x_mm, touch.y_mm) for ways in touches for touch in ways if touch.on == "face"}
    kept = [Point(x + zero.x_mm, y + zero.y_mm).buffer(nut / 2) for x, y in sorted(places)]
    line = unary_union([line, *kept]).convex_hull.buffer(CLAMP_AIR_MM)
    left, front, right, back = stock.bounds_mm
    room = (line.bounds[0] - left, line.bounds[1] - front, right - line.bounds[2], back - line.bounds[3])
    return Fastening(swept=swept, clamp_line=line, from_sign_mm=reach, clamp_room_mm=max(0.0, *room))


Swept = tuple["BaseGeometry", "BaseGeometry", float]
"""What is cut, what a cutter or the nut passes low, and how far the nut reaches outside the sign."""


def _round_sign(drawing: Drawing, zero: WorkZero, cutters: Cutters, nut: float) -> Swept:
    by_nut = swept_outside(drawing, zero, cutters, CLAMP_STANDS_MM, nut_mm=nut)
    # the sheet has the head stand over the sign before each program, so no way in comes from outside
    by_cutter = swept_outside(drawing, zero, cutters, CLAMP_STANDS_MM)
    low_x, low_y, high_x, high_y = by_nut.bounds
    reach = max(-low_x, -low_y, high_x - drawing.width_mm, high_y - drawing.height_mm)
    return swept_outside(drawing, zero, cutters, HEAD_STANDS_MM), by_nut.union(by_cutter), reach


def _round_pieces(drawing: Drawing, zero: WorkZero, cutters: Cutters, nut: float) -> Swept:
    """Of a sheet of signs the nut's way is taken as the rectangle round all of them, wider by the cutter, for the
    outline goes round all that is cut, and by half the nut; ways that leave it are added as they are."""
    reach = max(tool.diameter_mm for tool, _ in cutters) + nut / 2
    line: BaseGeometry = box(-reach, -reach, drawing.width_mm + reach, drawing.height_mm + reach)
    inner = line.bounds
    shift = np.array([zero.x_mm, zero.y_mm, zero.z_mm])
    for tool, replay in cutters:
        ways = tip_lines(replay.motions) + shift
        low = ways[ways[:, :, 2].min(axis=1) < drawing.thickness_mm + CLAMP_STANDS_MM, :, :2]
        outside = low[((low < inner[:2]) | (low > inner[2:])).any(axis=(1, 2))]
        if len(outside):
            line = line.union(multilinestrings(linestrings(outside)).buffer(tool.radius_mm))
    return drawing.edge.buffer(cutters[-1][0].diameter_mm), line, reach
