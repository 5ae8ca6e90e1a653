"""Frame, ornaments, rim and bevelled edge: numbers whose defaults and limits follow from others."""

from __future__ import annotations

import math
import unicodedata
from pathlib import Path

from msgspec import Struct

from signgen.messages import Message, Mm, Sides
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked
from signgen.spec.finish import Finish, PanelSpec
from signgen.spec.paths import resolved_font

Size = tuple[float, float]

FRAME_WIDTH_MM, FRAME_LINES, FRAME_GAP_MM = 2.0, 1, 1.5
"""Line of a frame, how many, and the least wood between two (common practice: less breaks out)."""

ORNAMENT_RATIO, ORNAMENT_INSET_RATIO, ORNAMENT_GAP_MM = 0.15, 0.05, 2.0
"""Over the shorter side: size of ornaments and how far they stay from the edge; from a frame's line at least a
millimetre or two (common practice of layout)."""

WALL_GAP_MM, WALL_GAP_RATIO = 4.0, 0.04
"""From a panel's wall to what stands or is sunk in it, and over the shorter side: a cutter must pass (common
practice)."""

CHAMFER_LEFT_MM = 1.0
"""Upright edge to leave under a bevel, above tabs or skin, so that the V-bit does not weaken them (common practice).
"""


class FrameSpec(Struct, frozen=True, kw_only=True):
    """Lines engraved inside the edge, the middle of the outermost at a distance from it; `gap_mm` of wood between each
    two. None in SignSpec when not asked for."""

    inset_mm: float
    width_mm: float
    lines: int = 1
    gap_mm: float = FRAME_GAP_MM

    @property
    def insets_mm(self) -> tuple[float, ...]:
        """Distance from the edge to the middle of each line."""
        return tuple(self.inset_mm + number * (self.width_mm + self.gap_mm) for number in range(self.lines))

    @property
    def reach_mm(self) -> float:
        """Distance from the edge to the inner side of the innermost line."""
        return self.insets_mm[-1] + self.width_mm / 2


class OrnamentSpec(Struct, frozen=True, kw_only=True):
    """One character of a face in every corner, its larger extent `size_mm`, `inset_mm` or more inside the edge."""

    text: str
    font: str
    size_mm: float
    inset_mm: float


class RimSpec(Struct, frozen=True, kw_only=True):
    """A line that stands in the panel: its width, and how far from the panel's wall."""

    width_mm: float
    inset_mm: float

    @property
    def reach_mm(self) -> float:
        return self.inset_mm + self.width_mm


def frame_of(a: Asked, size_mm: Size | None) -> FrameSpec | None:
    """The frame asked for; None when there is none, or a problem."""
    if not a.has("frame"):
        return None
    inset = a.number("frame")
    width = a.number("frame-width") if a.has("frame-width") else FRAME_WIDTH_MM
    lines = a.value("frame-lines") if a.has("frame-lines") else FRAME_LINES
    gap = a.number("frame-gap") if a.has("frame-gap") else max(FRAME_GAP_MM, width or 0.0)
    if inset is None or width is None or gap is None or not isinstance(lines, int):
        return None
    if inset <= width / 2:
        what = Message("spec.line_middle_inside_runs_over", width=Mm(width), inset=Mm(inset))
        a.wrong("frame", what, Message("spec.use_more_than", least=Mm(width / 2)))
        return None
    frame = FrameSpec(inset_mm=inset, width_mm=width, lines=lines, gap_mm=gap)
    if size_mm and frame.reach_mm >= min(size_mm) / 2:
        size, most = Sides(size_mm), Mm(max(0.0, min(size_mm) / 2 - (frame.reach_mm - inset)))
        what = Message("spec.frame_leaves_no_room", inset=Mm(inset), size=size)
        remedy = Message("spec.use_less_than", most=most)
        if lines > 1:
            what = Message("spec.frame_lines_leave_no_room", count=lines, inset=Mm(inset), size=size)
            remedy = Message("spec.use_less_than_or_fewer_lines", most=most)
        a.wrong(
            "frame",
            what,
            remedy,
        )
        return None
    return frame


def clear_of_lines_mm(
    size_mm: Size | None, finish: Finish | None, frame: FrameSpec | None, panel: PanelSpec | None, rim: RimSpec | None
) -> float:
    """How far from the edge ornaments are inside the frame, or stand in the panel so that the cutter passes."""
    clear = frame.reach_mm + ORNAMENT_GAP_MM if frame else 0.0
    if finish == "raised" and panel and size_mm:
        clear = max(clear, clear_of_wall_mm(size_mm, panel, rim))
    return clear


def wall_gap_mm(size_mm: Size) -> float:
    """From a panel's wall, or its rim, to what stands or is sunk in the panel, on a sign of this size."""
    return max(WALL_GAP_MM, WALL_GAP_RATIO * min(size_mm))


def clear_of_wall_mm(size_mm: Size, panel: PanelSpec, rim: RimSpec | None) -> float:
    """How far inside the edge things in a panel may begin so that a cutter passes between them and its wall, or its
    rim."""
    return panel.inset_mm + (rim.reach_mm if rim else 0.0) + wall_gap_mm(size_mm)


