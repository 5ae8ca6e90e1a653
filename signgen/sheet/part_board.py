"""Section 1, the board: its size, which way round it lies, how thick it really is."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, Part, el, item
from signgen.sheet.numbers import figure, mm, size

SLIGHT_MM = 0.1
"""The error by which the sheet shows what an error does: what a calliper reads with care."""
FAIR_MM = 0.2
"""Up to here a board may differ from what was asked for, where the depth of grooves hangs on it (common practice)."""
CORNERS = ("front left", "front right", "back left", "back right")


def board(facts: JobFacts) -> Html:
    return el(
        "section",
        el("h2", el("i", "1"), "The board"),
        item("board-size", "Size", *_size(facts)),
        item("board-way", "Which way round", _way_round(facts)),
        item("board-thickness", "Thickness", *_thickness(facts)),
        id="board",
    )


def _size(facts: JobFacts) -> list[Part]:
    stock, least, drawing = facts.stock, facts.least, facts.drawing
    if facts.spec.board_mm is None:
        room = "the cut around it and screws" if facts.screws_mm else "the cut around it"
        return [
            "At least ",
            el("b", size(least.width_mm, least.height_mm)),
            f", {mm(drawing.thickness_mm, 2)} thick, square and flat. The sign lies {mm(least.sign_x_mm)} from its ",
            f"left edge and {mm(least.sign_y_mm)} from its front edge, with room for {room}. A larger board may reach ",
            "further right and back.",
        ]
    right = stock.width_mm - stock.sign_x_mm - drawing.width_mm
    behind = stock.height_mm - stock.sign_y_mm - drawing.height_mm
    text = (
        f"Your board of {size(stock.width_mm, stock.height_mm)} holds the sign: {mm(right)} are left to the right of "
        f"it and {mm(behind)} behind it. "
    )
    if stock.width_mm < least.width_mm or stock.height_mm < least.height_mm:
        return [text, f"With {size(least.width_mm, least.height_mm)} it would have room for screws all round."]
    return [text, f"The least that would do is {size(least.width_mm, least.height_mm)}."]


def _way_round(facts: JobFacts) -> str:
    stock = facts.stock
    text = (
        f"Lay it with its side of {mm(stock.width_mm)} from left to right (X) and its side of {mm(stock.height_mm)} "
        "from front to back (Y), the better face up. The letters then stand upright for you at the machine's front."
    )
    if facts.spec.material.grain:
        text += " The grain of the face runs from left to right, as the arrows show."
    return text


def _thickness(facts: JobFacts) -> list[Part]:
    """Boxes for four readings, and what a difference does."""
    boxes = el("span", *(el("span", el("u"), corner, cls="reading") for corner in CORNERS), cls="readings")
    made = f"Made for {mm(facts.drawing.thickness_mm, 2)}. Measure all four corners: "
    effect = _if_zero_below(facts) if facts.zero.z_mm == 0 else _if_zero_on_top(facts)
    return [made, boxes, el("span", effect, id="thickness-error")]


def _if_zero_below(facts: JobFacts) -> str:
    """The depth of grooves follows the board's thickness; their width by twice the tangent of half the bit's angle."""
    bit = facts.spec.v_bit
    wider = ""
    if facts.drawing.grooves:
        angle = bit.angle_deg or 0.0
        wider = (
            f" and {mm(2 * SLIGHT_MM * bit.slope, 2)} wider "
            f"(2 × {figure(SLIGHT_MM)} × tan {figure(angle / 2)}° with a bit of {figure(angle)}°)"
        )
    return (
        f"Z zero lies under the board: where it is {mm(SLIGHT_MM)} thicker, grooves get {mm(SLIGHT_MM)} deeper{wider}; "
        f"where it is thinner, shallower and narrower. More than {mm(FAIR_MM)} off: make the programs again with "
        "--thickness."
    )


def _if_zero_on_top(facts: JobFacts) -> str:
    deep = mm(facts.spec.breakthrough_mm, 2)
    return (
        f"Z zero lies on the board's top, so grooves come out right. But cuts end {deep} below a board of "
        f"{mm(facts.drawing.thickness_mm, 2)}: one that is thicker by more than that is not cut through, and tabs get "
        "thicker or thinner by the difference. Make the programs again with --thickness then."
    )
