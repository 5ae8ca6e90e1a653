"""The page for a whole sheet of signs: its plan, which number is which sign, and the work in order."""

from __future__ import annotations

from signgen.fastening.fastening import fastening_of
from signgen.fastening.offcut import Leftover, leftover
from signgen.job.facts import JobFacts
from signgen.job.title import title as title_of
from signgen.markup.markup import Html, el, item, raw
from signgen.markup.page import work_sheet
from signgen.pages.part_after import finishing
from signgen.pages.part_board import thickness
from signgen.pages.part_cautions import cautions
from signgen.pages.part_checks import checks
from signgen.pages.part_checks import files as file_list
from signgen.pages.part_cutting import while_cutting
from signgen.pages.part_fastening import holding
from signgen.pages.part_head import bring, head, warnings
from signgen.pages.part_programs import programs
from signgen.pages.part_zero import bit_point, height, proof
from signgen.pictures.nested_plan import nested_plate
from signgen.pictures.preview import data_uri, preview_jpeg
from signgen.pictures.relief import Relief
from signgen.words.words import words_of

PLAN_MM, MOST_PLAN_MM = 180.0, 118.0
PIECES_CSS = """
#pieces ol { columns: 4; column-gap: 4mm; margin: 0; padding: 0; list-style: none; }
#pieces li { break-inside: avoid; margin: 0 0 .5mm; overflow-wrap: anywhere; }
#pieces b { display: inline-block; min-width: 6mm; }
#pieces small { color: var(--soft); }
#picture img { max-height: 16mm; }
"""


def nested_html(facts: JobFacts, lit: Relief | None = None) -> str:
    """The page, from the doctype on. It loads nothing and needs no script; every text of the user's is escaped."""
    words, title, fastening = words_of(facts), title_of(facts), fastening_of(facts)
    left_over = leftover(facts.drawing, facts.stock, facts.programs[-1].tool.diameter_mm)
    plan = nested_plate(facts, fastening, left_over, PLAN_MM, MOST_PLAN_MM)
    picture = el("img", src=data_uri(preview_jpeg(facts, lit), "jpeg"), alt=words("nested.alt", title=title))
    page_1 = el(
        "div",
        head(facts, words.size(facts.stock.width_mm, facts.stock.height_mm), title), warnings(facts), bring(facts),
        el("figure", raw(plan.svg()), el("figcaption", _left_over(facts, left_over)), id="sheet-plan"),
        el("div", el("div", _board(facts), _zero(facts)), el("div", holding(facts, fastening)), cls="two"),
        cls="page",
    )  # fmt: skip
    page_2 = el(
        "div",
        _pieces(facts),
        el("figure", picture, el("figcaption", words("nested.picture")), id="picture"),
        cautions(facts), programs(facts),
        el("div", while_cutting(facts), finishing(facts), cls="two"),
        checks(facts, brief=True), file_list(facts),
        cls="page",
    )  # fmt: skip
    heading = words("head.title", sign=title)
    return work_sheet(heading, page_1, page_2, language=words.language, density="dense densest", style=PIECES_CSS)


def _left_over(facts: JobFacts, left_over: Leftover) -> str:
    words = words_of(facts)
    offcut = ""
    if min(left_over.offcut_mm) >= 1:
        offcut = words("nested.offcut", size=words.size(*left_over.offcut_mm))
    return words(
        "nested.left_over",
        used=words.figure(100 * left_over.used_ratio, 0),
        waste=words.figure(100 * left_over.waste_ratio(facts.stock), 0),
        offcut=offcut,
    )


def _board(facts: JobFacts) -> Html:
    words, stock = words_of(facts), facts.stock
    lies = words(
        "nested.lies",
        size=words.size(stock.width_mm, stock.height_mm),
        width=words.mm(stock.width_mm),
        height=words.mm(stock.height_mm),
    )
    if facts.spec.material.grain:
        lies += words("nested.grain")
    if any(piece.turned for piece in facts.pieces):
        lies += words("nested.turned")
    return el(
        "section",
        el("h2", el("i", "1"), words("nested.board")),
        item("board-size", words("board.size"), lies),
        item("board-thickness", words("board.thickness"), *thickness(facts)),
        id="board",
    )


def _zero(facts: JobFacts) -> Html:
    words, stock = words_of(facts), facts.stock
    key = "nested.zero.stock" if facts.spec.origin == "stock" else "nested.zero.signs"
    point = bit_point(facts.programs[0].tool, words)
    across = words(key, point=point, x=words.mm(stock.sign_x_mm), y=words.mm(stock.sign_y_mm))
    return el(
        "section",
        el("h2", el("i", "2"), words("zero.heading")),
        item("zero-xy", words("zero.across"), across, tick=True),
        item("zero-z", words("zero.height"), height(facts), tick=True),
        item("zero-proof", words("zero.proof"), proof(facts, words), tick=True),
        id="zero",
    )


def _pieces(facts: JobFacts) -> Html:
    """Which number is which sign, with the row of the list that it comes from."""
    words = words_of(facts)
    rows = [
        el(
            "li",
            el("b", piece.name), " ", " / ".join(piece.lines), " ", el("small", words("nested.row", row=piece.row)),
        )
        for piece in facts.pieces
    ]  # fmt: skip
    return el("section", el("h2", words("nested.which")), el("ol", *rows), id="pieces")
