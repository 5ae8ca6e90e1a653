"""Sizes, spaces and the place of a sign's lines, as a sign painter would choose them.

The line that is looked for first is made as large as the plate lets it be; the others follow in proportion and grow to
their own limits; what the user states holds, and the rest is composed round it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from signgen.composition.asked_lines import AskedLines
from signgen.composition.field import Field
from signgen.composition.fit import Points
from signgen.composition.proportions import (
    BELOW_DESCENDER_RATIO,
    BREAK_BELOW_MM,
    BREAK_GAIN,
    CAPITALS_SPACING_RATIO,
    DESCENDER_WEIGHT,
    HEIGHT_RATIO,
    LEAD_RATIO,
    LEAST_CAPITAL_MM,
    ROUND_MM,
    SAME_GAP_RATIO,
    SHORT_LETTERS,
    SHORT_WIDTH_RATIO,
    SMALL_GAP_RATIO,
    WIDTH_RATIO,
    share_of,
)
from signgen.geometry.paths import FloatArray
from signgen.lettering.layout import Placed, stacked
from signgen.lettering.line import Line
from signgen.lettering.measure import Box, LineMeasure, measure_line
from signgen.lettering.wrap import words
from signgen.spec.roles import ROLES, Role

SQUEEZES = (1.0, 0.85, 0.72)
"""How far the lines that follow are made smaller than usual, so that the one that leads gets more room."""

REST_WEIGHT = 0.65
"""What the sizes of the lines that follow count for beside that of the one that leads."""

WORTH_MOVING = 1.12
"""A block leaves its natural height when the line that leads grows by this factor."""

SMALLEST_MM = 4.0
"""Capitals of a text that is too long for its plate at sizes that are chosen otherwise."""

MOST_PARTS = 3
"""A line is broken into so many at most."""

FINE_RATIO = 0.004
"""How closely the greatest height is sought, over the height."""

SAME_MM = 1e-6


class Composed(Struct, frozen=True, kw_only=True):
    """`rows` as `block.stacked` has them, with the middle of the block at `middle_mm`. `moved`: the block does not
    stand at its natural height."""

    rows: tuple[Placed, ...]
    middle_mm: tuple[float, float]
    moved: bool


class _Row(Struct, frozen=True, kw_only=True):
    """A line, or a part of one that was broken. `group`: lines of one size share it, that which leads is group 0.
    `fixed_mm`: the height that was stated."""

    line: Line
    measured: LineMeasure
    group: int
    fixed_mm: float | None
    spaced: float
    """Letter spacing over the height; the line's own is stated in millimetres where this is 0."""
    gap_open: bool
    """Whether nobody stated the spacing from the line above."""

    unit: Box | None
    """Its ink at a height of 1 mm; None where it does not grow evenly with its height, or shows nothing."""

    def ink_mm(self, height_mm: float) -> Box | None:
        """Its ink set straight from (0, 0)."""
        if self.unit is None:
            return self.at(height_mm, 1.0).box_mm(height_mm)
        x0, y0, x1, y1 = self.unit
        return x0 * height_mm, y0 * height_mm, x1 * height_mm, y1 * height_mm

    def at(self, height_mm: float, line_spacing: float) -> LineMeasure:
        spacing = self.spaced * height_mm if self.spaced else self.line.letter_spacing_mm
        return replace(self.measured, line=replace(self.line, letter_spacing_mm=spacing, line_spacing=line_spacing))


class _Setting(Struct, frozen=True, kw_only=True):
    """Lines in their parts, before they have heights. `ratios[g]`: (least, usual, most) of group g over the lead."""

    rows: tuple[_Row, ...]
    ratios: tuple[tuple[float, float, float], ...]
    width_ratio: float
    least_mm: float


def compose(asked: AskedLines, roles: Sequence[Role], field: Field) -> Composed | None:
    """The lines as they stand well on the plate; None when they do not at sizes that are worth having, or when a line
    has no room on its circle."""
    for least in (LEAST_CAPITAL_MM, SMALLEST_MM):
        whole = _best_of(_setting(asked, roles, tuple((line.text,) for line in asked.lines), least), field)
        best = whole
        for parts in _breaks(asked, whole):
            found = _best_of(_setting(asked, roles, parts, least), field)
            if found is not None and (best is None or _worth(found) > _worth(best)):
                best = found
        if whole is not None and best is not None and best is not whole and not _worth_breaking(whole, best):
            best = whole
        if best is not None:
            each = best.heights
            rows = stacked(_spaced(best.setting.rows, each), each)
            assert rows is not None, "it had room when it was tried"
            return Composed(rows=rows, middle_mm=best.middle_mm, moved=best.moved)
    return None


