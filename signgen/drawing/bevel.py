"""The bevel of the face's edge, and whether it has room."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely.geometry import Polygon

from signgen.drawing.grooves import bit_angle_deg
from signgen.drawing.holes import LEAST_WALL_MM
from signgen.errors import CannotMakeError, Problem
from signgen.features.edge import Bevel
from signgen.features.hole import Hole
from signgen.geometry.offsets import area_of, inward
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec


def bevel_of(spec: SignSpec, edge: Polygon, panel: Polygon | None, holes: tuple[Hole, ...]) -> Bevel | None:
    """The bevel asked for, None when there is none. Raises: CannotMakeError when it leaves too little of the face, or
    runs into a hole or the panel."""
    if not spec.chamfer_mm:
        return None
    problems = list(_problems(spec, edge, panel, holes))
    if problems:
        raise CannotMakeError(problems)
    return Bevel(name="bevel", edge=edge, width_mm=spec.chamfer_mm, angle_deg=bit_angle_deg(spec))


def _problems(spec: SignSpec, edge: Polygon, panel: Polygon | None, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    width = spec.chamfer_mm
    face = inward(edge, width + LEAST_WALL_MM, spec.tolerances.chord_mm)
    if len(face) != 1:
        left = Message("drawing.face_in_pieces", count=len(face)) if face else Message("drawing.nothing_of_face")
        yield Problem(
            where="edge-chamfer",
            what=Message("drawing.bevel_all_round_leaves_outline", width=Mm(width), left=left),
            remedy=Message("drawing.use_narrower_one_larger_sign"),
        )
        return
    inside = area_of(face)
    for hole in holes:
        if not shapely.covers(inside, hole.footprint):
            yield Problem(
                where="edge-chamfer",
                what=Message(
                    "drawing.bevel_runs_into_within", width=Mm(width), name=hole.name, least_wall=Mm(LEAST_WALL_MM)
                ),
                remedy=Message("drawing.use_narrower_one_move_hole"),
            )
    if panel is not None and not shapely.covers(inside, panel):
        yield Problem(
            where="edge-chamfer",
            what=Message("drawing.bevel_leaves_less_than_face", width=Mm(width), least_wall=Mm(LEAST_WALL_MM)),
            remedy=Message("drawing.use_narrower_one_larger_panel"),
        )
