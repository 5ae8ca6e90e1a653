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
        left = "nothing of the face" if not face else f"the face in {len(face)} pieces"
        yield Problem(
            where="edge-chamfer",
            what=f"A bevel of {width:g} mm all round leaves {left} of this outline.",
            remedy="Use a narrower one, or a larger sign.",
        )
        return
    inside = area_of(face)
    for hole in holes:
        if not shapely.covers(inside, hole.footprint):
            yield Problem(
                where="edge-chamfer",
                what=f"The bevel of {width:g} mm runs into {hole.name} or within {LEAST_WALL_MM:g} mm of it.",
                remedy="Use a narrower one, or move the hole further in (inset).",
            )
    if panel is not None and not shapely.covers(inside, panel):
        yield Problem(
            where="edge-chamfer",
            what=f"The bevel of {width:g} mm leaves less than {LEAST_WALL_MM:g} mm of face round the panel.",
            remedy="Use a narrower one, or a larger panel inset.",
        )
