"""Where each cutter is touched off: on wood of the face that no program takes, or on the spoilboard beside the
board."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray
from shapely import STRtree, points
from shapely.geometry import Point
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.edge import Edge
from signgen.instructions import PAPER_MM, Touch
from signgen.shop.collets import NUT_DIAMETER_MM
from signgen.shop.materials import Machine
from signgen.shop.stock import LEAD_MM, Stock, WorkZero
from signgen.shop.tools import Tool

AROUND_MM = 2.0
"""Face that stands around the cutter's end where it touches: a cutter beside its place by a millimetre still touches
the face (common practice)."""

MOST_PLACES = 6000
"""Places tried on a board at the most, a whole number of millimetres apart."""

BESIDE_MM = 5.0
"""Air between the board and the cutter or the nut where the spoilboard is touched beside it."""

Floats = NDArray[np.float64]


def touches_of(
    drawing: Drawing,
    stock: Stock,
    zero: WorkZero,
    tools: Sequence[Tool],
    around_mm: float,
    machine: Machine,
    *,
    face_down: bool = False,
) -> tuple[tuple[Touch, ...], ...]:
    """For each cutter the ways to set Z, the first of them being the one to take where it can be done; program
    coordinates.

    `around_mm`: how far outside the edge the board is cut. With Z0 under the board the spoilboard is touched, or the
    face; with Z0 on top the face, and the spoilboard only where no face stands that is wide enough. One place of the
    face serves all cutters where there is one.
    """
    beside = _beside(drawing, stock, zero, tools, machine, face_down)
    taken = _footprints(drawing) if face_down else _taken(drawing, around_mm)
    common = _place(drawing, stock, zero, taken, max(touching_radius_mm(tool) for tool in tools))
    found = []
    for tool in tools:
        place = common or _place(drawing, stock, zero, taken, touching_radius_mm(tool))
        ways = []
        if beside and (zero.z_mm == 0 or place is None):
            # Z0 lies as far over the spoilboard as `zero` says.
            x, y = beside
            ways.append(Touch(on="spoilboard", x_mm=x, y_mm=y, types_mm=round(PAPER_MM - zero.z_mm, 4)))
        if place:
            ways.append(Touch(on="face", x_mm=place[0], y_mm=place[1], plus_thickness=zero.z_mm == 0))
        found.append(tuple(ways))
    return tuple(found)


def touching_radius_mm(tool: Tool) -> float:
    """Of what of a cutter meets a flat face."""
    return {"v-bit": tool.tip_mm / 2, "drill": 0.0, "ball-nose": 0.0}.get(tool.kind, tool.radius_mm)


def touched_discs(
    touches: Sequence[Sequence[Touch]], zero: WorkZero, tools: Sequence[Tool]
) -> tuple[BaseGeometry, ...]:
    """What setting Z keeps clear of the board, in sign coordinates: the widest cutter, and a little around it."""
    widest = max(max(tool.diameter_mm, tool.shank_mm) for tool in tools) / 2
    places = {(touch.x_mm, touch.y_mm) for ways in touches for touch in ways if touch.on == "face"}
    return tuple(Point(x + zero.x_mm, y + zero.y_mm).buffer(widest + AROUND_MM) for x, y in sorted(places))


def _taken(drawing: Drawing, around_mm: float) -> list[BaseGeometry]:
    """All that is cut of the face, seen from above; sign coordinates."""
    taken = _footprints(drawing)
    out = around_mm + LEAD_MM
    if drawing.is_blank:
        return taken
    taken += [outline.boundary.buffer(out).difference(outline) for outline in drawing.outlines]
    return taken


def _footprints(drawing: Drawing) -> list[BaseGeometry]:
    """What goes of the face or of the back, and what is cut from the other side of the board there."""
    return [feature.footprint for feature in drawing.features if feature.takes and not isinstance(feature, Edge)]


def _place(
    drawing: Drawing, stock: Stock, zero: WorkZero, taken: Sequence[BaseGeometry], radius: float
) -> tuple[float, float] | None:
    """The place with room for a cutter of that radius on face that stands: on the sign as near to its middle as there
    is, else in the waste; whole millimetres in program coordinates."""
    room = radius + AROUND_MM
    x, y = _candidates(stock, zero, room)
    if not len(x):
        return None
    spots = points(x + zero.x_mm, y + zero.y_mm)
    hit = np.unique(STRtree(spots).query(list(taken), predicate="dwithin", distance=room)[1])
    stands = np.ones(len(spots), bool)
    stands[hit] = False
    if not stands.any():
        return None
    from shapely import contains_xy

    edge = drawing.edge
    inside = contains_xy(edge, x + zero.x_mm, y + zero.y_mm)
    middle = np.hypot(x + zero.x_mm - drawing.width_mm / 2, y + zero.y_mm - drawing.height_mm / 2)
    # Any place on the sign goes before any beside it: there neither clamps nor screws are in the way.
    worth = np.where(stands, middle + np.where(inside, 0.0, 1e6), np.inf)
    k = int(worth.argmin())
    return float(x[k]), float(y[k])


def _candidates(stock: Stock, zero: WorkZero, room: float) -> tuple[Floats, Floats]:
    """Whole millimetres of program coordinates on the board, `room` inside its rim."""
    left, front, right, back = stock.bounds_mm
    step = max(1, int(np.ceil(np.sqrt(stock.width_mm * stock.height_mm / MOST_PLACES))))
    x = np.arange(np.ceil(left - zero.x_mm + room), right - zero.x_mm - room + 1e-9, step)
    y = np.arange(np.ceil(front - zero.y_mm + room), back - zero.y_mm - room + 1e-9, step)
    grid_x, grid_y = np.meshgrid(x, y)
    return grid_x.ravel(), grid_y.ravel()


def _beside(
    drawing: Drawing, stock: Stock, zero: WorkZero, tools: Sequence[Tool], machine: Machine, face_down: bool
) -> tuple[float, float] | None:
    """On the bare spoilboard, on the side away from the edges that lie at stops: right of the board, left of it where
    it lies face down, or behind it. As far away as the nut needs, for a short cutter brings it lower than the board is
    thick. None where the machine does not reach there from the sign's far side."""
    nut = NUT_DIAMETER_MM[machine.collet_series] / 2
    away = max(nut, *(max(tool.diameter_mm, tool.shank_mm) / 2 for tool in tools)) + BESIDE_MM
    return next(_sides(drawing, stock, zero, away, machine.travel_mm, face_down), None)


def _sides(
    drawing: Drawing, stock: Stock, zero: WorkZero, away: float, travel: tuple[float, float, float], face_down: bool
) -> Iterator[tuple[float, float]]:
    left, _, right, back = stock.bounds_mm
    x = np.floor(left - away - zero.x_mm) if face_down else np.ceil(right + away - zero.x_mm)
    y = np.ceil(back + away - zero.y_mm)
    far_x = x + zero.x_mm if not face_down else drawing.width_mm - (x + zero.x_mm)
    if far_x <= travel[0]:
        yield float(x), float(np.rint(drawing.height_mm / 2 - zero.y_mm))
    if y + zero.y_mm <= travel[1]:
        yield float(np.rint(drawing.width_mm / 2 - zero.x_mm)), float(y)