class _Found(Struct, frozen=True, kw_only=True):
    """`heights` of the lines; `lower_mm` as a block has it."""

    setting: _Setting
    heights: tuple[float, ...]
    middle_mm: tuple[float, float]
    lower_mm: float
    moved: bool


def _worth(found: _Found) -> float:
    """How well it can be read: the leading line counts for more than all others together."""
    lead = [h for h, row in zip(found.heights, found.setting.rows, strict=True) if row.group == 0]
    rest = {row.group: h for h, row in zip(found.heights, found.setting.rows, strict=True) if row.group}
    return (
        math.log(lead[0] if lead else 1.0)
        + (sum(map(math.log, rest.values())) / len(rest) if rest else 0.0) * REST_WEIGHT
    )


def _worth_breaking(whole: _Found, broken: _Found) -> bool:
    gain = math.exp(_worth(broken) - _worth(whole))
    small = min(whole.heights) < BREAK_BELOW_MM and min(broken.heights) > min(whole.heights)
    return gain >= BREAK_GAIN or (small and gain > 1.0)


def _breaks(asked: AskedLines, whole: _Found | None) -> Iterator[tuple[tuple[str, ...], ...]]:
    """Ways to break one line that may gain by it, each line's parts."""
    if asked.text.wrap_mm is not None:
        return
    for i, line in enumerate(asked.lines):
        if line.arc is not None or asked.heights_mm[i] is not None:
            continue
        parts = words(line.text)
        for count in range(2, min(MOST_PARTS, len(parts)) + 1):
            broken = _balanced(line, parts, count)
            yield tuple(broken if i == j else (other.text,) for j, other in enumerate(asked.lines))


def _balanced(line: Line, parts: Sequence[str], count: int) -> tuple[str, ...]:
    """The words in so many lines whose widths differ least."""

    def spread(cuts: tuple[int, ...]) -> float:
        ends = (0, *cuts, len(parts))
        wide = [
            measure_line(replace(line, text=" ".join(parts[a:b]))).width_mm(10.0) for a, b in itertools.pairwise(ends)
        ]
        return max(wide) - min(wide) + max(wide)

    cuts = min(itertools.combinations(range(1, len(parts)), count - 1), key=spread)
    ends = (0, *cuts, len(parts))
    return tuple(" ".join(parts[a:b]) for a, b in itertools.pairwise(ends))


def _setting(asked: AskedLines, roles: Sequence[Role], parts: Sequence[Sequence[str]], least_mm: float) -> _Setting:
    lead = next(role for role in ROLES if role in roles)
    groups: dict[str, int] = {}
    ratios: list[tuple[float, float, float]] = [(1.0, 1.0, 1.0)]
    rows: list[_Row] = []
    for i, line in enumerate(asked.lines):
        own = asked.text.rows[i].height_ratio
        on_sign = line.arc is not None and line.arc.about_sign
        if own != 1:
            key, share = f"{own}", (own, own, own)
        elif roles[i] == lead or (on_sign and any(row.group == 0 and row.line.arc for row in rows)):
            key, share = "lead", (1.0, 1.0, 1.0)
        else:
            found = share_of(roles[i], lead)
            key, share = roles[i], (found.least, found.usual, found.most)
        if key == "lead":
            group = 0
        elif key in groups:
            group = groups[key]
        else:
            group = groups[key] = len(ratios)
            ratios.append(share)
        for part in parts[i]:
            text = replace(line, text=part)
            capitals = part.isupper() and sum(each.isalpha() for each in part) > 1
            spaced = CAPITALS_SPACING_RATIO if capitals and asked.text.rows[i].letter_spacing_mm is None else 0.0
            measured = measure_line(replace(text, letter_spacing_mm=spaced) if spaced else text)
            even = not text.pen_mm and (bool(spaced) or not text.letter_spacing_mm)
            rows.append(
                _Row(
                    line=text,
                    measured=measured,
                    unit=measured.box_mm(1.0) if even else None,
                    group=group,
                    fixed_mm=asked.heights_mm[i],
                    spaced=spaced,
                    gap_open=asked.text.rows[i].line_spacing is None,
                )
            )
    shown = [row for row in rows if row.measured.shows]
    single = len(shown) == 1 and len(shown[0].line.text.strip()) <= SHORT_LETTERS
    return _Setting(
        rows=tuple(rows),
        ratios=tuple(ratios),
        width_ratio=SHORT_WIDTH_RATIO if single else WIDTH_RATIO,
        least_mm=least_mm,
    )


