"""Wood that is left between what is cut, and what hangs on it: too little is refused, little is said."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely.geometry import MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from signgen.errors import Problem
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.recess import Recess
from signgen.geometry.offsets import polygons
from signgen.messages import Message, Mm
from signgen.spec.sign_spec import SignSpec

BETWEEN_GROOVES_MM = 0.5
"""Wood at the face between a letter and a line; less crumbles along the grain (common practice)."""

THROUGH_TO_EDGE_MM = 2.0
"""Wood between a letter that is cut right through and the sign's edge: a strip as long as the letter and as high as
the board, which bends under the cutter (common practice)."""

BETWEEN_THROUGH_MM, THIN_BETWEEN_THROUGH_MM = 0.6, 1.5
"""Wood between two letters that are cut right through: what breaks, and what easily breaks (common practice)."""

LEAST_BRIDGE_MM, THIN_BRIDGE_MM = 1.0, 2.0
"""What an inside hangs on at its narrowest: what breaks under the cutter, and what breaks easily (common practice)."""

LEAST_INSIDE_MM2 = 4.0
"""Smaller insides weigh nothing and are held by less."""

Area = Polygon | MultiPolygon


def wall_problems(
    spec: SignSpec,
    grooves: Sequence[Groove],
    through: Sequence[Recess],
    edge: Polygon,
    holes: Sequence[Hole],
) -> Iterator[Problem]:
    """Letters and lines too near to each other, and what is cut through with too little wood round it."""
    letters = [groove for groove in grooves if groove.is_letter]
    lines = [groove for groove in grooves if not groove.is_letter]
    worst = {line.name: (letter, line, wall) for letter, line, wall in _pairs(letters, lines, BETWEEN_GROOVES_MM)}
    for letter, line, wall in worst.values():
        what = Message("walls.between", one=letter.name, other=line.name, wood=_mm(wall))
        yield Problem(
            where=line.source,
            what=what if wall > 0 else Message("walls.touch", one=letter.name, other=line.name),
            remedy=Message("walls.move_line", least=Mm(BETWEEN_GROOVES_MM)),
        )
    for recess in through:
        if (wall := float(shapely.distance(recess.area, edge.exterior))) < THROUGH_TO_EDGE_MM:
            yield Problem(
                where="cap-height" if recess.is_letter else "panel",
                what=Message("walls.edge", one=recess.name, wood=_mm(wall)),
                remedy=Message("walls.smaller", least=Mm(THROUGH_TO_EDGE_MM)),
            )
    for one, other, wall in _neighbours(through, BETWEEN_THROUGH_MM):
        yield Problem(
            where="letter-spacing",
            what=Message("walls.between", one=one.name, other=other.name, wood=_mm(wall)),
            remedy=Message("walls.more_spacing"),
        )
    for name in _hanging(through, edge, holes, LEAST_BRIDGE_MM):
        yield Problem(
            where="bridge-width" if spec.bridges else "finish",
            what=Message("walls.hangs", letter=name, least=Mm(LEAST_BRIDGE_MM)),
            remedy=Message("walls.wider_bridges" if spec.bridges else "walls.bridges"),
        )


def wall_warnings_of_through(
    spec: SignSpec, through: Sequence[Recess], edge: Polygon, holes: Sequence[Hole]
) -> Iterator[Message]:
    """Whole sentences about thin wood between letters that are cut right through, and about insides."""
    thin = [wall for _, _, wall in _neighbours(through, THIN_BETWEEN_THROUGH_MM)]
    if thin:
        yield (Message("drawing.only_wood_stand_between_letters", thin=Mm(min(thin))))
    hanging = _hanging(through, edge, holes, THIN_BRIDGE_MM)
    if hanging:
        yield (Message("drawing.inside_hangs_less_than_wood", hanging=tuple(hanging), thin_bridge=Mm(THIN_BRIDGE_MM)))
    elif spec.bridges and spec.bridges.count == 1 and through:
        yield Message("drawing.each_inside_hangs_one_bridge")


def _pairs(
    some: Sequence[Groove], others: Sequence[Groove], within_mm: float
) -> Iterator[tuple[Groove, Groove, float]]:
    """Those of some and of others that are nearer to each other, and how near; the nearest last."""
    if not some or not others:
        return
    tree = shapely.STRtree([other.area for other in others])
    mine, theirs = tree.query([one.area for one in some], predicate="dwithin", distance=within_mm)
    walls = [
        (float(shapely.distance(some[i].area, others[j].area)), -i, -j)
        for i, j in zip(mine.tolist(), theirs.tolist(), strict=True)
    ]
    for wall, i, j in sorted(walls, reverse=True):
        if wall < within_mm - 1e-6:
            yield some[-i], others[-j], wall


def _neighbours(through: Sequence[Recess], within_mm: float) -> list[tuple[Recess, Recess, float]]:
    """Those nearer to each other than that, each pair once."""
    found: list[tuple[Recess, Recess, float]] = []
    if not through:
        return found
    tree = shapely.STRtree([each.area for each in through])
    ones, others = tree.query([each.area for each in through], predicate="dwithin", distance=within_mm)
    for i, j in zip(ones.tolist(), others.tolist(), strict=True):
        if i < j:
            wall = float(shapely.distance(through[i].area, through[j].area))
            if wall < within_mm - 1e-6:
                found.append((through[i], through[j], wall))
    return found


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


def _mm(wall: float) -> Mm:
    return Mm(round(max(wall, 0.0), 2))
