"""Section 4: the usual cautions, the material's own, and what comes before this sheet."""

from __future__ import annotations

from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el
from signgen.words.words import words_of

GENERAL = ("eyes", "dust", "hands", "clamps", "fire", "attended")
"""Usual cautions of the trade (common practice)."""


def cautions(facts: JobFacts) -> Html:
    words = words_of(facts)
    items = [el("li", words(f"caution.{key}"), id=f"caution-{key}") for key in GENERAL]
    if facts.spec.material.cautions:
        own = [
            el("span", " ", words.told(text), id=f"caution-material-{n}")
            for n, text in enumerate(facts.spec.material.cautions, 1)
        ]
        items.append(el("li", f"{words.material(facts)}:", *own, id="caution-material"))
    return el(
        "section",
        el("h2", el("i", "4"), words("caution.heading")),
        el("p", el("b", words("caution.first")), id="caution-first"),
        el("ul", *items, cls="plain columns"),
        id="cautions",
    )
