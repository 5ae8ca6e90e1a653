"""Keyholes in the back: the sign is pushed over screws in the wall and let down on them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import ClassVar

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.common import HOLE_COUNT, INSET, SCREW, count_of, must_not_cross, pitch_of, spread
from signgen.holes.screws import shank_and_head_mm
from signgen.messages import Message, Mm
from signgen.option import Option
from signgen.units import Limits

KEYHOLE_TRAVEL = Option(
    name="keyhole-travel", kind="length", metavar="LENGTH", group="Holes", limits=Limits(least=4, greatest=60),
    help="How far the sign sinks on its screws: from the middle of a keyhole's entry to that of its seat.",
    otherwise="10 mm, or 1.2 heads of the screw",
    words=("keyhole length",),
)  # fmt: skip
KEYHOLE_DEPTH = Option(
    name="keyhole-depth", kind="length", metavar="LENGTH", group="Holes", limits=Limits(least=2, greatest=60),
    help="Depth of keyholes from the sign's back.",
    otherwise="the cutter's head and 3/16 in of wood over the screw's, less in thin boards",
    words=("depth of keyholes",),
)  # fmt: skip

USUAL_SCREW = "#8"
"""What signs are mostly hung on (common practice); its head goes into the usual keyhole cutter's slot."""
LEAST_TRAVEL_MM = 10.0
"""Common practice for keyhole slots."""
TRAVEL_RATIO = 1.2
"""Of the screw's head: the seat is then clear of the entry."""
USUAL_INSET_MM = 25.0
"""From the edges to the screw: the entry lies lower still, and both want wood around them (common practice)."""
_DEFAULT_COUNT = 2


class Keyholes(Struct, frozen=True, kw_only=True):
    """Slots in the back, one beside the other. A screw hangs in the upper end of each, which is `inset_mm` below the
    top; the outer ones are as far from the sides. `depth_mm` None: what the cutter and the board want.

    `diameter_mm` is that of the screw's head: nothing of a keyhole goes through the board.
    """

    screw: str
    inset_mm: float
    count: int
    travel_mm: float
    depth_mm: float | None = None

    name: ClassVar[str] = "keyholes"
    summary: ClassVar[str] = (
        "Slots for screw heads in the back, near the top, cut from behind before the face; not through."
    )
    options: ClassVar[tuple[Option, ...]] = (SCREW, INSET, HOLE_COUNT, KEYHOLE_TRAVEL, KEYHOLE_DEPTH)
    argument: ClassVar[str] = ""

    @property
    def shank_mm(self) -> float:
        return shank_and_head_mm(self.screw)[0]

    @property
    def head_mm(self) -> float:
        return shank_and_head_mm(self.screw)[1]

    @property
    def diameter_mm(self) -> float:
        return self.head_mm

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Keyholes:
        screw, inset, travel, depth = (
            values.get(option.name) for option in (SCREW, INSET, KEYHOLE_TRAVEL, KEYHOLE_DEPTH)
        )
        screw = screw if isinstance(screw, str) else USUAL_SCREW
        _, head = shank_and_head_mm(screw)
        count = count_of(values, _DEFAULT_COUNT)
        inset = inset if isinstance(inset, float) else min(USUAL_INSET_MM, width_mm / 4, height_mm / 3)
        usual = round(max(LEAST_TRAVEL_MM, TRAVEL_RATIO * head), 1)
        travel = travel if isinstance(travel, float) else usual
        if count > 1:
            must_not_cross(inset, 2 * head, width_mm, "wide")
            pitch_of(count, inset, 2 * head, width_mm, "wide")
        if travel < head:
            what = Message("hole.less_than_screw_s_head", travel=Mm(travel), head=Mm(head, 2))
            raise AskError.at(KEYHOLE_TRAVEL.name, what, Message("hole.use_so", usual=Mm(usual)))
        return cls(
            screw=screw, inset_mm=inset, count=count, travel_mm=travel,
            depth_mm=depth if isinstance(depth, float) else None,
        )  # fmt: skip

    def asked(self) -> dict[str, str | float]:
        asked: dict[str, str | float] = {
            "holes": self.name, SCREW.name: self.screw, INSET.name: self.inset_mm, HOLE_COUNT.name: self.count,
            KEYHOLE_TRAVEL.name: self.travel_mm,
        }  # fmt: skip
        return asked if self.depth_mm is None else asked | {KEYHOLE_DEPTH.name: self.depth_mm}

    def centres(self, width_mm: float, height_mm: float) -> tuple[tuple[str, float, float], ...]:
        """Where the screws hang."""
        places = spread(self.count, self.inset_mm, width_mm)
        return tuple((f"{i}", x, height_mm - self.inset_mm) for i, x in enumerate(places, 1))
