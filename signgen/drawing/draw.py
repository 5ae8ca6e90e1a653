"""spec -> drawing: the sign put together and looked over, before any tool is thought of."""

from __future__ import annotations

from collections.abc import Sequence

from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen import features
from signgen.composition.field import field_of
from signgen.drawing.arranged import TextSet, arranged
from signgen.drawing.bevel import bevel_of
from signgen.drawing.bridges import loose_problems
from signgen.drawing.codes import code_problems, code_warnings
from signgen.drawing.corners import ornaments
from signgen.drawing.drawing import Drawing, Plate
from signgen.drawing.drawn_line import drawn_lines
from signgen.drawing.edge import edge_of
from signgen.drawing.hanging import hanging_problems, hanging_warnings
from signgen.drawing.holding import holding_warnings, tabs_of
from signgen.drawing.holes import hole_warnings, holes_of, sink_problems
from signgen.drawing.keyholes import kept_free, keyhole_warnings, keyholes_of, over_problems
from signgen.drawing.ornament import frame, rules
from signgen.drawing.panel import made, panel_area
from signgen.drawing.pictures import ordered, picture_problems, shown_of, thin_warnings
from signgen.drawing.room import free_face, keep_off, letter_room
from signgen.drawing.uncut import lost_grooves, lost_problems
from signgen.drawing.walls import wall_problems
from signgen.drawing.words import lettering_of, line_roles
from signgen.errors import CannotMakeError, Problem, SignGenError
from signgen.features.edge import Edge, ReadyEdge
from signgen.features.groove import Groove
from signgen.features.recess import Panel
from signgen.geometry.offsets import polygons
from signgen.spec.sign_spec import SignSpec

_last: list[tuple[SignSpec, Drawing]] = []
"""The spec that was drawn last, with its drawing: what is open is settled on the drawing before the job is planned on
it."""


def draw(spec: SignSpec) -> Drawing:
    """The sign as asked. Raises: CannotMakeError with everything that has no room or that the bit's tip is too wide
    for, AskError for text that the face lacks."""
    if _last and _last[0][0] is spec:
        return _last[0][1]
    drawing = _with_room(spec)
    lost = lost_grooves(drawing.of(Groove))
    if lost:
        raise CannotMakeError(lost_problems(spec, lost, _would_do))
    _last[:] = [(spec, drawing)]
    return drawing


def _would_do(other: SignSpec) -> bool:
    """Whether another sign could be made instead."""
    try:
        return not lost_grooves(_with_room(other).of(Groove))
    except SignGenError:
        return False


def _with_room(spec: SignSpec) -> Drawing:
    outline, edge_warnings = edge_of(spec)
    edge = (ReadyEdge if spec.edge == "none" else Edge)(name="edge", area=outline, skin_mm=spec.skin_mm)
    holes, keyholes = holes_of(spec), keyholes_of(spec)
    own = tuple(feature for kind in features.KINDS for feature in kind.asked_of(spec))
    panel = panel_area(spec, outline)
    bevel = bevel_of(spec, outline)
    first = (edge, *holes, *keyholes, *((bevel,) if bevel else ()), *_plain(panel, spec), *own)
    _raise_any([*sink_problems(spec, holes), *wall_problems(spec, first)])
    lines: tuple[Groove, ...] = frame(spec, outline)
    corners = ornaments(spec, outline)
    taken = [*(area for _, area in corners), *(part for each in own for part in polygons(each.footprint))]
    kept = kept_free(spec, keyholes)
    free, shown = free_face(spec, outline), shown_of(spec)

    def set_text(about: Polygon, rest: BaseGeometry, pictures: Sequence[Polygon]) -> TextSet:
        """The text where pictures leave room; `about`: the outline moved so that its middle is that of what is left."""
        off = [*taken, *pictures]
        room = letter_room(spec, outline, holes, off).difference(kept)
        left, clear = (area.intersection(rest) if shown else area for area in (room, free))
        return lettering_of(spec, about, left, field_of(spec, about, left, clear, keep_off(holes, off, kept)))

    laid = arranged(spec, shown, outline, letter_room(spec, outline, holes, taken).difference(kept), free, set_text)
    lettering, word_warnings = laid.text
    pictures = tuple(ordered(spec, each, high, laid.parts) for each, high in zip(shown, laid.heights, strict=True))
    drawn = made(spec, lettering, panel, corners, laid.parts)
    lines = (*lines, *rules(spec, lettering))
    grooves = (*drawn.grooves, *lines)
    through = tuple(recess for recess in drawn.recesses if recess.depth_mm >= spec.thickness_mm)
    carved = [each for each in (*grooves, *drawn.recesses, *drawn.raised) if not isinstance(each, Panel)]
    _raise_any(
        [
            *over_problems(spec, keyholes, (*grooves, *drawn.recesses)),
            *(loose_problems(through, outline, holes, spec.bridges) if through else ()),
            *wall_problems(spec, (*first, *carved)),
            *hanging_problems(spec, through, outline, holes),
            *picture_problems(laid.parts),
            *code_problems(spec, pictures),
        ]
    )
    tabs = tabs_of(spec, outline, holes)
    return Drawing(
        plate=Plate(width_mm=spec.width_mm, height_mm=spec.height_mm, thickness_mm=spec.thickness_mm),
        features=(
            edge,
            *grooves,
            *drawn.recesses,
            *drawn.raised,
            *holes,
            *keyholes,
            *((bevel,) if bevel else ()),
            *own,
            *tabs,
        ),
        cap_height_mm=lettering.cap_height_mm,
        lines=drawn_lines(lettering, line_roles(spec.text)),
        pictures=pictures,
        warnings=(
            *word_warnings,
            *code_warnings(pictures),
            *thin_warnings(laid.parts, {each.name: high for each, high in zip(shown, laid.heights, strict=True)}),
            *edge_warnings,
            *hole_warnings(spec, edge, holes, grooves),
            *keyhole_warnings(spec, keyholes),
            *holding_warnings(spec, outline, tabs),
            *hanging_warnings(spec, through, outline, holes),
        ),
    )


def _raise_any(problems: Sequence[Problem]) -> None:
    if problems:
        raise CannotMakeError(problems)


def _plain(panel: Polygon | None, spec: SignSpec) -> tuple[Panel, ...]:
    """The panel as its wall goes, whatever stands in it."""
    if panel is None or spec.panel is None:
        return ()
    return (Panel(name="panel", source="panel", area=panel, depth_mm=spec.panel.depth_mm),)
