"""The sheet of the other set-up: the board face down, its keyholes cut before its face. Everything on it is
mirrored."""

from __future__ import annotations

from signgen.fastening.fastening import fastening_of
from signgen.features.keyhole import Keyhole
from signgen.job.back_names import back_names
from signgen.job.facts import JobFacts
from signgen.job.title import title
from signgen.markup.markup import Html, el, item, raw
from signgen.markup.page import work_sheet
from signgen.pages.part_board import thickness
from signgen.pages.part_cautions import cautions
from signgen.pages.part_checks import checks
from signgen.pages.part_cutting import while_cutting
from signgen.pages.part_fastening import holding
from signgen.pages.part_head import bring, head, sign_size, warnings
from signgen.pages.part_programs import programs
from signgen.pages.part_zero import zero
from signgen.pictures.board_svg import board_plate
from signgen.pictures.drawing_svg import sign_plate
from signgen.pictures.preview import data_uri, preview_jpeg
from signgen.words.words import Words, words_of

PLAN_MM, PLAN_HIGH_MM = 91.0, 52.0
LIE_MM, LIE_HIGH_MM = 100.0, 78.0


def back_html(back: JobFacts) -> str:
    """The page, from the doctype on, of the job of a board's back (`JobFacts.back`)."""
    words, fastening = words_of(back), fastening_of(back)
    lie = board_plate(back, fastening, LIE_MM, LIE_HIGH_MM)
    heading = words("back.heading", sign=title(back))
    page_1 = el(
        "div",
        head(back, sign_size(back), heading), warnings(back), bring(back), _pictures(back, words),
        el(
            "div",
            el("div", _board(back, words), zero(back)),
            el("div", el("figure", raw(lie.svg()), id="board-plan"), holding(back, fastening)),
            cls="two plan",
        ),
        cls="page",
    )  # fmt: skip
    page_2 = el(
        "div",
        cautions(back), programs(back),
        el("div", while_cutting(back), _then(words), cls="two"),
        checks(back, brief=True),
        cls="page",
    )  # fmt: skip
    name = words("back.title", sign=title(back))
    return work_sheet(name, page_1, page_2, language=words.language, density="dense")


def _pictures(back: JobFacts, words: Words) -> Html:
    """The back as it will look, and its measures."""
    one = back.drawing.of(Keyhole)[0]
    measures = words(
        "back.measures",
        entry=words.length(one.entry_mm, 2),
        slot=words.length(one.slot_mm, 2),
        undercut=words.length(one.undercut_mm, 2),
        travel=words.length(one.travel_mm, 2),
        depth=words.length(one.depth_mm, 2),
        shoulder=words.mm(one.depth_mm - one.free_mm - one.head_mm, 2),
    )
    plan = sign_plate(back, PLAN_MM, PLAN_HIGH_MM)
    picture = el("img", src=data_uri(preview_jpeg(back), "jpeg"), alt=words("back.alt", sign=title(back)))
    return el(
        "div",
        el("figure", picture, el("figcaption", words("back.picture")), id="picture"),
        el("figure", raw(plan.svg()), el("figcaption", measures), id="measures"),
        cls="two",
    )


def _board(back: JobFacts, words: Words) -> Html:
    """How the board lies now, and what makes it lie the same afterwards."""
    stock = back.stock
    lay = words(
        "back.lay",
        width=words.mm(stock.width_mm),
        height=words.mm(stock.height_mm),
        right=words.mm(stock.width_mm - stock.sign_x_mm - back.drawing.width_mm),
        front=words.mm(stock.sign_y_mm),
    )
    return el(
        "section",
        el("h2", el("i", "1"), words("board.heading")),
        item("board-way", words("back.way"), lay, tick=True),
        item("board-marks", words("back.marks"), words("back.stops"), tick=True),
        item("board-thickness", words("board.thickness"), *thickness(back)),
        id="board",
    )


def _then(words: Words) -> Html:
    """From here to the face."""
    keys = ("clear", "try", "turn", "face")
    items = [el("li", words(f"back.then.{key}"), id=f"then-{key}") for key in keys]
    heading = el("h2", el("i", "7"), words("after.heading"))
    return el("section", heading, el("ul", *items, cls="ticks"), id="then")


def before_the_face(facts: JobFacts) -> Html:
    """What the face's sheet says first of a sign with keyholes; nothing of others."""
    if facts.back is None:
        return Html("")
    words = words_of(facts)
    return el(
        "div",
        el("b", words("back.first")),
        " ",
        words("back.before", file=back_names(facts.spec.sheet_format)[0]),
        id="back-first",
        cls="strip",
    )
