"""Rectangles laid on sheets: as few sheets as can be found, a gap between each two, quarter turns where allowed.

Source: the free space is kept as all its greatest rectangles, and each new rectangle goes where its shorter side leaves
the least room over (J. Jylänki, "A Thousand Ways to Pack the Bin", 2010: maximal rectangles, best short side fit).
Which order is best differs from list to list, so several are tried, and the best result wins.
"""

from __future__ import annotations

import math
import random
from collections.abc import Callable, Iterator, Sequence

from msgspec import Struct

Size = tuple[float, float]
Free = tuple[float, float, float, float]
"""x0, y0, x1, y1 of a greatest free rectangle; they overlap each other."""

Shape = tuple[float, float, bool]
"""How a rectangle lies: its extent along X and Y, and whether it is turned."""

EPSILON_MM = 1e-7
"""Sizes that are sums of decimals must not miss a place that they fill exactly."""

EFFORT, MOST_TRIES = 60_000, 400
"""Small changes tried: so many that a list of fifty and one of five hundred take about the same time."""


class PlacedBox(Struct, frozen=True, kw_only=True):
    """Where a rectangle lies: `sheet` from 0; (x, y) its bottom-left corner on the sheet's usable area; `turned` by a
    quarter, so that its height lies along X."""

    sheet: int
    x_mm: float
    y_mm: float
    turned: bool


