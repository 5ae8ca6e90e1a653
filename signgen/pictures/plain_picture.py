"""A small picture of a sign from its drawing alone, before any program: outline, sunk parts and holes, in colours."""

from __future__ import annotations

from collections.abc import Iterator

from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.markup.markup import Html, el, joined
from signgen.numbers import figure
from signgen.pictures.plate import area_path
from signgen.shop.materials import Material

FINEST_PARTS = 1500
"""Detail finer than this part of the longer side is left out: half a screen's pixel in a picture of this size."""

SHADE = 0.62
"""How much of its light a ground that lies lower keeps."""

BOUNDS = "#6b5f50"
OPEN = "#ffffff"

Rgb = tuple[int, int, int]


def plain_svg(drawing: Drawing, material: Material, paint: Rgb | None, label: str) -> Html:
    """An SVG in millimetres of the sign, to be given its size by the page. `label`: what it shows, for whoever hears
    the page; `paint` colours letters and lines."""
    width, height = figure(drawing.width_mm, 2), figure(drawing.height_mm, 2)
    finest = max(drawing.width_mm, drawing.height_mm) / FINEST_PARTS
    marks = joined(*_marks(drawing, material, paint, finest))
    upright = el("g", marks, transform=f"matrix(1 0 0 -1 0 {height})")
    return el("svg", upright, viewBox=f"0 0 {width} {height}", role="img", aria_label=label)


def _marks(drawing: Drawing, material: Material, paint: Rgb | None, finest: float) -> Iterator[Html]:
    face, ground = _hex(material.colour_rgb), _hex(material.ground_rgb, SHADE)
    letters = _hex(paint) if paint else ground
    yield _path(drawing.edge, face, finest, stroke=BOUNDS, stroke_width=figure(2 * finest, 3))
    for feature in drawing.upward:
        if isinstance(feature, Raised):
            yield _path(feature.footprint, letters if paint else face, finest)
        elif isinstance(feature, Recess) and drawing.is_through(feature):
            yield _path(feature.footprint, OPEN, finest)
        elif feature.takes and not feature.own_picture:
            is_letter = isinstance(feature, Groove) or (isinstance(feature, Recess) and feature.is_letter)
            yield _path(feature.footprint, letters if is_letter else ground, finest)
    for hole in drawing.of(Hole):
        if hole.sink:
            yield _path(hole.footprint, ground, finest)
        yield _path(hole.middle_line.buffer(hole.diameter_mm / 2, quad_segs=6), OPEN, finest)


def _path(shape: BaseGeometry, fill: str, finest: float, **more: str) -> Html:
    return el("path", d=area_path(shape.simplify(finest), 2), fill=fill, fill_rule="evenodd", **more)


def _hex(rgb: Rgb, light: float = 1.0) -> str:
    return "#" + "".join(f"{round(value * light):02x}" for value in rgb)
