"""Published rules of reading: how far letters read, what proportions suit them, how large house numbers should be.

The rules are in `data/legibility.toml`, each with its source. They are facts about rules, not claims about a sign.
"""

from __future__ import annotations

import math
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any, Literal

from msgspec import Struct

from signgen.units import Limits, length_mm

INCH_MM, FOOT_M = 25.4, 0.3048
"""Source: the international yard and pound agreement of 1959."""

_FAR = Limits(least=0, greatest=1e6)
"""In millimetres: across a street, not across a board."""

Proportion = Literal["stroke", "width", "gap", "line"]


class DistanceRule(Struct, frozen=True, kw_only=True):
    """From the height of a letter to the distance at which it reads. `chart`: pairs of (inches, feet), ascending; one
    pair stands for a mere ratio."""

    rule: str
    chart: tuple[tuple[float, float], ...]
    source: str
    certainty: str

    def distance_m(self, height_mm: float) -> float:
        """Along straight lines between the chart's points, in proportion to its first and last beyond them."""
        height = height_mm / INCH_MM
        below = [point for point in self.chart if point[0] <= height]
        above = [point for point in self.chart if point[0] > height]
        if below and above:
            (h0, d0), (h1, d1) = below[-1], above[0]
            feet = d0 + (height - h0) / (h1 - h0) * (d1 - d0)
        else:
            h, d = below[-1] if below else above[0]
            feet = height * d / h
        return feet * FOOT_M


class RangeRule(Struct, frozen=True, kw_only=True):
    """What a proportion over the letter's height should be."""

    rule: str
    of: Proportion
    least: float
    most: float
    source: str
    certainty: str


class NumberRule(Struct, frozen=True, kw_only=True):
    """What is asked of a house number somewhere. `steps`: (distance in metres up to which, height); None: beyond."""

    rule: str
    place: str
    height_mm: float
    stroke_mm: float | None
    steps: tuple[tuple[float | None, float], ...]
    source: str
    certainty: str


class Rules(Struct, frozen=True, kw_only=True):
    distances: tuple[DistanceRule, ...]
    ranges: tuple[RangeRule, ...]
    house_numbers: tuple[NumberRule, ...]


@cache
def reading_rules() -> Rules:
    """All rules, in the file's order."""
    tables = tomllib.loads(files("signgen.shop").joinpath("data", "legibility.toml").read_text("utf-8"))
    return Rules(
        distances=tuple(_distance(row) for row in tables["distance"]),
        ranges=tuple(RangeRule(**row) for row in tables["range"]),
        house_numbers=tuple(_house_number(row) for row in tables["house-number"]),
    )


def _distance(row: dict[str, Any]) -> DistanceRule:
    if "arc-minutes" in row:
        angle = math.radians(row["arc-minutes"] / 60)
        metres = INCH_MM / 1000 / (2 * math.tan(angle / 2))
        chart: list[list[float]] = [[1, metres / FOOT_M]]
    else:
        chart = row["chart"] if "chart" in row else [[1, row["feet-per-inch"]]]
    return DistanceRule(
        rule=row["rule"],
        chart=tuple((float(inches), float(feet)) for inches, feet in chart),
        source=row["source"],
        certainty=row["certainty"],
    )


def _house_number(row: dict[str, Any]) -> NumberRule:
    where = f"legibility.toml: {row['rule']}"
    return NumberRule(
        rule=row["rule"],
        place=row["place"],
        height_mm=length_mm(row["height"], where),
        stroke_mm=length_mm(row["stroke"], where) if "stroke" in row else None,
        steps=tuple(
            (length_mm(upto, where, _FAR) / 1000 if upto else None, length_mm(height, where))
            for upto, height in row.get("steps", ())
        ),
        source=row["source"],
        certainty=row["certainty"],
    )