def nest(sizes_mm: Sequence[Size], sheet_mm: Size, gap_mm: float, may_turn: Sequence[bool]) -> tuple[PlacedBox, ...]:
    """A place for each rectangle, in the order given. `sheet_mm` is the usable area: rectangles may touch its rim, and
    lie `gap_mm` or more from each other. The same input gives the same places.

    Raises: ValueError when a rectangle is larger than a sheet; see `fits`.
    """
    if not all(fits(size, sheet_mm, turn) for size, turn in zip(sizes_mm, may_turn, strict=True)):
        raise ValueError("a rectangle is larger than a sheet")
    if not sizes_mm:
        return ()
    # With the gap added on the right and above, rectangles may touch each other, and the sheet is as much larger.
    job = _Job(
        [(width + gap_mm, height + gap_mm) for width, height in sizes_mm],
        (sheet_mm[0] + gap_mm, sheet_mm[1] + gap_mm),
        list(may_turn),
    )
    best = min((job.laid(order, prefer) for order, prefer in job.orders()), key=lambda laid: laid.rank)
    # Then small changes of the best order, kept when they do no harm.
    dice = random.Random(len(sizes_mm))
    tries = 0 if len(set(sizes_mm)) < 2 else min(MOST_TRIES, EFFORT // len(sizes_mm))
    for _ in range(tries):
        order = best.order.copy()
        for _ in range(dice.randint(1, 3)):
            order.insert(dice.randrange(len(order)), order.pop(dice.randrange(len(order))))
        tried = job.laid(order, best.prefer)
        if tried.rank <= best.rank:
            best = tried
    return best.places


def fits(size_mm: Size, sheet_mm: Size, may_turn: bool) -> bool:
    """Whether a rectangle fits an empty sheet."""
    upright = size_mm[0] <= sheet_mm[0] + EPSILON_MM and size_mm[1] <= sheet_mm[1] + EPSILON_MM
    lying = size_mm[1] <= sheet_mm[0] + EPSILON_MM and size_mm[0] <= sheet_mm[1] + EPSILON_MM
    return upright or (may_turn and lying)


class _Laid(Struct, frozen=True):
    """A layout, and how good it is: fewer sheets first, then as little as possible used of the last, in area and in
    bounds, so that the offcut is large and whole."""

    order: list[int]
    prefer: bool | None
    places: tuple[PlacedBox, ...]
    rank: tuple[float, float, float]


class _Job:
    """Sizes and room, both with the gap added."""

    def __init__(self, sizes: list[Size], room: Size, may_turn: list[bool]) -> None:
        self.sizes, self.room, self.may_turn = sizes, room, may_turn
        self.thinnest = min(map(min, sizes)) - EPSILON_MM

    def orders(self) -> Iterator[tuple[list[int], bool | None]]:
        """Orders that are usually good, each with how to turn: as fits best (None), or all lying (False) or upright
        (True) where they may."""
        keys: tuple[Callable[[Size], tuple[float, ...]], ...] = (
            lambda s: (min(s), max(s)),
            lambda s: (max(s), min(s)),
            lambda s: (s[0] * s[1],),
            lambda s: (s[0] + s[1],),
            lambda s: (s[1], s[0]),
            lambda s: (s[0], s[1]),
        )
        seen: list[list[int]] = []
        for key in keys:
            descending = [(*(-value for value in key(size)), i) for i, size in enumerate(self.sizes)]
            order = sorted(range(len(self.sizes)), key=descending.__getitem__)
            if order in seen:
                continue
            seen.append(order)
            for prefer in (None, False, True) if any(self.may_turn) else (None,):
                yield order, prefer

    def laid(self, order: list[int], prefer: bool | None) -> _Laid:
        """Each rectangle in turn where it fits best; a new sheet when it fits nowhere."""
        sheets: list[list[Free]] = []
        places: dict[int, PlacedBox] = {}
        for i in order:
            shapes = self._shapes(i, prefer)
            found = _best_place(sheets, shapes)
            if found is None:
                sheets.append([(0.0, 0.0, *self.room)])
                found = _best_place(sheets[-1:], shapes)
                assert found is not None
                found = (len(sheets) - 1, *found[1:])
            sheet, x, y, (width, height, turned) = found
            left = _without(sheets[sheet], (x, y, x + width, y + height))
            thin = self.thinnest
            sheets[sheet] = [free for free in left if free[2] - free[0] >= thin and free[3] - free[1] >= thin]
            places[i] = PlacedBox(sheet=sheet, x_mm=x, y_mm=y, turned=turned)
        return _Laid(order, prefer, tuple(places[i] for i in range(len(self.sizes))), self._rank(places, len(sheets)))

    def _shapes(self, i: int, prefer: bool | None) -> list[Shape]:
        """How a rectangle may lie."""
        width, height = self.sizes[i]
        plain, turned = (width, height, False), (height, width, True)
        if not self.may_turn[i] or width == height:
            return [plain]
        if prefer is None:
            return [plain, turned]
        wanted = plain if (height > width) == prefer else turned
        inside = wanted[0] <= self.room[0] + EPSILON_MM and wanted[1] <= self.room[1] + EPSILON_MM
        return [wanted] if inside else [plain, turned]

    def _rank(self, places: dict[int, PlacedBox], sheets: int) -> tuple[float, float, float]:
        area = right = top = 0.0
        for i, place in places.items():
            if place.sheet == sheets - 1:
                width, height = self.sizes[i][::-1] if place.turned else self.sizes[i]
                area += width * height
                right, top = max(right, place.x_mm + width), max(top, place.y_mm + height)
        return float(sheets), round(area, 3), round(right * top, 3)


def _best_place(sheets: Sequence[list[Free]], shapes: Sequence[Shape]) -> tuple[int, float, float, Shape] | None:
    """(sheet, x, y, shape) that leaves the least room over beside the shape's tighter side."""
    best: tuple[int, float, float, Shape] | None = None
    least = least_other = math.inf
    for number, frees in enumerate(sheets):
        for shape in shapes:
            width, height = shape[0] - EPSILON_MM, shape[1] - EPSILON_MM
            for x0, y0, x1, y1 in frees:
                over_x, over_y = x1 - x0 - width, y1 - y0 - height
                if over_x < 0 or over_y < 0:
                    continue
                tight, other = (over_x, over_y) if over_x < over_y else (over_y, over_x)
                if tight < least or (tight == least and other < least_other):
                    least, least_other = tight, other
                    best = (number, x0, y0, shape)
    return best


def _without(frees: list[Free], used: Free) -> list[Free]:
    """The greatest free rectangles that are left when one place is used."""
    ux0, uy0, ux1, uy1 = used
    kept: list[Free] = []
    cut: list[Free] = []
    for free in frees:
        x0, y0, x1, y1 = free
        if ux0 >= x1 - EPSILON_MM or ux1 <= x0 + EPSILON_MM or uy0 >= y1 - EPSILON_MM or uy1 <= y0 + EPSILON_MM:
            kept.append(free)
            continue
        if ux0 > x0 + EPSILON_MM:
            cut.append((x0, y0, ux0, y1))
        if ux1 < x1 - EPSILON_MM:
            cut.append((ux1, y0, x1, y1))
        if uy0 > y0 + EPSILON_MM:
            cut.append((x0, y0, x1, uy0))
        if uy1 < y1 - EPSILON_MM:
            cut.append((x0, uy1, x1, y1))
    # What was free before is in nothing that was cut: only the new pieces may lie in another.
    fresh: list[Free] = []
    for i, a in enumerate(cut):
        inside = any(_within(a, b) for b in kept) or any(
            _within(a, b) and (j < i or not _within(b, a)) for j, b in enumerate(cut) if j != i
        )
        if not inside:
            fresh.append(a)
    return kept + fresh


def _within(a: Free, b: Free) -> bool:
    return a[0] >= b[0] and a[1] >= b[1] and a[2] <= b[2] and a[3] <= b[3]
