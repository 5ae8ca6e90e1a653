"""Section 5: the programs in order, each with everything to fit, to set and to look for."""

from __future__ import annotations

import html

from msgspec.structs import replace

from signgen.dialects import dialect_named
from signgen.features.edge import Bevel
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.features.tab import Tab
from signgen.instructions import MM_PER_INCH, Step, typed
from signgen.job.engraving import deepest_groove_mm
from signgen.job.facts import JobFacts, ProgramFacts
from signgen.job.outcome import SEEN_MM, Outcome, outcomes
from signgen.markup.markup import Html, Part, el, joined, raw
from signgen.pages.part_zero import typed_unit, ways_to_set
from signgen.pictures.cutter_svg import cutter_plate
from signgen.words.words import Words, words_of

AIR_MM = 30
"""How high the first pass runs over the board: higher than a clamp (common practice)."""


def programs(facts: JobFacts) -> Html:
    words = words_of(facts)
    longest = max(program.tool.stickout_mm for program in facts.programs)
    seen = outcomes(facts)
    cards = [
        _card(facts, words, number, program, seen[number - 1], longest)
        for number, program in enumerate(facts.programs, 1)
    ]
    heading = el("h2", el("i", "5"), words("run.heading"))
    return el("section", heading, _before(facts, words), _change(facts, words), *cards, id="programs")


