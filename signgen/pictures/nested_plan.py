"""The plan of a whole sheet of signs: where each lies, by its number, what is cut away, and what is left over."""

from __future__ import annotations

from shapely.geometry import box

from signgen.fastening.fastening import Fastening
from signgen.fastening.offcut import Leftover
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts, PieceFacts
from signgen.numbers import figure
from signgen.pictures.board_svg import CLAMP_STYLE, GRAIN_LINES, SCREW_R, draw_datum, draw_screw, draw_touches
from signgen.pictures.drawing_svg import Fit
from signgen.pictures.plate import FAINT, INK, SOFT, WOOD, Figure, text_width
from signgen.shop.stock import SCREW_HEAD_MM
from signgen.words.words import words_of

LEFT, RIGHT, ABOVE, BELOW = 13.0, 3.0, 5.0, 14.5
NUMBER_SHARE = 0.5
"""Height of a piece's number over the shorter side of its rectangle."""
LARGEST_NUMBER_MM, SMALLEST_NUMBER_MM = 6.0, 1.6
LARGEST_WORDS_MM, SMALLEST_WORDS_MM = 2.4, 1.6
"""Words in a piece: five points can be read at the bench, and seven are as large as the plan's other texts."""


def nested_plate(
    facts: JobFacts, fastening: Fastening, left_over: Leftover, width: float, most_height: float
) -> Figure:
    """The sheet with X to the right and Y away from who stands in front."""
    stock = facts.stock
    scale = min((width - LEFT - RIGHT) / stock.width_mm, (most_height - ABOVE - BELOW) / stock.height_mm, 0.6)
    wide, high = stock.width_mm * scale, stock.height_mm * scale
    left, base = LEFT + (width - LEFT - RIGHT - wide) / 2, ABOVE + high
    fit = Fit(left + stock.sign_x_mm * scale, base - stock.sign_y_mm * scale, scale)
    words = words_of(facts)
    across, back = words.figure(stock.width_mm), words.figure(stock.height_mm)
    about = words("nested.plan_about", width=across, height=back, count=len(facts.pieces))
    plate = Figure("sheet", width, base + BELOW, words("nested.plan"), about)
    plate.rectangle((left, ABOVE), (wide, high), fill=WOOD, stroke=INK, stroke_width=0.35)
    if facts.spec.material.grain:
        for share in GRAIN_LINES:
            y = ABOVE + share * high
            plate.line((left + 0.5, y), (left + wide - 0.5, y), 0.12, "#d9c7ab")
        plate.text(words("lie.grain"), left + wide / 2, ABOVE - 1.5, ink=SOFT)
    _cut(plate, facts, fastening, fit)
    for piece in facts.pieces:
        _number(plate, piece, fit)
    for number, (x, y) in enumerate(facts.screws_mm, 1):
        place = fit(x + facts.zero.x_mm, y + facts.zero.y_mm)
        draw_screw(plate, place, str(number), max(SCREW_R, SCREW_HEAD_MM / 2 * scale))
    _offcut(plate, facts, left_over, fit)
    draw_datum(plate, *fit(facts.zero.x_mm, facts.zero.y_mm), 9.0)
    draw_touches(plate, facts, fit)
    _dimensions(plate, facts, left, base, wide, high, scale)
    plate.text(words("lie.front"), left + wide / 2, base + 13.4, ink=SOFT)
    return plate


def _cut(plate: Figure, facts: JobFacts, fastening: Fastening, fit: Fit) -> None:
    drawing, board = facts.drawing, box(*facts.stock.bounds_mm)
    kerf = fastening.swept.intersection(board).difference(drawing.edge)
    plate.area(fit.area(kerf), fill="#fff")
    plate.area(fit.area(kerf), fill=plate.hatching("#7d868d", 0.9))
    if fastening.takes_clamps:
        line = fit.area(fastening.clamp_line.intersection(board)).exterior
        plate.way(line.coords, **CLAMP_STYLE)
    plate.area(fit.area(drawing.edge), fill="#fff", stroke=INK, stroke_width=0.25)
    for hole in drawing.of(Hole):
        (x0, y0), (x1, y1) = (fit(*end) for end in hole.ends_mm)
        width = max(0.3, hole.diameter_mm * fit.scale)
        plate.line((x0, y0), (x1 + 1e-3, y1), width, FAINT, stroke_linecap="round")
    reach = facts.programs[-1].tool.diameter_mm
    for tab in drawing.of(Tab):
        a, b = fit(tab.x_mm, tab.y_mm), fit(tab.x_mm + tab.along_y * reach, tab.y_mm - tab.along_x * reach)
        plate.line(a, b, max(0.4, tab.width_mm * fit.scale), INK)


