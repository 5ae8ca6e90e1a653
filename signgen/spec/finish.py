"""How letters are made, and the panel round them: what follows from the finish that was asked for."""

from __future__ import annotations

from collections.abc import Collection
from typing import Literal

from msgspec import Struct

from signgen.messages import Message, Mm
from signgen.shop.tools import Tool
from signgen.spec.asked import Asked

Size = tuple[float, float]
Finish = Literal["groove", "recess", "raised", "stroke", "through"]
FINISHES: tuple[Finish, ...] = ("groove", "recess", "raised", "stroke", "through")

PANEL_RATIO, LEAST_PANEL_MM = 0.05, 4.0
"""Rim outside a panel that comes with raised letters, over the shorter side, and the least (common practice)."""
PANEL_RADIUS_MM = 4.0
"""Corners of panels: a small router's thickest cutter goes round them."""
LEAST_LEFT_MM, LEAST_LEFT_RATIO = 1.0, 0.2
"""Board to leave under a floor: a fifth, and never under 1 mm (common practice)."""


BRIDGE_MM, BRIDGE_RATIO = 2.5, 0.25
"""Width of bridges: a quarter of the thickness, at least 2.5 mm, so that they do not break (common practice)."""


class BridgeSpec(Struct, frozen=True, kw_only=True):
    """Bars of wood across the strokes of letters that are cut through: how many for each inside."""

    count: int
    width_mm: float


class PanelSpec(Struct, frozen=True, kw_only=True):
    """A flat floor `depth_mm` below the face, `inset_mm` inside the edge all round, its corners rounded."""

    inset_mm: float
    depth_mm: float
    radius_mm: float


def finish_of(a: Asked) -> Finish | None:
    name = a.text("finish")
    return next((finish for finish in FINISHES if finish == name), None)


def panel_inset_of(a: Asked, finish: Finish | None, size_mm: Size | None) -> float | None:
    """How far inside the edge the panel's wall runs: as asked, or as usual round raised letters; None when there is no
    panel, or a problem."""
    if a.has("panel"):
        return a.number("panel")
    if finish != "raised" or size_mm is None:
        return None
    return max(LEAST_PANEL_MM, round(PANEL_RATIO * min(size_mm), 3))


def panel_of(
    a: Asked,
    finish: Finish | None,
    size_mm: Size | None,
    thickness_mm: float | None,
    depth_mm: float | None,
    sunk_mm: float | None,
) -> PanelSpec | None:
    """The panel asked for, or the one that raised letters need; None when there is none, or a problem. `depth_mm` is
    its usual depth, `sunk_mm` how deep the deepest letters go from its floor."""
    if not a.has("panel") and finish != "raised":
        for key in ("panel-depth", "panel-radius"):
            if a.has(key):
                a.wrong(key, Message("spec.there_no_panel"), Message("spec.give_panel_too_leave_out"))
        return None
    if finish in ("groove", "stroke") and a.has("panel"):
        a.wrong(
            "panel",
            Message("spec.v_bit_engraves_board_s"),
            Message("spec.use_finish_recess_raised_through"),
        )
        return None
    inset = panel_inset_of(a, finish, size_mm)
    depth = a.number("panel-depth") if a.has("panel-depth") else None
    if depth is None and not a.has("panel-depth"):
        depth = depth_mm
    radius = a.number("panel-radius") if a.has("panel-radius") else PANEL_RADIUS_MM
    if inset is None or depth is None or radius is None or size_mm is None or thickness_mm is None:
        return None
    if 2 * inset >= min(size_mm):
        what = Message("spec.both_sides_leaves_no_room", given=Mm(inset), shorter=Mm(min(size_mm)))
        a.wrong("panel", what, Message("spec.use_less_than", most=Mm(min(size_mm) / 2)))
        return None
    deepest = depth + (0.0 if finish == "raised" else sunk_mm or 0.0)
    most = most_depth_mm(thickness_mm)
    if deepest > most:
        what = Message("spec.panel_and_letters_leave_too_little", deepest=Mm(deepest), thickness=Mm(thickness_mm))
        if deepest == depth:
            what = Message("spec.panel_leaves_too_little", depth=Mm(depth), thickness=Mm(thickness_mm))
        a.cannot("panel-depth", what, Message("spec.use_most_all", most=Mm(most)))
        return None
    return PanelSpec(inset_mm=inset, depth_mm=depth, radius_mm=radius)


def most_depth_mm(thickness_mm: float) -> float:
    """How deep floors may lie."""
    return thickness_mm - max(LEAST_LEFT_MM, LEAST_LEFT_RATIO * thickness_mm)


def sharp_of(a: Asked, finishes: Collection[Finish], depth_mm: float | None, v_bit: Tool | None) -> bool:
    """Whether the V-bit cleans the corners, which it must reach down into."""
    if not a.flag("sharp-corners"):
        return False
    if not {"recess", "raised"} & set(finishes):
        if finishes:
            a.wrong(
                "sharp-corners", Message("spec.only_flat_floors_corners_end"),
                Message("spec.use_finish_recess_raised_leave"),
            )  # fmt: skip
        return False
    if depth_mm is not None and v_bit is not None and depth_mm > v_bit.reach_mm + 1e-9:
        what = Message("spec.v_bit_reaches_floor_lies", reach=Mm(v_bit.reach_mm), depth=Mm(depth_mm))
        a.cannot("sharp-corners", what, Message("spec.use_smaller_depth_larger_v"))
    return True


def bridges_of(a: Asked, finishes: Collection[Finish], thickness_mm: float | None) -> BridgeSpec | None:
    """The bridges asked for; None when there are none, or a problem."""
    if not a.has("bridges"):
        return None
    count, width = a.value("bridges"), a.number("bridge-width") if a.has("bridge-width") else None
    if finishes and "through" not in finishes:
        a.wrong("bridges", Message("spec.only_letters_cut_through_need"), Message("spec.use_finish_through_leave_out"))
        return None
    if width is None and not a.has("bridge-width") and thickness_mm is not None:
        width = max(BRIDGE_MM, round(BRIDGE_RATIO * thickness_mm, 3))
    if not isinstance(count, int) or width is None:
        return None
    return BridgeSpec(count=count, width_mm=width)
