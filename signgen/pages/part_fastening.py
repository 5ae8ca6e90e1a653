"""Section 3: how the board is held, and where nothing may stand."""

from __future__ import annotations

import math

from signgen.fastening.fastening import Fastening
from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el, item
from signgen.numbers import figure
from signgen.program.travel import LOW_MM
from signgen.shop.stock import CLAMP_STANDS_MM, GAP_MM, SCREW_HEAD_MM
from signgen.words.words import Words, words_of

METAL_MM = 1.0
"""Spoilboard between the deepest cut and any metal under it (common practice)."""


def up_to_tenths(value_mm: float) -> float:
    """What is stated is never less than what is meant."""
    return math.ceil(value_mm * 10 - 1e-6) / 10


def holding(facts: JobFacts, fastening: Fastening) -> Html:
    words = words_of(facts)
    deep = up_to_tenths(facts.below_mm)
    flat = words("hold.flat.back") if facts.face_down else words("hold.flat", deep=words.mm(deep, 2))
    return el(
        "section",
        el("h2", el("i", "3"), words("hold.heading")),
        item("spoilboard", words("hold.spoilboard"), flat, tick=True),
        item("under", words("hold.under"), words("hold.metal", deep=words.mm(deep + METAL_MM))),
        _screws(facts, words),
        item("clamps", words("hold.clamps"), _clamps(facts, fastening, words)),
        id="fastening",
    )


def _screws(facts: JobFacts, words: Words) -> Html:
    label = words("hold.screws")
    if not facts.screws_mm:
        least = facts.least
        return item("screws", label, words("hold.no_screws", size=words.size(least.width_mm, least.height_mm)))
    # typed into the machine, so with a point whatever the language
    rows = [
        el("span", el("b", str(number)), f" X{figure(x)} Y{figure(y)}", cls="place")
        for number, (x, y) in enumerate(facts.screws_mm, 1)
    ]
    return item(
        "screws",
        label,
        words("hold.places"),
        el("span", *rows, cls="places", id="screw-places"),
        words("hold.heads", head=words.mm(SCREW_HEAD_MM), gap=words.mm(GAP_MM)),
        tick=True,
    )


def _clamps(facts: JobFacts, fastening: Fastening, words: Words) -> str:
    far, room = words.mm(fastening.from_sign_mm, 0), words.mm(fastening.clamp_room_mm, 0)
    if fastening.takes_clamps:
        text = words("hold.clamps.outside", high=words.mm(CLAMP_STANDS_MM, 0), far=far)
    else:
        text = words("hold.clamps.none", far=far, room=room)
        if not facts.screws_mm:
            text += words("hold.clamps.tape")
    if facts.face_down:
        return text + words("hold.travel.high", over=words.mm(facts.spec.clearance_mm))
    return text + words("hold.travel", low=words.mm(LOW_MM), over=words.mm(facts.spec.clearance_mm))
