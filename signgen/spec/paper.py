"""The drilling template's paper: its sizes, and how many sheets a sign takes at full size."""

from __future__ import annotations

import math

from msgspec import Struct

from signgen.borders import Border
from signgen.holes import HolePattern
from signgen.messages import Message, Sides
from signgen.spec.asked import Asked
from signgen.spec.keys.papers import NO_TEMPLATE

PAPERS_MM = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Upright. Sources: ISO 216 for A4; ANSI/ASME Y14.1 size A, 8 1/2 by 11 in, for letter."""

EDGE_MM = 10.0
"""What printers may leave blank along each side (common practice: they print up to 4 to 6 mm from it)."""
STRIP_MM, BAR_MM = 24.0, 9.0
"""Above what is drawn: the words and a check bar; left of it: the other check bar."""
OVERLAP_MM = 14.0
"""Of neighbouring sheets: room for a registration mark and for tape."""
AROUND_MM = 6.0
"""Drawn round the sign at the least."""
MOST_SHEETS = 40
"""More would be pasted with more error than a tape measure has (common sense; 40 sheets of A4 are 2 m by 1.2 m)."""


class Tiling(Struct, frozen=True, kw_only=True):
    """Sheets of `width_mm` x `height_mm` as they lie, `across` by `up` of them, each with a window of the sign.

    Windows overlap by OVERLAP_MM, and all of them together lie evenly round the sign.
    """

    width_mm: float
    height_mm: float
    across: int
    up: int
    sign_width_mm: float
    sign_height_mm: float

    @property
    def window_mm(self) -> tuple[float, float]:
        """Width and height of what a sheet shows of the sign."""
        return self.width_mm - 2 * EDGE_MM - BAR_MM, self.height_mm - 2 * EDGE_MM - STRIP_MM

    def window_of(self, column: int, row: int) -> tuple[float, float, float, float]:
        """(low x, low y, high x, high y) in sign coordinates; columns count from the left, rows from below, from 0."""
        wide, high = self.window_mm
        x = _start(self.sign_width_mm, wide, self.across) + column * (wide - OVERLAP_MM)
        y = _start(self.sign_height_mm, high, self.up) + row * (high - OVERLAP_MM)
        return x, y, x + wide, y + high

    def seams_mm(self) -> tuple[tuple[float, ...], tuple[float, ...]]:
        """X of the upright seams and Y of the level ones: the middles of the overlaps."""
        right = [self.window_of(column, 0)[2] - OVERLAP_MM / 2 for column in range(self.across - 1)]
        above = [self.window_of(0, row)[3] - OVERLAP_MM / 2 for row in range(self.up - 1)]
        return tuple(right), tuple(above)


def tiling(width_mm: float, height_mm: float, paper: str) -> Tiling:
    """The fewest sheets that show a sign at full size, upright or lying; upright when both need as many."""
    short, long = PAPERS_MM[paper]
    both = [_tiled(width_mm, height_mm, short, long), _tiled(width_mm, height_mm, long, short)]
    return min(both, key=lambda tiles: tiles.across * tiles.up)


def template_of(a: Asked, size_mm: tuple[float, float] | None, border: Border | None, holes: HolePattern | None) -> str:
    """The template's paper, or NO_TEMPLATE; a problem when there is nothing to mark or it takes too many sheets."""
    paper = a.text("template") or NO_TEMPLATE
    if paper == NO_TEMPLATE or size_mm is None or border is None or holes is None:
        return paper
    if not holes.centres(*size_mm) and not border.eyes(*size_mm):
        a.wrong("template", Message("spec.sign_no_holes_mark"), Message("spec.give_holes_too_leave_out"))
    tiles = tiling(*size_mm, paper)
    if tiles.across * tiles.up > MOST_SHEETS:
        what = Message(
            "spec.sign_x_takes_sheets_full",
            size=Sides(size_mm),
            count=tiles.across * tiles.up,
            most=MOST_SHEETS,
        )
        a.cannot("template", what, Message("spec.leave_out_measure_holes_setup"))
    return paper


def _tiled(width_mm: float, height_mm: float, across_mm: float, up_mm: float) -> Tiling:
    one = Tiling(
        width_mm=across_mm, height_mm=up_mm, across=1, up=1, sign_width_mm=width_mm, sign_height_mm=height_mm
    )  # fmt: skip
    wide, high = one.window_mm
    return Tiling(
        width_mm=across_mm, height_mm=up_mm, across=_count(width_mm, wide), up=_count(height_mm, high),
        sign_width_mm=width_mm, sign_height_mm=height_mm,
    )  # fmt: skip


def _count(length_mm: float, window_mm: float) -> int:
    whole = length_mm + 2 * AROUND_MM
    return max(1, math.ceil((whole - OVERLAP_MM) / (window_mm - OVERLAP_MM) - 1e-9))


def _start(length_mm: float, window_mm: float, count: int) -> float:
    """Where the first window begins, so that all together lie evenly round the sign."""
    return (length_mm - count * window_mm + (count - 1) * OVERLAP_MM) / 2