def ornament_of(
    a: Asked, size_mm: Size | None, clear_mm: float, font: str | None, finish: Finish | None
) -> OrnamentSpec | None:
    """The ornament asked for; None when there is none, or a problem. `clear_mm`: how far from the edge it may begin."""
    if not a.has("ornament"):
        return None
    text = a.text("ornament")
    if text is not None:
        text = unicodedata.normalize("NFC", text.strip())
        if len(text) != 1 or not text.isprintable():
            a.wrong("ornament", Message("spec.not_one_character", text=text), Message("spec.give_one_ornament"))
            text = None
    if a.has("panel") and finish in ("recess", "through"):
        a.wrong(
            "ornament", Message("spec.ornaments_engraved_into_face_panel"),
            Message("spec.leave_panel_out_use_finish"),
        )  # fmt: skip
        return None
    own = a.text("ornament-font") if a.has("ornament-font") else None
    face = resolved_font(own, Path()) if own else font
    size, inset = a.number("ornament-size"), a.number("ornament-inset")
    if size_mm and size is None and not a.has("ornament-size"):
        size = round(ORNAMENT_RATIO * min(size_mm), 3)
    if size_mm and inset is None and not a.has("ornament-inset"):
        inset = round(max(ORNAMENT_INSET_RATIO * min(size_mm), clear_mm), 3)
    if text is None or face is None or size is None or inset is None or size_mm is None:
        return None
    if 2 * (size + inset) >= min(size_mm):
        what = Message(
            "spec.ornaments_inside_meet_sign_across", size=Mm(size), inset=Mm(inset), across=Mm(min(size_mm))
        )
        most = max(0.0, min(size_mm) / 2 - inset)
        a.wrong("ornament-size", what, Message("spec.use_less_than_smaller_ornament", most=Mm(most)))
        return None
    return OrnamentSpec(text=text, font=face, size_mm=size, inset_mm=inset)


def rim_of(a: Asked, size_mm: Size | None, panel: PanelSpec | None, finish: Finish | None) -> RimSpec | None:
    """The rim asked for; None when there is none, or a problem."""
    if not a.has("rim"):
        return None
    width, inset = a.number("rim"), a.number("rim-inset") if a.has("rim-inset") else None
    if panel is None:
        if not a.has("panel") and finish not in (None, "raised"):
            a.wrong("rim", Message("spec.rim_stands_panel_there_none"), Message("spec.give_panel_too_use_finish"))
        return None
    if size_mm is None or width is None or (inset is None and a.has("rim-inset")):
        return None
    if inset is None:
        inset = round(wall_gap_mm(size_mm), 3)
    if 2 * (panel.inset_mm + inset + width) >= min(size_mm):
        what = Message("spec.rim_inside_panel_leaves_no", width=Mm(width), inset=Mm(inset))
        a.wrong("rim", what, Message("spec.use_narrower_rim_smaller_rim"))
        return None
    return RimSpec(width_mm=width, inset_mm=inset)


def chamfer_of(
    a: Asked, thickness_mm: float | None, v_bit: Tool | None, held_mm: float | None, size_mm: Size | None
) -> float:
    """Width of the bevel on the face, 0 for none; a problem is kept. `held_mm`: height of tabs or skin.

    A bit of full angle A that bevels w wide goes w / tan(A / 2) deep. Source: plane geometry of cones.
    """
    width = a.number("edge-chamfer") if a.has("edge-chamfer") else None
    if width is None or thickness_mm is None or v_bit is None:
        return width or 0.0
    depth = width / v_bit.slope
    left = thickness_mm - max(held_mm or 0.0, 0.0) - CHAMFER_LEFT_MM
    if depth > v_bit.reach_mm + 1e-9:
        most = _down(v_bit.reach_mm * v_bit.slope)
        what = Message("spec.goes_deep_v_bit_reaches", depth=Mm(_up(depth)), reach=Mm(_down(v_bit.reach_mm)))
        most = min(most, max(0.0, _down(left * v_bit.slope)))
        a.cannot("edge-chamfer", what, Message("spec.use_most_larger_v_bit", most=Mm(most)))
    elif depth > left + 1e-9:
        what = Message(
            "spec.bevel_reaches_tabs" if held_mm else "spec.bevel_reaches_bottom",
            depth=Mm(_up(depth)),
            thickness=Mm(thickness_mm),
            left=Mm(CHAMFER_LEFT_MM),
        )
        most = _down(max(0.0, left) * v_bit.slope)
        a.cannot("edge-chamfer", what, Message("spec.use_most_lower_tabs_blunter", most=Mm(most)))
    elif size_mm and 2 * width >= min(size_mm):
        what = Message("spec.both_sides_leave_no_face", width=Mm(width), size=Mm(min(size_mm)))
        a.cannot("edge-chamfer", what, Message("spec.use_less_than", most=Mm(min(size_mm) / 2)))
    return width


def _down(value_mm: float) -> float:
    return math.floor(value_mm * 100 + 1e-6) / 100


def _up(value_mm: float) -> float:
    return math.ceil(value_mm * 100 - 1e-6) / 100
