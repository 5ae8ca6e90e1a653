"""Section 3: how the board is held, and where nothing may stand."""

from __future__ import annotations

from signgen.dialects import dialect_named
from signgen.fastening.fastening import Fastening
from signgen.instructions import MM_PER_INCH
from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el, item
from signgen.numbers import figure
from signgen.pages.part_zero import typed_unit
from signgen.program.travel import LOW_MM
from signgen.shop.stock import GAP_MM
from signgen.words.words import Words, words_of

LEAST_SAID_MM = 0.5
"""Less room than that is none."""


def holding(facts: JobFacts, fastening: Fastening) -> Html:
    words = words_of(facts)
    told = facts.set_up
    deep = told.into_spoilboard_mm
    flat = words("hold.flat.back") if facts.face_down else words("hold.flat", deep=words.mm(deep, 2))
    return el(
        "section",
        el("h2", el("i", "3"), words("hold.heading")),
        item("spoilboard", words("hold.spoilboard"), flat, tick=True),
        item("under", words("hold.under"), words("hold.metal", deep=words.mm(told.metal_free_mm))),
        None if facts.drawing.is_blank else _screws(facts, words),
        item("clamps", words("hold.clamps"), _clamps(facts, fastening, words)),
        id="fastening",
    )


def _screws(facts: JobFacts, words: Words) -> Html:
    label = words("hold.screws")
    held = facts.set_up.holding
    if not held.screws_mm:
        least, stock = facts.least, facts.stock
        # A board of the least size has room for heads; what takes it is a cutter's shank or the nut.
        small = stock.width_mm < least.width_mm or stock.height_mm < least.height_mm
        size = words.size(least.width_mm, least.height_mm)
        return item("screws", label, words("hold.no_screws", size=size) if small else words("hold.no_screws.here"))
    # typed into the machine, so with a point whatever the language, and in its unit
    inches = dialect_named(facts.spec.dialect).inches
    shown = in_inches if inches else figure
    rows = [
        el("span", el("b", str(number)), f" X{shown(x)} Y{shown(y)}{typed_unit(facts)}", cls="place")
        for number, (x, y) in enumerate(held.screws_mm, 1)
    ]
    return item(
        "screws",
        label,
        words("hold.places.inch") if inches else words("hold.places"),
        el("span", *rows, cls="places", id="screw-places"),
        words("hold.heads", long=words.mm(held.screw_mm), head=words.mm(held.head_mm), gap=words.mm(GAP_MM)),
        tick=True,
    )


def in_inches(value_mm: float) -> str:
    """To a thousandth, which is finer than anybody drives a screw."""
    return figure(value_mm / MM_PER_INCH, 3)


def _clamps(facts: JobFacts, fastening: Fastening, words: Words) -> str:
    if facts.drawing.is_blank:
        high = words.mm(facts.set_up.holding.clamp_stands_mm, 0)
        text = words("hold.blank.clamps", high=high) if fastening.takes_clamps else words("hold.blank.tape")
        return text + words("hold.blank.travel", over=words.mm(facts.spec.clearance_mm))
    far, room = words.mm(fastening.from_sign_mm, 0), words.mm(fastening.clamp_room_mm, 0)
    if fastening.takes_clamps:
        high = words.mm(facts.set_up.holding.clamp_stands_mm, 0)
        text = words("hold.clamps.outside", high=high, far=far)
    else:
        some = fastening.clamp_room_mm >= LEAST_SAID_MM
        text = words("hold.clamps.none", far=far, room=room) if some else words("hold.clamps.full", far=far)
        if not facts.set_up.holding.screws_mm:
            text += words("hold.clamps.tape")
    if facts.face_down:
        return text + words("hold.travel.high", over=words.mm(facts.spec.clearance_mm))
    return text + words("hold.travel", low=words.mm(LOW_MM), over=words.mm(facts.spec.clearance_mm))
