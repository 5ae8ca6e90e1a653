"""What an operation says: continuous runs of one cutter, without the travel between them."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.geometry.paths import FloatArray, Path, joined
from signgen.messages import Message, Sentence
from signgen.shop.tools import Tool
from signgen.toolpath.remarks import Remark

FAST = math.inf
"""Feed of a segment that leads through air or through what this very cut has taken away before: the machine may go as
fast as it can. Straight segments only."""

SAME_MM = 1e-6
"""Places nearer than this are one: a hundredth of the last written decimal."""

APPROACH_MM = 1.0
"""Above the stock's top, where a rapid down ends and the plunge feed begins (common practice: a board is never quite
flat)."""

ABOVE_CLEARED_MM = 0.5
"""Where the way down into a place that is cleared already slows down to the plunge feed."""

FREEING_STAGE = 90
"""Cuts of this stage set a piece free, but for its tabs: nothing else may be cut in it afterwards."""


Piece = tuple[Path, float | FloatArray] | tuple[Path, float | FloatArray, Message]
"""A part of a cut's way with its feed or a feed for each segment, and what is worth saying of it."""


class Cut(Struct, frozen=True, kw_only=True):
    """One continuous run of the cutter in the work, from where it enters to where it may lift straight up.

    `path` is the way of the cutter's tip (Z 0 = stock bottom). Its first point may lie in the material: the program
    goes there straight down, at the plunge feed, so only a cutter that can plunge may start below the stock's top (or
    below what an earlier cut left). `feeds_mm_per_min` (n,) one for each segment, FAST where nothing is in the way.
    `stage` orders cuts that depend on each other: all of a lower stage before any of a higher one. `two_way` when it
    may be walked from either end.

    `entering` (n,) says which segments only lead down into the work; None: those of an end mill that go down.
    `peck_mm`: the whole cut is a hole drilled in pecks of this depth, from its first point's height. `remarks`: what
    it does on the way, in order; of a cut that may be walked from either end only of the whole.
    """

    path: Path
    feeds_mm_per_min: FloatArray
    feature: str
    stage: int
    two_way: bool = False
    entering: NDArray[np.bool_] | None = None
    peck_mm: float | None = None
    remarks: tuple[Remark, ...] = ()

    def __post_init__(self) -> None:
        n = len(self.path)
        if len(self.feeds_mm_per_min) != n or (self.entering is not None and len(self.entering) != n):
            raise ValueError(f"{self.feature}: {n} segments and {len(self.feeds_mm_per_min)} feeds")
        if self.two_way and any(remark.at is not None for remark in self.remarks):
            raise ValueError(f"{self.feature}: a remark on the way of a cut that may be turned round")

    def under(self, feature: str) -> Cut:
        """The same cut for a feature of that name."""
        said = tuple(replace(remark, feature=feature) for remark in self.remarks)
        return replace(self, feature=feature, remarks=said)

    def enters(self, tool: Tool) -> NDArray[np.bool_]:
        """(n,) which segments only lead down into the work."""
        if self.entering is not None:
            return self.entering
        falls = np.diff(self.path.points_mm[:, 2]) < 0
        return falls if tool.kind in ("end-mill", "ball-nose") else np.zeros(len(falls), np.bool_)


class Strung(Struct, frozen=True, kw_only=True):
    """Pieces as one way: `feeds_mm_per_min` (n,) one for each segment, `remarks` (segment, what is said before it)."""

    path: Path
    feeds_mm_per_min: FloatArray
    remarks: tuple[tuple[int, Message], ...]

    def told(self, feature: str) -> tuple[Remark, ...]:
        return tuple(Remark(at=at, feature=feature, says=says) for at, says in self.remarks)


def strung(pieces: Sequence[Piece]) -> Strung:
    """Paths one after the other. Ends that differ by rounding alone are made one; others are joined by a straight line
    at the feed of the path that it leads to. Of a piece that goes nowhere nothing is said."""
    paths: list[Path] = []
    feeds: list[FloatArray] = []
    remarks: list[tuple[int, Message]] = []
    count = 0
    for piece in pieces:
        path, feed = piece[:2]
        if len(piece) == 3 and path.length_mm > SAME_MM:
            remarks.append((count, piece[2]))
        if paths:
            end, start = paths[-1].points_mm[-1], path.points_mm[0]
            if np.any(end != start) and np.abs(end - start).max() <= SAME_MM:
                points = path.points_mm.copy()
                points[0] = end
                path = Path(points_mm=points, kinds=path.kinds.copy(), centres_mm=path.centres_mm.copy())
            elif np.any(end != start):
                feeds.append(np.ravel(feed)[:1])
                count += 1
        paths.append(path)
        feeds.append(np.broadcast_to(feed, len(path)))
        count += len(path)
    return Strung(path=joined(paths), feeds_mm_per_min=np.concatenate(feeds), remarks=tuple(remarks))


class Toolpath(Struct, frozen=True, kw_only=True):
    """The cuts of one operation with one cutter, ordered."""

    operation: Sentence
    tool: Tool
    cuts: tuple[Cut, ...]
