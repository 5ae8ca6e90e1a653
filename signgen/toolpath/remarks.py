"""What is worth saying of a cut on its way, for programs whose comments name every pass, ramp and tab."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from signgen.messages import Message, Mm

PLACES = 2
"""Decimals of depths: finer ones stand in the moves themselves."""


class Remark(Struct, frozen=True, kw_only=True):
    """Said before segment `at` of a cut's path; None where it is about the cut as a whole. `feature` as in `Cut`."""

    feature: str
    says: Message
    at: int | None = None


class Level(Struct, frozen=True, kw_only=True):
    """One of `count` passes, numbered from 1 at the top, and how deep it goes below the board's top."""

    number: int
    count: int
    depth_mm: float

    @property
    def cut(self) -> Message:
        return Message("remark.pass", number=self.number, count=self.count, depth=deep(self.depth_mm))

    @property
    def ramp(self) -> Message:
        return Message("remark.ramp", number=self.number, count=self.count, depth=deep(self.depth_mm))


def passes_of(heights_mm: Sequence[float], top_mm: float) -> list[tuple[float, Level]]:
    """Each height of passes with its number and depth."""
    count = len(heights_mm)
    return [(z, Level(number=n, count=count, depth_mm=top_mm - z)) for n, z in enumerate(heights_mm, 1)]


def over_tab(number: int, count: int) -> Message:
    return Message("remark.tab", number=number, count=count)


def deep(depth_mm: float) -> Mm:
    return Mm(depth_mm, PLACES, trim=True)


def moved_on(remarks: Sequence[Remark], by: int) -> tuple[Remark, ...]:
    """The remarks of a cut that stands behind `by` other segments."""
    return tuple(Remark(at=(each.at or 0) + by, feature=each.feature, says=each.says) for each in remarks)
