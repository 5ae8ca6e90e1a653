"""What hole patterns share: the options for the hole's size and its distance from the edge."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import ClassVar, Self

from msgspec import Struct

from signgen.errors import AskError
from signgen.holes.screws import Fit, clearance_mm
from signgen.messages import Message, Mm
from signgen.option import Option
from signgen.units import Limits

HOLE_DIAMETER = Option(
    name="hole-diameter", kind="length", metavar="LENGTH", group="Holes",
    help="Diameter of the holes.", otherwise="5 mm, or what --screw needs",
    limits=Limits(least=0.5, greatest=200), replaces=("screw", "screw-fit", "screw-head"),
    words=("hole size", "drill size", "size of holes", "bigger holes", "hole width"),
)  # fmt: skip
SCREW = Option(
    name="screw", kind="word", metavar="SCREW", group="Holes",
    help="Screw that the holes must pass: M3 to M12 (ISO 273), or a wood screw #4 to #14; instead of --hole-diameter.",
    replaces=("hole-diameter", "head-diameter", "head-angle"),
    words=("screws", "bolt", "screw size", "fixings", "which screw", "m5", "wood screw"), example="M5", often=True,
)  # fmt: skip
SCREW_FIT = Option(
    name="screw-fit", kind="choice", metavar="FIT", group="Holes", choices=("fine", "medium", "coarse"),
    help="How loosely an M screw passes: fine, medium or coarse.", otherwise="medium",
    words=("loose holes", "tight holes"),
)  # fmt: skip
INSET = Option(
    name="inset", kind="length", metavar="LENGTH", group="Holes",
    help="From the sign's edge to the middle of a hole.",
    otherwise="twice the hole's diameter, at least 10 mm, and more where the border needs it",
    replaces=("ring-diameter",),
    words=("hole position", "distance of holes", "holes from the edge", "move the holes", "place of holes"),
    example="14",
)  # fmt: skip
HOLE_COUNT = Option(
    name="hole-count", kind="count", metavar="N", group="Holes", limits=Limits(least=1, greatest=200),
    help="Number of holes in a row, a column or a ring.", otherwise="3 in a row or a column, 4 in a ring",
    words=("number of holes", "how many holes"),
)  # fmt: skip

SIZE_OPTIONS = (HOLE_DIAMETER, SCREW, SCREW_FIT)

DEFAULT_DIAMETER_MM = 5.0
"""Passes an M4 or a No. 8 wood screw, what house numbers are mostly put up with (common practice)."""
_DEFAULT_COUNT = 3
_LEAST_INSET_MM = 10.0
_INSET_RATIO = 2.0
"""Twice the diameter and 10 to 20 mm: common practice."""


def diameter_of(values: Mapping[str, object]) -> float:
    """The diameter asked for, by itself or by a screw.

    Raises: AskError when both are given, when the screw is not known, or a fit is asked of a screw that has none.
    """
    diameter, screw, fit = (values.get(option.name) for option in SIZE_OPTIONS)
    if isinstance(diameter, float) and screw is not None:
        raise AskError.at("screw", Message("hole.hole_diameter_given_too"), Message("hole.give_one_two"))
    if fit is not None and screw is None:
        raise AskError.at("screw-fit", Message("hole.needs_screw_fit"), Message("hole.give_screw_leave_out"))
    if isinstance(screw, str):
        wanted: Fit | None = fit if fit in ("fine", "medium", "coarse") else None
        return clearance_mm(screw, wanted)
    return diameter if isinstance(diameter, float) else DEFAULT_DIAMETER_MM


def inset_of(values: Mapping[str, object], diameter_mm: float) -> float:
    """The inset asked for, or the usual one for this diameter."""
    inset = values.get(INSET.name)
    return inset if isinstance(inset, float) else max(_LEAST_INSET_MM, _INSET_RATIO * diameter_mm)


def count_of(values: Mapping[str, object], default: int) -> int:
    count = values.get(HOLE_COUNT.name)
    return count if isinstance(count, int) else default


def must_not_cross(inset_mm: float, diameter_mm: float, side_mm: float, side: str) -> None:
    """Raises: AskError when two holes, each `inset_mm` from its own end of a side, touch or change places."""
    if side_mm - 2 * inset_mm <= diameter_mm:
        most = (side_mm - diameter_mm) / 2
        remedy = (
            Message("hole.use_less_than", most=Mm(most)) if most > 0 else Message("hole.make_holes_smaller_sign_larger")
        )
        raise AskError.at(
            INSET.name, Message(f"hole.no_wood_between_{side}", inset=Mm(inset_mm), side=Mm(side_mm)), remedy,
        )  # fmt: skip


def pitch_of(
    count: int, inset_mm: float, diameter_mm: float, side_mm: float, side: str, where: str = HOLE_COUNT.name
) -> float:
    """From one hole's middle to the next, of `count` holes spread over a side; 0 for a single one.

    Raises: AskError when they run together.
    """
    if count == 1:
        return 0.0
    must_not_cross(inset_mm, diameter_mm, side_mm, side)
    pitch = (side_mm - 2 * inset_mm) / (count - 1)
    if pitch <= diameter_mm:
        most = math.ceil((side_mm - 2 * inset_mm) / diameter_mm - 1e-9)
        what = Message("hole.holes_stand_apart_run_together", count=count, diameter=Mm(diameter_mm), pitch=Mm(pitch))
        raise AskError.at(where, what, Message("hole.use_most", most=most))
    return pitch


def spread(count: int, inset_mm: float, side_mm: float) -> tuple[float, ...]:
    """Even places along a side, the outer ones `inset_mm` from its ends; the middle for a single one."""
    if count == 1:
        return (side_mm / 2,)
    pitch = (side_mm - 2 * inset_mm) / (count - 1)
    return tuple(inset_mm + i * pitch for i in range(count))


class AtInset(Struct, frozen=True, kw_only=True):
    """Holes that a distance from the edges places; each pattern says where."""

    diameter_mm: float
    inset_mm: float

    name: ClassVar[str]
    options: ClassVar[tuple[Option, ...]] = (*SIZE_OPTIONS, INSET)
    argument: ClassVar[str] = ""

    @classmethod
    def from_options(cls, argument: str, values: Mapping[str, object], width_mm: float, height_mm: float) -> Self:
        diameter = diameter_of(values)
        inset = inset_of(values, diameter)
        cls.must_fit(inset, diameter, width_mm, height_mm)
        return cls(diameter_mm=diameter, inset_mm=inset)

    @classmethod
    def must_fit(cls, inset_mm: float, diameter_mm: float, width_mm: float, height_mm: float) -> None:
        """Raises: AskError when holes beside each other would touch."""
        must_not_cross(inset_mm, diameter_mm, width_mm, "wide")

    def asked(self) -> dict[str, str | float]:
        return {"holes": self.name, "hole-diameter": self.diameter_mm, "inset": self.inset_mm}


class InLine(Struct, frozen=True, kw_only=True):
    """`count` holes at even distances along one side's direction, the outer ones `inset_mm` from its ends."""

    diameter_mm: float
    inset_mm: float
    count: int

    name: ClassVar[str]
    argument: ClassVar[str] = ""

    @staticmethod
    def read(values: Mapping[str, object], side_mm: float, side: str) -> tuple[float, float, int]:
        """Diameter, inset and count. Raises: AskError when the holes run together."""
        diameter, count = diameter_of(values), count_of(values, _DEFAULT_COUNT)
        inset = inset_of(values, diameter)
        pitch_of(count, inset, diameter, side_mm, side)
        return diameter, inset, count

    def asked(self) -> dict[str, str | float]:
        return {
            "holes": self.name, "hole-diameter": self.diameter_mm, "inset": self.inset_mm, "hole-count": self.count,
        }  # fmt: skip
