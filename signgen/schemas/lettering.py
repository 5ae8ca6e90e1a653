"""What reports tell of lettering, and of how it reads."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta, Struct

from signgen.schemas.parts import Range


class Circle(Struct, frozen=True, kw_only=True):
    """The circle that a line is set along, in sign coordinates."""

    x_mm: float
    y_mm: float
    radius_mm: float
    side: Literal["above", "below", "ring"]


class ReportLine(Struct, frozen=True, kw_only=True):
    """A line of lettering as drawn; what its face does not have is null."""

    text: str
    line: Annotated[int, Meta(description="The line that was asked for, the first being 1.")]
    font: str
    label: str
    cap_height_mm: float
    digit_height_mm: float | None
    x_height_mm: float | None
    baseline_mm: float
    circle: Circle | None
    finish: str


class ReportText(Struct, frozen=True, kw_only=True):
    """A line that was asked for: what it is there for, and the bounds x0, y0, x1, y1 of its ink in sign
    coordinates."""

    text: str
    role: str | None
    cap_height_mm: float
    bounds_mm: tuple[float, float, float, float]


class Distance(Struct, frozen=True, kw_only=True):
    """How far a line reads by a published rule."""

    rule: str
    distance_m: float
    source: str
    certainty: str


class Proportion(Struct, frozen=True, kw_only=True):
    """A ratio beside a published rule."""

    rule: str
    of: str
    range: Range
    ratio: float
    within: bool
    source: str
    certainty: str


class Reading(Struct, frozen=True, kw_only=True):
    """Ratios of a line and how far it reads."""

    text: str
    letter_height_mm: float
    stroke_mm: float | None
    stroke_to_height: float | None
    width_to_height: float | None
    gap_to_height: float | None
    least_gap_mm: float | None
    line_to_height: float | None
    reads_at: list[Distance]
    proportions: list[Proportion]


class HeightByDistance(Struct, frozen=True, kw_only=True):
    """The height that is asked of figures up to a distance; null: beyond the others."""

    up_to_m: float | None
    height_mm: float


class NumberRule(Struct, frozen=True, kw_only=True):
    """What is asked of house numbers somewhere."""

    rule: str
    place: str
    height_mm: float
    stroke_mm: float | None
    by_distance: list[HeightByDistance]
    source: str
    certainty: str


class HouseNumber(Struct, frozen=True, kw_only=True):
    """A line that may be a house number."""

    text: str
    figures_mm: float
    stroke_mm: float | None
    note: str
    rules: list[NumberRule]


class Legibility(Struct, frozen=True, kw_only=True):
    """Figures beside published rules."""

    lines: list[Reading]
    house_numbers: list[HouseNumber]
    about: str
