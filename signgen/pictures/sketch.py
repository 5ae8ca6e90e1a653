"""The drawing in flat colours, quick enough to come with every letter typed. No tool has been thought of yet."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from signgen.drawing.drawing import Drawing
from signgen.features.edge import Bevel, Edge
from signgen.features.feature import Feature
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.features.tab import Tab
from signgen.numbers import figure
from signgen.pictures.plate import INK, area_path
from signgen.spec.paint import paint_rgb
from signgen.spec.sign_spec import SignSpec

if TYPE_CHECKING:
    from shapely.geometry.base import BaseGeometry

MARGIN_RATIO = 0.03
"""Room around the sign, over its longer side."""

FINEST_RATIO = 1 / 4000
"""Detail below that share of the longer side is left out: no screen shows it."""

FULL_DEPTH_RATIO = 0.5
"""Floors as deep as that share of the thickness are drawn in the ground's full colour, shallower ones lighter."""

LINE_RATIO = 1 / 500
"""Width of outlines, over the longer side."""

_Rgb = tuple[float, float, float]


def sketch_svg(spec: SignSpec, drawing: Drawing, title: str) -> str:
    """The sign from above, to scale."""
    import svgwrite

    longer = max(drawing.width_mm, drawing.height_mm)
    room = MARGIN_RATIO * longer
    wide, high = drawing.width_mm + 2 * room, drawing.height_mm + 2 * room
    svg = svgwrite.Drawing(size=(figure(wide, 2), figure(high, 2)), viewBox=_box(wide, high), debug=False)
    svg.set_desc(title=title)
    for area, colour in _areas(spec, drawing):
        data = _path(area, room, drawing.height_mm + room, longer)
        svg.add(svg.path(d=data, fill=colour, fill_rule="evenodd", stroke=INK, stroke_width=LINE_RATIO * longer))
    return str(svg.tostring())


def _areas(spec: SignSpec, drawing: Drawing) -> Iterator[tuple[BaseGeometry, str]]:
    face, ground = spec.material.colour_rgb, spec.material.ground_rgb
    paint = paint_rgb(spec.paint, "paint") if spec.paint else None
    yield drawing.edge, _hex(face)
    for feature in sorted(drawing.upward, key=_order):
        if isinstance(feature, Edge | Tab):
            continue
        if isinstance(feature, Raised):
            yield feature.footprint, _hex(paint or face)
        elif _is_through(feature, drawing):
            yield feature.footprint, "#fff"
        else:
            colour = paint if paint and feature.is_letter else _sunk(feature, drawing, face, ground)
            yield feature.footprint, _hex(colour)


def _order(feature: Feature) -> int:
    """Floors first, what stands or is cut in them on top."""
    return 0 if isinstance(feature, Bevel) else 1 if isinstance(feature, Recess) and not feature.is_letter else 2


def _is_through(feature: Feature, drawing: Drawing) -> bool:
    return feature.side == "both" or (isinstance(feature, Recess) and drawing.is_through(feature))


def _sunk(feature: Feature, drawing: Drawing, face: _Rgb, ground: _Rgb) -> _Rgb:
    """The ground's colour, or nearer to the face's for a shallow floor."""
    depth_mm = getattr(feature, "depth_mm", drawing.thickness_mm)
    share = min(0.5 + 0.5 * depth_mm / (FULL_DEPTH_RATIO * drawing.thickness_mm), 1.0)
    red, green, blue = (a + share * (b - a) for a, b in zip(face, ground, strict=True))
    return red, green, blue


def _hex(rgb: _Rgb) -> str:
    return "#" + "".join(f"{round(each):02x}" for each in rgb)


def _box(wide: float, high: float) -> str:
    return f"0 0 {figure(wide, 2)} {figure(high, 2)}"


def _path(area: BaseGeometry, left: float, bottom: float, longer: float) -> str:
    from shapely.affinity import affine_transform

    placed = affine_transform(area, [1, 0, 0, -1, left, bottom])
    return area_path(placed.simplify(FINEST_RATIO * longer), 2)
