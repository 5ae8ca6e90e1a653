"""What holds the board down on the machine: screws and clamps, which no cutter may meet."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct
from shapely.geometry import Point, Polygon, box

from signgen.messages import Message, Num, Sentence, Typed
from signgen.shop.stock import HEAD_STANDS_MM, SCREW_HEAD_MM, WorkZero

Place = tuple[float, float]
Rectangle = tuple[float, float, float, float]


class Fixing(Struct, frozen=True, kw_only=True):
    """`area` in sign coordinates; `stands_mm` over the board's top."""

    name: Sentence
    area: Polygon
    stands_mm: float


def screws_at(places_mm: Sequence[Place], zero: WorkZero) -> tuple[Fixing, ...]:
    """Screws whose middles are given in program coordinates."""
    return tuple(
        Fixing(
            name=Message("fixing.screw_x_y", x=Typed(x), y=Typed(y)),
            area=Point(x + zero.x_mm, y + zero.y_mm).buffer(SCREW_HEAD_MM / 2, quad_segs=32),
            stands_mm=HEAD_STANDS_MM,
        )
        for x, y in places_mm
    )


def clamps_at(rectangles_mm: Sequence[Rectangle], stands_mm: float, zero: WorkZero) -> tuple[Fixing, ...]:
    """Clamps as rectangles (low x, low y, high x, high y) in program coordinates."""
    return tuple(
        Fixing(
            name=Message("fixing.clamp_x_y", x0=Typed(x0), x1=Num(x1), y0=Typed(y0), y1=Num(y1)),
            area=box(x0 + zero.x_mm, y0 + zero.y_mm, x1 + zero.x_mm, y1 + zero.y_mm),
            stands_mm=stands_mm,
        )
        for x0, y0, x1, y1 in rectangles_mm
    )
