"""A text as rows that may be set: broken or whole, each with its group of one size."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from signgen.composition.asked_lines import AskedLines
from signgen.composition.proportions import (
    CAPITALS_SPACING_RATIO,
    SHORT_LETTERS,
    SHORT_WIDTH_RATIO,
    WIDTH_RATIO,
    share_of,
)
from signgen.lettering.line import SetLine
from signgen.lettering.measure import Box, LineMeasure, measure_line
from signgen.lettering.wrap import words
from signgen.spec.roles import ROLES, Role

MOST_PARTS = 3
"""A line is broken into so many at most."""


class SetRow(Struct, frozen=True, kw_only=True):
    """A line, or a part of one that was broken. `group`: lines of one size share it, that which leads is group 0.
    `fixed_mm`: the height that was stated."""

    line: SetLine
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


class Setting(Struct, frozen=True, kw_only=True):
    """Lines in their parts, before they have heights. `ratios[g]`: (least, usual, most) of group g over the lead."""

    rows: tuple[SetRow, ...]
    ratios: tuple[tuple[float, float, float], ...]
    width_ratio: float
    least_mm: float


def setting_of(asked: AskedLines, roles: Sequence[Role], parts: Sequence[Sequence[str]], least_mm: float) -> Setting:
    lead = next(role for role in ROLES if role in roles)
    groups: dict[str, int] = {}
    ratios: list[tuple[float, float, float]] = [(1.0, 1.0, 1.0)]
    rows: list[SetRow] = []
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
                SetRow(
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
    return Setting(
        rows=tuple(rows),
        ratios=tuple(ratios),
        width_ratio=SHORT_WIDTH_RATIO if single else WIDTH_RATIO,
        least_mm=least_mm,
    )


def breaks(asked: AskedLines) -> Iterator[tuple[tuple[str, ...], ...]]:
    """Ways to break one line that may gain by it, each line's parts."""
    if asked.text.wrap_mm is not None:
        return
    for i, line in enumerate(asked.lines):
        figures_only = not any(character.isalpha() for character in line.text)  # a telephone number stays whole
        if line.arc is not None or asked.heights_mm[i] is not None or figures_only:
            continue
        parts = words(line.text)
        for count in range(2, min(MOST_PARTS, len(parts)) + 1):
            broken = _balanced(line, parts, count)
            yield tuple(broken if i == j else (other.text,) for j, other in enumerate(asked.lines))


def _balanced(line: SetLine, parts: Sequence[str], count: int) -> tuple[str, ...]:
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
