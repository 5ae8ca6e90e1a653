"""A rectangle whose corners are quarter circles."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import TYPE_CHECKING, ClassVar

from signgen.borders.common import NoEyes
from signgen.errors import CannotMakeError
from signgen.messages import Message, Mm
from signgen.option import Option

if TYPE_CHECKING:
    from shapely.geometry import Polygon

CORNER_RADIUS = Option(
    name="corner-radius",
    kind="length",
    metavar="LENGTH",
    help="Radius of round or hollow corners.",
    group="Shape",
    otherwise="a tenth of the shorter side, a little more for hollow ones",
    words=("rounded corners", "round corners", "radius"),
)

_DEFAULT_RATIO = 0.1
"""Of the shorter side: round enough to be seen, small enough to leave the corner holes their wood (common practice)."""


class Rounded(NoEyes, frozen=True, kw_only=True):
    radius_mm: float

    name: ClassVar[str] = "rounded"
    summary: ClassVar[str] = "A rectangle with round corners."
    options: ClassVar[tuple[Option, ...]] = (CORNER_RADIUS,)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Rounded:
        radius = values.get(CORNER_RADIUS.name)
        if isinstance(radius, float):
            return cls(radius_mm=radius)
        return cls(radius_mm=_DEFAULT_RATIO * min(width_mm, height_mm))

    def asked(self) -> dict[str, str | float]:
        return {"border": self.name, CORNER_RADIUS.name: self.radius_mm}

    def outline(self, width_mm: float, height_mm: float, chord_mm: float) -> Polygon:
        """Counter-clockwise; the vertices of the corners lie on their circles, so the chords run inside by at most
        `chord_mm`, and tangent points are vertices.

        Raises: CannotMakeError when the corners do not fit the sides.
        """
        from shapely.geometry import Polygon

        r, most = self.radius_mm, min(width_mm, height_mm) / 2
        if r > most:
            raise CannotMakeError.at(
                CORNER_RADIUS.name,
                Message("border.corners_do_not_fit_sign", r=Mm(r), width=Mm(width_mm), height=Mm(height_mm)),
                Message("border.use_most", most=Mm(most)),
            )
        quarter = _quarter(r, chord_mm)
        left, right, low, high = r, width_mm - r, r, height_mm - r
        points = [(right + dx, low - dy) for dy, dx in quarter]
        points += [(right + dx, high + dy) for dx, dy in quarter]
        points += [(left - dx, high + dy) for dy, dx in quarter]
        points += [(left - dx, low - dy) for dx, dy in quarter]
        distinct = [p for p, before in zip(points, points[-1:] + points[:-1], strict=True) if p != before]
        return Polygon(distinct)


def _quarter(radius_mm: float, chord_mm: float) -> list[tuple[float, float]]:
    """Points of a quarter circle about the origin from (r, 0) to (0, r), both exact.

    Source: sagitta of a chord over the angle 2a is r (1 - cos a).
    """
    half_turn = math.acos(max(-1.0, 1 - chord_mm / radius_mm)) if chord_mm < 2 * radius_mm else math.pi
    n = max(1, math.ceil(math.pi / 2 / (2 * half_turn)))
    inner = [(radius_mm * math.cos(a), radius_mm * math.sin(a)) for a in (math.pi / 2 * i / n for i in range(1, n))]
    return [(radius_mm, 0.0), *inner, (0.0, radius_mm)]
