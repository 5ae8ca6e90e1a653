"""The keyholes of a sign, whether the board has room for them, and the sign as it lies face down."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.drawing.drawing import Drawing
from signgen.drawing.holes import which
from signgen.errors import Problem
from signgen.features.groove import Groove
from signgen.features.keyhole import Keyhole
from signgen.features.recess import Recess
from signgen.geometry.motion import turned_page
from signgen.holes.keyholes import Keyholes
from signgen.messages import Message, Mm
from signgen.spec.keyholes import FREE_MM, SHOULDER_MM
from signgen.spec.sign_spec import SignSpec

LEAST_OVER_MM = 1.5
"""Wood between a keyhole and what is cut into the face over it: two set-ups meet there (common practice)."""

STEP_MM = 0.4
"""Distance between the places at which grooves are measured over a keyhole."""


def keyholes_of(spec: SignSpec) -> tuple[Keyhole, ...]:
    """The keyholes asked for, in sign coordinates, seen from the front as everything else."""
    cut = spec.keyholes
    if cut is None:
        return ()
    travel = spec.holes.travel_mm if isinstance(spec.holes, Keyholes) else 0.0
    return tuple(
        Keyhole(
            name=f"keyhole {name}",
            title=Message("name.keyhole", which=which(name)),
            x_mm=x,
            y_mm=y,
            travel_mm=travel,
            entry_mm=cut.entry_mm,
            slot_mm=cut.slot_mm,
            undercut_mm=cut.cutter.diameter_mm,
            depth_mm=cut.depth_mm,
            head_mm=cut.cutter.head_mm,
            free_mm=FREE_MM,
        )
        for name, x, y in spec.holes.centres(spec.width_mm, spec.height_mm)
    )


def over_problems(spec: SignSpec, keyholes: Sequence[Keyhole], carved: Sequence[Groove | Recess]) -> Iterator[Problem]:
    """What is cut into the face so deep over a keyhole that too little wood is left between them."""
    for keyhole in keyholes:
        around = keyhole.footprint.buffer(LEAST_OVER_MM)
        for each in carved:
            left = spec.thickness_mm - keyhole.depth_mm - _deepest_mm(each, around)
            if left < LEAST_OVER_MM - 1e-9 and shapely.intersects(each.area, around):
                yield Problem(
                    where="depth",
                    what=Message(
                        "drawing.leave_wood_between_them_least",
                        name=each.name,
                        name2=keyhole.name,
                        left=Mm(max(0.0, left), 2),
                        least_over=Mm(LEAST_OVER_MM),
                    ),
                    remedy=Message("drawing.engrave_less_deep_depth_move"),
                )


def keyhole_warnings(spec: SignSpec, keyholes: Sequence[Keyhole]) -> Iterator[Message]:
    cut = spec.keyholes
    if keyholes and cut is not None and cut.shoulder_mm < SHOULDER_MM - 1e-6:
        yield (Message("drawing.only_wood_carry_screws_heads", shoulder=Mm(cut.shoulder_mm, 1), usual=Mm(SHOULDER_MM)))


def kept_free(spec: SignSpec, keyholes: Sequence[Keyhole]) -> BaseGeometry:
    """Where no letter should lie: over keyholes, when both together are too deep for the board."""
    if spec.keyholes is None or spec.thickness_mm - spec.keyholes.depth_mm - spec.depth_mm >= LEAST_OVER_MM:
        return Polygon()
    boxes = [shapely.box(*keyhole.footprint.buffer(LEAST_OVER_MM + STEP_MM).bounds) for keyhole in keyholes]
    free: BaseGeometry = shapely.union_all(boxes)
    return free


def _deepest_mm(carved: Groove | Recess, around: BaseGeometry) -> float:
    """How deep something is cut within an area, at the deepest of places STEP_MM apart; 0 where it is not."""
    common = carved.area.intersection(around)
    if common.is_empty:
        return 0.0
    if isinstance(carved, Recess):
        return carved.depth_mm
    x0, y0, x1, y1 = common.bounds
    xs, ys = np.meshgrid(np.arange(x0, x1 + STEP_MM, STEP_MM), np.arange(y0, y1 + STEP_MM, STEP_MM))
    places = shapely.points(np.column_stack([xs.ravel(), ys.ravel()]))
    places = places[shapely.contains(common, places)]
    if not len(places):
        return 0.0
    away = float(shapely.distance(carved.area.boundary, places).max()) + STEP_MM
    slope = np.tan(np.radians(carved.angle_deg) / 2)
    return float(min(away / slope, carved.max_depth_mm))


def face_down(drawing: Drawing) -> Drawing:
    """The sign turned over about its upright middle line, as a page is: its edge and what is cut from its back,
    mirrored, and nothing of what its face gets. Z 0 is then its face."""
    motion = turned_page(drawing.width_mm)
    return Drawing(
        plate=drawing.plate,
        features=tuple(feature.moved(motion) for feature in drawing.features if feature.side != "face"),
        cap_height_mm=0.0,
        side="back",
    )