def card_lines(facts: JobFacts, characters: int) -> list[int]:
    """How many lines of so many characters the table of each program's card takes."""
    words = words_of(facts)
    tables = (_rows(facts, words, number, program) for number, program in enumerate(facts.programs, 1))
    return [sum(-(-len(html.unescape(text)) // characters) for _, text in rows) for rows in tables]


def _before(facts: JobFacts, words: Words) -> Html:
    """What is done once, before the first program."""
    if facts.lifted:
        air = words("run.lifted", files=", ".join(dict.fromkeys(program.file for program in facts.lifted)))
    else:
        air = words("run.air", file=facts.programs[0].file, high=words.mm(AIR_MM))
    return el(
        "ul",
        tick(words("run.by_hand"), "by-hand"),
        tick(air, "air-pass"),
        tick(words("run.ready"), "ready"),
        cls="ticks across",
        id="before",
    )


def _change(facts: JobFacts, words: Words) -> Html:
    """What holds for every cutter that goes in."""
    grip = max(step.cutter.grip_mm for step in facts.set_up.steps)
    text = words("run.collet", grip=words.mm(grip, 0))
    return el("p", el("b", words("run.change")), " ", text, id="cutter-change")


def _card(facts: JobFacts, words: Words, number: int, program: ProgramFacts, outcome: Outcome, longest: float) -> Html:
    name = f"program-{number}"
    does = [part for text in program.description for part in (", ", words.told(text))][1:]
    rows = [
        el("tr", el("th", words(f"run.row.{key}")), el("td", value, id=f"{name}-{key}"))
        for key, value in _rows(facts, words, number, program)
    ]
    return el(
        "article",
        raw(cutter_plate(program.tool, number, longest, words).svg()),
        el(
            "h3",
            el("span", str(number), cls="number"),
            el("code", program.file),
            el("span", *does, cls="does"),
        ),
        el("table", *rows),
        el("ul", *_steps(facts, words, number, program, outcome), cls="ticks"),
        id=name,
    )


def _rows(facts: JobFacts, words: Words, number: int, program: ProgramFacts) -> list[tuple[str, Html]]:
    """What to fit and to set."""
    step = facts.set_up.steps[number - 1]
    cutter = step.cutter
    series = facts.spec.machine.collet_series
    fits = words("run.in_collet", collet=cutter.collet, series=series, shank=words.mm(cutter.shank_mm, 3))
    plunge = words.figure(step.plunge_mm_per_min, 0)
    feed = words("run.feeds", feed=words.figure(step.feed_mm_per_min, 0), plunge=plunge)
    if step.fastest_mm_per_min > step.feed_mm_per_min + 1:
        feed += words("run.finishing", fastest=words.figure(step.fastest_mm_per_min, 0))
    if cutter.kind == "end-mill":
        feed += words("run.climb" if facts.spec.climb else "run.conventional")
    return [
        ("cutter", joined(words.tool(program.tool))),
        ("collet", joined(fits)),
        ("speed", joined(words("run.rpm", rpm=words.figure(step.spindle_rpm, 0)))),
        ("feed", joined(feed)),
        ("depth", joined(_down(facts, words, step))),
        ("time", joined(words("run.about", span=words.span(program.minutes)), *_shares(program, words))),
    ]


def _down(facts: JobFacts, words: Words, step: Step) -> str:
    """The lowest figure that the machine's display shows, and in how many passes it gets there."""
    z = typed(round(step.lowest_z_mm, 2), False) + typed_unit(facts)
    if dialect_named(facts.spec.dialect).inches:
        z = f"{step.lowest_z_mm / MM_PER_INCH:.3f} inch"
    bite = words.mm(step.pass_mm, 2)
    if step.pass_mm <= 0:
        return words("run.depth", z=z)
    if step.passes == 0:
        return words("run.depth.steady", z=z, bite=bite)
    return (
        words("run.depth.one", z=z) if step.passes == 1 else words("run.depth.many", z=z, passes=step.passes, bite=bite)
    )


def _shares(program: ProgramFacts, words: Words) -> list[Part]:
    """Of the time, what is cutting, ways down and travel; of each operation its own time where there are several."""
    whole = sum(time.seconds for time in program.times)
    if not whole:
        return []
    cutting, entry = (sum(getattr(time, name) for time in program.times) for name in ("cutting_s", "entry_s"))
    shares = [f"{100 * part / whole:.0f}" for part in (cutting, entry, whole - cutting - entry)]
    said: list[Part] = [words("run.shares", cutting=shares[0], entry=shares[1], travel=shares[2])]
    if len(program.times) > 1:
        for time in program.times:
            said += ["; ", words.span(time.seconds / 60), ": ", words.told(time.description)]
    return said


def _steps(facts: JobFacts, words: Words, number: int, program: ProgramFacts, outcome: Outcome) -> list[Html]:
    name = f"program-{number}"
    step = facts.set_up.steps[number - 1]
    stickout = words.mm(step.cutter.stick_out_mm)
    fit, start = words("run.fit", stickout=stickout), words("run.start")
    if step.begins != "start":
        fit, start = words("run.stops_here", fit=fit), words("run.go_on")
    again = words("run.zero") if number == 1 else words("run.zero_again", place=ways_to_set(facts, number, words))
    if dialect_named(facts.spec.dialect).change == "lengths":
        fit = words("run.changer", number=step.cutter.place, stickout=stickout)
        again = words("run.lengths.first" if number == 1 else "run.lengths", number=step.cutter.place)
    return [
        tick(fit, f"{name}-fit"),
        tick(again, f"{name}-zero"),
        tick(start, f"{name}-start"),
        tick(_right(facts, words, program, outcome), f"{name}-right", f"{words('run.right')} "),
    ]


def _right(facts: JobFacts, words: Words, program: ProgramFacts, outcome: Outcome) -> str:
    """What the operator sees when the program did its work."""
    signs = []
    if program.tool.kind == "v-bit" and any(hole.sink for hole in facts.drawing.of(Hole)):
        signs.append(words("run.right.sink"))
    if outcome.engraved_mm > 0 and program.tool.kind == "v-bit":
        if any(not isinstance(groove, Stroke) for groove in facts.drawing.of(Groove)):
            signs.append(words("run.right.letters", depth=_depth(facts, words, program, outcome)))
        if facts.drawing.of(Stroke):
            signs.append(words("run.right.strokes"))
    elif outcome.engraved_mm > 0:
        signs.append(words("run.right.floors", depth=words.mm(outcome.engraved_mm)))
    if outcome.floor_mm > 0 and program.tool.kind == "v-bit" and any(r.sharp for r in facts.drawing.of(Recess)):
        signs.append(words("run.right.corners"))
    elif outcome.floor_mm > 0 and program.tool.kind == "end-mill" and not outcome.engraved_mm:
        signs.append(words("run.right.flat", depth=words.mm(outcome.floor_mm)))
    if program.tool.kind == "v-bit" and facts.drawing.first(Bevel):
        signs.append(words("run.right.bevel"))
    if outcome.letters_through:
        signs.append(words("run.right.through"))
    if outcome.holes:
        bores = [replace(hole, sink=None) for hole in outcome.holes]
        noun, sizes = words.hole_noun(outcome.holes), words.with_unit(words.hole_sizes(bores))
        signs.append(words.count("run.right.hole", len(outcome.holes), holes=noun, sizes=sizes))
    if facts.drawing.skin_mm and program is facts.programs[-1]:
        signs.append(words("run.right.skin", skin=words.mm(facts.drawing.skin_mm)))
    if outcome.cut_out:
        signs += _held(facts, words)
    if facts.face_down:
        signs.append(words("run.right.undercut" if program.tool.kind == "keyhole" else "run.right.opened"))
    return (words.listed(tuple(signs)) or words("run.right.ended")) + "."


def _held(facts: JobFacts, words: Words) -> list[str]:
    """The groove around the sign, and what holds the sign in it."""
    tabs = facts.drawing.of(Tab)
    groove = words("run.right.grooves" if facts.pieces else "run.right.groove")
    if not tabs:
        return [groove, words("run.right.loose_each" if facts.pieces else "run.right.loose")]
    height = words.mm(tabs[0].height_mm)
    if facts.pieces:
        return [groove, words("run.right.tabs_each", count=len(tabs), height=height)]
    return [groove, words.count("run.right.tabs", len(tabs), height=height)]


def _depth(facts: JobFacts, words: Words, program: ProgramFacts, outcome: Outcome) -> str:
    """How deep the letters are, and where their floor is flat."""
    half = words("run.right.half") if program.tool.angle_deg == 90 else ""
    floors = [
        *(groove.max_depth_mm for groove in facts.drawing.of(Groove)),
        *(r.depth_mm for r in facts.drawing.of(Recess)),
    ]
    limit = max(floors, default=0.0)
    deep = deepest_groove_mm(facts, facts.sense) if facts.sense else outcome.engraved_mm
    key = "up_to" if outcome.engraved_mm >= limit - SEEN_MM else "deepest"
    return words(f"run.right.{key}", half=half, depth=words.mm(deep, 2))


def tick(text: str, name: str, lead: str = "") -> Html:
    """A line of a list of things to tick off."""
    return el("li", el("b", lead) if lead else None, text, id=name)
