"""The part of the face where letters may lie, and the part where they look well."""

from __future__ import annotations

from collections.abc import Sequence

import shapely
from shapely.geometry import MultiPolygon, Polygon, box
from shapely.geometry.base import BaseGeometry

from signgen.composition.proportions import HOLE_GAP_DIAMETERS
from signgen.drawing.panel import text_inset_mm
from signgen.drawing.spacing import LEAST_WALL_MM
from signgen.features.hole import Hole
from signgen.geometry.offsets import area_of, inward
from signgen.spec.sign_spec import SignSpec

ORNAMENT_GAP_RATIO = 0.03
"""From an ornament to letters, over the shorter side (common practice of layout)."""

ROUND_SEGMENTS = 16
"""Segments of a quarter of the circle round a hole."""


def letter_room(
    spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...], corners: Sequence[Polygon | MultiPolygon]
) -> BaseGeometry:
    """Where letters may lie: the margin away from the edge, inside the frame's lines and the bevel, and clear of every
    hole and ornament."""
    inset = max(spec.text.margin_mm, text_inset_mm(spec))
    if spec.frame:
        inset = max(inset, spec.frame.reach_mm + LEAST_WALL_MM)
    if spec.chamfer_mm:
        inset = max(inset, spec.chamfer_mm + LEAST_WALL_MM)
    room: BaseGeometry = area_of(inward(edge, inset, spec.tolerances.chord_mm))
    for hole in holes:
        x0, y0, x1, y1 = hole.footprint.bounds
        away = min(spec.text.margin_mm, hole.diameter_mm)
        room = room.difference(box(x0 - away, y0 - away, x1 + away, y1 + away))
    for area in corners:
        x0, y0, x1, y1 = area.bounds
        away = ORNAMENT_GAP_RATIO * min(spec.width_mm, spec.height_mm)
        room = room.difference(box(x0 - away, y0 - away, x1 + away, y1 + away))
    return room


def free_face(spec: SignSpec, edge: Polygon) -> BaseGeometry:
    """The face inside frame, bevel, panel's wall and rim, of which a composed text takes its part; inside the margin
    when one was stated."""
    inset = max(text_inset_mm(spec), spec.chamfer_mm, spec.text.margin_mm if spec.text.margin_stated else 0.0)
    if spec.frame:
        inset = max(inset, spec.frame.reach_mm)
    return area_of(inward(edge, inset, spec.tolerances.chord_mm)) if inset else edge


def keep_off(holes: Sequence[Hole], corners: Sequence[Polygon | MultiPolygon], kept: BaseGeometry) -> BaseGeometry:
    """What letters of a composed text stay clear of: holes with a gap of their own diameters, ornaments, keyholes."""
    round_holes = [
        hole.footprint.buffer(HOLE_GAP_DIAMETERS * hole.diameter_mm, quad_segs=ROUND_SEGMENTS) for hole in holes
    ]
    beside = [
        area.envelope.buffer(HOLE_GAP_DIAMETERS * min(box[2] - box[0], box[3] - box[1]) / 4, join_style="mitre")
        for area in corners
        for box in (area.bounds,)
    ]
    off: BaseGeometry = shapely.union_all([*round_holes, *beside, kept])
    return off
