"""What borders share: options, arcs as points, and the ring that they close into.

A border imports shapely only when it draws, since the command line reads BORDERS for its help.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING

from msgspec import Struct

from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

Point = tuple[float, float]
Eye = tuple[str, float, float, float]
"""Name, x, y and diameter of a hole that belongs to a border."""

CORNER_CUT = Option(
    name="corner-cut", kind="length", metavar="LENGTH", group="Shape",
    help="How far the shape of a corner reaches along both edges.", otherwise="in proportion to the shorter side",
    words=("cut corners", "chamfered corners"),
)  # fmt: skip
POINT_LENGTH = Option(
    name="point-length", kind="length", metavar="LENGTH", group="Shape",
    help="How far a hexagon's or an arrow's points reach along the sign.",
    otherwise="what makes angles of 120 degrees in a hexagon, 90 in an arrow",
    words=("arrow point", "tip of the arrow"),
)  # fmt: skip

SAME_MM = 1e-7
"""Points closer than this are one: far below what is cut, far above the noise of sines."""


class NoEyes(Struct, frozen=True):
    """A border that brings no holes of its own."""

    def eyes(self, width_mm: float, height_mm: float) -> tuple[Eye, ...]:
        return ()


def given(values: Mapping[str, object], option: Option, otherwise: float) -> float:
    """The length asked for, or another."""
    value = values.get(option.name)
    return value if isinstance(value, float) else otherwise


def must_fit(option: Option, value_mm: float, most_mm: float, width_mm: float, height_mm: float) -> None:
    """Raises: CannotMakeError when a length of the outline is more than this sign has room for."""
    if value_mm > most_mm + SAME_MM:
        raise CannotMakeError.at(
            option.name,
            Message("border.do_not_fit_sign_x", value=Mm(value_mm), width=Mm(width_mm), height=Mm(height_mm)),
            Message("border.use_most", most=Mm(math.floor(most_mm * 1000) / 1000)),
        )


def arc(centre: Point, radii: Point, start_deg: float, sweep_deg: float, chord_mm: float) -> list[Point]:
    """Points of an arc of an ellipse with its axes along X and Y, both ends among them, no chord further than
    `chord_mm` from it. A positive sweep goes counter-clockwise.

    Source: linear interpolation errs by at most h^2 / 8 times the second derivative, whose length is the larger
    radius at most, for a step h of the angle.
    """
    sweep = math.radians(sweep_deg)
    count = max(1, math.ceil(abs(sweep) / math.sqrt(8 * chord_mm / max(*radii, chord_mm))))
    angles = [math.radians(start_deg) + sweep * i / count for i in range(count + 1)]
    return [(centre[0] + radii[0] * math.cos(a), centre[1] + radii[1] * math.sin(a)) for a in angles]


def ring(points: Iterable[Point]) -> Polygon:
    """The area inside a closed chain of points, given counter-clockwise; double points are dropped, and the sines'
    last digits."""
    from shapely.geometry import Polygon

    found: list[Point] = []
    for x, y in points:
        point = (round(x, 9) + 0.0, round(y, 9) + 0.0)
        if not found or math.dist(point, found[-1]) > SAME_MM:
            found.append(point)
    while len(found) > 1 and math.dist(found[0], found[-1]) <= SAME_MM:
        found.pop()
    return Polygon(found)
