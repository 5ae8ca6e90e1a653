"""A cutter in profile as it stands in the collet, so that the right one is taken from the box."""

from __future__ import annotations

import math

from signgen.pictures.plate import FAINT, INK, SOFT, Figure
from signgen.shop.tools import Tool
from signgen.words.words import Words, words_in

WIDTH, HEIGHT = 20.0, 24.0
NUT = 3.0
"""Height of the piece of nut that is drawn."""
ROOM = 16.0
"""Height for the longest stick-out."""
STEEL, EDGE = "#e7eaec", "#c3cad0"


def cutter_plate(tool: Tool, number: int, longest_mm: float, words: Words | None = None) -> Figure:
    """The cutter with its stick-out and its diameter; every cutter of a job is drawn to one scale, set by
    `longest_mm`."""
    scale = min(1.0, ROOM / longest_mm, (WIDTH - 9) / tool.diameter_mm)
    words = words or words_in("en")
    about = words("cutter.about", cutter=words.tool(tool), stickout=words.mm(tool.stickout_mm))
    plate = Figure(f"cutter-{number}", WIDTH, HEIGHT, words("cutter.title"), about)
    x, top = WIDTH / 2 + 2.0, NUT + 0.5
    tip = top + tool.stickout_mm * scale
    body = min(tool.stickout_mm, max(tool.cutting_length_mm, _point_mm(tool)))
    r, shank = tool.radius_mm * scale, tool.shank_mm / 2 * scale
    plate.rectangle((x - shank, top), (2 * shank, tip - body * scale - top), fill=STEEL, stroke=INK, stroke_width=0.2)
    plate.polygon(
        [(x + px, y) for px, y in _outline(tool, r, tip, body * scale, scale)], fill=EDGE, stroke=INK, stroke_width=0.25
    )
    half = max(1.5 * shank, 4.0)
    bevel = 1.0
    nut = [
        (-half, 0.5),
        (half, 0.5),
        (half, top - bevel),
        (half - bevel, top),
        (bevel - half, top),
        (-half, top - bevel),
    ]
    plate.polygon([(x + px, y) for px, y in nut], fill=plate.hatching(FAINT, 0.8), stroke=SOFT, stroke_width=0.25)
    side = x - max(r, half) - 1.2
    for y in (top, tip):
        plate.line((side - 0.6, y), (x - (half if y == top else 0.4), y), 0.1, SOFT)
    plate.upright(top, tip, side, words.length(tool.stickout_mm))
    plate.text(f"\u2300 {words.length(tool.diameter_mm, 2)}", x, tip + 3.4)
    return plate


def _point_mm(tool: Tool) -> float:
    """Height of the part below the full diameter."""
    if tool.kind == "v-bit":
        return (tool.radius_mm - tool.tip_mm / 2) / tool.slope
    if tool.kind == "ball-nose":
        return tool.radius_mm
    return tool.point_length_mm


def _outline(tool: Tool, r: float, tip: float, body: float, scale: float) -> list[tuple[float, float]]:
    """The cutting part, from the upper left around its tip: (x from the axis, y on paper)."""
    upper = tip - body
    if tool.kind == "keyhole":
        neck, head = tool.neck_mm / 2 * scale, tip - tool.head_mm * scale
        return [(-neck, upper), (-neck, head), (-r, head), (-r, tip), (r, tip), (r, head), (neck, head), (neck, upper)]
    if tool.kind == "ball-nose":
        turn = [math.pi * i / 24 for i in range(25)]
        return [(-r, upper), *((-r * math.cos(a), tip - r + r * math.sin(a)) for a in turn), (r, upper)]
    flat = {"v-bit": tool.tip_mm / 2 * scale, "end-mill": r}.get(tool.kind, 0.0)
    shoulder = tip - _point_mm(tool) * scale
    return [(-r, upper), (-r, shoulder), (-flat, tip), (flat, tip), (r, shoulder), (r, upper)]
