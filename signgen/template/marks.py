"""What a drilling template draws of the sign: its outline, its holes with their middles, a level and a plumb line."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from signgen.drawing.drawing import Drawing
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.pictures.plate import ACCENT, INK, SOFT, Figure, text_width
from signgen.spec.paper import OVERLAP_MM
from signgen.words.words import Words

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

CROSS_MM = 6.0
"""How far the cross of a hole's middle reaches beyond its rim."""
BEYOND_MM = 4.0
"""How far level and plumb line reach beyond the sign."""
LABEL_MM = 3.2
LEADING = 1.25
UP_MM = 6.0
"""From the sign's upper edge, or the level line where that runs there, down to the word that says which way is up."""
SAME_MM = 0.01

Box = tuple[float, float, float, float]


class Paper:
    """From sign coordinates to a sheet at full size: the sign's lower left corner lies at (x, y), Y turned over."""

    def __init__(self, x: float, y: float) -> None:
        self.x, self.y = x, y

    def __call__(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        return self.x + x_mm, self.y - y_mm


def draw_marks(plate: Figure, drawing: Drawing, words: Words, paper: Paper, window: Box) -> None:
    """Everything that lies in the window, cut off at its edge; the figures of a hole only where its middle is."""
    from shapely.geometry import LineString, Point, box

    clip = box(*window)

    def line(points: list[tuple[float, float]], width: float, ink: str = INK, **style: Any) -> None:
        _lines(plate, clip.intersection(LineString(points)), paper, width, ink, style)

    for outline in drawing.outlines:
        line(list(outline.exterior.coords), 0.35)
    places = [(hole.x_mm, hole.y_mm) for hole in screws(drawing)]
    level = max(y for _, y in places)
    plumb = drawing.width_mm / 2
    line([(-BEYOND_MM, level), (drawing.width_mm + BEYOND_MM, level)], 0.2, ACCENT, stroke_dasharray="6 1.5 1 1.5")
    line([(plumb, -BEYOND_MM), (plumb, drawing.height_mm + BEYOND_MM)], 0.2, SOFT, stroke_dasharray="6 1.5 1 1.5")
    for hole in drawing.of(Hole):
        r = hole.diameter_mm / 2
        rim = hole.middle_line.buffer(r, quad_segs=32)
        line(list(rim.exterior.coords), 0.3)
        for x, y in dict.fromkeys(((hole.x_mm, hole.y_mm), *hole.ends_mm)):
            far = r + CROSS_MM if (x, y) == (hole.x_mm, hole.y_mm) else r / 2
            line([(x - far, y), (x + far, y)], 0.12)
            line([(x, y - far), (x, y + far)], 0.12)
    for keyhole in drawing.of(Keyhole):
        x, y = keyhole.x_mm, keyhole.y_mm
        line([(x - CROSS_MM, y), (x + CROSS_MM, y)], 0.12)
        line([(x, y - CROSS_MM), (x, y + CROSS_MM)], 0.12)
        line(list(Point(x, y).buffer(keyhole.slot_mm / 2, quad_segs=32).exterior.coords), 0.3)
        line(list(keyhole.footprint.exterior.coords), 0.15, SOFT, stroke_dasharray="1.5 1")
    for hole in screws(drawing):
        if window[0] <= hole.x_mm <= window[2] and window[1] <= hole.y_mm <= window[3]:
            _hole_words(plate, hole, drawing, words, paper, window)
    _line_words(plate, drawing, words, paper, window, places, level)


def screws(drawing: Drawing) -> tuple[Hole, ...]:
    """All that a screw comes to: holes, and keyholes as if their slots' widths were holes where the screws hang."""
    hung = tuple(
        Hole(name=keyhole.name, x_mm=keyhole.x_mm, y_mm=keyhole.y_mm, diameter_mm=keyhole.slot_mm)
        for keyhole in drawing.of(Keyhole)
    )
    return (*drawing.of(Hole), *hung)


def _lines(plate: Figure, found: BaseGeometry, paper: Paper, width: float, ink: str, style: dict[str, Any]) -> None:
    """The lines of what a window left of a line."""
    from shapely.ops import linemerge

    merged = linemerge(found) if found.geom_type == "MultiLineString" else found
    for part in getattr(merged, "geoms", [merged]):
        if part.geom_type == "LineString" and not part.is_empty:
            points = [paper(x, y) for x, y in part.coords]
            plate.way(points, stroke=ink, stroke_width=width, stroke_linejoin="round", **style)


def _hole_words(plate: Figure, hole: Hole, drawing: Drawing, words: Words, paper: Paper, window: Box) -> None:
    """A hole's size and the place of its middle from the sign's lower left corner, towards the sign's middle, or
    on its other side where the window ends before they do."""
    hung = any(keyhole.name == hole.name for keyhole in drawing.of(Keyhole))
    size = words("template.screw") if hung else words.hole_sizes([hole], "⌀ ")
    rows = [size, f"{words.length(hole.x_mm, 2)} / {words.length(hole.y_mm, 2)}"]
    along = abs(hole.ends_mm[1][0] - hole.ends_mm[0][0]) / 2
    reach = hole.diameter_mm / 2 + along + 1.5
    long = max(text_width(row, LABEL_MM) for row in rows)
    right = hole.x_mm <= drawing.width_mm / 2
    if right and hole.x_mm + reach + long > window[2]:
        right = False
    elif not right and hole.x_mm - reach - long < window[0]:
        right = True
    upper = hole.y_mm > drawing.height_mm / 2
    for i, text in enumerate(rows if upper else reversed(rows)):
        y = hole.y_mm - (i + 1.2) * LEADING * LABEL_MM if upper else hole.y_mm + (i + 0.45) * LEADING * LABEL_MM
        at = paper(hole.x_mm + (reach if right else -reach), y)
        plate.text(text, *at, "start" if right else "end", size=LABEL_MM, halo=True)


def _line_words(
    plate: Figure,
    drawing: Drawing,
    words: Words,
    paper: Paper,
    window: Box,
    places: list[tuple[float, float]],
    level: float,
) -> None:
    """What the level line is, with the distance between its outer holes to check a pasted template by; which way is
    up. In the middle of what the window shows of the sign."""
    x = (max(window[0], 0.0) + min(window[2], drawing.width_mm)) / 2
    top = min(window[3] - OVERLAP_MM, drawing.height_mm)
    row = sorted(px for px, py in places if abs(py - level) < SAME_MM)
    apart = words.mm(row[-1] - row[0], 2)
    said = words("template.level.apart", apart=apart) if len(row) > 1 else words("template.level")
    if window[1] <= level <= window[3]:
        plate.text(said, *paper(x, level + 1.0), size=LABEL_MM, ink=ACCENT, halo=True)
    free = top - UP_MM if abs(top - UP_MM - level) > UP_MM else level - UP_MM
    plate.text(words("template.up"), *paper(x, free), size=LABEL_MM, ink=SOFT, halo=True)