def _number(plate: Figure, piece: PieceFacts, fit: Fit) -> None:
    """In the middle of the piece, as large as it takes, lying as its letters lie; below it the piece's words where
    there is room for them to be read."""
    wide, high = piece.width_mm * fit.scale, piece.height_mm * fit.scale
    along, across = (high, wide) if piece.turned else (wide, high)
    most = min(LARGEST_NUMBER_MM, NUMBER_SHARE * across, 0.9 * along / text_width(piece.name, 1.0))
    size = max(most, SMALLEST_NUMBER_MM)
    x, y = fit(piece.x_mm + piece.width_mm / 2, piece.y_mm + piece.height_mm / 2)
    down = 0.36 * size
    said = " / ".join(piece.lines)
    words = min(LARGEST_WORDS_MM, 0.92 * along / text_width(said or "-", 1.0))
    if said and words >= SMALLEST_WORDS_MM and size + 1.3 * words <= 0.9 * across:
        down -= 0.65 * words
        place = (x + down + 1.2 * words, y) if piece.turned else (x, y + down + 1.2 * words)
        plate.text(said, *place, turned=piece.turned, size=words, halo=True)
    place = (x + down, y) if piece.turned else (x, y + down)
    plate.text(piece.name, *place, turned=piece.turned, size=size, bold=True, halo=True)


def _offcut(plate: Figure, facts: JobFacts, left_over: Leftover, fit: Fit) -> None:
    """A line where the offcut may be sawn off, and its size, where it is worth it."""
    wide, high = (value * fit.scale for value in left_over.offcut_mm)
    words = words_of(facts)
    text = words("nested.saw_off", size=words.size(*left_over.offcut_mm))
    if (high if left_over.beside else wide) < text_width(text) + 2 or min(wide, high) < 5:
        return
    low_x, low_y, high_x, high_y = facts.stock.bounds_mm
    if left_over.beside:
        x, _ = fit(high_x - left_over.offcut_mm[0], 0)
        (_, top), (_, bottom) = fit(0, high_y), fit(0, low_y)
        plate.line((x, top), (x, bottom), 0.2, SOFT, stroke_dasharray="2.4 0.8 0.4 0.8")
        plate.text(text, x + wide / 2 + 0.9, (top + bottom) / 2, turned=True, ink=SOFT, halo=True)
    else:
        _, y = fit(0, high_y - left_over.offcut_mm[1])
        (start, _), (end, _) = fit(low_x, 0), fit(high_x, 0)
        plate.line((start, y), (end, y), 0.2, SOFT, stroke_dasharray="2.4 0.8 0.4 0.8")
        plate.text(text, (start + end) / 2, y - high / 2 + 0.9, ink=SOFT, halo=True)


def _dimensions(
    plate: Figure, facts: JobFacts, left: float, base: float, wide: float, high: float, scale: float
) -> None:
    """The sheet, and where the first cut beside its rim begins."""
    stock = facts.stock
    x, y = left + stock.sign_x_mm * scale, base - stock.sign_y_mm * scale
    for at in (left, left + wide):
        plate.line((at, base + 0.8), (at, base + 9.6), ink=SOFT)
    plate.line((x, base + 0.8), (x, base + 5.0), 0.12, SOFT)
    plate.across(left, x, base + 4.3, figure(stock.sign_x_mm))
    plate.across(left, left + wide, base + 9.0, figure(stock.width_mm))
    for at in (ABOVE, base):
        plate.line((left - 0.8, at), (left - 9.6, at), ink=SOFT)
    plate.line((left - 0.8, y), (left - 5.0, y), 0.12, SOFT)
    plate.upright(y, base, left - 4.3, figure(stock.sign_y_mm))
    plate.upright(ABOVE, base, left - 9.0, figure(stock.height_mm))
