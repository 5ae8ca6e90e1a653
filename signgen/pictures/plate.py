"""A technical drawing on paper: lines, arrows, dimensions and labels in millimetres of the printed sheet, Y down."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Literal

from msgspec import Struct

from signgen.numbers import figure

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

INK = "#1d262e"
SOFT = "#5d6a74"
FAINT = "#aab3ba"
WOOD = "#f1e8da"
ACCENT = "#8c2f14"
"""Rust for what belongs to the datum and the screws: dark enough to read when printed grey."""
TEXT_MM = 2.5
"""Height of the letters' body: 7 points."""
FACE = "'Liberation Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif"
WIDE = 0.6
"""Width of a character over the text's size, on the generous side for figures in the faces above."""

HEAD = 1.5
"""Length of an arrow's head."""
OUTSIDE = 3.0
"""Length of an arrow that points at a short dimension from outside."""
CLEAR = 0.6
"""Least room that a dimension leaves beside its text."""

_Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


class Label(Struct, frozen=True, kw_only=True):
    """A text as placed, with the box that it surely stays in: (left, top, right, bottom)."""

    text: str
    box: tuple[float, float, float, float]


def text_width(text: str, size: float = TEXT_MM) -> float:
    return len(text) * WIDE * size


class Figure:
    """Marks are added in the order in which they cover each other; `labels` remembers every text for the tests.

    `name` is part of each id, for several drawings share one page. `complete` is False when something found no
    room; `width` and `height` are the paper's.
    """

    def __init__(self, name: str, width: float, height: float, title: str, about: str) -> None:
        import svgwrite

        self.name = name
        self.width, self.height = width, height
        self.labels: list[Label] = []
        self.complete = True
        self._made = 0
        # svgwrite's own checks cost more time than the whole sheet; a test parses what comes out instead
        self._svg = svgwrite.Drawing(
            size=(f"{figure(width, 2)}mm", f"{figure(height, 2)}mm"),
            viewBox=f"0 0 {figure(width, 2)} {figure(height, 2)}",
            debug=False,
        )
        self._svg["role"] = "img"
        self._svg["aria-label"] = f"{title}. {about}"
        self._svg["font-family"] = FACE
        self._svg.set_desc(title=title, desc=about)

    def line(self, a: _Point, b: _Point, width: float = 0.15, ink: str = INK, **extra: Any) -> None:
        self._svg.add(self._svg.line(_p(a), _p(b), stroke=ink, stroke_width=width, **extra))

    def polygon(self, points: Sequence[_Point], **style: Any) -> None:
        self._svg.add(self._svg.polygon([_p(p) for p in points], **style))

    def way(self, points: Sequence[_Point], **style: Any) -> None:
        """An open line through the points."""
        self._svg.add(self._svg.polyline([_p(p) for p in points], fill="none", **style))

    def rectangle(self, corner: _Point, size: _Point, **style: Any) -> None:
        self._svg.add(self._svg.rect(_p(corner), _p(size), **style))

    def circle(self, centre: _Point, radius: float, **style: Any) -> None:
        self._svg.add(self._svg.circle(_p(centre), round(radius, 3), **style))

    def area(self, shape: BaseGeometry, **style: Any) -> None:
        """A shape that is already in paper coordinates; holes stay open."""
        data = area_path(shape)
        if data:
            self._svg.add(self._svg.path(d=data, fill_rule="evenodd", **style))

    def hatching(self, ink: str, gap: float) -> str:
        """A fill of slanting lines."""
        self._made += 1
        name = f"{self.name}-hatch-{self._made}"
        pattern = self._svg.pattern(
            id=name, size=(gap, gap), patternUnits="userSpaceOnUse", patternTransform="rotate(45)"
        )
        pattern.add(self._svg.line((0, 0), (0, gap), stroke=ink, stroke_width=0.3))
        self._svg.defs.add(pattern)
        return f"url(#{name})"

    def text(
        self, text: str, x: float, y: float, anchor: Anchor = "middle", *, turned: bool = False, ink: str = INK,
        size: float = TEXT_MM, bold: bool = False, halo: bool = False,
    ) -> None:  # fmt: skip
        """The text on its baseline at (x, y); `turned` reads from below upwards, the baseline then at x; `halo`
        clears the lines around it."""
        style: dict[str, Any] = {"font_weight": "bold"} if bold else {}
        if turned:
            style["transform"] = f"rotate(-90 {figure(x, 2)} {figure(y, 2)})"
        style |= {"font_size": size, "text_anchor": anchor}
        if halo:
            # a text of its own behind, for not every reader paints the stroke first
            behind = {"stroke": "#fff", "stroke_width": 0.7, "stroke_linejoin": "round", "aria_hidden": "true"}
            self._svg.add(self._svg.text(text, _p((x, y)), fill="#fff", **behind, **style))
        self._svg.add(self._svg.text(text, _p((x, y)), fill=ink, **style))
        length = text_width(text, size)
        before = {"start": 0.0, "middle": length / 2, "end": length}[anchor]
        up, down = 0.75 * size, 0.22 * size
        if turned:
            box = (x - up, y - length + before, x + down, y + before)
        else:
            box = (x - before, y - up, x - before + length, y + down)
        self.labels.append(Label(text=text, box=box))

    def arrow(
        self,
        tail: _Point,
        tip: _Point,
        width: float = 0.15,
        ink: str = INK,
        head: float = HEAD,
    ) -> None:
        """A line with a filled head at its tip."""
        dx, dy = tip[0] - tail[0], tip[1] - tail[1]
        length = (dx * dx + dy * dy) ** 0.5 or 1.0
        ux, uy = dx / length, dy / length
        base = (tip[0] - head * ux, tip[1] - head * uy)
        side = 0.22 * head
        self.line(tail, base, width, ink)
        self.polygon(
            [tip, (base[0] - side * uy, base[1] + side * ux), (base[0] + side * uy, base[1] - side * ux)], fill=ink
        )

    def across(self, x0: float, x1: float, y: float, text: str, ink: str = SOFT) -> None:
        """A dimension from x0 to x1 at height y, its text over the line, or beyond x1 when there is no room
        between."""
        self._measure((x0, y), (x1, y), (1.0, 0.0), text, ink)
        if x1 - x0 >= text_width(text) + CLEAR:
            self.text(text, (x0 + x1) / 2, y - 0.7)
        else:
            self.text(text, x1 + OUTSIDE + 0.6, y + 0.9, "start")

    def upright(self, y0: float, y1: float, x: float, text: str, ink: str = SOFT) -> None:
        """A dimension from y0 down to y1 at x, its text beside the line reading upwards; above y0 when the line is
        too short and there is room."""
        self._measure((x, y0), (x, y1), (0.0, 1.0), text, ink)
        above = y0 - OUTSIDE - 0.6
        if y1 - y0 >= text_width(text) + CLEAR or above < text_width(text):
            self.text(text, x - 0.7, (y0 + y1) / 2, turned=True)
        else:
            self.text(text, x + 0.9, above, "start", turned=True)

    def _measure(self, a: _Point, b: _Point, along: _Point, text: str, ink: str) -> None:
        """The line of a dimension, its heads between its ends, or pointing at them from outside when it is short."""
        length = (b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1]
        if length >= text_width(text) + 2 * HEAD:
            middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            self.arrow(middle, a, ink=ink)
            self.arrow(middle, b, ink=ink)
            return
        self.arrow((a[0] - OUTSIDE * along[0], a[1] - OUTSIDE * along[1]), a, ink=ink)
        self.arrow((b[0] + OUTSIDE * along[0], b[1] + OUTSIDE * along[1]), b, ink=ink)
        self.line(a, b, ink=ink)

    def svg(self) -> str:
        """The drawing as an element to stand in a page."""
        return str(self._svg.tostring())


