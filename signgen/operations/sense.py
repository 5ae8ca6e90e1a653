"""The sense of an engraving: how deep, how narrow and how wide it gets, where, and what comes out blunt."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import numpy as np
import shapely
from msgspec import Struct

from signgen.drawing.drawing import Drawing
from signgen.drawing.uncut import uncut_ratio
from signgen.features.groove import Groove
from signgen.geometry.medial import MedialAxis, medial_axes
from signgen.geometry.paths import FloatArray
from signgen.geometry.strokes import strokes_of, widest_place
from signgen.messages import Message, Mm, Num
from signgen.operations.engrave import EngravedShape, shapes
from signgen.spec.sign_spec import SignSpec

MOST_NAMED = 12
"""So many letters a warning names; a reader who sees that many knows what to do."""


class Spot(Struct, frozen=True, kw_only=True):
    """A measure, where in the sign it is taken, and the groove that it belongs to."""

    value_mm: float
    x_mm: float
    y_mm: float
    groove: Groove


class Sense(Struct, frozen=True, kw_only=True):
    """`deepest`: how far the bit's tip goes down. `narrowest`, `widest`: of the strokes of the letters (of the lines
    where there are no letters), their ends left out.

    `wood_left_mm`: of the board under the deepest place. `wider_ratio`: how much wider every groove gets with each
    millimetre that it is deeper: 2 tan(angle / 2). `warnings`: whole sentences that name letters of which something
    comes out blunt or not at all.
    """

    deepest: Spot
    narrowest: Spot
    widest: Spot
    wood_left_mm: float
    wider_ratio: float
    warnings: tuple[Message, ...] = ()


class _Found(Struct, frozen=True):
    """A shape, the grooves that it is made of, the points (k, 3) of its strokes and its widest place (3,)."""

    shape: EngravedShape
    owners: tuple[Groove, ...]
    strokes: FloatArray
    widest: FloatArray


def sense_of(drawing: Drawing, spec: SignSpec) -> Sense | None:
    """None when nothing is engraved."""
    own = shapes(drawing.of(Groove))
    axes = medial_axes([shape.polygon for shape in own], spec.tolerances)
    found = [_found(shape, axis, drawing.of(Groove), spec) for shape, axis in zip(own, axes, strict=True)]
    if not found:
        return None
    v_bit = spec.v_bit
    deepest, narrowest, widest = [], [], []
    for each in found:
        radius = float(each.widest[2])
        depth = v_bit.depth_for_radius_mm(max(radius, v_bit.tip_mm / 2))
        least = each.strokes[each.strokes[:, 2].argmin()]
        deepest.append(_spot(min(each.shape.max_depth_mm, depth), each.widest, each.owners))
        narrowest.append(_spot(2 * float(least[2]), least, each.owners))
        widest.append(_spot(2 * radius, each.widest, each.owners))
    down = max(deepest, key=lambda spot: spot.value_mm)
    return Sense(
        deepest=down,
        narrowest=min(_letters(narrowest), key=lambda spot: spot.value_mm),
        widest=max(_letters(widest), key=lambda spot: spot.value_mm),
        wood_left_mm=drawing.thickness_mm - down.value_mm,
        wider_ratio=2 * v_bit.slope,
        warnings=tuple(_warnings(found, v_bit.tip_mm, spec.tolerances.total_mm)),
    )


def _found(shape: EngravedShape, axis: MedialAxis, grooves: Sequence[Groove], spec: SignSpec) -> _Found:
    owners = tuple(groove for groove in grooves if groove.name in shape.names)
    return _Found(shape, owners, strokes_of(axis, 2 * spec.tolerances.total_mm), widest_place(axis))


def _warnings(found: Sequence[_Found], tip_mm: float, tolerance_mm: float) -> Iterator[Message]:
    tiny = dict.fromkeys(name for each in found for name in _tiny(each, tolerance_mm))
    # What the tolerance leaves open about a radius is no reason to warn.
    thin = dict.fromkeys(name for each in found for name in _thinner(each, tip_mm - 2 * tolerance_mm))
    blunt = [name for name in thin if name not in tiny]
    if tiny:
        yield (Message("cut.detail_smaller_than_tolerance_may", names=_listed(tiny), tolerance=Mm(tolerance_mm)))
    if blunt:
        named = set(blunt)
        share = max(uncut_ratio(own) for each in found for own in each.owners if _called(own) in named)
        most = Num(max(100 * share, 0.1), 1, trim=True)
        yield Message("cut.stroke_narrower_than_flat_bit", names=_listed(blunt), tip=Mm(tip_mm), most=most)


def _tiny(each: _Found, limit_mm: float) -> Iterator[str]:
    """Owners of strokes, and of islands of wood in them, that are smaller than a limit."""
    yield from _thinner(each, limit_mm)
    for ring in each.shape.polygon.interiors:
        x0, y0, x1, y1 = ring.bounds
        if max(x1 - x0, y1 - y0) < limit_mm:
            yield _called(_owner(np.array([x0, y0]), each.owners))


def _thinner(each: _Found, limit_mm: float) -> Iterator[str]:
    """Owners of strokes narrower than a limit."""
    thin = each.strokes[2 * each.strokes[:, 2] < limit_mm]
    for row in thin[:1] if len(each.owners) == 1 else thin:
        yield _called(_owner(row, each.owners))


def _owner(row: FloatArray, owners: Sequence[Groove]) -> Groove:
    """The groove that a place lies in; of touching ones the nearest."""
    if len(owners) == 1:
        return owners[0]
    point = shapely.points(row[:2])
    return min(owners, key=lambda groove: float(shapely.distance(groove.area, point)))


def _spot(value_mm: float, row: FloatArray, owners: Sequence[Groove]) -> Spot:
    return Spot(value_mm=value_mm, x_mm=float(row[0]), y_mm=float(row[1]), groove=_owner(row, owners))


def _letters(spots: Sequence[Spot]) -> Sequence[Spot]:
    return [spot for spot in spots if spot.groove.is_letter] or spots


def _called(groove: Groove) -> str:
    return f'"{groove.text}"' if groove.is_letter else groove.name


def _listed(names: Iterable[str]) -> tuple[str, ...]:
    some = list(names)
    return (*some[:MOST_NAMED], *(["..."] if len(some) > MOST_NAMED else []))
