"""The cutters that the user named: the shop's own where one matches, otherwise made up from the figures given."""

from __future__ import annotations

import math

from signgen.errors import AskError
from signgen.messages import Message, Mm
from signgen.messages.figures import plain
from signgen.shop.shop import Shop
from signgen.shop.tools import MISSING_V_BIT, Tool

_SAME_MM = 1e-6
_DEFAULT_ANGLE_DEG = 90.0

_ASSUMED_DIAMETER_MM = 6.0
_ASSUMED_SHANK_MM = 6.0
_ASSUMED_FLUTES = 2
_ASSUMED_GAP_MM = 8.0
"""From the end of the cutting edges to the collet. These four are common practice; a narrow V-bit is the careful
guess, since a wider one in the spindle can do all that it can."""
_END_MILL_LENGTH_RATIO = 4.0
"""Cutting length over diameter of a usual end mill for boards (common practice)."""
_EIGHTH_INCH_MM = 3.175


def named_v_bit(shop: Shop, angle_deg: float | None, diameter_mm: float | None, tip_mm: float | None) -> Tool:
    """The V-bit that the user means; each None is left to the shop. MISSING_V_BIT where the shop has none and nobody
    named one.

    Raises: AskError when the tip's flat is as wide as the bit.
    """
    bits = [tool for tool in shop.tools if tool.kind == "v-bit"]
    alike = [bit for bit in bits if _same(bit.angle_deg, _DEFAULT_ANGLE_DEG if angle_deg is None else angle_deg)]
    candidates = alike or (bits if angle_deg is None else [])
    for bit in candidates:
        if _same(bit.diameter_mm, diameter_mm) and _same(bit.tip_mm, tip_mm):
            return bit
    base = candidates[0] if candidates else None
    angle = base.angle_deg if angle_deg is None and base else angle_deg
    angle = _DEFAULT_ANGLE_DEG if angle is None else angle
    diameter = diameter_mm or (base.diameter_mm if base else _ASSUMED_DIAMETER_MM)
    tip = tip_mm if tip_mm is not None else 0.0
    if tip >= diameter:
        what = Message("spec.flat_no_less_than_diameter", tip=Mm(tip), diameter=Mm(diameter))
        raise AskError.at("v-bit-tip", what, Message("spec.give_flat_very_tip_0"))
    cone = (diameter - tip) / 2 / math.tan(math.radians(angle) / 2)
    is_missing = not bits and angle_deg is None and diameter_mm is None and tip_mm is None
    name = MISSING_V_BIT if is_missing else _free_name(shop, f"v-bit-{plain(angle)}-{plain(diameter)}")
    return Tool(
        name=name, kind="v-bit", diameter_mm=diameter,
        shank_mm=_ASSUMED_SHANK_MM, cutting_length_mm=cone, flutes=_ASSUMED_FLUTES, angle_deg=angle, tip_mm=tip,
        stickout_mm=cone + _ASSUMED_GAP_MM, source="named by the user; flutes and shank assumed (common practice)",
    )  # fmt: skip


def named_end_mill(shop: Shop, diameter_mm: float, length_mm: float | None) -> Tool:
    """The end mill of a diameter; `length_mm` None is left to the shop."""
    for tool in shop.tools:
        if tool.kind != "end-mill" or tool.only_named or not _same(tool.diameter_mm, diameter_mm):
            continue
        if _same(tool.cutting_length_mm, length_mm):
            return tool
    length = length_mm or _END_MILL_LENGTH_RATIO * diameter_mm
    thick = diameter_mm >= _ASSUMED_SHANK_MM or _same(diameter_mm, _EIGHTH_INCH_MM)
    return Tool(
        name=_free_name(shop, f"end-mill-{plain(diameter_mm)}"), kind="end-mill", diameter_mm=diameter_mm,
        shank_mm=diameter_mm if thick else _ASSUMED_SHANK_MM, cutting_length_mm=length, flutes=_ASSUMED_FLUTES,
        stickout_mm=length + _ASSUMED_GAP_MM, can_plunge=False,
        source="named by the user; flutes, shank and a length not given are assumed (common practice), and that it "
        "cannot be pushed straight down",
    )  # fmt: skip


def goes_by_name(shop: Shop, mill: Tool) -> bool:
    """Whether an end mill is not the one that its diameter and length ask for."""
    return named_end_mill(shop, mill.diameter_mm, mill.cutting_length_mm) != mill


def _same(value: float | None, asked: float | None) -> bool:
    """Whether a figure is the one asked for; None asks for nothing."""
    return asked is None or (value is not None and abs(value - asked) <= _SAME_MM)


def _free_name(shop: Shop, name: str) -> str:
    return f"{name}-named" if any(tool.name == name for tool in shop.tools) else name
