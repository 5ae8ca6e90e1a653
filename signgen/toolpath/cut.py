"""What an operation says: continuous runs of one cutter, without the travel between them."""

from __future__ import annotations

from dataclasses import dataclass

from signgen.geometry.paths import FloatArray, Path
from signgen.shop.tools import Tool


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One continuous run of the cutter in the work, from where it enters to where it may lift straight up.

    `path` is the way of the cutter's tip (Z 0 = stock bottom). Its first point may lie in the material: the program
    goes there straight down, at the plunge feed, so only a cutter that can plunge may start below the stock's top (or
    below what an earlier cut left). `feeds_mm_per_min` (n,) one for each segment. `stage` orders cuts that depend on
    each other: all of a lower stage before any of a higher one. `closed` when the path may start anywhere on its loop
    (the order may use it), `two_way` when it may be walked from either end.
    """

    path: Path
    feeds_mm_per_min: FloatArray
    feature: str
    stage: int
    two_way: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Toolpath:
    """The cuts of one operation with one cutter, ordered."""

    operation: str
    tool: Tool
    cuts: tuple[Cut, ...]
