"""Section 4: the programs in order, each with everything to fit, to set and to look for."""

from __future__ import annotations

from dataclasses import replace

from signgen.sheet.cutter_svg import cutter_plate
from signgen.sheet.hole_words import hole_noun, hole_sizes
from signgen.sheet.job_facts import JobFacts, ProgramFacts
from signgen.sheet.markup import Html, el, raw
from signgen.sheet.numbers import figure, joined_words, mm, span
from signgen.sheet.outcome import SEEN_MM, Outcome, outcomes
from signgen.shop.collets import LEAST_GRIP_RATIO, collet_of_tool

AIR_MM = 30
"""How high the first pass runs over the board: higher than a clamp (common practice)."""


def programs(facts: JobFacts) -> Html:
    longest = max(program.tool.stickout_mm for program in facts.programs)
    seen = outcomes(facts)
    cards = [
        _card(facts, number, program, seen[number - 1], longest) for number, program in enumerate(facts.programs, 1)
    ]
    heading = el("h2", el("i", "4"), "The programs, in this order")
    return el("section", heading, _before(facts), _change(facts), *cards, id="programs")


def _before(facts: JobFacts) -> Html:
    """What is done once, before the first program."""
    first = facts.programs[0].file
    if facts.lifted:
        files = ", ".join(dict.fromkeys(program.file for program in facts.lifted))
        air = f"Air pass: before each program run it in the air ({files}) and watch where it goes."
    else:
        air = f"Air pass: run {first} once with Z set {AIR_MM} mm too high and watch where it goes."
        air += " Then set Z right again."
    return el(
        "ul",
        tick(
            "Empty the extractor. Run spindle and extraction once by hand: no rattle, no wobble, good suction.",
            "by-hand",
        ),
        tick(air, "air-pass"),
        tick("Glasses, ears, mask; sleeves and hair tied back; emergency stop within reach.", "ready"),
        cls="ticks across",
        id="before",
    )


def _change(facts: JobFacts) -> Html:
    """What holds for every cutter that goes in."""
    series = facts.spec.machine.collet_series
    grip = max(collet_of_tool(program.tool, series).grip_mm for program in facts.programs)
    text = (
        "Spindle locked off; collet, nut and taper clean. The collet's size is etched on its face. At least "
        f"{figure(100 * LEAST_GRIP_RATIO, 0)} % of the collet's length ({mm(grip, 0)}) grip the shank, and the cutter "
        "does not touch the bottom of the taper. No longer stick-out than stated, for short is stiff."
    )
    return el("p", el("b", "Whenever a cutter goes in "), text, id="cutter-change")


def _card(facts: JobFacts, number: int, program: ProgramFacts, outcome: Outcome, longest: float) -> Html:
    name = f"program-{number}"
    tool, cutting = program.tool, program.cutting
    collet = collet_of_tool(tool, facts.spec.machine.collet_series)
    feed = f"{figure(cutting.feed_mm_per_min, 0)} mm/min, {figure(cutting.plunge_mm_per_min, 0)} straight down"
    rows = (
        ("cutter", "Cutter", tool.label),
        ("collet", "Collet", f"{collet.label} (size {collet.series}) for its {mm(tool.shank_mm, 3)} shank"),
        ("speed", "Spindle", f"{figure(cutting.spindle_rpm, 0)} rpm"),
        ("feed", "Feed", feed),
        ("time", "Time", f"about {span(program.minutes)}"),
    )
    table = el("table", *(el("tr", el("th", label), el("td", value, id=f"{name}-{key}")) for key, label, value in rows))
    return el(
        "article",
        raw(cutter_plate(tool, number, longest).svg()),
        el(
            "h3",
            el("span", str(number), cls="number"),
            el("code", program.file),
            el("span", joined_words(program.does), cls="does"),
        ),
        table,
        el("ul", *_steps(facts, number, program, outcome), cls="ticks"),
        id=name,
    )


def _steps(facts: JobFacts, number: int, program: ProgramFacts, outcome: Outcome) -> list[Html]:
    name = f"program-{number}"
    if number == 1:
        again = "Set X, Y and Z as in section 2."
    else:
        again = (
            "Set only Z again, as in section 2, for this cutter has another length. X and Y stay as they are; "
            "the board is not moved."
        )
    return [
        tick(f"Fit the cutter, {mm(program.tool.stickout_mm)} out of the collet.", f"{name}-fit"),
        tick(again, f"{name}-zero"),
        tick("Extraction on, head over the board. Start, hand at feed hold.", f"{name}-start"),
        tick(_right(facts, program, outcome), f"{name}-right", "Right when "),
    ]


def _right(facts: JobFacts, program: ProgramFacts, outcome: Outcome) -> str:
    """What the operator sees when the program did its work."""
    words = []
    if program.tool.kind == "v-bit" and any(hole.sink for hole in facts.drawing.holes):
        words.append("a screw's head lies flush in its seat")
    if outcome.engraved_mm > 0 and program.tool.kind == "v-bit":
        words.append(f"letters have sharp corners and clean rims{_depth(facts, program, outcome)}")
    elif outcome.engraved_mm > 0:
        words.append(f"the floors of wide letters are flat, {mm(outcome.engraved_mm)} deep")
    if outcome.holes:
        many = len(outcome.holes) > 1
        bores = [replace(hole, sink=None) for hole in outcome.holes]
        some = f"{len(outcome.holes) if many else 'the'} {hole_noun(outcome.holes)} of {hole_sizes(bores)} mm"
        words.append(f"{some} show{'' if many else 's'} the spoilboard")
    if outcome.cut_out:
        tabs = facts.drawing.tabs
        sign, held = ("every sign", "the signs are") if facts.pieces else ("the sign", "the sign is")
        words.append(f"the groove around {sign} shows the spoilboard")
        words.append(
            f"{held} held by {len(tabs)} tab{'s' if len(tabs) > 1 else ''}, {mm(tabs[0].height_mm)} high"
            if tabs
            else f"{held} loose: keep it from moving while the spindle turns"
        )
    return (joined_words(tuple(words)) or "the program has run to its end") + "."


def _depth(facts: JobFacts, program: ProgramFacts, outcome: Outcome) -> str:
    """How deep the letters are, and where their floor is flat."""
    ratio = ", half as deep as wide" if program.tool.angle_deg == 90 else ""
    limit = max(groove.max_depth_mm for groove in facts.drawing.grooves)
    if outcome.engraved_mm >= limit - SEEN_MM:
        return f"{ratio} up to {mm(outcome.engraved_mm)}, where the floor is flat"
    return f"{ratio}, {mm(outcome.engraved_mm)} at the deepest"


def tick(text: str, name: str, lead: str = "") -> Html:
    """A line of a list of things to tick off."""
    return el("li", el("b", lead) if lead else None, text, id=name)
