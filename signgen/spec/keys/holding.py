"""What holds the sign in its board until the end, and how its edge is cut."""

from __future__ import annotations

from typing import Any

from signgen.option import Option
from signgen.units import Limits


def _if_tabs(spec: Any, value: object) -> object:
    """What is said of tabs, None when there are none."""
    return value if spec.tabs.count or spec.tabs.spacing_mm is not None else None


HOLDING: tuple[Option, ...] = (
    Option(
        name="edge", kind="choice", metavar="NAME", group="Holding", choices=("cut", "none"), default="cut",
        help="Cut the sign's outside (cut), or leave it as it is (none): the board is a blank that is already to "
        "size, its front left corner is X0 Y0, and clamps or tape hold it.",
        field="edge",
        replaces=("tabs", "tab-spacing", "tab-shape", "tab-width", "tab-height", "onion-skin", "board"),
        words=("no outside cut", "keep the edge", "do not cut out", "no cut around", "engrave only"), example="none",
    ),
    Option(
        name="tabs", kind="count", metavar="N", group="Holding", default=4, limits=Limits(least=0, greatest=100),
        help="Tabs that hold the sign in the board until you cut them; 0 when tape or screws hold it.",
        otherwise="4, or as many as tab-spacing wants; none with an onion skin",
        write=lambda spec: spec.tabs.count if spec.tabs.spacing_mm is None and spec.edge == "cut" else None,
        left_open="as many as tab-spacing wants, none with edge none", replaces=("tab-spacing", "onion-skin"),
        words=("bridges to the board", "holding tabs", "hold the sign", "fly off", "comes loose",
            "number of tabs", "no tabs"), example="6",
    ),
    Option(
        name="tab-spacing", kind="length", metavar="LENGTH", group="Holding", limits=Limits(least=20, greatest=2000),
        help="A tab for each such length of the edge, at least three, instead of a number of tabs.",
        otherwise="by their number",
        write=lambda spec: spec.tabs.spacing_mm, left_open="by their number", replaces=("tabs", "onion-skin"),
        words=("distance between tabs", "more tabs"),
    ),
    Option(
        name="tab-shape", kind="choice", metavar="SHAPE", group="Holding", choices=("flat", "ramped"), default="flat",
        help="Tabs with upright sides (flat), or with sides that fall at 30 degrees (ramped).",
        write=lambda spec: _if_tabs(spec, "ramped" if spec.tabs.ramped else "flat"), left_open="no tabs", needs="tabs",
        words=("ramped tabs", "triangular tabs"),
    ),
    Option(
        name="tab-width", kind="length", metavar="LENGTH", group="Holding", default=6,
        help="Length of a tab along the edge.", limits=Limits(least=1, greatest=100),
        write=lambda spec: _if_tabs(spec, spec.tabs.width_mm), left_open="no tabs", needs="tabs",
        words=("wide tabs", "length of tabs"),
    ),
    Option(
        name="tab-height", kind="length", metavar="LENGTH", group="Holding",
        help="Height of a tab above the board's bottom.", otherwise="a quarter of the thickness, at most 1.5 mm",
        limits=Limits(least=0.2, greatest=100),
        write=lambda spec: _if_tabs(spec, spec.tabs.height_mm), left_open="no tabs", needs="tabs",
        words=("thick tabs", "thin tabs"),
    ),
    Option(
        name="onion-skin", kind="length", metavar="LENGTH", group="Holding", limits=Limits(least=0.1, greatest=5),
        help="Leave a skin of this thickness all round instead of tabs, to be cut with a knife and trimmed.",
        otherwise="none: cut right through, but for tabs",
        write=lambda spec: spec.skin_mm or None, left_open="none",
        replaces=("tabs", "tab-spacing", "tab-shape", "tab-width", "tab-height"),
        words=("thin layer", "leave a skin", "without tabs", "skin"),
    ),
    Option(
        name="breakthrough", kind="length", metavar="LENGTH", group="Holding", default=0.3,
        help="How far through cuts go into the spoilboard below.", limits=Limits(least=0, greatest=5),
        field="breakthrough_mm",
        words=("spoilboard depth", "below the board", "through cut", "not cut through"),
    ),
)  # fmt: skip

PASSES: tuple[Option, ...] = (
    Option(
        name="finish-pass", kind="length", metavar="LENGTH", group="Passes", limits=Limits(least=0.05, greatest=2),
        help="Leave this much on the edge and in bored holes for one last pass of full depth.",
        otherwise="no such pass",
        field="finish_mm", write=lambda spec: spec.finish_mm or None, left_open="none",
        words=("clean edge", "last pass", "smooth edge", "rough edge", "edge quality"),
    ),
    Option(
        name="milling", kind="choice", metavar="WAY", group="Passes", choices=("climb", "conventional"),
        default="climb",
        help="Which way the cutter goes round the edge and in bored holes; conventional for machines with play.",
        write=lambda spec: "climb" if spec.climb else "conventional",
        words=("direction of cut", "climb", "conventional", "clockwise"),
    ),
)  # fmt: skip
