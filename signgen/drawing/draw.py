"""spec -> drawing: the sign put together and looked over, before any tool is thought of."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from shapely import affinity
from shapely.geometry import Point, Polygon, box
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing, Groove, Hole
from signgen.drawing.fit import fitted_cap_height
from signgen.drawing.grooves import groove
from signgen.drawing.ornament import frame, rules
from signgen.drawing.tabs import place_tabs
from signgen.errors import CannotMakeError, Problem
from signgen.lettering.faces import open_face
from signgen.lettering.layout import Lettering, measure, set_lines
from signgen.spec.sign_spec import SignSpec

LEAST_WALL_MM = 1.0
"""Wood that must stay between a hole and the edge, another hole or a letter; less breaks out (common practice)."""


def draw(spec: SignSpec) -> Drawing:
    """The sign as asked. Raises: CannotMakeError with everything that has no room, AskError for text that the face
    lacks."""
    edge = spec.border.outline(spec.width_mm, spec.height_mm, spec.tolerances.chord_mm)
    holes = tuple(
        Hole(name=f"hole {name}", x_mm=x, y_mm=y, diameter_mm=spec.holes.diameter_mm)
        for name, x, y in spec.holes.centres(spec.width_mm, spec.height_mm)
    )
    problems = list(_hole_problems(edge, holes))
    if problems:
        raise CannotMakeError(problems)
    ornament = frame(spec, edge) if spec.frame else ()
    lettering = _lettering(spec, edge, holes)
    letters = tuple(
        groove(spec, f"{letter.name} '{letter.text}'", letter.text, letter.area) for letter in lettering.letters
    )
    grooves = (*letters, *ornament, *rules(spec, lettering))
    problems = list(_groove_problems(grooves, edge, holes))
    if problems:
        raise CannotMakeError(problems)
    return Drawing(
        width_mm=spec.width_mm,
        height_mm=spec.height_mm,
        thickness_mm=spec.thickness_mm,
        edge=edge,
        holes=holes,
        grooves=grooves,
        tabs=place_tabs(edge, holes, spec.tabs.count, spec.tabs.width_mm, spec.tabs.height_mm),
        cap_height_mm=lettering.cap_height_mm,
    )


def _lettering(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> Lettering:
    """The text, centred on the sign by its ink; as large as fits when no height was asked for."""
    text = spec.text
    face = open_face(text.font)
    cap_height = text.cap_height_mm
    if cap_height is None:
        room = _room(spec, edge, holes)
        sizes = measure(text.lines, face, line_spacing=text.line_spacing, letter_spacing_mm=text.letter_spacing_mm)
        cap_height = fitted_cap_height(
            lambda height: [
                affinity.translate(box(*bounds), spec.width_mm / 2, spec.height_mm / 2)
                for bounds in sizes.boxes_mm(height, text.align)
            ],
            room,
        )
    lettering = set_lines(
        text.lines,
        face,
        cap_height_mm=cap_height,
        align=text.align,
        line_spacing=text.line_spacing,
        letter_spacing_mm=text.letter_spacing_mm,
        chord_mm=spec.tolerances.chord_mm,
    )
    return lettering.moved(spec.width_mm / 2, spec.height_mm / 2)


def _room(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> BaseGeometry:
    """Where letters may lie: the margin away from the edge (or from the frame line) and from every hole."""
    inset = spec.text.margin_mm
    if spec.frame:
        inset += spec.frame.inset_mm + spec.frame.width_mm / 2
    room: BaseGeometry = edge.buffer(-inset)
    for hole in holes:
        away = hole.diameter_mm / 2 + min(spec.text.margin_mm, hole.diameter_mm)
        room = room.difference(box(hole.x_mm - away, hole.y_mm - away, hole.x_mm + away, hole.y_mm + away))
    return room


def _hole_problems(edge: Polygon, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    areas = [Polygon(_disc(hole)) for hole in holes]
    for hole, area in zip(holes, areas, strict=True):
        wall = edge.exterior.distance(area.centroid) - hole.diameter_mm / 2
        if not edge.contains(area.centroid) or wall < LEAST_WALL_MM:
            yield Problem(
                where="holes",
                what=f"{hole.name} ({hole.diameter_mm:g} mm at {hole.x_mm:g}, {hole.y_mm:g}) does not lie "
                f"inside the sign with {LEAST_WALL_MM:g} mm of wood around it.",
                remedy="Use a larger inset or a smaller hole.",
            )
    for (one, _), (other, _) in itertools.combinations(zip(holes, areas, strict=True), 2):
        apart = ((one.x_mm - other.x_mm) ** 2 + (one.y_mm - other.y_mm) ** 2) ** 0.5
        if apart < (one.diameter_mm + other.diameter_mm) / 2 + LEAST_WALL_MM:
            yield Problem(
                where="holes",
                what=f"{one.name} and {other.name} run into each other: their centres are {apart:.4g} mm apart.",
                remedy="Use smaller holes, fewer of them, or another inset.",
            )


def _groove_problems(grooves: tuple[Groove, ...], edge: Polygon, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    inside = edge.buffer(-LEAST_WALL_MM)
    for carved in grooves:
        where = "cap-height" if carved.text else "frame"
        if not inside.contains(carved.area):
            yield Problem(
                where=where,
                what=f"{carved.name} lies outside the sign or within {LEAST_WALL_MM:g} mm of its edge.",
                remedy="Use a smaller height, a larger sign or less text; without cap-height the text is made to fit.",
            )
        for hole in holes:
            if carved.area.distance(Polygon(_disc(hole))) < LEAST_WALL_MM:
                yield Problem(
                    where=where,
                    what=f"{carved.name} comes closer than {LEAST_WALL_MM:g} mm to {hole.name}.",
                    remedy="Move the hole (inset), or use smaller letters.",
                )


def _disc(hole: Hole) -> list[tuple[float, float]]:
    return list(Point(hole.x_mm, hole.y_mm).buffer(hole.diameter_mm / 2, quad_segs=32).exterior.coords)
