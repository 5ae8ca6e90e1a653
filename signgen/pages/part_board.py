"""Section 1, the board: its size, which way round it lies, how thick it really is."""

from __future__ import annotations

from signgen.features.groove import Groove
from signgen.features.recess import Recess
from signgen.job.engraving import SLIGHT_MM, TRIAL_MM, deepest_groove_mm, trial_width_mm
from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, Part, el, item, joined
from signgen.words.words import Words, words_of

FAIR_MM = 0.2
"""Up to here a board may differ from what was asked for, where the depth of grooves hangs on it (common practice)."""
CORNERS = ("front_left", "front_right", "back_left", "back_right")
LEAST_OFFCUT_MM = 40.0
"""A strip that is narrower than this is not worth keeping (common practice)."""


def board(facts: JobFacts) -> Html:
    words = words_of(facts)
    return el(
        "section",
        el("h2", el("i", "1"), words("board.heading")),
        item("board-size", words("board.size"), _size(facts, words)),
        item("board-way", words("board.way"), _way_round(facts, words)),
        item("board-thickness", words("board.thickness"), *thickness(facts)),
        *_grooves(facts, words),
        id="board",
    )


def _size(facts: JobFacts, words: Words) -> Html:
    stock, least, drawing = facts.stock, facts.least, facts.drawing
    if drawing.is_blank:
        blank = el("b", words.size(stock.width_mm, stock.height_mm))
        return words.html("board.blank", size=blank, thickness=words.mm(drawing.thickness_mm, 2))
    if facts.spec.board_mm is None:
        return words.html(
            "board.least",
            size=el("b", words.size(least.width_mm, least.height_mm)),
            thickness=words.mm(drawing.thickness_mm, 2),
            left=words.mm(least.sign_x_mm),
            front=words.mm(least.sign_y_mm),
            room=words("board.room.screws" if facts.screws_mm else "board.room.cut"),
        )
    right = stock.width_mm - stock.sign_x_mm - drawing.width_mm
    behind = stock.height_mm - stock.sign_y_mm - drawing.height_mm
    yours = words(
        "board.yours",
        size=words.size(stock.width_mm, stock.height_mm),
        right=words.mm(right),
        behind=words.mm(behind),
    )
    scarce = stock.width_mm < least.width_mm or stock.height_mm < least.height_mm
    size = words.size(least.width_mm, least.height_mm)
    return joined(yours, words("board.yours.screws" if scarce else "board.yours.least", size=size), offcut(facts))


def offcut(facts: JobFacts) -> str:
    """The larger straight piece of the board that the cut leaves; '' when neither is worth keeping."""
    words, stock, drawing = words_of(facts), facts.stock, facts.drawing
    cutter = max(program.tool.diameter_mm for program in facts.programs)
    right = stock.width_mm - stock.sign_x_mm - drawing.width_mm - cutter
    behind = stock.height_mm - stock.sign_y_mm - drawing.height_mm - cutter
    pieces = [("right", right, stock.height_mm), ("behind", stock.width_mm, behind)]
    where, width, height = max(pieces, key=lambda piece: piece[1] * piece[2])
    if min(width, height) < LEAST_OFFCUT_MM:
        return ""
    return words("board.offcut", size=words.size(width, height), where=words(f"board.offcut.{where}"))


def _way_round(facts: JobFacts, words: Words) -> str:
    stock = facts.stock
    text = words("board.lay", width=words.mm(stock.width_mm), height=words.mm(stock.height_mm))
    return text + (words("board.grain") if facts.spec.material.grain else "")


def thickness(facts: JobFacts) -> list[Part]:
    """Boxes for four readings, and what a difference does."""
    words = words_of(facts)
    readings = [el("span", el("u"), words(f"board.corner.{corner}"), cls="reading") for corner in CORNERS]
    effect = _if_zero_below(facts, words) if facts.zero.z_mm == 0 else _if_zero_on_top(facts, words)
    return [
        words("board.made_for", thickness=words.mm(facts.drawing.thickness_mm, 2)),
        el("span", *readings, cls="readings"),
        el("span", effect, id="thickness-error"),
    ]


def _grooves(facts: JobFacts, words: Words) -> list[Part]:
    """How deep and wide the grooves are, so that what comes out can be held against it, and a groove to try first."""
    sense = facts.sense
    if sense is None:
        return []
    deep = deepest_groove_mm(facts, sense)
    narrow, wide = words.length(sense.narrowest.value_mm, 2), words.length(sense.widest.value_mm, 2)
    text = words(
        "board.deepest",
        deep=words.mm(deep, 2),
        left=words.mm(facts.drawing.thickness_mm - deep, 2),
        strokes=words.with_unit(narrow if narrow == wide else words("range", least=narrow, most=wide)),
    )
    trial = words("board.trial", deep=words.mm(TRIAL_MM), wide=words.mm(trial_width_mm(facts, sense), 2))
    return [item("board-grooves", words("board.grooves"), text, trial)]


def _if_zero_below(facts: JobFacts, words: Words) -> str:
    """The depth of grooves follows the board's thickness; their width by twice the tangent of half the bit's
    angle."""
    if facts.face_down:
        return words("board.below.keyholes", slight=words.mm(SLIGHT_MM))
    bit = facts.spec.v_bit
    wider = ""
    if facts.drawing.of(Groove):
        angle = bit.angle_deg or 0.0
        wider = words(
            "board.wider",
            wider=words.mm(2 * SLIGHT_MM * bit.slope, 2),
            slight=words.length(SLIGHT_MM, 2),
            half=words.figure(angle / 2),
            angle=words.figure(angle),
        )
    key = "board.below" if facts.drawing.of(Groove) or not facts.drawing.of(Recess) else "board.below.floors"
    return words(key, slight=words.mm(SLIGHT_MM), wider=wider, fair=words.mm(FAIR_MM))


def _if_zero_on_top(facts: JobFacts, words: Words) -> str:
    if facts.face_down:
        return words("board.on_top.keyholes", slight=words.mm(SLIGHT_MM))
    deep = words.mm(facts.spec.breakthrough_mm, 2)
    return words("board.on_top", deep=deep, thickness=words.mm(facts.drawing.thickness_mm, 2))
