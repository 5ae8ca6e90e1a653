"""The sheet that the operator holds: one self-contained page that prints on two sides, in the order of the work."""

from __future__ import annotations

from signgen.fastening.fastening import Fastening, fastening_of
from signgen.job.facts import JobFacts
from signgen.job.title import title
from signgen.markup.markup import el, raw
from signgen.markup.page import work_sheet
from signgen.pages.back_sheet import before_the_face
from signgen.pages.density import DENSITIES, Density, blocks_mm, sides
from signgen.pages.part_after import finishing
from signgen.pages.part_board import board
from signgen.pages.part_cautions import cautions
from signgen.pages.part_checks import checks
from signgen.pages.part_checks import files as file_list
from signgen.pages.part_cutting import while_cutting
from signgen.pages.part_fastening import holding
from signgen.pages.part_head import bring, head, pictures, sign_size, warnings
from signgen.pages.part_programs import programs
from signgen.pages.part_zero import zero
from signgen.pictures.board_svg import board_plate
from signgen.pictures.drawing_svg import sign_plate
from signgen.pictures.plate import Figure
from signgen.pictures.preview import preview_jpeg
from signgen.pictures.relief import Relief
from signgen.words.words import words_of

PLAN_MM, LIE_MM = 91.0, 100.0
"""Widths of the sign's plan and of the board's."""


def setup_html(facts: JobFacts, lit: Relief | None = None) -> str:
    """The page, from the doctype on. It loads nothing and needs no script; every text of the user's is escaped.

    `lit`: `preview.sign_relief(facts)` where it is at hand.
    """
    words, fastening = words_of(facts), fastening_of(facts)
    density, plan, lie = _set(facts, fastening)
    page_1 = el(
        "div",
        head(facts, sign_size(facts), title(facts)), before_the_face(facts), warnings(facts), bring(facts),
        pictures(facts, preview_jpeg(facts, lit), plan),
        el(
            "div",
            el("div", board(facts), zero(facts)),
            el("div", el("figure", raw(lie.svg()), id="board-plan"), holding(facts, fastening)),
            cls="two plan",
        ),
        cls="page",
    )  # fmt: skip
    page_2 = el(
        "div",
        cautions(facts), programs(facts),
        el("div", while_cutting(facts), finishing(facts), cls="two"),
        checks(facts, brief=density.brief), file_list(facts),
        cls="page",
    )  # fmt: skip
    heading = words("head.title", sign=title(facts))
    return work_sheet(heading, page_1, page_2, language=words.language, density=density.css)


def _set(facts: JobFacts, fastening: Fastening) -> tuple[Density, Figure, Figure]:
    """The loosest setting that prints on two sides, or else the closest, with both plans drawn for it."""
    for density in DENSITIES:
        plan = sign_plate(facts, PLAN_MM, density.plan_mm)
        lie = board_plate(facts, fastening, LIE_MM, density.board_mm)
        if sides(blocks_mm(facts, density, plan.height, lie.height)) <= 2:
            break
    return density, plan, lie
