"""Depth, margin, tabs and board: numbers whose defaults and limits follow from others."""

from __future__ import annotations

import math

from signgen.messages import Message, Mm, Sides
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked, is_off
from signgen.spec.finish import LEAST_LEFT_MM, most_depth_mm
from signgen.spec.sign_spec import TabSpec
from signgen.spec.trim import FrameSpec

Size = tuple[float, float]

BLANK_LACKS = {"board": "other_board", "edge-chamfer": "room_for_bevel"}

DEPTH_RATIO = 0.4
"""Of the thickness: deep enough to throw a shadow, shallow enough to keep the board stiff (common practice)."""
MARGIN_RATIO = 0.08
FRAME_GAP_RATIO = 0.04
"""From the edge, and from a frame's line, to the letters, over the shorter side (common practice of layout)."""
MOST_SKIN_RATIO = 0.25
"""Of the thickness: more would not be a skin."""
CLEARANCE_MM, OVER_CLAMPS_MM, LEAST_OVER_CLAMPS_MM = 10.0, 5.0, 2.0
"""Travel over the board, over clamps, and the least over clamps that is allowed (common practice)."""
LEAST_AIR_MM = 2.0
"""How far over the board an air cut stays at the least: boards are not flat, and Z is set by hand."""
TAB_HEIGHT_RATIO = 0.25
TAB_HEIGHT_MM = 1.5
"""A quarter to a third of thin stock, 0.5 to 1.5 mm in wood: common practice."""


def margin_of(a: Asked, size_mm: Size | None, frame: FrameSpec | None) -> float | None:
    """The margin given, or in proportion to the sign and clear of the frame."""
    given = a.number("margin")
    if size_mm is None or (given is None and a.has("margin")):
        return None
    shorter = min(size_mm)
    if given is None:
        clear_of_frame = frame.reach_mm + FRAME_GAP_RATIO * shorter if frame else 0.0
        most = 0.45 * shorter  # something must be left for the letters; whether they fit is for the drawing to say
        return _down(min(max(MARGIN_RATIO * shorter, clear_of_frame), most))
    if 2 * given >= shorter:
        what = Message("spec.both_sides_leaves_no_room", given=Mm(given), shorter=Mm(shorter))
        a.wrong("margin", what, Message("spec.use_less_than", most=Mm(shorter / 2)))
        return None
    return given


def depth_of(a: Asked, thickness_mm: float | None, v_bit: Tool | None) -> float | None:
    """The greatest depth of letters: given and within what the bit and the board allow, or the usual one."""
    given = a.number("depth")
    if thickness_mm is None or v_bit is None or (given is None and a.has("depth")):
        return None
    reach = v_bit.reach_mm
    most = most_depth_mm(thickness_mm)
    if most <= 0:
        what = Message("spec.too_thin_engrave", thickness=Mm(thickness_mm))
        a.cannot("thickness", what, Message("spec.use_more", least=Mm(2 * LEAST_LEFT_MM)))
        return None
    if given is None:
        return _down(min(reach, DEPTH_RATIO * thickness_mm, most))
    if given > reach:
        what = Message("spec.deeper_than_v_bit_reaches", given=Mm(given), bit=v_bit.called)
        a.cannot("depth", what, Message("spec.use_most_wider_sharper_bit", most=Mm(min(reach, most))))
    elif given > most:
        left = Mm(max(0.0, thickness_mm - given))
        what = Message("spec.leaves_only_mm_board", given=Mm(given), left=left, thickness=Mm(thickness_mm))
        a.cannot("depth", what, Message("spec.use_most", most=Mm(min(reach, most))))
    return given


def skin_of(a: Asked, thickness_mm: float | None) -> float | None:
    """The skin given, 0 for none; None when there is a problem."""
    if not a.has("onion-skin"):
        return 0.0
    skin = a.number("onion-skin")
    if skin is not None and thickness_mm is not None and skin > MOST_SKIN_RATIO * thickness_mm:
        what = Message("spec.skin_too_much_board_cut", skin=Mm(skin), thickness=Mm(thickness_mm))
        a.wrong("onion-skin", what, Message("spec.use_most_0_2_0", most=Mm(MOST_SKIN_RATIO * thickness_mm)))
        return None
    return skin


