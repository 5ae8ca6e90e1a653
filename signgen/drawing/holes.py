"""The holes of the sign, and whether enough wood stays around them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from signgen.drawing.grooves import bit_angle_deg
from signgen.drawing.spacing import apart_mm, close_pairs, inside_mm
from signgen.errors import Problem
from signgen.features.edge import Edge
from signgen.features.groove import Groove
from signgen.features.hole import Countersink, Hole
from signgen.holes.keyholes import Keyholes
from signgen.holes.screws import Head
from signgen.messages import Message, Mm, Num, Sentence
from signgen.messages.wording import has_words
from signgen.spec.finish import LEAST_LEFT_MM
from signgen.spec.sign_spec import SignSpec

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
            title=Message("name.slot" if span else "name.hole", which=which(name)),
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


def which(place: str) -> Sentence:
    """A hole's place in words: 'top left'; its number stays."""
    key = place.replace(" ", "_")
    return Message(f"name.place.{key}") if has_words(f"name.place.{key}") else place


def seat(head: Head, hole_mm: float, bit_deg: float) -> Countersink:
    """The cone that a bit of another angle than the head's must cut for the head to lie flush.

    A sharper bit's cone carries the head by its rim alone, so it is as wide as the head. A blunter bit's cone carries
    it at the rim of the hole, (D - d) / 2 / tan(H / 2) below the head's top, so it must be as deep as that there.
    Source: plane geometry of two cones.
    """
    sharper = math.tan(math.radians(bit_deg) / 2) / math.tan(math.radians(head.angle_deg) / 2)
    wide = max(head.diameter_mm, hole_mm + (head.diameter_mm - hole_mm) * sharper)
    return Countersink(diameter_mm=round(wide, 4), angle_deg=bit_deg)


def sink_problems(spec: SignSpec, holes: Sequence[Hole]) -> Iterator[Problem]:
    """What is wrong with the countersinks, which are all alike."""
    hole = next((hole for hole in holes if hole.sink), None)
    if hole is None:
        return
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


def hole_warnings(
    spec: SignSpec, edge: Edge, holes: tuple[Hole, ...], grooves: tuple[Groove, ...]
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


def wall_warnings(edge: Edge, holes: tuple[Hole, ...], grooves: tuple[Groove, ...]) -> Iterator[Message]:
    """A sentence when walls between holes and the edge or another hole are thin, and one when a letter is near, each
    with the thinnest."""
    if not holes:
        return
    # Below a countersink the wall is thicker, and that is where the screw bears on it.
    more_mm = {hole.name: hole.face_radius_mm - hole.diameter_mm / 2 for hole in holes}
    found = [(inside_mm(h, edge) + more_mm[h.name], h.name, "", h.diameter_mm) for h in holes]
    for i, j in close_pairs(holes, THIN_WALL_RATIO * max(hole.diameter_mm for hole in holes)):
        one, other = holes[i], holes[j]
        below = apart_mm(one, other) + more_mm[one.name] + more_mm[other.name]
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
    near = [
        (apart_mm(holes[i], grooves[j - len(holes)]), i, j - len(holes))
        for i, j in close_pairs((*holes, *grooves), THIN_BESIDE_LETTERS_MM)
        if i < len(holes) <= j
    ]
    if near and min(near)[0] < THIN_BESIDE_LETTERS_MM:
        wall, i, j = min(near)
        yield Message("drawing.thin_wall_beside_letter", wall=Mm(wall, 1), name=holes[i].name, other=grooves[j].name)
