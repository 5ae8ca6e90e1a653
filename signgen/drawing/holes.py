"""The holes of the sign, and whether enough wood stays around them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import Polygon

from signgen.drawing.grooves import bit_angle_deg
from signgen.errors import Problem
from signgen.features.groove import Groove
from signgen.features.hole import Countersink, Hole
from signgen.features.recess import Recess
from signgen.holes.keyholes import Keyholes
from signgen.holes.screws import Head
from signgen.messages import Message, Mm, Num, Sides
from signgen.spec.finish import LEAST_LEFT_MM
from signgen.spec.sign_spec import SignSpec

LEAST_WALL_MM = 1.0
"""Wood that must stay between a hole and the edge, another hole or a letter; less breaks out (common practice)."""

THIN_WALL_RATIO = 1.0
"""Wood between a hole and the edge or another hole, over the hole's diameter: less is a thin wall. The middle is then
1.5 diameters from the edge, half way between the bare wall and the two diameters that common practice calls
usual (common practice)."""

THIN_BESIDE_LETTERS_MM = 2.0
"""The same beside a letter, which leaves wood below itself (common practice)."""

SHOULDER_RATIO = 0.25
"""Wood under a screw's head, over the thickness: less pulls through (common practice)."""


def holes_of(spec: SignSpec) -> tuple[Hole, ...]:
    """The border's own holes, then the pattern's, in the form that was asked for."""
    eyes = tuple(
        Hole(name=name, source="eye-inset", x_mm=x, y_mm=y, diameter_mm=diameter)
        for name, x, y, diameter in spec.border.eyes(spec.width_mm, spec.height_mm)
    )
    if isinstance(spec.holes, Keyholes):
        return eyes
    form, diameter = spec.hole_form, spec.holes.diameter_mm
    sink = seat(form.head, diameter, bit_angle_deg(spec)) if form.head else None
    span = form.slot_length_mm - diameter if form.slot_length_mm else 0.0
    pattern = tuple(
        Hole(
            name=f"{'slot' if span else 'hole'} {name}",
            x_mm=x,
            y_mm=y,
            diameter_mm=diameter,
            span_mm=span,
            angle_deg=form.slot_angle_deg,
            sink=sink,
        )
        for name, x, y in spec.holes.centres(spec.width_mm, spec.height_mm)
    )
    return (*eyes, *pattern)


def seat(head: Head, hole_mm: float, bit_deg: float) -> Countersink:
    """The cone that a bit of another angle than the head's must cut for the head to lie flush.

    A sharper bit's cone carries the head by its rim alone, so it is as wide as the head. A blunter bit's cone carries
    it at the rim of the hole, (D - d) / 2 / tan(H / 2) below the head's top, so it must be as deep as that there.
    Source: plane geometry of two cones.
    """
    sharper = math.tan(math.radians(bit_deg) / 2) / math.tan(math.radians(head.angle_deg) / 2)
    wide = max(head.diameter_mm, hole_mm + (head.diameter_mm - hole_mm) * sharper)
    return Countersink(diameter_mm=round(wide, 4), angle_deg=bit_deg)


def wall_mm(edge: Polygon, hole: Hole) -> float:
    """Wood between a hole's rim and the sign's edge; negative where the hole runs over it."""
    middle = hole.middle_line
    away = float(shapely.distance(edge.exterior, middle))
    return (away if edge.contains(middle) else -away) - hole.face_radius_mm


def walls_between(holes: Sequence[Hole]) -> Iterator[tuple[float, Hole, Hole]]:
    """Wood between the rims of each two holes, negative where they run into each other."""
    lines = np.array([hole.middle_line for hole in holes], dtype=object)
    radii = np.array([hole.face_radius_mm for hole in holes])
    ones, others = np.triu_indices(len(holes), 1)
    walls = shapely.distance(lines[ones], lines[others]) - radii[ones] - radii[others]
    yield from (
        (float(wall), holes[i], holes[j]) for wall, i, j in zip(walls, ones.tolist(), others.tolist(), strict=True)
    )


def walls_to_grooves(holes: Sequence[Hole], grooves: Sequence[Groove | Recess]) -> NDArray[np.float64]:
    """(holes, grooves) wood at the board's top between their rims."""
    lines = np.array([hole.middle_line for hole in holes], dtype=object)
    areas = np.array([groove.area for groove in grooves], dtype=object)
    radii = np.array([hole.face_radius_mm for hole in holes])
    apart: NDArray[np.float64] = shapely.distance(lines[:, None], areas[None, :]) - radii[:, None]
    return apart


