"""Insides of letters that are cut right through: what they hang on, and thin wood between such letters."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from signgen.drawing.spacing import apart_mm, close_pairs
from signgen.errors import Problem
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.offsets import polygons
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec

THIN_BETWEEN_THROUGH_MM = 1.5
"""Wood between two letters that are cut right through which easily breaks (common practice)."""

LEAST_BRIDGE_MM, THIN_BRIDGE_MM = 1.0, 2.0
"""What an inside hangs on at its narrowest: what breaks under the cutter, and what breaks easily (common practice)."""

LEAST_INSIDE_MM2 = 4.0
"""Smaller insides weigh nothing and are held by less."""


def hanging_problems(
    spec: SignSpec, through: Sequence[Recess], edge: Polygon, holes: Sequence[Hole]
) -> Iterator[Problem]:
    """Insides that hang on too little."""
    for name in _hanging(through, edge, holes, LEAST_BRIDGE_MM):
        yield Problem(
            where="bridge-width" if spec.bridges else "finish",
            what=Message("walls.hangs", letter=name, least=Mm(LEAST_BRIDGE_MM)),
            remedy=Message("walls.wider_bridges" if spec.bridges else "walls.bridges"),
        )


def hanging_warnings(
    spec: SignSpec, through: Sequence[Recess], edge: Polygon, holes: Sequence[Hole]
) -> Iterator[Message]:
    """Whole sentences about thin wood between letters that are cut right through, and about insides."""
    pairs = close_pairs(through, THIN_BETWEEN_THROUGH_MM) if through else ()
    thin = [wall for i, j in pairs if (wall := apart_mm(through[i], through[j])) < THIN_BETWEEN_THROUGH_MM - 1e-6]
    if thin:
        yield (Message("drawing.only_wood_stand_between_letters", thin=Mm(min(thin))))
    hanging = _hanging(through, edge, holes, THIN_BRIDGE_MM)
    if hanging:
        yield (Message("drawing.inside_hangs_less_than_wood", hanging=tuple(hanging), thin_bridge=Mm(THIN_BRIDGE_MM)))
    elif spec.bridges and spec.bridges.count == 1 and through:
        yield Message("drawing.each_inside_hangs_one_bridge")


def _hanging(through: Sequence[Recess], edge: Polygon, holes: Sequence[Hole], width_mm: float) -> list[str]:
    """Letters of which an inside hangs on bridges each narrower than a width: what falls off when so much is taken off
    all round. Source: mathematical morphology's erosion."""
    if not through:
        return []
    gone = shapely.union_all([*(each.area for each in through), *(hole.footprint for hole in holes)])
    whole: BaseGeometry = shapely.difference(edge, gone)
    if len(polygons(whole)) > 1:
        # What is loose altogether is another problem.
        return []
    left = whole.buffer(-width_mm / 2, quad_segs=4)
    pieces = sorted(polygons(left), key=lambda piece: -piece.area)[1:]
    names: dict[str, None] = {}
    for piece in pieces:
        if piece.area >= LEAST_INSIDE_MM2:
            away = shapely.distance(piece, np.array([each.area for each in through], dtype=object))
            names[through[int(np.argmin(away))].name] = None
    return list(names)
