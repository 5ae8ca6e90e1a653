"""spec -> drawing: the sign put together and looked over, before any tool is thought of."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely.geometry import Polygon

from signgen.composition.field import field_of
from signgen.drawing.bevel import bevel_of
from signgen.drawing.bridges import loose_problems
from signgen.drawing.corners import ornament_problems, ornaments
from signgen.drawing.drawing import Drawing, Plate
from signgen.drawing.drawn_line import drawn_lines
from signgen.drawing.edge import edge_of
from signgen.drawing.holding import holding_warnings, tabs_of
from signgen.drawing.holes import LEAST_WALL_MM, hole_problems, hole_warnings, holes_of, walls_to_grooves
from signgen.drawing.keyholes import kept_free, keyhole_problems, keyhole_warnings, keyholes_of, over_problems
from signgen.drawing.ornament import frame, rules
from signgen.drawing.panel import made, panel_area, recess_problems, where_asked
from signgen.drawing.room import free_face, keep_off, letter_room
from signgen.drawing.uncut import lost_grooves, lost_problems
from signgen.drawing.walls import wall_problems, wall_warnings_of_through
from signgen.drawing.words import lettering_of, line_roles
from signgen.errors import CannotMakeError, Problem, SignGenError
from signgen.features.edge import Edge
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.offsets import area_of, inward
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec


def draw(spec: SignSpec) -> Drawing:
    """The sign as asked. Raises: CannotMakeError with everything that has no room or that the bit's tip is too wide
    for, AskError for text that the face lacks."""
    drawing = _with_room(spec)
    lost = lost_grooves(drawing.of(Groove))
    if lost:
        raise CannotMakeError(lost_problems(spec, lost, _would_do))
    return drawing


def _would_do(other: SignSpec) -> bool:
    """Whether another sign could be made instead."""
    try:
        return not lost_grooves(_with_room(other).of(Groove))
    except SignGenError:
        return False


def _with_room(spec: SignSpec) -> Drawing:
    edge, edge_warnings = edge_of(spec)
    holes = holes_of(spec)
    keyholes = keyholes_of(spec)
    problems = [*hole_problems(spec, edge, holes), *keyhole_problems(edge, holes, keyholes)]
    if problems:
        raise CannotMakeError(problems)
    lines: tuple[Groove, ...] = frame(spec, edge)
    panel = panel_area(spec, edge)
    bevel = bevel_of(spec, edge, panel, holes)
    corners = ornaments(spec, edge)
    in_corners = [area for _, area in corners]
    kept = kept_free(spec, keyholes)
    room = letter_room(spec, edge, holes, in_corners).difference(kept)
    field = field_of(spec, edge, room, free_face(spec, edge), keep_off(holes, in_corners, kept))
    lettering, word_warnings = lettering_of(spec, edge, room, field)
    drawn = made(spec, lettering, panel, corners)
    lines = (*lines, *rules(spec, lettering))
    grooves = (*drawn.grooves, *lines)
    through = tuple(recess for recess in drawn.recesses if recess.depth_mm >= spec.thickness_mm)
    sunk = tuple(recess for recess in drawn.recesses if recess.is_letter)
    problems = [
        *_groove_problems(spec, (*grooves, *sunk), edge, holes),
        *over_problems(spec, keyholes, (*grooves, *drawn.recesses)),
        *recess_problems(drawn, lines, panel, edge, holes),
        *(loose_problems(through, edge, holes, spec.bridges) if through else ()),
        *wall_problems(spec, grooves, through, edge, holes),
        *ornament_problems(corners, [*grooves, *drawn.raised], edge, holes),
    ]
    if problems:
        raise CannotMakeError(problems)
    tabs = tabs_of(spec, edge, holes)
    return Drawing(
        plate=Plate(width_mm=spec.width_mm, height_mm=spec.height_mm, thickness_mm=spec.thickness_mm),
        features=(
            Edge(name="edge", area=edge, skin_mm=spec.skin_mm),
            *grooves,
            *drawn.recesses,
            *drawn.raised,
            *holes,
            *keyholes,
            *((bevel,) if bevel else ()),
            *tabs,
        ),
        cap_height_mm=lettering.cap_height_mm,
        lines=drawn_lines(lettering, line_roles(spec.text)),
        warnings=(
            *word_warnings,
            *edge_warnings,
            *hole_warnings(spec, edge, holes, grooves),
            *keyhole_warnings(spec, keyholes),
            *holding_warnings(spec, edge, tabs),
            *wall_warnings_of_through(spec, through, edge, holes),
        ),
    )


def _groove_problems(
    spec: SignSpec, grooves: tuple[Groove | Recess, ...], edge: Polygon, holes: tuple[Hole, ...]
) -> Iterator[Problem]:
    inside = area_of(inward(edge, spec.chamfer_mm + LEAST_WALL_MM, spec.tolerances.chord_mm))
    near = walls_to_grooves(holes, grooves) < LEAST_WALL_MM
    for number, carved in enumerate(grooves):
        where, smaller = where_asked(carved), Message("drawing.use_larger_inset_narrower_line")
        if carved.is_letter:
            given = not all(row.is_fitted for row in spec.text.rows)
            smaller = Message("drawing.use_smaller_height_larger_sign" if given else "drawing.use_larger_margin")
        if not shapely.covers(inside, carved.area):
            yield Problem(
                where=where,
                what=Message(
                    "drawing.lies_outside_face" if spec.chamfer_mm else "drawing.lies_outside_sign",
                    name=carved.name,
                    least_wall=Mm(LEAST_WALL_MM),
                ),
                remedy=smaller,
            )
        for hole, close in zip(holes, near[:, number], strict=True):
            if close and where != "ornament":
                yield Problem(
                    where=where,
                    what=Message(
                        "drawing.comes_closer_than", name=carved.name, least_wall=Mm(LEAST_WALL_MM), name2=hole.name
                    ),
                    remedy=Message("drawing.move_hole_inset_use_smaller")
                    if carved.is_letter
                    else Message("drawing.move_hole_inset_line"),
                )
