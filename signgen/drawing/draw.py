"""spec -> drawing: the sign put together and looked over, before any tool is thought of."""

from __future__ import annotations

from collections.abc import Iterator

from shapely.geometry import Polygon, box
from shapely.geometry.base import BaseGeometry

from signgen.drawing.bridges import loose_problems
from signgen.drawing.drawing import Drawing, Groove, Hole, Recess
from signgen.drawing.drawn_line import drawn_lines
from signgen.drawing.edge import edge_of
from signgen.drawing.holding import holding_warnings, tabs_of
from signgen.drawing.holes import LEAST_WALL_MM, face_area, hole_problems, hole_warnings, holes_of, walls_to_grooves
from signgen.drawing.keyholes import kept_free, keyhole_problems, keyhole_warnings, keyholes_of, over_problems
from signgen.drawing.ornament import frame, rules
from signgen.drawing.panel import made, panel_area, recess_problems, text_inset_mm
from signgen.drawing.words import lettering_of
from signgen.errors import CannotMakeError, Problem
from signgen.spec.sign_spec import SignSpec


def draw(spec: SignSpec) -> Drawing:
    """The sign as asked. Raises: CannotMakeError with everything that has no room, AskError for text that the face
    lacks."""
    edge, edge_warnings = edge_of(spec)
    holes = holes_of(spec)
    keyholes = keyholes_of(spec)
    problems = [*hole_problems(spec, edge, holes), *keyhole_problems(edge, holes, keyholes)]
    if problems:
        raise CannotMakeError(problems)
    ornament = frame(spec, edge) if spec.frame else ()
    panel = panel_area(spec, edge)
    lettering, word_warnings = lettering_of(spec, edge, _room(spec, edge, holes).difference(kept_free(spec, keyholes)))
    drawn = made(spec, lettering, panel)
    lines = (*ornament, *rules(spec, lettering))
    grooves = (*drawn.grooves, *lines)
    through = tuple(recess for recess in drawn.recesses if recess.depth_mm >= spec.thickness_mm)
    sunk = tuple(recess for recess in drawn.recesses if recess.text)
    problems = [
        *_groove_problems((*grooves, *sunk), edge, holes),
        *over_problems(spec, keyholes, (*grooves, *drawn.recesses)),
        *recess_problems(drawn, lines, panel, edge, holes),
        *(loose_problems(through, edge, holes, spec.bridges) if through else ()),
    ]
    if problems:
        raise CannotMakeError(problems)
    tabs = tabs_of(spec, edge, holes)
    return Drawing(
        width_mm=spec.width_mm,
        height_mm=spec.height_mm,
        thickness_mm=spec.thickness_mm,
        edge=edge,
        holes=holes,
        grooves=grooves,
        recesses=drawn.recesses,
        raised=drawn.raised,
        keyholes=keyholes,
        tabs=tabs,
        skin_mm=spec.skin_mm,
        cap_height_mm=lettering.cap_height_mm,
        lines=drawn_lines(lettering),
        warnings=(
            *word_warnings,
            *edge_warnings,
            *hole_warnings(spec, edge, holes, grooves),
            *keyhole_warnings(spec, keyholes),
            *holding_warnings(spec, edge, tabs),
        ),
    )


def _room(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> BaseGeometry:
    """Where letters may lie: the margin away from the edge, inside the frame's line, and clear of every hole."""
    inset = max(spec.text.margin_mm, text_inset_mm(spec))
    if spec.frame:
        inset = max(inset, spec.frame.inset_mm + spec.frame.width_mm / 2 + LEAST_WALL_MM)
    room: BaseGeometry = edge.buffer(-inset)
    for hole in holes:
        x0, y0, x1, y1 = face_area(hole).bounds
        away = min(spec.text.margin_mm, hole.diameter_mm)
        room = room.difference(box(x0 - away, y0 - away, x1 + away, y1 + away))
    return room


def _groove_problems(grooves: tuple[Groove | Recess, ...], edge: Polygon, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    inside = edge.buffer(-LEAST_WALL_MM)
    near = walls_to_grooves(holes, grooves) < LEAST_WALL_MM
    for number, carved in enumerate(grooves):
        where = "cap-height" if carved.text else "frame"
        if not inside.contains(carved.area):
            yield Problem(
                where=where,
                what=f"{carved.name} lies outside the sign or within {LEAST_WALL_MM:g} mm of its edge.",
                remedy="Use a smaller height, a larger sign or less text; without cap-height the text is made to fit.",
            )
        for hole, close in zip(holes, near[:, number], strict=True):
            if close:
                yield Problem(
                    where=where,
                    what=f"{carved.name} comes closer than {LEAST_WALL_MM:g} mm to {hole.name}.",
                    remedy="Move the hole (inset), or use smaller letters.",
                )
