"""The board as it lies on the machine: the sign in it, the datum, what is cut, tabs, screws and where clamps
may stand."""

from __future__ import annotations

from shapely import line_merge
from shapely.geometry import Polygon, box

from signgen.fastening.fastening import Fastening
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.pictures.drawing_svg import Fit, draw_hole, draw_keyholes, draw_letters
from signgen.pictures.plate import ACCENT, FAINT, INK, SOFT, WOOD, Figure
from signgen.shop.stock import SCREW_HEAD_MM
from signgen.words.words import Words, words_of

LEFT, RIGHT, ABOVE, BELOW = 13.0, 3.0, 5.0, 14.0
"""Room for two rows of dimensions left and below, the grain above, and the front."""
LEGEND_ROW = 3.9
LEGEND_COLUMN = 46.0
AXIS = 11.0
SCREW_R = 1.6
TOUCH_R = 1.9
CLAMP_STYLE = {"stroke": INK, "stroke_width": 0.25, "stroke_dasharray": "1.6 0.9"}
GRAIN_LINES = (0.09, 0.2, 0.27, 0.41, 0.55, 0.63, 0.78, 0.92)


def board_plate(facts: JobFacts, fastening: Fastening, width: float, most_height: float) -> Figure:
    """The board's plan with X to the right and Y away from who stands in front; dimensions from its left and
    front edges."""
    stock, words = facts.stock, words_of(facts)
    names = _legend(facts, fastening, words)
    legend = LEGEND_ROW * -(-len(names) // max(1, int(width // LEGEND_COLUMN))) + 1.0
    room = most_height - ABOVE - BELOW - legend
    scale = min((width - LEFT - RIGHT) / stock.width_mm, room / stock.height_mm, 0.6)
    wide, high = stock.width_mm * scale, stock.height_mm * scale
    left = LEFT + (width - LEFT - RIGHT - wide) / 2
    base = ABOVE + high
    fit = Fit(left + stock.sign_x_mm * scale, base - stock.sign_y_mm * scale, scale)
    about = words(
        "lie.about",
        width=words.mm(stock.width_mm),
        height=words.mm(stock.height_mm),
        left=words.mm(stock.sign_x_mm),
        front=words.mm(stock.sign_y_mm),
    )
    plate = Figure("board", width, base + BELOW + legend, words("lie.title"), about)
    plate.rectangle((left, ABOVE), (wide, high), fill=WOOD, stroke=INK, stroke_width=0.35)
    if facts.spec.material.grain:
        for share in GRAIN_LINES:
            y = ABOVE + share * high
            plate.line((left + 0.5, y), (left + wide - 0.5, y), 0.12, "#d9c7ab")
        _grain(plate, left, wide, words("lie.grain"))
    _cut(plate, facts, fastening, fit)
    _screws(plate, facts, fit)
    axis = max(4.0, min(AXIS, 0.5 * scale * min(facts.drawing.width_mm, facts.drawing.height_mm)))
    draw_datum(plate, *fit(facts.zero.x_mm, facts.zero.y_mm), axis)
    draw_touches(plate, facts, fit)
    _dimensions(plate, facts, left, base, wide, high, scale)
    plate.text(words("lie.front"), left + wide / 2, base + 13.2, ink=SOFT)
    _draw_legend(plate, names, base + BELOW + 2.6, width)
    return plate


def _cut(plate: Figure, facts: JobFacts, fastening: Fastening, fit: Fit) -> None:
    """What cutters sweep around the sign, the clamps' line, the sign itself and its tabs."""
    drawing = facts.drawing
    board = box(*facts.stock.bounds_mm)
    kerf = fastening.swept.intersection(board).difference(drawing.edge)
    plate.area(fit.area(kerf), fill="#fff")
    plate.area(fit.area(kerf), fill=plate.hatching("#7d868d", 0.9))
    if fastening.takes_clamps:
        _clamp_line(plate, fastening, fit, board)
    plate.area(fit.area(drawing.edge), fill="#fff", stroke=INK, stroke_width=0.3)
    draw_letters(plate, drawing, fit)
    for hole in drawing.of(Hole):
        draw_hole(plate, hole, fit)
    draw_keyholes(plate, drawing, fit, hidden=not facts.face_down)
    reach = facts.programs[-1].tool.diameter_mm
    for tab in drawing.of(Tab):
        # outwards is to the right of the counter-clockwise direction
        out = (tab.along_y * reach, -tab.along_x * reach)
        half = (tab.along_x * tab.width_mm / 2, tab.along_y * tab.width_mm / 2)
        a, b = (tab.x_mm - half[0], tab.y_mm - half[1]), (tab.x_mm + half[0], tab.y_mm + half[1])
        corners = [a, b, (b[0] + out[0], b[1] + out[1]), (a[0] + out[0], a[1] + out[1])]
        plate.polygon([fit(x, y) for x, y in corners], fill=INK)


def _clamp_line(plate: Figure, fastening: Fastening, fit: Fit, board: Polygon) -> None:
    line = line_merge(fit.area(fastening.clamp_line.boundary.intersection(board)))
    for part in getattr(line, "geoms", [line]):
        # the line may touch the board's edge in a mere point
        if part.geom_type == "LineString" and not part.is_empty:
            plate.way(part.coords, **CLAMP_STYLE)


def _screws(plate: Figure, facts: JobFacts, fit: Fit) -> None:
    for number, (x, y) in enumerate(facts.screws_mm, 1):
        place = fit(x + facts.zero.x_mm, y + facts.zero.y_mm)
        draw_screw(plate, place, str(number), max(SCREW_R, SCREW_HEAD_MM / 2 * fit.scale))


def draw_screw(plate: Figure, place: tuple[float, float], text: str, r: float) -> None:
    plate.circle(place, r, fill="#fff", stroke=ACCENT, stroke_width=0.3)
    plate.text(text, place[0], place[1] + 0.75, size=2.1, ink=ACCENT, bold=True)


def draw_datum(plate: Figure, x: float, y: float, axis: float) -> None:
    """The cross of X0 Y0 with the directions of both axes."""
    plate.arrow((x, y), (x + axis, y), 0.4, ACCENT, 2.2)
    plate.arrow((x, y), (x, y - axis), 0.4, ACCENT, 2.2)
    plate.text("X", x + axis + 1.5, y + 0.9, ink=ACCENT, bold=True, halo=True)
    plate.text("Y", x, y - axis - 0.9, ink=ACCENT, bold=True, halo=True)
    _target(plate, x, y)


def draw_touches(plate: Figure, facts: JobFacts, fit: Fit) -> None:
    """Where the face is touched to set Z."""
    for x, y in face_places(facts):
        draw_touch(plate, fit(x + facts.zero.x_mm, y + facts.zero.y_mm))


def face_places(facts: JobFacts) -> list[tuple[float, float]]:
    """Places on the face where Z is set, each once; program coordinates."""
    touches = [touch for step in facts.set_up.steps for touch in step.sets_z if touch.on == "face"]
    return sorted({(touch.x_mm, touch.y_mm) for touch in touches})


def draw_touch(plate: Figure, place: tuple[float, float]) -> None:
    x, y = place
    corners = [(x, y - TOUCH_R), (x + TOUCH_R, y), (x, y + TOUCH_R), (x - TOUCH_R, y)]
    plate.polygon(corners, fill="#fff", stroke=ACCENT, stroke_width=0.3)
    plate.text("Z", x, y + 0.75, size=2.1, ink=ACCENT, bold=True)


def _target(plate: Figure, x: float, y: float) -> None:
    plate.circle((x, y), 1.5, fill="#fff", stroke=ACCENT, stroke_width=0.3)
    for turn in (1, -1):
        plate.polygon(
            [(x, y), (x + 1.4 * turn, y), (x + 0.99 * turn, y - 0.99 * turn), (x, y - 1.4 * turn)], fill=ACCENT
        )


def _dimensions(
    plate: Figure, facts: JobFacts, left: float, base: float, wide: float, high: float, scale: float
) -> None:
    """The sign's corner and the whole board, from the left and the front edge."""
    stock, words = facts.stock, words_of(facts)
    x, y = left + stock.sign_x_mm * scale, base - stock.sign_y_mm * scale
    for at in (left, left + wide):
        plate.line((at, base + 0.8), (at, base + 9.6), ink=SOFT)
    x += facts.drawing.width_mm * scale if facts.face_down else 0.0
    plate.line((x, y + 1.6), (x, base + 5.0), 0.12, ACCENT)
    if facts.face_down:
        right = stock.width_mm - stock.sign_x_mm - facts.drawing.width_mm
        plate.across(x, left + wide, base + 4.3, words.length(right), ACCENT)
    else:
        plate.across(left, x, base + 4.3, words.length(stock.sign_x_mm), ACCENT)
    plate.across(left, left + wide, base + 9.0, words.length(stock.width_mm))
    for at in (ABOVE, base):
        plate.line((left - 0.8, at), (left - 9.6, at), ink=SOFT)
    plate.line((x - 1.6, y), (left - 5.0, y), 0.12, ACCENT)
    plate.upright(y, base, left - 4.3, words.length(stock.sign_y_mm), ACCENT)
    plate.upright(ABOVE, base, left - 9.0, words.length(stock.height_mm))


def _grain(plate: Figure, left: float, wide: float, text: str) -> None:
    middle = left + wide / 2
    plate.text(text, middle, ABOVE - 1.5, ink=SOFT)
    plate.arrow((middle - 5, ABOVE - 2.4), (middle - 16, ABOVE - 2.4), ink=SOFT)
    plate.arrow((middle + 5, ABOVE - 2.4), (middle + 16, ABOVE - 2.4), ink=SOFT)


def _legend(facts: JobFacts, fastening: Fastening, words: Words) -> list[tuple[str, str]]:
    """(mark, meaning) of what is on this plan."""
    rows = [("datum", words("lie.datum")), ("kerf", words("lie.kerf"))]
    if facts.drawing.of(Tab):
        rows.append(("tab", words("lie.tab")))
    if facts.screws_mm:
        rows.append(("screw", words("lie.screw")))
    if face_places(facts):
        rows.append(("touch", words("lie.touch")))
    if fastening.takes_clamps:
        rows.append(("clamp", words("lie.clamp")))
    return rows


def _draw_legend(plate: Figure, rows: list[tuple[str, str]], top: float, width: float) -> None:
    columns = max(1, int(width // LEGEND_COLUMN))
    for i, (mark, text) in enumerate(rows):
        x, y = 2.0 + (i % columns) * LEGEND_COLUMN, top + (i // columns) * LEGEND_ROW
        if mark == "datum":
            _target(plate, x + 2, y)
        elif mark == "kerf":
            plate.rectangle((x, y - 1.2), (4, 2.4), fill=plate.hatching("#7d868d", 0.9), stroke=FAINT, stroke_width=0.1)
        elif mark == "tab":
            plate.rectangle((x + 0.8, y - 0.9), (2.4, 1.8), fill=INK)
        elif mark == "screw":
            draw_screw(plate, (x + 2, y), "1", SCREW_R)
        elif mark == "touch":
            draw_touch(plate, (x + 2, y))
        else:
            plate.way([(x, y), (x + 4.1, y)], **CLAMP_STYLE)
        plate.text(text, x + 5.4, y + 0.85, "start")
