"""Section 2: where the programs' zero lies, how to set it, and how to prove it before anything is cut."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el, item
from signgen.sheet.numbers import figure, mm
from signgen.shop.tools import Tool

SLIP_MM = 0.1
"""A slip of ordinary paper, 80 g per square metre (common practice)."""


def zero(facts: JobFacts) -> Html:
    return el(
        "section",
        el("h2", el("i", "2"), "Where zero is"),
        item("zero-xy", "X and Y", _across(facts), tick=True),
        item("zero-z", "Z", _height(facts), tick=True),
        item("zero-proof", "Prove it", _proof(facts), tick=True),
        id="zero",
    )


def _across(facts: JobFacts) -> str:
    stock = facts.stock
    point = _point(facts.programs[0].tool)
    x, y = mm(stock.sign_x_mm), mm(stock.sign_y_mm)
    if facts.spec.origin == "sign":
        return (
            f"X0 Y0 is the lower left corner of the finished sign. On the board draw a line {x} from the left edge and "
            f"one {y} from the front edge. Bring {point} over their crossing and set X and Y to 0."
        )
    return (
        f"X0 Y0 is the front left corner of the board. Bring {point} over that corner and set X and Y to 0. "
        f"The sign begins {x} to the right and {y} further back."
    )


def _height(facts: JobFacts) -> str:
    slip = f"until it just holds a slip of paper, and set Z to {figure(SLIP_MM)}"
    if facts.zero.z_mm == 0:
        return (
            "Z0 is the top of the spoilboard, that is the underside of your board. Lower the cutter onto the bare "
            f"spoilboard beside the board {slip}. Or touch the board's top and set Z to the thickness measured there "
            f"(about {figure(facts.drawing.thickness_mm, 2)}) plus the paper."
        )
    return f"Z0 is the top of the board. Lower the cutter onto the middle of the board {slip}."


def _proof(facts: JobFacts) -> str:
    if facts.outline is not None:
        over = mm(facts.spec.clearance_mm)
        return (
            f"Run {facts.outline.file} with the first cutter in: the spindle stands still, the cutter goes {over} over "
            "the board round all that will be cut, and waits at each corner until you go on. There must be board under "
            "it each time. If not, turn the board a little and set X and Y again."
        )
    far_x = facts.drawing.width_mm - facts.zero.x_mm
    far_y = facts.drawing.height_mm - facts.zero.y_mm
    return (
        f"Spindle off, cutter raised: move to X{figure(far_x)} Y{figure(far_y)}. It must stand over the sign's upper "
        "right corner with board on every side. If not, turn the board a little and set X and Y again."
    )


def _point(tool: Tool) -> str:
    return "the point of the V-bit" if tool.kind == "v-bit" else "the middle of the cutter"
