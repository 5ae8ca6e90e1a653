"""The page for a whole sheet of signs: its plan, which number is which sign, and the work in order."""

from __future__ import annotations

from importlib.resources import files

import numpy as np
from shapely import linestrings, multilinestrings
from shapely.geometry import box

from signgen.sheet.fastening import CLAMP_STANDS_MM, Fastening
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.keep_out import entries, tip_lines
from signgen.sheet.markup import Html, el, item, raw
from signgen.sheet.nested_plan import nested_plate
from signgen.sheet.numbers import figure, mm, size, span
from signgen.sheet.offcut import Leftover, leftover
from signgen.sheet.part_after import finishing
from signgen.sheet.part_board import _thickness
from signgen.sheet.part_cautions import cautions
from signgen.sheet.part_checks import checks, verdict
from signgen.sheet.part_checks import files as file_list
from signgen.sheet.part_cutting import while_cutting
from signgen.sheet.part_fastening import holding
from signgen.sheet.part_head import bring, warnings
from signgen.sheet.part_programs import programs
from signgen.sheet.part_zero import _height, _point
from signgen.sheet.preview import data_uri, preview_jpeg
from signgen.sheet.relief import Relief
from signgen.shop.collets import NUT_DIAMETER_MM

PLAN_MM, MOST_PLAN_MM = 180.0, 118.0
PIECES_CSS = """
#pieces ol { columns: 4; column-gap: 4mm; margin: 0; padding: 0; list-style: none; }
#pieces li { break-inside: avoid; margin: 0 0 .5mm; overflow-wrap: anywhere; }
#pieces b { display: inline-block; min-width: 6mm; }
#pieces small { color: var(--soft); }
"""


def nested_html(facts: JobFacts, title: str, lit: Relief | None = None) -> str:
    """The page, from the doctype on. It loads nothing and needs no script; every text of the user's is escaped."""
    fastening = nested_fastening(facts)
    left_over = leftover(facts.drawing, facts.stock, facts.programs[-1].tool.diameter_mm)
    plan = nested_plate(facts, fastening, left_over, PLAN_MM, MOST_PLAN_MM)
    style = files("signgen.sheet").joinpath("sheet.css").read_text("utf-8") + PIECES_CSS
    picture = el("img", src=data_uri(preview_jpeg(facts, lit), "jpeg"), alt=f"{title}, as the signs will look")
    page_1 = el(
        "div",
        _head(facts, title), warnings(facts), bring(facts),
        el("figure", raw(plan.svg()), el("figcaption", _left_over(facts, left_over)), id="sheet-plan"),
        el("div", el("div", _board(facts), _zero(facts)), el("div", holding(facts, fastening)), cls="two"),
        cls="page",
    )  # fmt: skip
    page_2 = el(
        "div",
        _pieces(facts),
        el("figure", picture, el("figcaption", "The signs, drawn from the simulated cut."), id="picture"),
        programs(facts),
        el("div", while_cutting(facts), finishing(facts), cls="two"),
        cautions(facts), checks(facts), file_list(facts),
        cls="page",
    )  # fmt: skip
    document = el(
        "html",
        el(
            "head",
            el("meta", charset="utf-8"),
            el("meta", name="viewport", content="width=device-width, initial-scale=1"),
            el("title", f"Setup sheet: {title}"),
            el("style", raw(style)),
        ),
        el("body", el("main", page_1, page_2)),
        lang="en",
    )
    return f"<!doctype html>\n{document}\n"


def nested_fastening(facts: JobFacts) -> Fastening:
    """What cutters sweep, and where clamps may stand: outside everything that the nut passes over low.

    The nut's way is taken as the rectangle round all signs, wider by the cutter and the nut, which is a little more
    than it is; ways that leave it, from where the head comes in to where it goes out, are added as they are.
    """
    drawing, stock = facts.drawing, facts.stock
    nut = NUT_DIAMETER_MM[facts.spec.machine.collet_series] / 2
    widest = max(program.tool.diameter_mm for program in facts.programs)
    reach = widest / 2 + nut
    field = box(-reach, -reach, drawing.width_mm + reach, drawing.height_mm + reach)
    cutters = [(program.tool, program.replay) for program in facts.programs]
    shift = np.array([facts.zero.x_mm, facts.zero.y_mm, facts.zero.z_mm])
    line = field
    for (tool, replay), entry in zip(cutters, entries(cutters), strict=True):
        ways = np.concatenate([tip_lines(replay.motions), entry]) + shift
        low = ways[ways[:, :, 2].min(axis=1) < drawing.thickness_mm + CLAMP_STANDS_MM, :, :2]
        beyond = (low < field.bounds[:2]) | (low > field.bounds[2:])
        outside = low[beyond.any(axis=(1, 2))]
        if len(outside):
            line = line.union(multilinestrings(linestrings(outside)).buffer(tool.radius_mm))
    line = line.convex_hull
    left, front, right, back = stock.bounds_mm
    room = (line.bounds[0] - left, line.bounds[1] - front, right - line.bounds[2], back - line.bounds[3])
    return Fastening(
        swept=drawing.edge.buffer(facts.programs[-1].tool.diameter_mm),
        clamp_line=line,
        from_sign_mm=reach,
        clamp_room_mm=max(0.0, *room),
    )


