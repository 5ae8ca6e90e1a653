"""How deep letters go: given, and within what cutter and board allow, or the usual depth of their finish."""

from __future__ import annotations

import math

from signgen.messages import Message, Mm
from signgen.shop.tools import Tool
from signgen.spec.amounts import depth_of
from signgen.spec.asked import Asked
from signgen.spec.finish import Finish, most_depth_mm

STROKE_MM, STROKE_RATIO = 1.0, 0.2
"""Depth of strokes unless asked for: 1 mm, at most a fifth of the board, which a V-bit of 90 degrees cuts 2 mm wide
(common practice)."""

RECESS_RATIO, RECESS_MM = 0.25, 3.0
"""Depth of flat letters and panels unless asked for: a quarter of the thickness, at most 3 mm, throws a clear shadow
(common practice)."""


def letter_depth_of(a: Asked, finish: Finish | None, thickness_mm: float | None, v_bit: Tool | None) -> float | None:
    """The depth given, or the usual one of the finish. Letters that are cut through have none; a panel round them may
    take it."""
    if finish == "through" and a.has("depth") and not a.has("panel"):
        a.wrong("depth", Message("spec.these_letters_cut_right_through"), Message("spec.leave_depth_out"))
    if finish == "groove":
        return depth_of(a, thickness_mm, v_bit)
    if finish == "stroke":
        return stroke_depth_of(a, thickness_mm, v_bit)
    return flat_depth_of(a, thickness_mm)


def stroke_depth_of(a: Asked, thickness_mm: float | None, v_bit: Tool | None) -> float | None:
    """Depth of strokes: given, and within what the bit and the board allow, or the usual one."""
    most = depth_of(a, thickness_mm, v_bit)
    if most is None or thickness_mm is None or a.has("depth"):
        return most
    return math.floor(1000 * min(STROKE_MM, STROKE_RATIO * thickness_mm, most) + 1e-6) / 1000


def flat_depth_of(a: Asked, thickness_mm: float | None) -> float | None:
    """Depth of flat floors: given, and leaving enough of the board, or the usual one; no V-bit limits it."""
    given = a.number("depth")
    if thickness_mm is None or (given is None and a.has("depth")):
        return None
    most = most_depth_mm(thickness_mm)
    if most <= 0:
        a.cannot(
            "thickness", Message("spec.too_thin_floors", thickness=Mm(thickness_mm)), Message("spec.use_2_mm_more")
        )
        return None
    if given is None:
        return math.floor(1000 * min(RECESS_MM, RECESS_RATIO * thickness_mm, most) + 1e-6) / 1000
    if given > most:
        left = Mm(max(0.0, thickness_mm - given))
        what = Message("spec.leaves_only_mm_board", given=Mm(given), left=left, thickness=Mm(thickness_mm))
        a.cannot("depth", what, Message("spec.use_most", most=Mm(most)))
    return given
