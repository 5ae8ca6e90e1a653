"""How the lettering of a drawing reads by published rules, each by its name. Facts to weigh, never a claim that a sign
complies with anything: that is for the law where it will hang, and for who watches over it."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from msgspec import Struct

from signgen.drawing.drawn_line import DrawnLine
from signgen.messages import Message, Mm
from signgen.shop.legibility import DistanceRule, NumberRule, Proportion, RangeRule, reading_rules

_HOUSE_NUMBER = re.compile(
    r"(?:(?:no|nr)\.?\s*|[#№]\s*)?\d{1,5}(?P<letter>\s?[a-z])?(?:\s?[-–/+]\s?\d{1,5}(?:\s?[a-z])?)*(?![\w.,])(?:\s+\D+)?",
    re.IGNORECASE,
)
"""A number that stands alone or before the name of a street: 17, 17A, No. 17, 17-19, 17 Larkspur Lane."""


class Proportioned(Struct, frozen=True, kw_only=True):
    """A proportion of a line beside what a rule gives for it."""

    rule: RangeRule
    ratio: float

    @property
    def is_within(self) -> bool:
        return self.rule.least <= self.ratio <= self.rule.most


class Reading(Struct, frozen=True, kw_only=True):
    """How one line reads: the distance in metres by each rule, from the nearest to the furthest."""

    line: DrawnLine
    distances_m: tuple[tuple[DistanceRule, float], ...]
    proportions: tuple[Proportioned, ...]


class HouseNumber(Struct, frozen=True, kw_only=True):
    """A line that looks like a house number, and what rules ask for in places that have them."""

    line: DrawnLine
    figures_mm: float
    rules: tuple[NumberRule, ...]

    @property
    def note(self) -> Message:
        """One sentence or two for who puts the number up."""
        first = self.rules[0]
        asked = _figures(Mm(first.height_mm, 0), first.stroke_mm)
        here = _figures(Mm(self.figures_mm, 1, trim=True), self.line.stroke_mm)
        return Message(
            "drawing.fire_code_force_where_you", asked=asked, rule=first.rule, text=self.line.text, here=here
        )


def _figures(height: Mm, stroke_mm: float | None) -> Message | Mm:
    """Their height, and the width of their strokes where it is known."""
    if stroke_mm is None:
        return height
    return Message("drawing.with_strokes_of", height=height, stroke=Mm(stroke_mm, 1, trim=True))


def readings(lines: Sequence[DrawnLine]) -> tuple[Reading, ...]:
    """Every line by every rule."""
    rules = reading_rules()
    found = []
    for line in lines:
        distances = [(rule, rule.distance_m(line.letter_height_mm)) for rule in rules.distances]
        found.append(
            Reading(
                line=line,
                distances_m=tuple(sorted(distances, key=lambda each: each[1])),
                proportions=tuple(_proportions(line, rules.ranges)),
            )
        )
    return tuple(found)


def house_numbers(lines: Sequence[DrawnLine]) -> tuple[HouseNumber, ...]:
    """Lines that look like house numbers; usually one, or none."""
    found = []
    for line in lines:
        number = _HOUSE_NUMBER.fullmatch(line.text.strip())
        if number is None:
            continue
        heights = [line.digit_height_mm or line.cap_height_mm]
        if number["letter"]:
            heights.append(line.cap_height_mm)
        found.append(HouseNumber(line=line, figures_mm=min(heights), rules=reading_rules().house_numbers))
    return tuple(found)


def ratios(line: DrawnLine) -> dict[Proportion, float | None]:
    """The proportions of a line over the height of its capitals; None where it has none."""
    cap = line.cap_height_mm
    return {
        "stroke": _over(line.stroke_mm, cap),
        "width": line.width_ratio,
        "gap": _over(line.usual_gap_mm, cap),
        "line": _over(line.leading_mm, cap),
    }


def _over(length: float | None, height: float) -> float | None:
    return None if length is None else length / height


def _proportions(line: DrawnLine, rules: Sequence[RangeRule]) -> Iterator[Proportioned]:
    here = ratios(line)
    for rule in rules:
        ratio = here[rule.of]
        if ratio is not None:
            yield Proportioned(rule=rule, ratio=ratio)
