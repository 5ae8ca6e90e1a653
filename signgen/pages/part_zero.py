"""Section 2: where the programs' zero lies, how to set it, and how to prove it before anything is cut."""

from __future__ import annotations

from signgen.dialects import dialect_named
from signgen.instructions import Touch, place_typed, typed
from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el, item
from signgen.numbers import figure
from signgen.shop.tools import Tool
from signgen.words.words import Words, words_in, words_of


def zero(facts: JobFacts) -> Html:
    words = words_of(facts)
    return el(
        "section",
        el("h2", el("i", "2"), words("zero.heading")),
        item("zero-xy", words("zero.across"), _across(facts, words), tick=True),
        item("zero-z", words("zero.height"), height(facts), tick=True),
        item("zero-proof", words("zero.proof"), proof(facts, words), tick=True),
        id="zero",
    )


def _across(facts: JobFacts, words: Words) -> str:
    datum = facts.set_up.datum
    at_corner = datum.x_mm == 0 and datum.y_mm == 0
    where = "blank" if facts.drawing.is_blank and not facts.face_down else "stock" if at_corner else "sign"
    point = bit_point(facts.programs[0].tool, words)
    x, y = (words.mm(value, 2) for value in ((datum.x_mm, datum.y_mm) if not at_corner else sign_from_corner(facts)))
    return words(f"back.zero.{where}" if facts.face_down else f"zero.{where}", point=point, x=x, y=y)


def sign_from_corner(facts: JobFacts) -> tuple[float, float]:
    """How far the sign begins from the corner that zero is measured from."""
    stock = facts.stock
    left = stock.sign_x_mm
    return (stock.width_mm - left - facts.drawing.width_mm if facts.face_down else left), stock.sign_y_mm


def height(facts: JobFacts) -> str:
    """What Z0 is, and where and how it is set for the first cutter."""
    words = words_of(facts)
    ways = facts.set_up.steps[0].sets_z
    if not ways:
        return words("zero.nowhere")
    side = "bottom" if facts.zero.z_mm == 0 else "top"
    told = [words(f"zero.{side}")]
    for number, touch in enumerate(ways):
        key = "or_face" if number and touch.on == "face" else touch.on
        told.append(
            words(
                f"zero.{side}.{key}",
                place=place(facts, touch),
                slip=_slip(facts, touch, words),
                thickness=_typed(facts, facts.drawing.thickness_mm),
            )
        )
    return "".join(told).rstrip()


def _slip(facts: JobFacts, touch: Touch, words: Words) -> str:
    """What is typed, in the words that go before it."""
    figure = _typed(facts, touch.types_mm)
    return figure if touch.plus_thickness else words("zero.slip", slip=figure)


def _typed(facts: JobFacts, value_mm: float) -> str:
    """What is typed into the machine keeps its point, and is in inches where the machine counts in them."""
    inches = dialect_named(facts.spec.dialect).inches
    return typed(value_mm, inches) + (" inch" if inches else typed_unit(facts))


def typed_unit(facts: JobFacts) -> str:
    """Behind what is typed in millimetres, on a sheet that is in inches; '' elsewhere."""
    return " mm" if facts.spec.units == "in" and not dialect_named(facts.spec.dialect).inches else ""


def place(facts: JobFacts, touch: Touch) -> str:
    inches = dialect_named(facts.spec.dialect).inches
    return place_typed(touch.x_mm, touch.y_mm, inches) + typed_unit(facts)


def ways_to_set(facts: JobFacts, number: int, words: Words) -> str:
    """Where Z is set for a program's cutter, in few words."""
    ways = [words(f"zero.way.{touch.on}", place=place(facts, touch)) for touch in facts.set_up.steps[number - 1].sets_z]
    return words("zero.or").join(ways)


def proof(facts: JobFacts, words: Words) -> str:
    if facts.outline is not None:
        return words("zero.outline", file=facts.outline.file, over=words.mm(facts.spec.clearance_mm))
    far_x = facts.drawing.width_mm - facts.zero.x_mm
    far_y = facts.drawing.height_mm - facts.zero.y_mm
    return words(
        "zero.far.blank" if facts.drawing.is_blank else "zero.far", x=figure(far_x), y=figure(far_y) + typed_unit(facts)
    )


def bit_point(tool: Tool, words: Words | None = None) -> str:
    words = words or words_in("en")
    return words("zero.point.v-bit" if tool.kind == "v-bit" else "zero.point.other")
