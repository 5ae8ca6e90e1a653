"""What holds the sign in the board until the end: tabs as asked for, and what is to be said about it."""

from __future__ import annotations

import math
from collections.abc import Iterator

from shapely.geometry import Polygon

from signgen.drawing.tabs import place_tabs
from signgen.errors import CannotMakeError, Problem
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec

LEAST_TABS = 3
"""A piece on two tabs tips about the line between them. Common practice."""

LEAST_TAB_HEIGHT_MM, LEAST_TAB_RATIO = 0.4, 0.25
"""Lower tabs are gone where a board is 0.2 mm thinner than measured and the spoilboard 0.2 mm lower (derived here);
boards thinner than four of them have tabs of a quarter of their thickness."""
LEAST_TAB_WIDTH_MM = 2.0
"""Narrower tabs break along the grain before the last pass is done (common practice)."""
LOW_FROM_TOP_MM = 0.6
"""What holds the sign by less is in doubt where heights count from the board's top (derived here: three times what
boards differ by)."""

SIDE_DEG = 30.0
"""How steeply the sides of ramped tabs fall (common practice)."""

SMALL_SIDE_MM, SMALL_AREA_MM2 = 50.0, 6000.0
THIN_MM = 3.0
"""Pieces narrower, smaller or thinner than these are pulled up and out by the cutter before tabs give (common
practice)."""


def tabs_of(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> tuple[Tab, ...]:
    """Raises: CannotMakeError when the edge has no room for them, or they would not hold."""
    tabs = spec.tabs
    count = tabs.count
    if tabs.spacing_mm is not None:
        count = max(LEAST_TABS, math.ceil(edge.exterior.length / tabs.spacing_mm - 1e-9))
    problems = list(_weak_tabs(spec, count))
    if problems:
        raise CannotMakeError(problems)
    foot = (tabs.height_mm + spec.breakthrough_mm) / math.tan(math.radians(SIDE_DEG)) if tabs.ramped else 0.0
    return place_tabs(edge, holes, count, tabs.width_mm, tabs.height_mm, foot)


def _weak_tabs(spec: SignSpec, count: int) -> Iterator[Problem]:
    """Tabs that are gone when the board is a little thinner or the cutter a little lower than said, or that break."""
    tabs = spec.tabs
    if not count:
        return
    least = min(LEAST_TAB_HEIGHT_MM, LEAST_TAB_RATIO * spec.thickness_mm)
    if tabs.height_mm < least - 1e-9:
        yield Problem(
            where="tab-height",
            what=Message("tabs.low", height=Mm(tabs.height_mm)),
            remedy=Message("tabs.higher", least=Mm(round(least, 3))),
        )
    if tabs.width_mm < LEAST_TAB_WIDTH_MM - 1e-9:
        yield Problem(
            where="tab-width",
            what=Message("tabs.narrow", width=Mm(tabs.width_mm)),
            remedy=Message("tabs.wider", least=Mm(LEAST_TAB_WIDTH_MM)),
        )


def holding_warnings(spec: SignSpec, edge: Polygon, tabs: tuple[Tab, ...]) -> Iterator[Message]:
    """Whole sentences where what was asked for may not hold."""
    if spec.edge == "none":
        return
    if 0 < len(tabs) < LEAST_TABS:
        yield (
            Message(
                "drawing.sign_can_tip_about_use",
                count=len(tabs),
            )
        )
    held = spec.skin_mm or (spec.tabs.height_mm if tabs else 0.0)
    if held and spec.z_zero == "top" and held < LOW_FROM_TOP_MM:
        yield (Message("drawing.skin_goes_by_top" if spec.skin_mm else "drawing.tabs_go_by_top", held=Mm(held)))
    x0, y0, x1, y1 = edge.bounds
    width, height = x1 - x0, y1 - y0
    if min(width, height) < SMALL_SIDE_MM or edge.area < SMALL_AREA_MM2:
        yield Message("drawing.piece_x_small_easily_pulled", width=Mm(width, 0), height=Mm(height, 0))
    elif spec.thickness_mm < THIN_MM:
        yield Message("drawing.board_thin_lifts_under_cutter", thickness=Mm(spec.thickness_mm))
    elif not tabs and not spec.skin_mm:
        yield Message("drawing.nothing_holds_sign_once_cut")
