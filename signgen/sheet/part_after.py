"""Section 6: from the last program to the finished sign."""

from __future__ import annotations

from signgen.sheet.job_facts import JobFacts
from signgen.sheet.legibility import reading_note
from signgen.sheet.markup import Html, el
from signgen.sheet.numbers import mm


def finishing(facts: JobFacts) -> Html:
    holes = ", holes on both sides too," if facts.drawing.holes else ""
    if facts.spec.material.grain:
        sand = "Sand the face along the grain with paper on a flat block, 180 then 240: the rims stay sharp."
        seal = "Outdoors: seal every edge too, in holes as well; water comes in there first."
    else:
        sand = "A face that may be sanded: paper on a flat block, 180 then 240, so that the rims stay sharp."
        seal = "Outdoors: a board that takes up water wants every edge and hole sealed too."
    rows = (
        ("clear", "When the spindle stands still, move the head clear and vacuum."),
        ("tabs", _tabs(facts)),
        ("edges", f"Take the sharp edges off{holes} with fine paper."),
        ("sand", sand),
        ("paint", "Painted letters: seal face and grooves, paint the grooves, let dry, sand the face clean."),
        ("seal", seal),
    )
    note = reading_note(facts.drawing)
    items = [el("li", text, id=f"after-{key}") for key, text in (*rows, *([("hang", note)] if note else []))]
    return el("section", el("h2", el("i", "6"), "Afterwards"), el("ul", *items, cls="ticks"), id="finishing")


def _tabs(facts: JobFacts) -> str:
    tabs = facts.drawing.tabs
    if not tabs:
        return "No tabs hold the sign: lift it out only when everything stands still."
    count = f"{len(tabs)} tabs" if len(tabs) > 1 else "tab"
    each = "each" if facts.pieces else "the"
    return (
        f"Hold {each} sign and cut the {count} (black on the plan, {mm(tabs[0].width_mm)} wide, "
        f"{mm(tabs[0].height_mm)} high, at the underside) with a knife, away from you, or a fine saw; file flush."
    )
