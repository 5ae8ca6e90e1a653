"""What every kind of thing on a sign says of itself, so that whoever asks need not know the kind."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, ClassVar, Literal, Protocol, Self

import numpy as np
from msgspec import Struct
from numpy.typing import NDArray
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.geometry.motion import Motion
from signgen.messages import Message, Mm, Num, Sentence
from signgen.messages.wording import has_words
from signgen.shop.tools import Tool
from signgen.tolerances import CHECK_MM

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.intp]
Area = Polygon | MultiPolygon
Side = Literal["face", "back", "both"]


class SignAsked(Protocol):
    """What is asked for of a sign, as far as a kind needs it that options of its own ask for."""

    @property
    def width_mm(self) -> float: ...

    @property
    def height_mm(self) -> float: ...

    @property
    def thickness_mm(self) -> float: ...

    def asked(self, name: str) -> Any:
        """The value of an option that has no field of its own; None when nothing was asked."""


class Feature(Struct, frozen=True, kw_only=True):
    """One thing that a sign has. A kind is a subclass in a file of its own; nobody but the check and the planner of
    that kind needs to know it.

    `name` is unique in a drawing; `source` the option that asked for it ("text", "frame", "holes"); `text` the letter
    that it is, '' for all else; `piece` the sign that it belongs to on a sheet of several; `title` the name in words,
    None where its words are known by the name itself or there are none.

    Depths are positive and count down from the board's top on the side that the feature is cut from; infinite means
    right through the board.
    """

    name: str
    source: str
    text: str = ""
    piece: str = ""
    title: Message | None = None

    kind: ClassVar[str]
    """What the report and the tables of words call it."""

    own_picture: ClassVar[bool] = False
    """Whether the drawings show more of it than its footprint."""

    side: ClassVar[Side] = "face"
    """The side of the board that it is cut from; what goes through from either, as the edge does, is of both."""

    takes: ClassVar[bool] = True
    """Whether wood goes for it. A raised letter is there because a floor round it is cut, a tab because it is not."""

    is_outside: ClassVar[bool] = False
    """Whether it is cut from outside the sign's edge."""

    rim_mm: ClassVar[float] = CHECK_MM
    """How near to its outline the depth of a cell of the virtual board says nothing, because the wall is upright; 0
    where the surface begins at the face."""

    @classmethod
    def asked_of(cls, sign: SignAsked) -> Iterator[Self]:
        """Those that options of its own ask for; none of a kind that text, borders or patterns bring."""
        yield from ()

    @property
    def called(self) -> Sentence:
        """Its name in words."""
        if self.title is not None:
            return self.title
        key = self.name.replace(" ", "_")
        return Message(f"called.{key}") if has_words(f"called.{key}") else self.name

    @property
    def parts_called(self) -> Mapping[str, Sentence]:
        """What people call parts of it that are cut by themselves, by their names."""
        return {}

    @property
    def is_letter(self) -> bool:
        """Whether it is a letter of the text that was asked for."""
        return self.source == "text"

    @property
    def footprint(self) -> Area:
        """All that it takes or keeps of its side of the board, seen from above: valid, shells counter-clockwise."""
        raise NotImplementedError

    @property
    def core(self) -> tuple[BaseGeometry, float]:
        """A shape, and how far the footprint reaches round it: exact where the footprint's own rim is chords."""
        return self.footprint, 0.0

    def depths(self, points_mm: FloatArray) -> tuple[FloatArray, FloatArray]:
        """(n,) least and (n,) greatest depth of the finished surface at (n, 2) points in the footprint; nan where only
        the exact check of its kind can tell. What else lies there may be deeper."""
        raise NotImplementedError

    @classmethod
    def depths_of(
        cls, features: Sequence[Self], points_mm: FloatArray, owner: IntArray
    ) -> tuple[FloatArray, FloatArray]:
        """`depths` of several of its kind at once: point i lies in the footprint of features[owner[i]]; the owners of
        points ascend."""
        ends = np.searchsorted(owner, np.arange(len(features) + 1))
        found = [feature.depths(points_mm[a:b]) for feature, a, b in zip(features, ends[:-1], ends[1:], strict=True)]
        return np.concatenate([least for least, _ in found]), np.concatenate([most for _, most in found])

    def deepest_mm(self, tool: Tool) -> float:
        """How deep below the top a cutter's tip may go for its sake; 0 where that cutter has nothing to do with it,
        infinite where it may go as far as the spoilboard."""
        raise NotImplementedError

    def moved(self, motion: Motion) -> Self:
        """Itself after a motion of the plane."""
        raise NotImplementedError

    def facts(self) -> dict[str, Any]:
        """Its figures for the report, lengths in mm."""
        return {}

    @classmethod
    def messages(cls, own: Sequence[Self]) -> Iterator[Message]:
        """What the sheet says of all those of its kind on one sign; nothing of kinds that have passages of their
        own."""
        yield from ()

    @property
    def slack_ratio(self) -> float:
        """How much its depth may differ where it lies across the board by one millimetre from where it is drawn:
        1 / tan(angle / 2) of a sloping wall, 0 of an upright one."""
        return 0.0

    @property
    def deepest_floor_mm(self) -> float:
        """The depth of a flat floor on which ridges between a V-bit's lines may stand; infinite where there is none."""
        return math.inf

    def limit_mm(self, least_mm: float, across_mm: float) -> float:
        """How far in depth a cell may be from `depths`: at least so much, or what a tolerance across the board makes of
        a steep wall."""
        return max(least_mm, across_mm * self.slack_ratio)


def told(feature: Feature) -> dict[str, Any]:
    """A feature's entry in the report."""
    letter = {"text": feature.text} if feature.text else {}
    return {"kind": feature.kind, "name": feature.name, "source": feature.source, **letter, **feature.facts()}


def between(lengths_mm: Sequence[float]) -> Mm | Message:
    """'2 mm', or '2 to 3 mm' where they differ."""
    least, most = Mm(min(lengths_mm), 2, trim=True), Mm(max(lengths_mm), 2, trim=True)
    same = round(least.value, 2) == round(most.value, 2)
    return most if same else Message("range", least=Num(least.value, 2, trim=True), most=most)


def level(points_mm: FloatArray, depth_mm: float) -> FloatArray:
    """(n,) one depth everywhere, read-only."""
    return np.broadcast_to(np.float64(depth_mm), (len(points_mm),))


def slope_of(angle_deg: float) -> float:
    """How much wider a cone of that full angle gets with each millimetre up: tan(angle / 2)."""
    return math.tan(math.radians(angle_deg) / 2)
