"""The sheet's head: what is made, whether it was proved, what to bring, the picture and the measures."""

from __future__ import annotations

from signgen.sheet.hole_words import hole_noun, hole_sizes
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.legibility import cap_heights
from signgen.sheet.markup import Html, el, raw
from signgen.sheet.numbers import figure, joined_words, mm, size, span
from signgen.sheet.part_checks import verdict
from signgen.sheet.plate import Plate
from signgen.sheet.preview import data_uri
from signgen.shop.collets import collet_of_tool

LONGEST_TITLE = 60
MOST_PLACES = 24
"""Holes listed by their places where the plan has no room for labels."""


def title(facts: JobFacts) -> str:
    """The sign's lines as one, short enough for the head of a page."""
    lines = " / ".join(line.strip() for line in facts.spec.text.lines if line.strip())
    return lines if len(lines) <= LONGEST_TITLE else lines[: LONGEST_TITLE - 1] + "…"


def head(facts: JobFacts) -> Html:
    drawing = facts.drawing
    minutes = sum(program.minutes for program in facts.programs)
    count = len(facts.programs)
    words = [
        f"{size(drawing.width_mm, drawing.height_mm)}, {mm(drawing.thickness_mm, 2)} {facts.spec.material.label}",
        f"{count} program{'s' if count > 1 else ''}",
        f"about {span(minutes)} of cutting",
        facts.spec.machine.label,
    ]
    return el(
        "header",
        el("div", el("h1", title(facts), id="sign"), el("p", " · ".join(words), id="sign-facts"), cls="name"),
        verdict(facts),
    )


def warnings(facts: JobFacts) -> Html:
    """Sentences to read first; nothing when there are none."""
    if not facts.warnings:
        return Html("")
    return el("div", el("b", "Read first: "), " ".join(facts.warnings), id="warnings", cls="strip")


def bring(facts: JobFacts) -> Html:
    """Everything to have at hand before the first step."""
    series = facts.spec.machine.collet_series
    collets = sorted({collet_of_tool(program.tool, series).label for program in facts.programs})
    cutters = list(dict.fromkeys(f"{p.tool.label} ({mm(p.tool.shank_mm, 3)} shank)" for p in facts.programs))
    hold = f"{len(facts.screws_mm)} wood screws" if facts.screws_mm else "clamps or double-sided tape"
    things = (
        "the board", *cutters,
        f"collet{'s' if len(collets) > 1 else ''} {joined_words(tuple(collets))}", "both spanners", hold,
        "calliper, pencil and square", "a slip of paper", "vacuum",
        "eye and ear protection and a dust mask", "knife and file",
    )  # fmt: skip
    return el("p", el("b", "Bring "), joined_words(things), ".", id="bring")


def pictures(facts: JobFacts, jpeg: bytes, plan: Plate) -> Html:
    """The finished sign as it will look, and its measures."""
    picture = el("img", src=data_uri(jpeg, "jpeg"), alt=f"The finished sign: {title(facts)}")
    return el(
        "div",
        el("figure", picture, el("figcaption", "The finished sign, drawn from the simulated cut."), id="picture"),
        el("figure", raw(plan.svg()), el("figcaption", _measures(facts, plan.complete)), id="measures"),
        cls="two",
    )


def _measures(facts: JobFacts, labelled: bool) -> str:
    """What the plan's figures mean; the places of the holes where the plan had no room for them."""
    drawing = facts.drawing
    words = []
    if drawing.holes:
        holes = f"{len(drawing.holes)} {hole_noun(drawing.holes)} {hole_sizes(drawing.holes, '⌀ ')}"
        words.append(f"{holes}, middles from the lower left corner.")
    if not labelled:
        places = [f"({figure(hole.x_mm, 2)}, {figure(hole.y_mm, 2)})" for hole in drawing.holes[:MOST_PLACES]]
        more = " and more in report.json" if len(drawing.holes) > MOST_PLACES else ""
        words.append(f"Holes at {', '.join(places)}{more}.")
    if drawing.cap_height_mm:
        words.append(f"Capitals {cap_heights(drawing)}\N{NO-BREAK SPACE}mm high.")
    return " ".join(words)
