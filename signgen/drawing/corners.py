"""Ornaments in the sign's corners, cut from a face's glyph."""

from __future__ import annotations

import math

import shapely
from shapely import affinity
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.errors import AskError, CannotMakeError, Problem
from signgen.geometry.offsets import area_of, inward, polygons
from signgen.lettering.areas import GRID_PER_MM, glyph_areas
from signgen.lettering.faces import faces_with, open_face
from signgen.lettering.shaping import shape
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec

Area = Polygon | MultiPolygon

CORNERS = (("top left", 1, 1), ("top right", -1, 1), ("bottom left", 1, -1), ("bottom right", -1, -1))
"""Name, and how the glyph is mirrored there along X and Y."""

STEP_MM = 0.25
"""How finely places along the way from a corner to the sign's middle are tried."""

NAMES_SHOWN = 4


def ornaments(spec: SignSpec, edge: Polygon) -> tuple[tuple[str, Area], ...]:
    """(name, area) of the ornament in each corner: as near to it as the edge lets it lie, on the line to the sign's
    middle. Raises: CannotMakeError when there is no room, AskError when the face lacks the character."""
    asked = spec.ornament
    if asked is None:
        return ()
    glyph = _glyph(spec)
    x0, y0, x1, y1 = glyph.bounds
    wide, high = x1 - x0, y1 - y0
    inside: BaseGeometry = area_of(inward(edge, asked.inset_mm, spec.tolerances.chord_mm))
    # Rounding of outlines must not push what just fits away from a straight edge.
    inside = inside.buffer(2 * spec.tolerances.chord_mm)
    shapely.prepare(inside)
    first = (asked.inset_mm + wide / 2, asked.inset_mm + high / 2)
    middle = (spec.width_mm / 2, spec.height_mm / 2)
    way = math.dist(first, middle)
    found = []
    for name, flip_x, flip_y in CORNERS:
        upright = affinity.scale(
            affinity.translate(glyph, -(x0 + x1) / 2, -(y0 + y1) / 2), flip_x, flip_y, origin=(0, 0)
        )
        for number in range(math.ceil(way / STEP_MM) + 1):
            share = min(1.0, number * STEP_MM / way) if way else 1.0
            x, y = (a + share * (m - a) for a, m in zip(first, middle, strict=True))
            if x + wide / 2 > middle[0] or y + high / 2 > middle[1]:
                what = Message("drawing.ornament_no_room_corner", size=Mm(asked.size_mm), name=name)
                raise CannotMakeError.at("ornament-size", what, Message("drawing.use_smaller_one_smaller_ornament"))
            place = (x if flip_x > 0 else spec.width_mm - x, y if flip_y < 0 else spec.height_mm - y)
            area = _on_grid(affinity.translate(upright, *place))
            if shapely.covers(inside, area):
                found.append((f"ornament {name}", area))
                break
    return tuple(found)


def _glyph(spec: SignSpec) -> Area:
    """The character's filled outline at its size, somewhere in the plane."""
    asked = spec.ornament
    assert asked is not None
    try:
        face = open_face(asked.font)
    except AskError as error:
        problems = [Problem(where="ornament-font", what=each.what, remedy=each.remedy) for each in error.problems]
        raise AskError(problems) from None
    if not face.has(asked.text):
        others = faces_with(asked.text)[:NAMES_SHOWN]
        remedy = (
            Message("drawing.these_have_it", others=tuple(others))
            if others
            else Message("drawing.no_face_ships_name_font")
        )
        raise AskError.at("ornament", Message("drawing.face_lacks_ornament", name=face.name, text=asked.text), remedy)
    glyphs = [each.glyph for each in shape(face, asked.text).glyphs]
    (rough,) = glyph_areas(face, glyphs[:1], scale_mm_per_em=asked.size_mm, chord_mm=spec.tolerances.chord_mm)
    if rough.is_empty:
        raise AskError.at(
            "ornament",
            Message("drawing.blank", text=asked.text, name=face.name),
            Message("drawing.use_another_character"),
        )
    x0, y0, x1, y1 = rough.bounds
    scale = asked.size_mm**2 / max(x1 - x0, y1 - y0)
    (area,) = glyph_areas(face, glyphs[:1], scale_mm_per_em=scale, chord_mm=spec.tolerances.chord_mm)
    return area


def _on_grid(area: Area) -> Area:
    """Its corners on the steps on which letters lie, shells counter-clockwise."""
    return area_of(polygons(shapely.set_precision(area, 1 / GRID_PER_MM)))
