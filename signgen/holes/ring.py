"""Holes on a circle about the middle of the sign."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import HOLE_COUNT, INSET, SIZE_OPTIONS, count_of, diameter_of, inset_of
from signgen.messages import Message, Mm
from signgen.option import Option
from signgen.units import Limits

RING_DIAMETER = Option(
    name="ring-diameter", kind="length", metavar="LENGTH", group="Holes",
    help="Diameter of the circle that the middles of a ring of holes lie on.",
    otherwise="inset from the nearer edges", replaces=("inset",),
    words=("circle of holes", "bolt circle", "pitch circle"),
)  # fmt: skip
RING_START = Option(
    name="ring-start", kind="angle", metavar="ANGLE", group="Holes", limits=Limits(least=-360, greatest=360),
    help="Where the first hole of a ring lies, anticlockwise from the right.", otherwise="90, at the top",
    words=("turn the holes", "first hole"),
)  # fmt: skip

_DEFAULT_COUNT = 4
_DEFAULT_START_DEG = 90.0


class HoleRing(Struct, frozen=True, kw_only=True):
    """`count` holes at even angles, anticlockwise, the first at `start_deg` from the direction of X."""

    diameter_mm: float
    count: int
    ring_diameter_mm: float
    start_deg: float

    name: ClassVar[str] = "ring"
    summary: ClassVar[str] = "Several at even angles on a circle about the middle."
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET, HOLE_COUNT, RING_DIAMETER, RING_START)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> HoleRing:
        diameter, count = diameter_of(values), count_of(values, _DEFAULT_COUNT)
        ring, start = values.get(RING_DIAMETER.name), values.get(RING_START.name)
        if isinstance(ring, float):
            if INSET.name in values:
                raise AskError.at(INSET.name, Message("hole.ring_diameter_given_too"), Message("hole.give_one_two"))
        else:
            inset = inset_of(values, diameter)
            ring = min(width_mm, height_mm) - 2 * inset
            if ring <= 0:
                what = Message("hole.from_edge_leaves_no_room", inset=Mm(inset))
                raise AskError.at(
                    INSET.name, what, Message("hole.use_less_than", most=Mm(min(width_mm, height_mm) / 2))
                )
        apart = ring * math.sin(math.pi / count) if count > 1 else math.inf
        if apart <= diameter:
            what = Message("hole.holes_ring_run_together", count=count, diameter=Mm(diameter), ring=Mm(ring))
            raise AskError.at(HOLE_COUNT.name, what, Message("hole.use_fewer_smaller_holes_larger"))
        degrees = start if isinstance(start, float) else _DEFAULT_START_DEG
        return cls(diameter_mm=diameter, count=count, ring_diameter_mm=ring, start_deg=degrees)

    def asked(self) -> dict[str, str | float]:
        return {
            "holes": self.name, "hole-diameter": self.diameter_mm, "hole-count": self.count,
            "ring-diameter": self.ring_diameter_mm, "ring-start": self.start_deg,
        }  # fmt: skip

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        turns = [math.radians(self.start_deg + 360 * i / self.count) for i in range(self.count)]
        r, x, y = self.ring_diameter_mm / 2, width_mm / 2, height_mm / 2
        return tuple((f"{i + 1}", x + r * math.cos(a), y + r * math.sin(a)) for i, a in enumerate(turns))
