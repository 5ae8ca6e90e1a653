"""Section 5: what to watch and to change while the machine cuts."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.markup import Html, el

ADJUST = "The feeds are a beginning: start at about 80 % by the override and go up while the sound stays even."
PITCH = (
    "The spindle's pitch dips: the load is too high. Feed down first; "
    "then look at the cutter's edge and the extraction."
)
BURN = "It squeals, or the cut browns or melts: the cutter rubs. Feed up or speed down; blunt cutters burn too."
CHIPS = "Chips, not dust, are right. If they stay in the groove: hold, stop the spindle, clear them."
UP_CUT = " An up-cut cutter lifts them out by itself."
STOP = "Something moved or sounds wrong: feed hold, spindle off. Danger: emergency stop at once, then think."


def while_cutting(facts: JobFacts) -> Html:
    deep_cuts = any(program.tool.kind == "end-mill" for program in facts.programs)
    rows = (
        ("adjust", ADJUST),
        ("pitch", PITCH),
        ("burn", BURN),
        ("chips", CHIPS + (UP_CUT if deep_cuts else "")),
        ("stop", STOP),
    )
    items = [el("li", text, id=f"while-{key}") for key, text in rows]
    return el("section", el("h2", el("i", "5"), "While it cuts"), el("ul", *items, cls="plain"), id="while-cutting")
