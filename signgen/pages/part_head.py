"""The sheet's head: what is made, whether it was proved, what to bring, the picture and the measures."""

from __future__ import annotations

from signgen.features.hole import Hole
from signgen.job.facts import JobFacts
from signgen.job.finishes import finish_words
from signgen.job.title import title
from signgen.markup.markup import Html, el, joined, raw
from signgen.pages.part_checks import verdict
from signgen.pictures.plate import Figure
from signgen.pictures.preview import data_uri
from signgen.shop.collets import collet_of_tool
from signgen.words.words import Words, words_of

MOST_PLACES = 24
"""Holes listed by their places where the plan has no room for labels."""


def sign_size(facts: JobFacts) -> str:
    return words_of(facts).size(facts.drawing.width_mm, facts.drawing.height_mm)


def head(facts: JobFacts, size: str, heading: str) -> Html:
    """What is made, of what, how long it takes, and the verdict. `size`: of the sign, or of the sheet of signs."""
    words = words_of(facts)
    parts = [
        words(
            "head.about",
            size=size,
            thickness=words.mm(facts.drawing.thickness_mm, 2),
            material=words.material(facts),
        ),
        words.count("programs", len(facts.programs)),
        words("head.time", span=words.span(sum(program.minutes for program in facts.programs))),
        words.machine(facts),
    ]
    return el(
        "header",
        el("div", el("h1", heading, id="sign"), el("p", " · ".join(parts), id="sign-facts"), cls="name"),
        verdict(facts),
    )


def warnings(facts: JobFacts) -> Html:
    """Sentences to read first; nothing when there are none."""
    if not facts.warnings:
        return Html("")
    words = words_of(facts)
    told = [joined(" ", words.told(text)) for text in facts.warnings]
    return el("div", el("b", words("head.read_first")), *told, id="warnings", cls="strip")


def bring(facts: JobFacts) -> Html:
    """Everything to have at hand before the first step."""
    words = words_of(facts)
    series = facts.spec.machine.collet_series
    collets = sorted({collet_of_tool(program.tool, series).label for program in facts.programs})
    cutters = dict.fromkeys(
        words("head.bring.cutter", cutter=words.tool(program.tool), shank=words.mm(program.tool.shank_mm, 3))
        for program in facts.programs
    )
    screws, long = len(facts.screws_mm), words.mm(facts.set_up.holding.screw_mm)
    things = (
        words("head.bring.board"),
        *cutters,
        words.count("head.bring.collet", len(collets), names=words.listed(tuple(collets))),
        words("head.bring.spanners"),
        words("head.bring.screws", count=screws, long=long) if screws else words("head.bring.clamps"),
        *(words(f"head.bring.{thing}") for thing in ("measure", "slip", "vacuum", "protection", "knife")),
    )
    return el("p", el("b", words("head.bring")), " ", words.listed(things), ".", id="bring")


def pictures(facts: JobFacts, jpeg: bytes, plan: Figure) -> Html:
    """The finished sign as it will look, and its measures."""
    words = words_of(facts)
    picture = el("img", src=data_uri(jpeg, "jpeg"), alt=words("head.alt", sign=title(facts)))
    measures = _measures(facts, words, plan.complete)
    return el(
        "div",
        el("figure", picture, el("figcaption", words("head.picture")), id="picture"),
        el("figure", raw(plan.svg()), el("figcaption", measures), id="measures"),
        cls="two",
    )


def _measures(facts: JobFacts, words: Words, labelled: bool) -> str:
    """What the plan's figures mean; the places of the holes where the plan had no room for them."""
    drawing = facts.drawing
    parts = []
    if drawing.of(Hole):
        sizes = words.hole_sizes(drawing.of(Hole), "⌀ ")
        parts.append(words("head.holes", holes=f"{len(drawing.of(Hole))} {words.hole_noun(drawing.of(Hole))} {sizes}"))
    if not labelled:
        places = [
            f"({words.length(hole.x_mm, 2)}, {words.length(hole.y_mm, 2)})" for hole in drawing.of(Hole)[:MOST_PLACES]
        ]
        more = words("head.more_places") if len(drawing.of(Hole)) > MOST_PLACES else ""
        parts.append(words("head.places", places=", ".join(places), more=more))
    if drawing.cap_height_mm:
        parts.append(words("head.capitals", height=words.with_unit(words.cap_heights(drawing))))
    parts += finish_words(facts, words)
    return " ".join(parts)
