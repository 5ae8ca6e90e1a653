"""What is said of two things with too little wood between them, by what they are."""

from __future__ import annotations

import math

import shapely
from msgspec import Struct

from signgen.errors import Problem
from signgen.features.edge import Edge
from signgen.features.feature import Feature
from signgen.features.hole import Hole
from signgen.features.keyhole import Keyhole
from signgen.features.raised import Raised
from signgen.messages import Message, Mm, Sides
from signgen.spec.sign_spec import SignSpec


class Close(Struct, frozen=True):
    """Two things with less wood between them than the table asks for."""

    spec: SignSpec
    edge: Edge
    one: Feature
    other: Feature
    wall_mm: float
    least_mm: float

    @property
    def least(self) -> Mm:
        return Mm(self.least_mm)

    @property
    def wood(self) -> Mm:
        return Mm(round(max(self.wall_mm, 0.0), 2))


def where_asked(part: Feature) -> str:
    """The option that decides on a part of the drawing: of a letter its height."""
    return "cap-height" if part.is_letter else part.source


def keyhole_over_edge(close: Close) -> Problem:
    keyhole = close.one
    assert isinstance(keyhole, Keyhole)
    what = Message(
        "drawing.keyhole_does_not_lie_inside_sign", name=keyhole.called, x=Mm(keyhole.x_mm), y=Mm(keyhole.y_mm),
        least_beside=close.least,
    )  # fmt: skip
    return Problem(where="holes", what=what, remedy=Message("drawing.use_another_inset_shorter_keyhole"))


def keyholes_meet(close: Close) -> Problem:
    what = Message(
        "drawing.run_into_each_other_leave", name=close.one.called, name2=close.other.called, least_beside=close.least
    )
    return Problem(where="holes", what=what, remedy=Message("drawing.use_fewer_keyholes_another_inset"))


def hole_over_edge(close: Close) -> Problem:
    hole = close.one
    assert isinstance(hole, Hole)
    wide = Mm(hole.diameter_mm)
    size = Sides((hole.diameter_mm, hole.diameter_mm + hole.span_mm)) if hole.span_mm else wide
    sunk = Message("drawing.sunk_to", size=size, sunk=Mm(hole.sink.diameter_mm)) if hole.sink else size
    what = Message(
        "drawing.does_not_lie_inside_sign", name=hole.called, size=sunk, x=Mm(hole.x_mm), y=Mm(hole.y_mm),
        least_wall=close.least,
    )  # fmt: skip
    return Problem(where=hole.source, what=what, remedy=Message("drawing.use_larger_inset_smaller_hole"))


def holes_meet(close: Close) -> Problem:
    one, other = close.one, close.other
    assert isinstance(one, Hole)
    assert isinstance(other, Hole)
    apart = Mm(math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm))
    return Problem(
        where="holes",
        what=Message("drawing.run_into_each_other_their", name=one.called, other=other.called, apart=apart),
        remedy=Message("drawing.use_smaller_holes_fewer_them"),
    )


def hole_in_bevel(close: Close) -> Problem:
    width = Mm(close.spec.chamfer_mm)
    what = Message("drawing.bevel_runs_into_within", width=width, name=close.one.called, least_wall=close.least)
    return Problem(where="edge-chamfer", what=what, remedy=Message("drawing.use_narrower_one_move_hole"))


def panel_in_bevel(close: Close) -> Problem:
    what = Message("drawing.bevel_leaves_less_than_face", width=Mm(close.spec.chamfer_mm), least_wall=close.least)
    return Problem(where="edge-chamfer", what=what, remedy=Message("drawing.use_narrower_one_larger_panel"))


def sunk_hole_in_panel(close: Close) -> Problem:
    if close.wall_mm > 0:
        return hole_on_wall(close)
    what = Message("drawing.countersink_begins_face_lies_panel", name=close.one.called)
    return Problem(where="panel", what=what, remedy=Message("drawing.move_hole_rim_inset_use"))


def hole_on_wall(close: Close) -> Problem:
    """The remedy names panel insets with which the hole lies in the panel or on the rim."""
    core, reach_mm = close.one.core
    need = reach_mm + core.length / 2 + close.least_mm
    away = float(shapely.distance(close.edge.area.boundary, core.centroid))
    less, more = math.floor(10 * (away - need) + 1e-6) / 10, math.ceil(10 * (away + need) - 1e-6) / 10
    remedy = Message("drawing.use_panel_or_less_or_more", less=Mm(less), more=Mm(more))
    if less < 1:
        remedy = Message("drawing.use_panel_or_more", more=Mm(more))
    return Problem(
        where="panel", what=Message("drawing.panel_s_wall_runs_through", name=close.one.called), remedy=remedy
    )


