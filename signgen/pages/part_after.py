"""Section 7: from the last program to the finished sign."""

from __future__ import annotations

from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.raised import Raised
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.job.finishes import sunk_letters
from signgen.job.legibility import reading_note
from signgen.markup.markup import Html, el, joined
from signgen.spec.keys.papers import NO_TEMPLATE
from signgen.template.template import CHECK_MM, template_names
from signgen.words.words import Words, words_of


def finishing(facts: JobFacts) -> Html:
    words = words_of(facts)
    grain = ".grain" if facts.spec.material.grain else ""
    rows = [
        ("clear", words("after.clear")),
        ("tabs", _tabs(facts, words)),
        ("edges", words("after.edges.holes" if facts.drawing.of(Hole) else "after.edges")),
        ("sand", words(f"after.sand{grain}")),
        *((f"paint{n or ''}", text) for n, text in enumerate(_paint(facts, words))),
        ("seal", words(f"after.seal{grain}")),
    ]
    if facts.spec.template != NO_TEMPLATE:
        rows.append(("template", words("after.template", file=template_names(facts)[0], bar=words.mm(CHECK_MM))))
    if note := reading_note(facts.drawing):
        rows.append(("hang", joined(*[part for text in note for part in (" ", words.told(text))][1:])))
    items = [el("li", text, id=f"after-{key}") for key, text in rows]
    heading = el("h2", el("i", "7"), words("after.heading"))
    return el("section", heading, el("ul", *items, cls="ticks"), id="finishing")


def _paint(facts: JobFacts, words: Words) -> list[str]:
    """How letters take colour, as they are made; what is cut through has nothing to paint."""
    drawing = facts.drawing
    sunk = any(not drawing.is_through(letter) for letter in sunk_letters(drawing))
    keys = [
        ("after.paint", bool(drawing.of(Groove))),
        ("after.paint.flat", sunk),
        ("after.paint.raised", bool(drawing.of(Raised))),
    ]
    return [words(key) for key, wanted in keys if wanted]


def _tabs(facts: JobFacts, words: Words) -> str:
    tabs = facts.drawing.of(Tab)
    if facts.drawing.skin_mm:
        return words("after.skin", skin=words.mm(facts.drawing.skin_mm))
    if facts.drawing.is_blank:
        return words("after.blank")
    if not tabs:
        return words("after.no_tabs")
    width, height = words.mm(tabs[0].width_mm), words.mm(tabs[0].height_mm)
    if facts.pieces:
        return words("after.tabs_each", count=len(tabs), width=width, height=height)
    return words.count("after.tabs", len(tabs), width=width, height=height)