def air_cut_of(a: Asked, thickness_mm: float | None, through_mm: float | None) -> float | None:
    """How much the programs for the air are lifted; None when there are none, and when there is a problem."""
    lift = a.number("air-cut") if a.has("air-cut") else None
    if lift is None or thickness_mm is None or through_mm is None:
        return lift
    least = thickness_mm + through_mm + LEAST_AIR_MM
    if lift < least:
        what = Message("spec.lifted_programs_still_touch_board", lift=Mm(lift), thickness=Mm(thickness_mm))
        a.wrong("air-cut", what, Message("spec.use_more", least=Mm(least)))
        return None
    return lift


def clearance_of(a: Asked) -> float | None:
    """The travel height given, or the usual one, over the clamps; None when there is a problem."""
    clearance = a.number("clearance") if a.has("clearance") else None
    clamps = a.number("clamp-height") if a.has("clamp-height") else None
    if (clearance is None and a.has("clearance")) or (clamps is None and a.has("clamp-height")):
        return None
    if clearance is None:
        return CLEARANCE_MM if clamps is None else clamps + OVER_CLAMPS_MM
    if clamps is not None and clearance < clamps + LEAST_OVER_CLAMPS_MM:
        least = Mm(clamps + LEAST_OVER_CLAMPS_MM)
        what = Message("spec.does_not_clear_clamps", clearance=Mm(clearance), clamps=Mm(clamps))
        a.wrong("clearance", what, Message("spec.use_mm_more_leave_out", least=least))
        return None
    return clearance


def is_blank(a: Asked) -> bool:
    """Whether the board is already to size."""
    return a.text("edge") == "none"


def must_suit_blank(a: Asked) -> None:
    """Keep a problem for everything that is cut outside the sign, or that holds it until it is."""
    if not is_blank(a):
        return
    for key in ("tabs", "tab-spacing", "tab-shape", "tab-width", "tab-height", "onion-skin", "board", "edge-chamfer"):
        if a.has(key) and not is_off(a.raw(key)):
            a.wrong(
                key, Message(f"spec.blank_has_no_{BLANK_LACKS.get(key, 'outside')}"), Message("spec.leave_out_edge")
            )


def tabs_of(a: Asked, thickness_mm: float | None) -> TabSpec | None:
    """The tabs given, or the usual ones; none where a skin holds the sign."""
    for key in ("tabs", "tab-spacing"):
        if a.has("onion-skin") and a.has(key) and a.value(key):
            a.wrong(key, Message("spec.onion_skin_holds_sign_already"), Message("spec.give_tabs_onion_skin_not"))
    if a.has("tabs") and a.has("tab-spacing"):
        a.wrong("tab-spacing", Message("spec.number_tabs_given_already"), Message("spec.give_tabs_tab_spacing_not"))
    count, width, height = a.value("tabs"), a.number("tab-width"), a.number("tab-height")
    spacing, shape = a.number("tab-spacing") if a.has("tab-spacing") else None, a.text("tab-shape")
    if height is None and thickness_mm is not None and not a.has("tab-height"):
        height = _down(min(TAB_HEIGHT_MM, TAB_HEIGHT_RATIO * thickness_mm))
    if not isinstance(count, int) or width is None or height is None:
        return None
    if thickness_mm is not None and height >= thickness_mm:
        what = Message("spec.no_less_than_board_s", height=Mm(height), thickness=Mm(thickness_mm))
        a.wrong("tab-height", what, Message("spec.use_quarter_thickness_so"))
        return None
    for key in ("tab-shape", "tab-width", "tab-height"):
        if a.has("onion-skin") and a.has(key):
            a.wrong(key, Message("spec.onion_skin_holds_sign_there"), Message("spec.leave_out_onion_skin"))
    count = 0 if a.has("onion-skin") or is_blank(a) else count
    return TabSpec(count=count, width_mm=width, height_mm=height, spacing_mm=spacing, ramped=shape == "ramped")


def board_of(a: Asked, size_mm: Size | None) -> Size | None:
    """The board given, at least as large as the sign; None when none was, or a problem."""
    board = a.size("board") if a.has("board") else None
    if board is None or size_mm is None:
        return None
    if board[0] < size_mm[0] or board[1] < size_mm[1]:
        what = Message("spec.board_mm_smaller_than_sign", board=Sides(board), sign=Sides(size_mm))
        turned = board[1] >= size_mm[0] and board[0] >= size_mm[1]
        a.wrong(
            "board", what, Message("spec.turn_give_width_along_sign") if turned else Message("spec.use_larger_board")
        )
    return board


def _down(value_mm: float) -> float:
    """Rounded to a micron, so that the resolved sign file reads well, and down, so that a limit stays kept."""
    return math.floor(value_mm * 1000 + 1e-6) / 1000