def _head(facts: JobFacts, title: str) -> Html:
    minutes = sum(program.minutes for program in facts.programs)
    count = len(facts.programs)
    words = [
        f"{size(facts.stock.width_mm, facts.stock.height_mm)}, {mm(facts.drawing.thickness_mm, 2)} "
        f"{facts.spec.material.label}",
        f"{count} program{'s' if count > 1 else ''}",
        f"about {span(minutes)} of cutting",
        facts.spec.machine.label,
    ]
    return el(
        "header",
        el("div", el("h1", title, id="sign"), el("p", " · ".join(words), id="sign-facts"), cls="name"),
        verdict(facts),
    )


def _left_over(facts: JobFacts, left_over: Leftover) -> str:
    words = f"{100 * left_over.used_ratio:.0f} % of the sheet becomes signs"
    if min(left_over.offcut_mm) >= 1:
        words += f"; an offcut of {size(*left_over.offcut_mm)} stays whole"
    waste = 100 * left_over.waste_ratio(facts.stock)
    return f"{words}; {waste:.0f} % is waste. Black: tabs. Numbers: see the list of signs."


def _board(facts: JobFacts) -> Html:
    stock = facts.stock
    lies = (
        f"A sheet of {size(stock.width_mm, stock.height_mm)}, square and flat, with its side of {mm(stock.width_mm)} "
        f"from left to right (X) and its side of {mm(stock.height_mm)} from front to back (Y), the better face up."
    )
    if facts.spec.material.grain:
        lies += " Its grain runs from left to right."
    if any(piece.turned for piece in facts.pieces):
        lies += " Some signs lie turned by a quarter, as their numbers do."
    return el(
        "section",
        el("h2", el("i", "1"), "The sheet"),
        item("board-size", "Size", lies),
        item("board-thickness", "Thickness", *_thickness(facts)),
        id="board",
    )


def _zero(facts: JobFacts) -> Html:
    stock, drawing = facts.stock, facts.drawing
    point = _point(facts.programs[0].tool)
    x, y = mm(stock.sign_x_mm), mm(stock.sign_y_mm)
    if facts.spec.origin == "stock":
        across = (
            f"X0 Y0 is the front left corner of the sheet. Bring {point} over that corner and set X and Y to 0. The "
            f"first signs begin {x} to the right and {y} further back."
        )
    else:
        across = (
            f"X0 Y0 is the lower left corner of all signs together. Draw a line {x} from the left edge and one {y} "
            f"from the front edge. Bring {point} over their crossing and set X and Y to 0."
        )
    far_x, far_y = drawing.width_mm - facts.zero.x_mm, drawing.height_mm - facts.zero.y_mm
    proof = (
        f"Spindle off, cutter raised: move to X{figure(far_x)} Y{figure(far_y)}. It must stand over the sheet, as far "
        "from its right and back edges as the plan shows. If not, turn the sheet a little and set X and Y again."
    )
    return el(
        "section",
        el("h2", el("i", "2"), "Where zero is"),
        item("zero-xy", "X and Y", across, tick=True),
        item("zero-z", "Z", _height(facts), tick=True),
        item("zero-proof", "Prove it", proof, tick=True),
        id="zero",
    )


def _pieces(facts: JobFacts) -> Html:
    """Which number is which sign, with the row of the list that it comes from."""
    rows = [
        el("li", el("b", piece.name), " ", " / ".join(piece.lines), " ", el("small", f"row {piece.row}"))
        for piece in facts.pieces
    ]
    return el("section", el("h2", "Which sign is which"), el("ol", *rows), id="pieces")
