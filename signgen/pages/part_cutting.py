"""Section 6: what to watch and to change while the machine cuts."""

from __future__ import annotations

from collections.abc import Collection

from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el
from signgen.words.words import Words, words_of


def while_cutting(facts: JobFacts) -> Html:
    words = words_of(facts)
    edges = {program.tool.cut for program in facts.programs if program.tool.cut}
    items = [el("li", text, id=f"while-{key}") for key, text in advice(words, edges)]
    heading = el("h2", el("i", "6"), words("while.heading"))
    return el("section", heading, el("ul", *items, cls="plain"), id="while-cutting")


def advice(words: Words, edges: Collection[str]) -> list[tuple[str, str]]:
    """(key, text) of what is heard and seen and what to change then, by how much, for cutters with these edges
    (`Tool.cut`)."""
    chips = words("while.chips")
    if "up-cut" in edges:
        chips += words("while.chips.up_cut")
    if {"down-cut", "compression"} & set(edges):
        chips += words("while.chips.down_cut")
    keys = ("stop", "chips", "rub", "spring", "load", "begin")
    return [(key, chips if key == "chips" else words(f"while.{key}")) for key in keys]