def hole_problems(spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...]) -> Iterator[Problem]:
    """Every hole that runs over the edge or into another one or leaves less than the least wall, and countersinks that
    the board or the bit has no room for."""
    for hole in holes:
        if wall_mm(edge, hole) < LEAST_WALL_MM:
            yield Problem(
                where=hole.source,
                what=Message(
                    "drawing.does_not_lie_inside_sign",
                    name=hole.name,
                    size=_size(hole),
                    x=Mm(hole.x_mm),
                    y=Mm(hole.y_mm),
                    least_wall=Mm(LEAST_WALL_MM),
                ),
                remedy=Message("drawing.use_larger_inset_smaller_hole"),
            )
    for wall, one, other in walls_between(holes):
        if wall < LEAST_WALL_MM:
            apart = math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm)
            yield Problem(
                where="holes",
                what=Message("drawing.run_into_each_other_their", name=one.name, other=other.name, apart=Mm(apart)),
                remedy=Message("drawing.use_smaller_holes_fewer_them"),
            )
    sunk = next((hole for hole in holes if hole.sink), None)
    if sunk:
        yield from _sink_problems(spec, sunk)


def _sink_problems(spec: SignSpec, hole: Hole) -> Iterator[Problem]:
    """What is wrong with the countersinks, which are all alike."""
    depth = hole.sink_depth_mm
    if depth > spec.thickness_mm - LEAST_LEFT_MM:
        yield Problem(
            where="countersink",
            what=Message("drawing.goes_deep_into_board", depth=Mm(depth, 2), thickness=Mm(spec.thickness_mm)),
            remedy=Message("drawing.use_smaller_screw_thicker_board"),
        )
    elif depth > spec.v_bit.reach_mm + 1e-6:
        yield Problem(
            where="countersink",
            what=Message("drawing.goes_deep_v_bit_reaches", depth=Mm(depth, 2), reach=Mm(spec.v_bit.reach_mm, 2)),
            remedy=Message("drawing.use_smaller_screw_larger_v"),
        )
    if spec.v_bit.tip_mm >= hole.diameter_mm:
        yield Problem(
            where="countersink",
            what=Message("drawing.v_bit_s_tip_wide", tip=Mm(spec.v_bit.tip_mm)),
            remedy=Message("drawing.use_sharper_v_bit"),
        )


def _size(hole: Hole) -> Mm | Sides | Message:
    size = Sides((hole.diameter_mm, hole.diameter_mm + hole.span_mm)) if hole.span_mm else Mm(hole.diameter_mm)
    return Message("drawing.sunk_to", size=size, sunk=Mm(hole.sink.diameter_mm)) if hole.sink else size


def hole_warnings(
    spec: SignSpec, edge: Polygon, holes: tuple[Hole, ...], grooves: tuple[Groove, ...]
) -> Iterator[Message]:
    """Sentences about walls that are thin and screws that may not sit well."""
    yield from wall_warnings(edge, holes, grooves)
    sunk = next((hole for hole in holes if hole.sink), None)
    head = spec.hole_form.head
    if sunk is None or sunk.sink is None or head is None:
        return
    left = spec.thickness_mm - sunk.sink_depth_mm
    if left < SHOULDER_RATIO * spec.thickness_mm:
        yield Message("drawing.only_wood_stay_under_screws", left=Mm(left, 1))
    if abs(sunk.sink.angle_deg - head.angle_deg) > 0.5:
        yield (
            Message(
                f"drawing.head_bears_{'by_its_rim' if sunk.sink.angle_deg < head.angle_deg else 'at_hole_s_rim'}",
                angle=Num(sunk.sink.angle_deg),
                head=Num(head.angle_deg),
            )
        )


def wall_warnings(edge: Polygon, holes: tuple[Hole, ...], grooves: tuple[Groove, ...]) -> Iterator[Message]:
    """A sentence when walls between holes and the edge or another hole are thin, and one when a letter is near, each
    with the thinnest."""
    # Below a countersink the wall is thicker, and that is where the screw bears on it.
    more_mm = {hole.name: hole.face_radius_mm - hole.diameter_mm / 2 for hole in holes}
    found = [(wall_mm(edge, h) + more_mm[h.name], h.name, "", h.diameter_mm) for h in holes]
    for wall, one, other in walls_between(holes):
        below = wall + more_mm[one.name] + more_mm[other.name]
        found.append((below, one.name, other.name, min(one.diameter_mm, other.diameter_mm)))
    thin = [each for each in found if each[0] < THIN_WALL_RATIO * each[3] - 1e-9]
    if thin:
        wall, one_name, other_name, _ = min(thin)
        beside = other_name or Message("drawing.sign_s_edge")
        yield (
            Message(
                "drawing.thin_walls_at_holes" if len(thin) > 1 else "drawing.thin_wall_at_hole",
                wall=Mm(wall, 1),
                name=one_name,
                other=beside,
                count=len(thin),
            )
        )
    walls = walls_to_grooves(holes, grooves)
    if walls.size and walls.min() < THIN_BESIDE_LETTERS_MM:
        i, j = np.unravel_index(int(walls.argmin()), walls.shape)
        yield Message(
            "drawing.thin_wall_beside_letter", wall=Mm(float(walls.min()), 1), name=holes[i].name, other=grooves[j].name
        )
