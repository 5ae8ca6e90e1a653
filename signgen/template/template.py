"""The drilling template: the sign's holes at full size, to tape to the wall, as pages to print and as one drawing."""

from __future__ import annotations

import math
from collections.abc import Iterator

from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.job.facts import JobFacts
from signgen.markup.markup import Html, el, raw
from signgen.markup.page import page
from signgen.pictures.plate import INK, SOFT, Figure, text_width
from signgen.spec.keys.papers import NO_TEMPLATE
from signgen.spec.paper import AROUND_MM, BAR_MM, EDGE_MM, STRIP_MM, Tiling, tiling
from signgen.spec.sign_spec import SignSpec
from signgen.template.marks import Paper, draw_marks, screws
from signgen.words.words import Words, words_in

NAME, ONE_OF_MANY = "template", "template-*"
CHECK_MM = 100.0
"""Length of the check bars: long enough that a page shrunk to fit is seen by a ruler."""
MARK_MM = 3.0
"""Radius of a registration mark."""
SMALL_MM = 2.8
SHARES = (0.25, 0.3, 0.2, 0.35, 0.15, 0.4)
"""Where marks may stand on a seam, over the length that a sheet shows of it; the usual place first."""
CLEAR_MM = 26.0
"""From a mark to the middle of a hole: its figures end there."""

STYLE = """
@page { size: %(wide)smm %(high)smm; margin: 0; }
* { box-sizing: border-box; }
html { color-scheme: light; background: #fff; }
body { margin: 0; color: #1d262e; font: 8pt/1.25 'Liberation Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif; }
.sheet { position: relative; width: %(wide)smm; height: %(high)smm; overflow: hidden; break-after: page;
  break-inside: avoid; }
.sheet:last-child { break-after: auto; }
.sheet svg { position: absolute; left: 0; top: 0; }
.sheet p { position: absolute; margin: 0; top: %(edge)smm; left: %(edge)smm; right: %(edge)smm; }
@media screen { .sheet { margin: 5mm auto; outline: .2mm solid #aab3ba; } }
"""


def template_names(facts: JobFacts) -> tuple[str, str]:
    """How the template's files are called; those of a whole sheet of signs have the signs' numbers in their names."""
    name = ONE_OF_MANY if facts.pieces else NAME
    return f"{name}.html", f"{name}.svg"


def template_files(spec: SignSpec, drawing: Drawing, name: str = NAME) -> dict[str, bytes]:
    """The template's files by their names; none when no template was asked for."""
    if spec.template == NO_TEMPLATE:
        return {}
    page, whole = template_html(spec, drawing), template_svg(spec, drawing)
    return {f"{name}.html": page.encode(), f"{name}.svg": whole.encode()}


def template_html(spec: SignSpec, drawing: Drawing) -> str:
    """The pages, from the doctype on, at full size when printed at 100 %. It loads nothing and needs no script."""
    words, tiles = words_in(spec.language, spec.units), tiling(drawing.width_mm, drawing.height_mm, spec.template)
    style = STYLE % {"wide": f"{tiles.width_mm:g}", "high": f"{tiles.height_mm:g}", "edge": f"{EDGE_MM:g}"}
    title = words("template.title", sign=_sign(spec))
    return page(title, style, *_sheets(spec, drawing, words, tiles), language=words.language)


def template_svg(spec: SignSpec, drawing: Drawing) -> str:
    """The whole template as one drawing in millimetres, for a plotter or a large printer."""
    words = words_in(spec.language, spec.units)
    left, above, around = BAR_MM + 2.0, 10.0, AROUND_MM
    wide = max(drawing.width_mm + 2 * around, CHECK_MM + 4.0) + left
    high = max(drawing.height_mm + 2 * around, CHECK_MM + 4.0) + above
    title = words("template.title", sign=_sign(spec))
    plate = Figure("template", wide, high, title, _about(drawing, words))
    paper = Paper(left + around, above + around + drawing.height_mm)
    draw_marks(plate, drawing, words, paper, (-around, -around, wide - left - around, drawing.height_mm + around))
    _bars(plate, words, (left, 6.5), (5.0, above + 2.0))
    return plate.svg() + "\n"


def _sign(spec: SignSpec) -> str:
    return " / ".join(line.strip() for line in spec.text.lines if line.strip())


def _about(drawing: Drawing, words: Words) -> str:
    size = words.size(drawing.width_mm, drawing.height_mm)
    if drawing.of(Keyhole):
        return words.count("template.screws", len(screws(drawing)), size=size)
    return words("template.about", size=size, holes=words.hole_noun(drawing.of(Hole)), count=len(drawing.of(Hole)))


