"""The proportions of a sign: how lines relate to the one that is looked for first, and to the plate.

Common practice of sign painters where nothing else is said.
"""

from __future__ import annotations

from msgspec import Struct

from signgen.spec.roles import Role

WIDTH_RATIO, SHORT_WIDTH_RATIO = 0.80, 0.74
"""How much of the free width the text takes at most; of a single short line."""

SHORT_LETTERS = 4
"""A line of so many letters or fewer is short."""

HEIGHT_RATIO = 0.72
"""How much of the free height the block takes at most (0.62 to 0.75)."""

LEAD_RATIO = 0.62
"""How much of the free height the line that leads takes at most (0.55 to 0.65 when it is short)."""

LIFT_RATIO = 0.025
"""How far above the middle a block stands, over the plate's height: what stands in the very middle seems to sink.
Source: H. L. Gage, Applied Design for Printers (1920), on the optical centre; 2 to 3 % is common practice."""

DESCENDER_WEIGHT = 0.25
"""A descender counts for a quarter of its length when the middle of a block is sought: few letters have one."""

SAME_GAP_RATIO = 0.6
"""Between two lines of one size, over their height. Source: E. Johnston, Writing & Illuminating, & Lettering (1906):
half a letter's height to a whole one between lines of capitals."""

SMALL_GAP_RATIO = 0.7
"""Between a small line and a larger one, over the small one's height (0.6 to 0.8)."""

BELOW_DESCENDER_RATIO = 0.3
"""From the lowest descender to the capitals below it at least, over the height of these."""

CAPITALS_SPACING_RATIO = 0.07
"""What capitals set alone are spaced by, over their height (5 to 10 %)."""

HOLE_GAP_DIAMETERS = 1.5
"""From a hole's rim to letters, in diameters of the hole."""

LEAST_CAPITAL_MM = 8.0
"""Smaller capitals are not chosen unasked: V-grooves close up, and nobody reads them from the gate."""

BREAK_BELOW_MM = 15.0
"""A line that would get smaller capitals than this is broken at a space before it is made smaller."""

BREAK_GAIN = 1.25
"""Other lines are broken when their letters grow by this factor or more."""

ROUND_MM = 0.05
"""Heights are whole steps of this, rounded down, so that the sheet shows the very numbers that were used."""


class Share(Struct, frozen=True, kw_only=True):
    """A line's height over that of the line that leads: the least, the usual and the greatest."""

    least: float
    usual: float
    most: float


UNDER_NUMBER: dict[Role, Share] = {
    "title": Share(least=0.25, usual=0.38, most=0.55),
    "name": Share(least=0.25, usual=0.34, most=0.40),
    "detail": Share(least=0.15, usual=0.21, most=0.25),
}
UNDER_TITLE: dict[Role, Share] = {
    "name": Share(least=0.40, usual=1 / 1.6, most=1 / 1.6),
    "detail": Share(least=0.25, usual=1 / 2.6, most=1 / 2.2),
}
"""Sizes go by 1 : 1.6 : 2.6 where nothing is in the way."""


def share_of(role: Role, lead: Role) -> Share:
    """Of a line that does not lead; one that has the leading role itself has its height."""
    if role == lead:
        return Share(least=1.0, usual=1.0, most=1.0)
    table = UNDER_NUMBER if lead == "number" else UNDER_TITLE
    return table.get(role, Share(least=0.4, usual=1.0, most=1.0))
