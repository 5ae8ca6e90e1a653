"""Sizes, spaces and the place of a sign's lines, as a sign painter would choose them.

The line that is looked for first is made as large as the plate lets it be; the others follow in proportion and grow to
their own limits; what the user states holds, and the rest is composed round it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec import Struct
from msgspec.structs import replace

from signgen.composition.asked_lines import AskedLines
from signgen.composition.field import Field
from signgen.composition.fit import Points
from signgen.composition.laying import block_of, spaced_lines
from signgen.composition.proportions import (
    BREAK_BELOW_MM,
    BREAK_GAIN,
    HEIGHT_RATIO,
    LEAD_RATIO,
    LEAST_CAPITAL_MM,
    ROUND_MM,
)
from signgen.composition.setting import Setting, breaks, setting_of
from signgen.composition.standing import places_of
from signgen.lettering.layout import PlacedLine, stacked
from signgen.spec.roles import Role

SQUEEZES = (1.0, 0.85, 0.72)
"""How far the lines that follow are made smaller than usual, so that the one that leads gets more room."""

REST_WEIGHT = 0.65
"""What the sizes of the lines that follow count for beside that of the one that leads."""

WORTH_MOVING = 1.25
"""A block leaves its natural height when the line that leads grows by this factor."""

ROOM_RATIO = 0.01
"""For heights that are rounded down."""

SMALLEST_MM = 4.0
"""Capitals of a text that is too long for its plate at sizes that are chosen otherwise."""

FINE_RATIO = 0.004
"""How closely the greatest height is sought, over the height."""

SAME_MM = 1e-6


class Composed(Struct, frozen=True, kw_only=True):
    """`rows` as `block.stacked` has them, with the middle of the block at `middle_mm`. `moved`: the block does not
    stand at its natural height."""

    rows: tuple[PlacedLine, ...]
    middle_mm: tuple[float, float]
    moved: bool


def compose(asked: AskedLines, roles: Sequence[Role], field: Field) -> Composed | None:
    """The lines as they stand well on the plate; None when they do not at sizes that are worth having, or when a line
    has no room on its circle."""
    for least in (LEAST_CAPITAL_MM, SMALLEST_MM):
        whole = _best_of(setting_of(asked, roles, tuple((line.text,) for line in asked.lines), least), field)
        best = whole
        for parts in breaks(asked):
            found = _best_of(setting_of(asked, roles, parts, least), field)
            if found is not None and (best is None or _worth(found) > _worth(best)):
                best = found
        if whole is not None and best is not None and best is not whole and not _worth_breaking(whole, best):
            best = whole
        if best is not None:
            each = best.heights
            rows = stacked(spaced_lines(best.setting.rows, each), each)
            assert rows is not None, "it had room when it was tried"
            return Composed(rows=rows, middle_mm=best.middle_mm, moved=best.moved)
    return None


class _Found(Struct, frozen=True, kw_only=True):
    """`heights` of the lines; `lower_mm` as a block has it."""

    setting: Setting
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


def _best_of(setting: Setting, field: Field) -> _Found | None:
    """The best of a setting: where the line that leads is largest, with the others no smaller than they should be."""
    if field.free.is_empty:
        return None
    best: _Found | None = None
    for squeeze in SQUEEZES if len(setting.ratios) > 1 else SQUEEZES[:1]:
        at_home: _Found | None = None
        level = field.level
        for among in (level, field.middles):
            if at_home is not None and not _may_move(at_home, setting, field, squeeze):
                continue
            found = _largest(setting, field, squeeze, among)
            at_home = found if among is level else at_home
            if found is None:
                continue
            better = best is None or _worth(found) > _worth(best) + (
                math.log(WORTH_MOVING) if found.moved and not best.moved else 1e-9
            )
            if better:
                best = found
    return None if best is None else _grown(best, field)


def _may_move(at_home: _Found, setting: Setting, field: Field, squeeze: float) -> bool:
    """Whether a block that stands elsewhere may be larger by so much that moving it is worth it. All lines grow by one
    factor at the most, and what is too large at one size is at every larger one."""
    lead = max((h for h, row in zip(at_home.heights, setting.rows, strict=True) if row.group == 0), default=0.0)
    if not lead or any(row.group == 0 and row.fixed_mm is not None for row in setting.rows):
        return True
    least = lead * (WORTH_MOVING ** (1 / (1 + REST_WEIGHT)) - ROOM_RATIO)
    if least > LEAD_RATIO * field.height_mm * _capital_over_ink(setting):
        return False
    return _laid(setting, field, _heights(setting, field, least, squeeze), field.middles) is not None


def _largest(setting: Setting, field: Field, squeeze: float, among: Points) -> _Found | None:
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


def _capital_over_ink(setting: Setting) -> float:
    """Height of the capitals over that of the ink of the line that leads: text of small letters or figures alone has
    room for larger capitals than it shows."""
    ratios = []
    for row in setting.rows:
        box = row.measured.box_mm(100.0) if row.group == 0 else None
        if box is not None:
            ratios.append(100.0 / max(1.0, box[3]))
    return min(max(1.0, min(ratios, default=1.0)), 2.5)


def _heights(setting: Setting, field: Field, lead_mm: float, squeeze: float) -> list[float]:
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


def _laid(setting: Setting, field: Field, heights: Sequence[float], among: Points) -> _Found | None:
    """The lines at these heights of their groups, where they have room."""
    each = tuple(heights[row.group] if row.fixed_mm is None else row.fixed_mm for row in setting.rows)
    fitted = [height for height, row in zip(each, setting.rows, strict=True) if row.fixed_mm is None]
    if min(fitted, default=LEAST_CAPITAL_MM) < setting.least_mm - SAME_MM:
        return None
    block = block_of(setting, each)
    if block is None:
        return None
    inks = [ink for ink in block.inks if ink is not None]
    if not field.whole and fitted and inks:
        high = max(ink[3] for ink in inks) - min(ink[1] for ink in inks)
        if high > HEIGHT_RATIO * field.height_mm:
            return None
    lower = (0.0, block.lower_mm)
    left = field.places(block.inks, block.quads, 1.0 if field.whole else setting.width_ratio, among + lower)
    if block.placed:
        left = places_of(block.placed, field.room, left, field.sign_at_mm)
    if not len(left):
        return None
    x, y = left[0].tolist()
    natural = float(field.middles[0, 1]) + block.lower_mm
    return _Found(
        setting=setting,
        heights=each,
        middle_mm=(x, y),
        lower_mm=block.lower_mm,
        moved=abs(y - natural) > SAME_MM,
    )


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