def _best_of(setting: _Setting, field: Field) -> _Found | None:
    """The best of a setting: where the line that leads is largest, with the others no smaller than they should be."""
    if field.free.is_empty:
        return None
    natural = field.middles[:1]
    best: _Found | None = None
    for squeeze in SQUEEZES if len(setting.ratios) > 1 else SQUEEZES[:1]:
        for among in (natural, field.middles):
            found = _largest(setting, field, squeeze, among)
            if found is None:
                continue
            better = best is None or _worth(found) > _worth(best) + (
                math.log(WORTH_MOVING) if found.moved and not best.moved else 1e-9
            )
            if better:
                best = found
            if len(field.middles) == 1:
                break
    return None if best is None else _grown(best, field)


def _largest(setting: _Setting, field: Field, squeeze: float, among: Points) -> _Found | None:
    """The greatest lead, by halving, with the other groups at their usual size times `squeeze`."""
    stated = [row.fixed_mm for row in setting.rows if row.group == 0 and row.fixed_mm is not None]
    if stated:
        return _laid(setting, field, _heights(setting, field, max(stated), squeeze), among)
    low, high = setting.least_mm, LEAD_RATIO * field.height_mm * _capital_over_ink(setting)
    found = None
    if low > high:
        return None
    fits = _laid(setting, field, _heights(setting, field, high, squeeze), among)
    if fits is not None:
        return fits
    found = _laid(setting, field, _heights(setting, field, low, squeeze), among)
    if found is None:
        return None
    while high - low > max(ROUND_MM, FINE_RATIO * low):
        middle = (low + high) / 2
        fits = _laid(setting, field, _heights(setting, field, middle, squeeze), among)
        if fits is None:
            high = middle
        else:
            low, found = middle, fits
    return found


def _capital_over_ink(setting: _Setting) -> float:
    """Height of the capitals over that of the ink of the line that leads: text of small letters or figures alone has
    room for larger capitals than it shows."""
    ratios = []
    for row in setting.rows:
        box = row.measured.box_mm(100.0) if row.group == 0 else None
        if box is not None:
            ratios.append(100.0 / max(1.0, box[3]))
    return min(max(1.0, min(ratios, default=1.0)), 2.5)


def _heights(setting: _Setting, field: Field, lead_mm: float, squeeze: float) -> list[float]:
    """The height of each group: its part of the lead, less where its widest line would be too wide for the plate."""
    heights = []
    for group, (least, usual, most) in enumerate(setting.ratios):
        wanted = lead_mm * min(most, usual * squeeze if most > least else usual)
        if group and most > least:
            wanted = max(wanted, setting.least_mm)
            for row in setting.rows:
                if row.group == group and row.line.arc is None and row.fixed_mm is None:
                    ink = row.ink_mm(wanted)
                    if ink is not None:
                        wanted = min(wanted, setting.width_ratio * field.width_mm / (ink[2] - ink[0]) * wanted)
        heights.append(_down(wanted))
    return heights


def _down(height: float) -> float:
    return round(math.floor(height / ROUND_MM + 1e-6) * ROUND_MM, 2)


def _laid(setting: _Setting, field: Field, heights: Sequence[float], among: Points) -> _Found | None:
    """The lines at these heights of their groups, where they have room."""
    each = tuple(heights[row.group] if row.fixed_mm is None else row.fixed_mm for row in setting.rows)
    fitted = [height for height, row in zip(each, setting.rows, strict=True) if row.fixed_mm is None]
    if min(fitted, default=LEAST_CAPITAL_MM) < setting.least_mm - SAME_MM:
        return None
    block = _block(setting, each)
    if block is None:
        return None
    inks = [ink for ink in block.inks if ink is not None]
    if not field.whole and fitted and inks:
        high = max(ink[3] for ink in inks) - min(ink[1] for ink in inks)
        if high > HEIGHT_RATIO * field.height_mm:
            return None
    lower = (0.0, block.lower_mm)
    left = field.places(block.inks, block.quads, 1.0 if field.whole else setting.width_ratio, among + lower)
    if not len(left):
        return None
    x, y = left[0].tolist()
    natural = field.middles[0] + lower
    return _Found(
        setting=setting,
        heights=each,
        middle_mm=(x, y),
        lower_mm=block.lower_mm,
        moved=math.hypot(x - natural[0], y - natural[1]) > SAME_MM,
    )


