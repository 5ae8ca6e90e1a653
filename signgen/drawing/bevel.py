"""The bevel of the face's edge, and whether it has room."""

from __future__ import annotations

from shapely.geometry import Polygon

from signgen.drawing.grooves import bit_angle_deg
from signgen.drawing.spacing import LEAST_WALL_MM
from signgen.errors import CannotMakeError
from signgen.features.edge import Bevel
from signgen.geometry.offsets import inward
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec


def bevel_of(spec: SignSpec, edge: Polygon) -> Bevel | None:
    """The bevel asked for, None when there is none. Raises: CannotMakeError when it leaves too little of the face."""
    width = spec.chamfer_mm
    if not width:
        return None
    face = inward(edge, width + LEAST_WALL_MM, spec.tolerances.chord_mm)
    if len(face) != 1:
        left = Message("drawing.face_in_pieces", count=len(face)) if face else Message("drawing.nothing_of_face")
        raise CannotMakeError.at(
            "edge-chamfer",
            Message("drawing.bevel_all_round_leaves_outline", width=Mm(width), left=left),
            Message("drawing.use_narrower_one_larger_sign"),
        )
    return Bevel(name="bevel", edge=edge, width_mm=width, angle_deg=bit_angle_deg(spec))
