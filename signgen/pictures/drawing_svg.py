"""The finished sign with its measures, and what both plans draw alike."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from shapely.geometry import LineString, Point

from signgen.drawing.drawing import Drawing
from signgen.features.edge import Bevel
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.geometry.offsets import inward
from signgen.job.facts import JobFacts
from signgen.pictures.plate import INK, SOFT, TEXT_MM, Figure, spread, text_width
from signgen.words.words import Words, words_of

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

LETTER_FILL = "#d8d3cb"
LEFT, BELOW = 8.0, 6.0
"""Room for the outer dimensions."""
LEADER = 3.3
"""From the sign's right edge to the labels beside it."""
ABOVE = 7.0
ROW_MM = 3.0
"""Height of a line of labels."""
FINEST_MM = 0.04
"""Detail that the printer would not show is left out of outlines."""

Places = list[tuple[float, float]]


class Fit:
    """From sign coordinates to the paper: the sign's lower left corner lies at (x, y), Y turned over."""

    def __init__(self, x: float, y: float, scale: float) -> None:
        self.x, self.y, self.scale = x, y, scale

    def __call__(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        return self.x + x_mm * self.scale, self.y - y_mm * self.scale

    def area(self, shape: BaseGeometry) -> BaseGeometry:
        return _on_paper(shape, self.x, self.y, self.scale)


@lru_cache(maxsize=256)
def _on_paper(shape: BaseGeometry, x: float, y: float, scale: float) -> BaseGeometry:
    """Plans are drawn anew until a sheet's density is found, most of them at the same place."""
    from shapely.affinity import affine_transform

    placed = affine_transform(shape, [scale, 0, 0, -scale, x, y])
    simple: BaseGeometry = placed.simplify(FINEST_MM)
    return simple


def sign_plate(facts: JobFacts, width: float, most_height: float) -> Figure:
    """The sign with its outer measures and the places of its holes from the lower left corner, to scale, at most 1 :
    1.

    On a board that lies face down they are counted from the lower right corner. Where holes are so many that their
    labels do not fit, only the holes are drawn and `plate.complete` is False.
    """
    drawing = facts.drawing
    words = words_of(facts)
    places = _places(facts)
    columns = _labels(words, sorted({round(x, 2) for x, _ in places}))
    if facts.face_down:
        columns = [(x, words.length(drawing.width_mm - x, 2)) for x, _ in columns]
    # on paper Y runs down: the greatest Y comes first
    rows = _labels(words, sorted({round(y, 2) for _, y in places}, reverse=True))
    beside = LEADER + _widest(rows) + 0.5
    scale = min((width - LEFT - beside) / drawing.width_mm, (most_height - ABOVE - BELOW) / drawing.height_mm, 1.0)
    wide, high = drawing.width_mm * scale, drawing.height_mm * scale
    left = LEFT + (width - LEFT - beside - wide) / 2
    across = spread(
        [left + x * scale for x, _ in columns], _widest(columns) + 1.2, left - LEFT + 1, left + wide + beside
    )
    turned = across is None
    if across is None:
        across = spread([left + x * scale for x, _ in columns], ROW_MM, left - LEFT + 1, left + wide + beside)
    above = 3.7 + _widest(columns) if turned else ABOVE
    fit = Fit(left, above + high, scale)
    width_said, height_said = words.length(drawing.width_mm), words.length(drawing.height_mm)
    about = words(
        "plan.about", width=words.mm(drawing.width_mm), height=words.mm(drawing.height_mm), count=len(drawing.of(Hole))
    )
    plate = Figure("plan", width, above + high + BELOW, words("plan.title"), about)
    plate.area(fit.area(drawing.edge), fill="#fff", stroke=INK, stroke_width=0.3)
    draw_letters(plate, drawing, fit)
    if across is not None:
        _columns(plate, drawing, places, fit, columns, across, turned)
    upright = spread([fit(0, y)[1] for y, _ in rows], ROW_MM, above - ROW_MM / 2, above + high + BELOW - 1)
    if upright is not None:
        _rows(plate, drawing, places, fit, rows, upright)
    plate.complete = across is not None and upright is not None
    for hole in drawing.of(Hole):
        draw_hole(plate, hole, fit)
    draw_keyholes(plate, drawing, fit, hidden=not facts.face_down)
    base = above + high
    for x in (left, left + wide):
        plate.line((x, base + 0.8), (x, base + 4.8), ink=SOFT)
    plate.across(left, left + wide, base + 4.2, width_said)
    for y in (above, base):
        plate.line((left - 0.8, y), (left - 4.8, y), ink=SOFT)
    plate.upright(above, base, left - 4.2, height_said)
    return plate


def draw_letters(plate: Figure, drawing: Drawing, fit: Fit) -> None:
    for bevel in drawing.of(Bevel):
        for face in inward(bevel.edge, bevel.width_mm, FINEST_MM):
            plate.area(fit.area(face), fill="none", stroke=SOFT, stroke_width=0.15)
    for feature in drawing.upward:
        if feature.takes and not feature.own_picture:
            plate.area(fit.area(feature.footprint), fill=LETTER_FILL, stroke=SOFT, stroke_width=0.08)


def draw_hole(plate: Figure, hole: Hole, fit: Fit) -> None:
    """The hole to scale, its countersink around it, with its middle marked."""
    x, y = fit(hole.x_mm, hole.y_mm)
    r = hole.diameter_mm / 2 * fit.scale
    reach = r + 0.7
    if hole.sink:
        plate.circle((x, y), hole.sink.diameter_mm / 2 * fit.scale, fill=LETTER_FILL, stroke=SOFT, stroke_width=0.1)
    if hole.span_mm:
        plate.area(fit.area(hole.footprint), fill="#fff", stroke=INK, stroke_width=0.2)
    else:
        plate.circle((x, y), r, fill="#fff", stroke=INK, stroke_width=0.2)
    plate.line((x - reach, y), (x + reach, y), 0.1, SOFT)
    plate.line((x, y - reach), (x, y + reach), 0.1, SOFT)


def draw_keyholes(plate: Figure, drawing: Drawing, fit: Fit, *, hidden: bool) -> None:
    """Keyholes to scale, with a cross where the screw hangs: from behind, or `hidden` behind the face."""
    dashed = {"stroke_dasharray": "0.9 0.5"}
    for keyhole in drawing.of(Keyhole):
        way = LineString([keyhole.entry_at_mm, (keyhole.x_mm, keyhole.y_mm)])
        opening = way.buffer(keyhole.slot_mm / 2).union(Point(keyhole.entry_at_mm).buffer(keyhole.entry_mm / 2))
        below = fit.area(way.buffer(keyhole.undercut_mm / 2))
        fill = "none" if hidden else "#fff"
        plate.area(fit.area(opening), fill=fill, stroke=INK, stroke_width=0.15, **(dashed if hidden else {}))
        plate.area(below, fill="none", stroke=INK, stroke_width=0.15, **dashed)
        x, y = fit(keyhole.x_mm, keyhole.y_mm)
        plate.line((x - 1.6, y), (x + 1.6, y), 0.1, SOFT)
        plate.line((x, y - 1.6), (x, y + 1.6), 0.1, SOFT)


def _places(facts: JobFacts) -> Places:
    """What the plan measures: holes, and where screws hang; from behind the entries too."""
    drawing = facts.drawing
    places = [(hole.x_mm, hole.y_mm) for hole in drawing.of(Hole)]
    places += [(keyhole.x_mm, keyhole.y_mm) for keyhole in drawing.of(Keyhole)]
    return places + ([keyhole.entry_at_mm for keyhole in drawing.of(Keyhole)] if facts.face_down else [])


def _labels(words: Words, values: list[float]) -> list[tuple[float, str]]:
    return [(value, words.length(value, 2)) for value in values]


def _widest(labels: list[tuple[float, str]]) -> float:
    return max((text_width(text) for _, text in labels), default=0.0)


def _columns(
    plate: Figure, drawing: Drawing, marks: Places, fit: Fit, labels: list[tuple[float, str]], places: list[float],
    turned: bool,
) -> None:  # fmt: skip
    """Distances from the left edge, above the sign, each with a line from the topmost hole there."""
    for (x_mm, text), place in zip(labels, places, strict=True):
        top_mm = max(y for x, y in marks if round(x, 2) == x_mm)
        x, edge = fit(x_mm, drawing.height_mm)
        plate.line(fit(x_mm, top_mm), (x, edge - 0.8), 0.1, SOFT)
        plate.line((x, edge - 0.8), (place, edge - 2.2), 0.1, SOFT)
        plate.line((place, edge - 2.2), (place, edge - 2.9), 0.1, SOFT)
        if turned:
            plate.text(text, place + 0.35 * TEXT_MM, edge - 3.4, "start", turned=True)
        else:
            plate.text(text, place, edge - 3.6)


def _rows(
    plate: Figure, drawing: Drawing, marks: Places, fit: Fit, labels: list[tuple[float, str]], places: list[float]
) -> None:
    """Distances from the lower edge, right of the sign, each with a line from the rightmost hole there."""
    for (y_mm, text), place in zip(labels, places, strict=True):
        last_mm = max(x for x, y in marks if round(y, 2) == y_mm)
        edge, y = fit(drawing.width_mm, y_mm)
        plate.line(fit(last_mm, y_mm), (edge + 0.8, y), 0.1, SOFT)
        plate.line((edge + 0.8, y), (edge + 2.2, place), 0.1, SOFT)
        plate.line((edge + 2.2, place), (edge + 2.9, place), 0.1, SOFT)
        plate.text(text, edge + LEADER, place + 0.35 * TEXT_MM, "start")
