"""Drawings for a lesson: lines in grey, nothing told by colour alone, each with words for whoever cannot see it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from shapely.affinity import scale, translate
from shapely.geometry.base import BaseGeometry

from signgen.lesson import svg
from signgen.lesson.line_facts import LineFacts
from signgen.lesson.numbers import CountedFigure, CountedHole, CountedTab
from signgen.lesson.source import Source
from signgen.markup.markup import Html, raw
from signgen.messages import Message, Mm, Num
from signgen.messages.values import Sides
from signgen.messages.wording import Wording
from signgen.numbers import rounded
from signgen.shop.tools import Tool

INK, SOFT, FAINT = "#111", "#666", "#bbb"
WIDE_MM, HIGH_MM = 170.0, 84.0
"""Room of a drawing on the page."""
GRID_MM = 20.0
MARGIN_MM = 9.0


class Sheet:
    """A drawing of things in millimetres, scaled to fit, Y up."""

    def __init__(self, low: tuple[float, float], high: tuple[float, float], high_mm: float = HIGH_MM) -> None:
        self.low, self.high = low, high
        wide, tall = high[0] - low[0], high[1] - low[1]
        self.scale = min((WIDE_MM - 2 * MARGIN_MM) / wide, (high_mm - 2 * MARGIN_MM) / tall)
        self.size = (wide * self.scale + 2 * MARGIN_MM, tall * self.scale + 2 * MARGIN_MM)
        self.parts: list[Html] = []

    def at(self, x: float, y: float) -> tuple[float, float]:
        return (
            round(MARGIN_MM + (x - self.low[0]) * self.scale, 2),
            round(self.size[1] - MARGIN_MM - (y - self.low[1]) * self.scale, 2),
        )

    def line(
        self, a: tuple[float, float], b: tuple[float, float], colour: str = INK, width: float = 0.3, **more: str
    ) -> None:
        self.parts.append(svg.line(self.at(*a), self.at(*b), stroke=colour, stroke_width=width, **more))

    def ring(self, centre: tuple[float, float], radius_mm: float, width: float = 0.3, **more: str) -> None:
        style = {"fill": "none", "stroke": INK, "stroke_width": width} | more
        self.parts.append(svg.circle(self.at(*centre), round(radius_mm, 2), **style))

    def text(
        self, words: str, place: tuple[float, float], dx: float = 0, dy: float = 0, size: float = 3.2, **more: str
    ) -> None:
        x, y = self.at(*place)
        self.parts.append(
            svg.text(
                words,
                (round(x + dx, 2), round(y + dy, 2)),
                font_size=size,
                fill=INK,
                **({"text_anchor": "middle"} | more),
            )
        )

    def area(self, shape: BaseGeometry, width: float = 0.35, fill: str = "none") -> None:
        for polygon in getattr(shape, "geoms", [shape]):
            for ring in (polygon.exterior, *polygon.interiors):
                points = [self.at(x, y) for x, y in ring.simplify(0.05 / self.scale).coords]
                data = "M" + "L".join(f"{x} {y}" for x, y in points) + "Z"
                self.parts.append(svg.path(data, fill=fill, stroke=INK, stroke_width=width))

    def drawn(self, title: str, about: str) -> Html:
        wide, high = (f"{value:.1f}" for value in self.size)
        return raw(svg.drawing((wide, high), title, about, *self.parts, cls="drawing"))


def sign_on_grid(source: Source, holes: Sequence[CountedHole], title: str, wording: Wording) -> Html:
    """The sign from above on squares of 20 mm, in program coordinates."""
    width, height = source.spec.width_mm, source.spec.height_mm
    dx, dy = source.shift_mm
    step = GRID_MM * max(1, math.ceil(max(width, height) / (20 * GRID_MM)))
    sheet = Sheet((min(dx, 0.0), min(dy, 0.0)), (dx + width, dy + height))
    for n in range(math.floor(dx / step), math.ceil((dx + width) / step) + 1):
        sheet.line((n * step, dy), (n * step, dy + height), FAINT, 0.15)
        sheet.text(f"{n * step:g}", (n * step, dy), dy=4, size=2.8)
    for n in range(math.floor(dy / step), math.ceil((dy + height) / step) + 1):
        sheet.line((dx, n * step), (dx + width, n * step), FAINT, 0.15)
        sheet.text(f"{n * step:g}", (dx, n * step), dx=-4, dy=1, size=2.8)
    for feature in source.drawing.features:
        if feature.takes:
            sheet.area(_shifted(feature.footprint, dx, dy), 0.3)
    for n, hole in enumerate(holes, 1):
        sheet.text(str(n), (hole.x_mm, hole.y_mm), dx=3.2, dy=-2, size=3.6, font_weight="bold")
        sheet.ring((hole.x_mm, hole.y_mm), 0.6, fill=INK)
    sheet.ring((0.0, 0.0), 1.6, 0.6)
    size = Sides((width, height), 1, True)
    return sheet.drawn(title, wording(Message("lesson.picture_sign", size=size, holes=len(holes))))


def _shifted(shape: BaseGeometry, dx: float, dy: float) -> BaseGeometry:
    moved: BaseGeometry = translate(shape, dx, dy)
    return moved


def board_and_zero(source: Source, title: str, wording: Wording, *, behind: bool = False) -> Html:
    """The board, the sign on it, and X0 Y0; from `behind` as it lies face down, turned over like a page."""
    wide, high = source.board_mm
    x, y = source.sign_on_board_mm
    sheet = Sheet((0, 0), (wide, high), 70)
    sheet.parts.append(
        svg.rectangle(sheet.at(0, high), (round(wide * sheet.scale, 2), round(high * sheet.scale, 2)), fill="none",
                      stroke=INK, stroke_width=0.5)
    )  # fmt: skip
    edge = _shifted(source.drawing.edge, x, y)
    sheet.area(scale(edge, -1.0, 1.0, origin=(wide / 2, 0.0)) if behind else edge, 0.3)
    zx, zy = source.zero_on_board_mm
    zx, way = (wide - zx, -1) if behind else (zx, 1)
    sheet.ring((zx, zy), 1.8, 0.6)
    sheet.line((zx, zy), (zx + way * 30 / sheet.scale, zy), INK, 0.5)
    sheet.line((zx, zy), (zx, zy + 24 / sheet.scale), INK, 0.5)
    sheet.text("-X" if behind else "X", (zx, zy), dx=way * 32, dy=1.2, font_weight="bold")
    sheet.text("Y", (zx, zy), dx=3, dy=-23, font_weight="bold")
    sheet.text("X0 Y0", (zx, zy), dx=way * 4, dy=5, text_anchor="end" if behind else "start")
    about = Message("lesson.picture_zero", x=Mm(zx, 1, True), y=Mm(zy, 1, True))
    return sheet.drawn(title, wording(about))


def cutter_side(tool: Tool, title: str, wording: Wording) -> Html:
    """The cutter in its collet, six times as large at the most."""
    scale = min(6.0, 26 / max(tool.diameter_mm, tool.shank_mm))
    shank, wide = tool.shank_mm * scale / 2, tool.diameter_mm * scale / 2
    middle, parts = 22.0, []
    collet = [(middle - 16, 2.0), (middle + 16, 2.0), (middle + 11, 14.0), (middle - 11, 14.0)]
    parts.append(svg.polygon(collet, fill=FAINT, stroke=INK, stroke_width=0.4))
    parts.append(svg.rectangle((middle - shank, 6), (2 * shank, 18), fill="#fff", stroke=INK, stroke_width=0.4))
    if tool.kind == "v-bit":
        cone = (wide - tool.tip_mm * scale / 2) / tool.slope
        flat = tool.tip_mm * scale / 2
        points = [(middle - wide, 24), (middle + wide, 24), (middle + flat, 24 + cone), (middle - flat, 24 + cone)]
        bottom = 24 + cone
    else:
        points, bottom = [(middle - wide, 24), (middle + wide, 24), (middle + wide, 44), (middle - wide, 44)], 44.0
    parts.append(
        svg.polygon([(round(x, 2), round(y, 2)) for x, y in points], fill="#fff", stroke=INK, stroke_width=0.5)
    )
    return raw(
        svg.drawing(
            ("44", f"{bottom + 3:.1f}"),
            title,
            wording(Message("lesson.picture_cutter", tool=tool.called)),
            *parts,
            cls="drawing",
        )
    )


def groove(tool: Tool, depth_mm: float, title: str, wording: Wording) -> Html:
    """A groove in section, with its depth and its width to be named."""
    half = depth_mm * tool.slope + tool.tip_mm / 2
    sheet = Sheet((-2.2 * half, -1.3 * depth_mm), (2.2 * half, 0.35 * depth_mm), 46)
    flat = tool.tip_mm / 2
    outline = [(-2.2 * half, 0.0), (-half, 0.0), (-flat, -depth_mm), (flat, -depth_mm), (half, 0.0), (2.2 * half, 0.0)]
    for a, b in pairwise(outline):
        sheet.line(a, b, INK, 0.5)
    sheet.line((-half, 0.12 * depth_mm), (half, 0.12 * depth_mm), INK, 0.25)
    sheet.text("?", (0, 0.12 * depth_mm), dy=-1)
    sheet.line((1.4 * half, 0), (1.4 * half, -depth_mm), INK, 0.25)
    sheet.text("?", (1.4 * half, -depth_mm / 2), dx=3)
    about = Message(
        "lesson.picture_depth", depth=Mm(depth_mm, 2, True), width=Mm(2 * half, 2, True), angle=Num(tool.angle_deg or 0)
    )  # fmt: skip
    return sheet.drawn(title, wording(about))


def passes_side(source: Source, levels: Sequence[CountedFigure], title: str, wording: Wording) -> Html:
    """The board from the side with a line at the height of every pass."""
    thick = source.top_mm - source.bottom_mm
    low = min(source.bottom_mm, levels[-1].value) - 0.08 * thick
    sheet = Sheet((0, low), (2.4 * thick, source.top_mm + 0.06 * thick), 78)
    sheet.line((0, source.top_mm), (2.4 * thick, source.top_mm), INK, 0.6)
    sheet.line((0, source.bottom_mm), (2.4 * thick, source.bottom_mm), INK, 0.6)
    for n, level in enumerate(levels):
        sheet.line((0.35 * thick, level.value), (1.6 * thick, level.value), INK, 0.25, stroke_dasharray="2 1")
        if n % max(1, math.ceil(len(levels) / 14)) == 0 or n == len(levels) - 1:
            sheet.text(
                f"Z{rounded(level.value / source.unit_mm, 4):g}",
                (1.64 * thick, level.value),
                dy=1,
                size=2.8,
                text_anchor="start",
            )
    return sheet.drawn(title, wording(Message("lesson.picture_passes", count=len(levels))))


def arc_picture(row: LineFacts, title: str, wording: Wording) -> Html:
    """An arc with its start, end and centre, in the right proportion."""
    assert row.arc is not None
    assert row.start_mm is not None
    assert row.end_mm is not None
    (cx, cy), radius = row.arc.centre_mm, row.arc.radius_mm
    a0 = math.atan2(row.start_mm[1] - cy, row.start_mm[0] - cx)
    turn = math.radians(row.arc.turned_deg) * (-1 if row.kind == 2 else 1)
    way = [(cx + radius * math.cos(a0 + turn * k / 40), cy + radius * math.sin(a0 + turn * k / 40)) for k in range(41)]
    xs, ys = [x for x, _ in (*way, (cx, cy))], [y for _, y in (*way, (cx, cy))]
    pad = 0.12 * radius
    sheet = Sheet((min(xs) - pad, min(ys) - pad), (max(xs) + pad, max(ys) + pad), 56)
    sheet.parts.append(svg.polyline([sheet.at(*point) for point in way], stroke=INK, stroke_width=0.6))
    for a, b in zip(way[18:20], way[20:22], strict=True):
        sheet.line(a, b, INK, 1.2)
    start, corner = way[0], (cx, way[0][1])
    sheet.line(start, corner, SOFT, 0.3, stroke_dasharray="1.5 1")
    sheet.line(corner, (cx, cy), SOFT, 0.3, stroke_dasharray="1.5 1")
    sheet.ring(start, 1.1, fill=INK)
    sheet.ring(way[-1], 1.1)
    x, y = sheet.at(cx, cy)
    for a, b in (((x - 2, y), (x + 2, y)), ((x, y - 2), (x, y + 2))):
        sheet.parts.append(svg.line(a, b, stroke=INK, stroke_width=0.4))
    sheet.text("I", ((start[0] + cx) / 2, start[1]), dy=-1)
    sheet.text("J", (cx, (start[1] + cy) / 2), dx=2.4)
    return sheet.drawn(title, wording(Message("lesson.picture_arc")))


def tabs_from_above(source: Source, tabs: Sequence[CountedTab], title: str, wording: Wording) -> Html:
    """The outline with a mark where the cutter rises."""
    width, height = source.spec.width_mm, source.spec.height_mm
    dx, dy = source.shift_mm
    sheet = Sheet((dx - 6, dy - 6), (dx + width + 6, dy + height + 6), 64)
    sheet.area(_shifted(source.drawing.edge, dx, dy), 0.4)
    for n, tab in enumerate(tabs, 1):
        sheet.ring((tab.x_mm, tab.y_mm), 1.6, 0.5)
        sheet.text(str(n), (tab.x_mm, tab.y_mm), dy=1, size=2.4)
    return sheet.drawn(title, wording(Message("lesson.picture_tabs", count=len(tabs))))


def own_target(title: str, wording: Wording) -> Html:
    """The square and the hole that a pupil programs."""
    sheet = Sheet((0, 0), (100, 80), 78)
    for n in range(0, 101, 10):
        sheet.line((n, 0), (n, 80), FAINT, 0.15)
        sheet.text(str(n), (n, 0), dy=4, size=2.8) if n % 20 == 0 else None
    for n in range(0, 81, 10):
        sheet.line((0, n), (100, n), FAINT, 0.15)
        sheet.text(str(n), (0, n), dx=-4, dy=1, size=2.8) if n % 20 == 0 else None
    for a, b in (((20, 20), (60, 20)), ((60, 20), (60, 60)), ((60, 60), (20, 60)), ((20, 60), (20, 20))):
        sheet.line(a, b, INK, 0.7)
    sheet.ring((80, 40), 5 * sheet.scale, 0.5)
    sheet.line((77, 40), (83, 40), INK, 0.25)
    sheet.line((80, 37), (80, 43), INK, 0.25)
    sheet.ring((0, 0), 1.6, 0.6)
    return sheet.drawn(title, wording(Message("lesson.picture_own")))
