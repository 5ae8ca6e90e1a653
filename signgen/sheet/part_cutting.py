"""Section 5: what to watch and to change while the machine cuts."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el
from signgen.sheet.words import words_of


def while_cutting(facts: JobFacts) -> Html:
    words = words_of(facts)
    lifting = any(program.tool.kind == "end-mill" and program.tool.cut == "up-cut" for program in facts.programs)
    chips = words("while.chips") + (words("while.chips.up_cut") if lifting else "")
    rows = (
        ("adjust", words("while.adjust")),
        ("pitch", words("while.pitch")),
        ("burn", words("while.burn")),
        ("chips", chips),
        ("stop", words("while.stop")),
    )
    items = [el("li", text, id=f"while-{key}") for key, text in rows]
    heading = el("h2", el("i", "5"), words("while.heading"))
    return el("section", heading, el("ul", *items, cls="plain"), id="while-cutting")