def _p(point: _Point) -> _Point:
    return round(float(point[0]), 3) + 0.0, round(float(point[1]), 3) + 0.0


@lru_cache(maxsize=256)
def area_path(shape: BaseGeometry, places: int = 2) -> str:
    """Path data of every ring of an area, with that many decimals; '' when it is empty."""
    words = []
    for part in getattr(shape, "geoms", [shape]):
        if part.is_empty:
            continue
        for ring in (part.exterior, *part.interiors):
            points = [f"{figure(x, places)} {figure(y, places)}" for x, y in ring.coords[:-1]]
            words.append("M" + "L".join(points) + "Z")
    return "".join(words)


def spread(wanted: Sequence[float], size: float, low: float, high: float) -> list[float] | None:
    """Middles of labels `size` wide, in the order of `wanted` (ascending), as near to it as they can be
    without overlap inside
    low..high; None when there is no room. Neighbours that touch move as one (pool of adjacent violators)."""
    if len(wanted) * size > high - low + 1e-9:
        return None
    blocks: list[tuple[float, int]] = []
    for value in wanted:
        blocks.append((value, 1))
        while len(blocks) > 1:
            (a, n), (b, m) = blocks[-2:]
            if b - a >= (n + m) / 2 * size:
                break
            # centre of the joined block: each label's own wish, seen from the block's middle
            middle = (n * (a + m * size / 2) + m * (b - n * size / 2)) / (n + m)
            blocks[-2:] = [(middle, n + m)]
    out: list[float] = []
    floor = low
    for i, (middle, n) in enumerate(blocks):
        rest = sum(m for _, m in blocks[i + 1 :]) * size
        start = min(max(middle - n * size / 2, floor), high - rest - n * size)
        out += [start + (k + 0.5) * size for k in range(n)]
        floor = start + n * size
    return out