class _Block(Struct, frozen=True):
    """Where the ink of each line lies about the block's middle: boxes of straight ones, turned boxes of those on a
    circle that goes with the block. `lower_mm`: how far below its ink's middle that of the block is to be set, since
    descenders do not weigh what they measure (as a number that is added to Y)."""

    inks: tuple[Box | None, ...]
    quads: tuple[FloatArray, ...]
    lower_mm: float


def _block(setting: _Setting, each: Sequence[float]) -> _Block | None:
    """None when a line has no room on its circle."""
    if any(row.line.arc is not None for row in setting.rows):
        placed = stacked(_spaced(setting.rows, each), each)
        if placed is None:
            return None
        flat = [row for row in placed if not row.about_sign]
        inks = tuple(row.box_mm for row in flat)
        quads = tuple(row.quads_mm for row in flat if row.quads_mm is not None)
        feet = [row.baseline_mm for row in flat if row.box_mm is not None]
        return _Block(inks, quads, _lower_mm(inks, feet))
    boxes: list[Box | None] = []
    feet = []
    baseline = 0.0
    for row, height, gap in zip(setting.rows, each, _gaps(setting.rows, each), strict=True):
        baseline -= gap + (height if boxes else 0.0)
        ink = row.ink_mm(height)
        if ink is None:
            boxes.append(None)
            continue
        half = (ink[2] - ink[0]) / 2
        boxes.append((-half, ink[1] + baseline, half, ink[3] + baseline))
        feet.append(baseline)
    shown = [box for box in boxes if box is not None]
    if not shown:
        return None
    middle = (min(box[1] for box in shown) + max(box[3] for box in shown)) / 2
    inks = tuple(None if box is None else (box[0], box[1] - middle, box[2], box[3] - middle) for box in boxes)
    return _Block(inks, (), _lower_mm(inks, [foot - middle for foot in feet]))


def _lower_mm(inks: Sequence[Box | None], feet: Sequence[float]) -> float:
    shown = [ink[1] for ink in inks if ink is not None]
    if not shown or not feet:
        return 0.0
    return -(1 - DESCENDER_WEIGHT) * max(0.0, min(feet) - min(shown)) / 2


def _gaps(rows: Sequence[_Row], heights: Sequence[float]) -> Iterator[float]:
    """From the feet of the line above to the heads of the capitals of each line; 0 for the first."""
    above: tuple[_Row, float] | None = None
    for row, height in zip(rows, heights, strict=True):
        if above is None:
            yield 0.0
        elif not row.gap_open:
            yield (row.line.line_spacing - 1) * (above[1] + height) / 2
        else:
            last, last_height = above
            small = min(height, last_height)
            gap = (SAME_GAP_RATIO if last.group == row.group else SMALL_GAP_RATIO) * small
            ink = last.ink_mm(last_height) if last.line.arc is None else None
            yield gap if ink is None else max(gap, -ink[1] + BELOW_DESCENDER_RATIO * small)
        above = (row, height)


def _spaced(rows: Sequence[_Row], heights: Sequence[float]) -> list[LineMeasure]:
    """The lines with the spacing above each that makes their gaps."""
    lines: list[LineMeasure] = []
    above = 0.0
    for row, height, gap in zip(rows, heights, _gaps(rows, heights), strict=True):
        lines.append(row.at(height, 1 + 2 * gap / (above + height) if lines else row.line.line_spacing))
        above = height
    return lines


def _grown(found: _Found, field: Field) -> _Found:
    """The lines that follow made as large as their own limits let them be, the one that leads as it is."""
    setting = found.setting
    heights = [0.0] * len(setting.ratios)
    for row, height in zip(setting.rows, found.heights, strict=True):
        heights[row.group] = height
    lead = heights[0]
    among = np.array([found.middle_mm]) - (0.0, found.lower_mm)
    for group, (least, _, most) in enumerate(setting.ratios):
        if not group or most <= least or not heights[group]:
            continue
        low, high = heights[group], max(most * lead, heights[group])
        while high - low > max(ROUND_MM, FINE_RATIO * low):
            tried = list(heights)
            tried[group] = _down((low + high) / 2)
            fits = _laid(setting, field, tried, among)
            if fits is None:
                high = (low + high) / 2
            else:
                low, found, heights = (low + high) / 2, replace(fits, moved=found.moved), tried
    return found
