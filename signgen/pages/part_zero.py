"""Section 2: where the programs' zero lies, how to set it, and how to prove it before anything is cut."""

from __future__ import annotations

from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el, item
from signgen.numbers import figure
from signgen.shop.tools import Tool
from signgen.words.words import Words, words_in, words_of

SLIP_MM = 0.1
"""A slip of ordinary paper, 80 g per square metre (common practice)."""


def zero(facts: JobFacts) -> Html:
    words = words_of(facts)
    return el(
        "section",
        el("h2", el("i", "2"), words("zero.heading")),
        item("zero-xy", words("zero.across"), _across(facts, words), tick=True),
        item("zero-z", words("zero.height"), height(facts), tick=True),
        item("zero-proof", words("zero.proof"), proof(facts, words), tick=True),
        id="zero",
    )


def _across(facts: JobFacts, words: Words) -> str:
    stock = facts.stock
    key = "zero.sign" if facts.spec.origin == "sign" else "zero.stock"
    if facts.face_down:
        right = words.mm(stock.width_mm - stock.sign_x_mm - facts.drawing.width_mm)
        point = bit_point(facts.programs[0].tool, words)
        return words(f"back.{key}", point=point, x=right, y=words.mm(stock.sign_y_mm))
    point = bit_point(facts.programs[0].tool, words)
    return words(key, point=point, x=words.mm(stock.sign_x_mm), y=words.mm(stock.sign_y_mm))


def height(facts: JobFacts) -> str:
    words = words_of(facts)
    # what is typed into the machine keeps its point
    slip = words("zero.slip", slip=figure(SLIP_MM))
    if facts.zero.z_mm == 0:
        return words("zero.bottom", slip=slip, thickness=words.figure(facts.drawing.thickness_mm, 2))
    return words("zero.top", slip=slip)


def proof(facts: JobFacts, words: Words) -> str:
    if facts.outline is not None:
        return words("zero.outline", file=facts.outline.file, over=words.mm(facts.spec.clearance_mm))
    far_x = facts.drawing.width_mm - facts.zero.x_mm
    far_y = facts.drawing.height_mm - facts.zero.y_mm
    return words("zero.far", x=figure(far_x), y=figure(far_y))


def bit_point(tool: Tool, words: Words | None = None) -> str:
    words = words or words_in("en")
    return words("zero.point.v-bit" if tool.kind == "v-bit" else "zero.point.other")
