"""Section 7: the usual cautions, the material's own, and what comes before this sheet."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el

FIRST = (
    "The machine's manual, the rules of your workshop and local law come first; this sheet only adds to them. Who is "
    "new to the machine works beside somebody who knows it; wiring and fixed extraction are for licensed people."
)
GENERAL = (
    ("eyes", "Eyes and ears: safety glasses and hearing protection from the first start to the last stop."),
    ("dust", "Dust: extract at the cutter and wear a fitting mask, also when sanding; fine dust harms the lungs."),
    ("hands", "Hands, hair, sleeves, gloves and jewellery stay away from turning cutters; still ones are sharp too."),
    ("clamps", "Clamps and screws: before every start check that they are tight and out of the way."),
    ("fire", "Fire: a rubbing cutter lights dust and chips. Extinguisher at hand; look again half an hour later."),
    ("attended", "Never leave a running machine, not even for a minute."),
)
"""Usual cautions of the trade; the figures behind them are in check-values section 14."""


def cautions(facts: JobFacts) -> Html:
    material = facts.spec.material
    items = [el("li", text, id=f"caution-{key}") for key, text in GENERAL]
    if material.cautions:
        own = [el("span", f" {text}", id=f"caution-material-{n}") for n, text in enumerate(material.cautions, 1)]
        items.append(el("li", f"{material.label}:", *own, id="caution-material"))
    return el(
        "section",
        el("h2", el("i", "7"), "Cautions"),
        el("p", el("b", FIRST), id="caution-first"),
        el("ul", *items, cls="plain columns"),
        id="cautions",
    )
