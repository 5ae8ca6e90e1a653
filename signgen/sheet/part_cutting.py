"""Section 5: what to watch and to change while the machine cuts."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el
from signgen.shop.advice import advice_for


def while_cutting(facts: JobFacts) -> Html:
    edges = {program.tool.cut for program in facts.programs if program.tool.cut}
    items = [el("li", advice.text, id=f"while-{advice.name}") for advice in advice_for(edges)]
    return el("section", el("h2", el("i", "5"), "While it cuts"), el("ul", *items, cls="plain"), id="while-cutting")
