"""A board that points left, right or both ways."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import POINT_LENGTH, NoEyes, Point, given, must_fit, ring
from signgen.option import Option
from signgen.units import NOT_NEGATIVE

if TYPE_CHECKING:
    from shapely.geometry import Polygon

ARROW_TO = Option(
    name="arrow-to", kind="choice", metavar="SIDE", group="Shape", choices=("left", "right", "both"),
    help="Where an arrow points: left, right or both.", otherwise="right",
    words=("arrow direction", "arrow pointing", "point left", "point right"),
)  # fmt: skip
BARB = Option(
    name="barb", kind="length", metavar="LENGTH", group="Shape", limits=NOT_NEGATIVE,
    help="How far an arrow's head stands out above and below its shaft.", otherwise="0, a pointed board",
    words=("arrow wings",),
)  # fmt: skip

_DEFAULT_RATIO = 0.5
_GREATEST_RATIO = 1 / 3
"""The default point: half the height, which makes a right angle, and a third of the width at most."""
_BARB_RATIO = 0.4
"""Of the height: a shaft of a fifth of it must stay."""


class Arrow(NoEyes, frozen=True, kw_only=True):
    to: str
    point_mm: float
    barb_mm: float

    name: ClassVar[str] = "arrow"
    summary: ClassVar[str] = "A board that ends in a point, left, right or both ways; with barbs when asked."
    options: ClassVar[tuple[Option, ...]] = (ARROW_TO, POINT_LENGTH, BARB)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Arrow:
        to = values.get(ARROW_TO.name)
        return cls(
            to=to if isinstance(to, str) else "right",
            point_mm=given(values, POINT_LENGTH, min(_DEFAULT_RATIO * height_mm, _GREATEST_RATIO * width_mm)),
            barb_mm=given(values, BARB, 0.0),
        )

    def asked(self) -> dict[str, str | float]:
        return {
            "border": self.name, ARROW_TO.name: self.to, POINT_LENGTH.name: self.point_mm, BARB.name: self.barb_mm,
        }  # fmt: skip

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """The corners behind the barbs are square; what a cutter leaves in them is for the drawing to say. Raises:
        CannotMakeError when points or barbs leave no shaft."""
        w, h, p, b = width_mm, height_mm, self.point_mm, self.barb_mm
        both = self.to == "both"
        must_fit(POINT_LENGTH, p, w / 2 if both else w, w, h)
        must_fit(BARB, b, _BARB_RATIO * h, w, h)
        head: list[Point] = [(w - p, b), (w - p, 0), (w, h / 2), (w - p, h), (w - p, h - b)]
        tail: list[Point] = [(w - x, h - y) for x, y in head] if both else [(0, h - b), (0, b)]
        points = [*head, *tail]
        if self.to == "left":
            points = [(w - x, y) for x, y in reversed(points)]
        return ring(points)
