"""What holds the sign in the board until the end: tabs as asked for, and what is to be said about it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from shapely.geometry import Polygon

from signgen.drawing.tabs import place_tabs
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.spec.sign_spec import SignSpec

LEAST_TABS = 3
"""A piece on two tabs tips about the line between them. Source: check-values section 10 (common practice)."""

SIDE_DEG = 30.0
"""How steeply the sides of ramped tabs fall (common practice)."""

SMALL_SIDE_MM, SMALL_AREA_MM2 = 50.0, 6000.0
THIN_MM = 3.0
"""Pieces narrower, smaller or thinner than these are pulled up and out by the cutter before tabs give (common
practice)."""


def tabs_of(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> tuple[Tab, ...]:
    """Raises: CannotMakeError when the edge has no room for them."""
    tabs = spec.tabs
    count = tabs.count
    if tabs.spacing_mm is not None:
        count = max(LEAST_TABS, math.ceil(edge.exterior.length / tabs.spacing_mm - 1e-9))
    foot = (tabs.height_mm + spec.breakthrough_mm) / math.tan(math.radians(SIDE_DEG)) if tabs.ramped else 0.0
    return place_tabs(edge, holes, count, tabs.width_mm, tabs.height_mm, foot)


def holding_warnings(spec: SignSpec, edge: Polygon, tabs: tuple[Tab, ...]) -> Iterator[str]:
    """Whole sentences where what was asked for may not hold."""
    if 0 < len(tabs) < LEAST_TABS:
        yield (
            f"{len(tabs)} {'tab holds' if len(tabs) == 1 else 'tabs hold'} the sign, and it can tip about "
            f"{'it' if len(tabs) == 1 else 'them'}: use three or more, or tape it down as well."
        )
    x0, y0, x1, y1 = edge.bounds
    width, height = x1 - x0, y1 - y0
    tape = "stick it down with double-sided tape under its whole back as well"
    if min(width, height) < SMALL_SIDE_MM or edge.area < SMALL_AREA_MM2:
        yield f"A piece of {width:.0f} x {height:.0f} mm is small and easily pulled out: {tape}."
    elif spec.thickness_mm < THIN_MM:
        yield f"A board of {spec.thickness_mm:g} mm is thin and lifts under the cutter: {tape}."
    elif not tabs and not spec.skin_mm:
        yield f"Nothing holds the sign once it is cut through: {tape}, or ask for tabs."