def outside_panel(close: Close) -> Problem:
    what = Message("drawing.does_not_lie_inside_panel", name=close.one.called, least_wall=close.least)
    return Problem(where=where_asked(close.one), what=what, remedy=Message("drawing.use_smaller_height_less_text"))


def line_in_floor(close: Close) -> Problem:
    what = Message("drawing.carved_runs_into", name=close.one.called, other=close.other.called)
    return Problem(where=where_asked(close.one), what=what, remedy=Message("drawing.leave_out_place_rim"))


def over_edge(close: Close) -> Problem:
    smaller = Message("drawing.use_larger_inset_narrower_line")
    if close.one.is_letter:
        given = not all(row.is_fitted for row in close.spec.text.rows)
        smaller = Message("drawing.use_smaller_height_larger_sign" if given else "drawing.use_larger_margin")
    what = Message(
        "drawing.lies_outside_face" if close.spec.chamfer_mm else "drawing.lies_outside_sign",
        name=close.one.called,
        least_wall=close.least,
    )
    return Problem(where=where_asked(close.one), what=what, remedy=smaller)


def by_hole(close: Close) -> Problem:
    what = Message("drawing.comes_closer_than", name=close.one.called, least_wall=close.least, name2=close.other.called)
    letter = close.one.is_letter or isinstance(close.one, Raised)
    remedy = Message("drawing.move_hole_inset_use_smaller" if letter else "drawing.move_hole_inset_line")
    return Problem(where=where_asked(close.one), what=what, remedy=remedy)


def ornament_by_hole(close: Close) -> Problem:
    name, other = close.one.called, close.other.called
    what = Message("drawing.ornament_comes_closer_than", name=name, least_wall=close.least, other=other)
    if close.wall_mm <= 0:
        what = Message("drawing.lies_over", name=name, other=other)
    return Problem(where="ornament", what=what, remedy=Message("drawing.move_holes_inset_use_another"))


def by_ornament(close: Close) -> Problem:
    what = Message("drawing.runs_into", name=close.one.called, other=close.other.called)
    return Problem(where="ornament", what=what, remedy=Message("drawing.use_smaller_ornament_size_another"))


def ornaments_meet(close: Close) -> Problem:
    what = Message("drawing.meet", one=close.one.called, other=close.other.called)
    return Problem(where="ornament-size", what=what, remedy=Message("drawing.use_smaller_ornament_size_another"))


def _between(close: Close, first: Feature, second: Feature) -> Message:
    if close.wall_mm > 0:
        return Message("walls.between", one=first.called, other=second.called, wood=close.wood)
    return Message("walls.touch", one=first.called, other=second.called)


def line_by_letter(close: Close) -> Problem:
    what = _between(close, close.other, close.one)
    return Problem(where=close.one.source, what=what, remedy=Message("walls.move_line", least=close.least))


def through_by_edge(close: Close) -> Problem:
    what = Message("walls.edge", one=close.one.called, wood=close.wood)
    return Problem(where="cap-height", what=what, remedy=Message("walls.smaller", least=close.least))


def through_by_through(close: Close) -> Problem:
    what = Message("walls.between", one=close.one.called, other=close.other.called, wood=close.wood)
    return Problem(where="letter-spacing", what=what, remedy=Message("walls.more_spacing"))


def by_picture(close: Close) -> Problem:
    if isinstance(close.other, Edge):
        what = Message("drawing.lies_outside_sign", name=close.one.called, least_wall=close.least)
    elif close.other.kind == "panel":
        what = Message("drawing.does_not_lie_inside_panel", name=close.one.called, least_wall=close.least)
    else:
        what = _between(close, close.one, close.other)
    return Problem(where=close.one.source, what=what, remedy=Message("art.smaller_or_elsewhere", name=close.one.source))


def elsewhere(close: Close) -> Problem:
    """Of what the table does not name."""
    if isinstance(close.other, Edge):
        what = Message("drawing.lies_outside_sign", name=close.one.called, least_wall=close.least)
    else:
        what = _between(close, close.one, close.other)
    remedy = Message("walls.move_apart", least=close.least)
    return Problem(where=where_asked(close.one), what=what, remedy=remedy)