def _sheets(spec: SignSpec, drawing: Drawing, words: Words, tiles: Tiling) -> Iterator[Html]:
    """Every sheet of paper, from the upper left one on, row by row."""
    count = tiles.across * tiles.up
    title = words("template.title", sign=_sign(spec))
    for number in range(count):
        column, row = number % tiles.across, tiles.up - 1 - number // tiles.across
        place = words("template.sheet", number=number + 1, count=count, row=tiles.up - row, column=column + 1)
        said = [words("template.scale", bar=words.mm(CHECK_MM)), words("template.wall")]
        if count > 1:
            said.insert(1, words("template.join"))
        heading = el("b", f"{title}. {_about(drawing, words)}." if number == 0 else f"{title}.")
        svg = raw(_page(drawing, words, tiles, column, row, f"{title}, {place}").svg())
        # on the first sheet everything; on the others what one must know to place them
        text = " ".join(said) if number == 0 else said[0]
        yield el("div", svg, el("p", heading, " ", place if count > 1 else None, " ", text), cls="sheet")


def _page(drawing: Drawing, words: Words, tiles: Tiling, column: int, row: int, title: str) -> Figure:
    """One sheet of paper at full size."""
    plate = Figure(f"sheet-{column}-{row}", tiles.width_mm, tiles.height_mm, title, _about(drawing, words))
    window = tiles.window_of(column, row)
    left, top = EDGE_MM + BAR_MM, EDGE_MM + STRIP_MM
    paper = Paper(left - window[0], top + window[3])
    draw_marks(plate, drawing, words, paper, window)
    _seams(plate, drawing, tiles, column, row, paper)
    _bars(plate, words, (left, top - 3.0), (EDGE_MM + 4.0, top))
    return plate


def _seams(plate: Figure, drawing: Drawing, tiles: Tiling, column: int, row: int, paper: Paper) -> None:
    """Dashed lines through the middles of the overlaps, and two numbered registration marks on each.

    Both sheets at a seam have the marks, at the same places of the sign and with the same numbers.
    """
    x0, y0, x1, y1 = tiles.window_of(column, row)
    upright, level = tiles.seams_mm()
    for i, x in enumerate(upright):
        if i in (column - 1, column):
            plate.line(paper(x, y0), paper(x, y1), 0.15, SOFT, stroke_dasharray="3 2")
            for k in (0, 1):
                y = _free(x, y0, y1, k, [(hole.x_mm, hole.y_mm) for hole in screws(drawing)])
                _mark(plate, paper(x, y), 1 + 2 * ((tiles.up - 1 - row) * len(upright) + i) + 1 - k)
    first = 2 * len(upright) * tiles.up
    for i, y in enumerate(level):
        if i in (row - 1, row):
            plate.line(paper(x0, y), paper(x1, y), 0.15, SOFT, stroke_dasharray="3 2")
            for k in (0, 1):
                x = _free(y, x0, x1, k, [(hole.y_mm, hole.x_mm) for hole in screws(drawing)])
                _mark(plate, paper(x, y), first + 1 + 2 * ((len(level) - 1 - i) * tiles.across + column) + k)


def _free(seam: float, low: float, high: float, half: int, holes: list[tuple[float, float]]) -> float:
    """A place in one half of a seam from low to high, clear of holes (across the seam, along it) and their words; the
    usual one when there is none. It is the same on both sheets."""
    places = [low + (share if half == 0 else 1 - share) * (high - low) for share in SHARES]
    for place in places:
        if all(math.dist((seam, place), hole) > CLEAR_MM for hole in holes):
            return place
    return places[0]


def _mark(plate: Figure, at: tuple[float, float], number: int) -> None:
    """A registration mark: a ring and a cross, its number beside it."""
    x, y = at
    plate.circle(at, MARK_MM, fill="none", stroke=INK, stroke_width=0.2)
    plate.line((x - 1.6 * MARK_MM, y), (x + 1.6 * MARK_MM, y), 0.15)
    plate.line((x, y - 1.6 * MARK_MM), (x, y + 1.6 * MARK_MM), 0.15)
    plate.text(f"{number}", x + 0.8 * MARK_MM, y - 0.9 * MARK_MM, "start", bold=True, size=SMALL_MM, halo=True)


def _bars(plate: Figure, words: Words, level: tuple[float, float], upright: tuple[float, float]) -> None:
    """Two bars of CHECK_MM with a tick each centimetre: printers may stretch one way and not the other."""
    said = words("template.bar", bar=words.mm(CHECK_MM))
    x, y = level
    plate.line((x, y), (x + CHECK_MM, y), 0.3)
    u, v = upright
    plate.line((u, v), (u, v + CHECK_MM), 0.3)
    for i in range(11):
        tick = 2.2 if i in (0, 5, 10) else 1.2
        plate.line((x + 10 * i, y), (x + 10 * i, y - tick), 0.2)
        plate.line((u, v + 10 * i), (u - tick, v + 10 * i), 0.2)
    if x + CHECK_MM + 2 + text_width(said, SMALL_MM) < plate.width:
        plate.text(said, x + CHECK_MM + 1.5, y, "start", size=SMALL_MM)
    else:
        plate.text(said, x + CHECK_MM / 2, y - 2.4, size=SMALL_MM)
    plate.text(said, u + 2.6, v + CHECK_MM / 2, turned=True, size=SMALL_MM)
