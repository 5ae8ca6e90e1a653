"""Text and pictures together on the face: pictures take their part of it, the text is composed on the rest."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import shapely
from msgspec import Struct
from shapely import affinity
from shapely.geometry import Polygon, box
from shapely.geometry.base import BaseGeometry

from signgen.drawing.pictures import Part, Shown, parts_of
from signgen.errors import CannotMakeError
from signgen.geometry.offsets import polygons
from signgen.lettering.layout import Lettering
from signgen.messages import Message
from signgen.spec.sign_spec import SignSpec

BESIDE_RATIO, BESIDE_WIDTH_RATIO = 0.55, 0.34
"""Height of a picture beside the text over that of the free face, and its greatest width (common practice)."""

CODE_RATIO, CODE_WIDTH_RATIO = 0.9, 0.45
"""The same of a code, whose quiet zone is its own margin."""

OVER_RATIO, OVER_WIDTH_RATIO = 0.42, 0.7
"""The same of one over or under the text."""

CORNER_RATIO, AT_RATIO, MIDDLE_RATIO = 0.22, 0.3, 0.7
"""Of one in a corner, at a place that was stated, and alone in the middle, over the shorter side."""

GAP_RATIO, LEAST_GAP_MM, MOST_GAP_MM = 0.3, 4.0, 25.0
"""From a picture to the text, over the picture's height, and within what."""

CORNER_INSET_RATIO = 0.06
"""From the edge to a picture in a corner, over the shorter side."""

SHRINKS = (1.0, 0.88, 0.77, 0.68, 0.59, 0.5, 0.4)
"""Sizes tried, over the usual one, until text and picture have room; what is stated holds."""

STEP_MM = 0.5
"""How finely places along the way from a corner to the middle are tried."""

_CORNERS = {"top-left": (0, 1), "top-right": (1, 1), "bottom-left": (0, 0), "bottom-right": (1, 0)}

TextSet = tuple[Lettering, tuple[Message, ...]]
"""With its warnings."""

SetText = Callable[[Polygon, BaseGeometry, Sequence[Polygon]], TextSet]
"""(edge about whose middle the text stands, what is left of the face, pictures in its way) -> the text."""


class PlacedPicture(Struct, frozen=True, kw_only=True):
    """`heights` of the pictures by their names."""

    text: TextSet
    parts: tuple[Part, ...]
    heights: tuple[float, ...]


def arranged(
    spec: SignSpec, shown: Sequence[Shown], edge: Polygon, room: BaseGeometry, free: BaseGeometry, set_text: SetText
) -> PlacedPicture:
    """Raises: CannotMakeError when text and pictures have no room together, AskError as the drawings do."""
    if not shown:
        return PlacedPicture(text=set_text(edge, edge, ()), parts=(), heights=())
    stated = all(each.stated_height_mm() is not None for each in shown)
    wrong: CannotMakeError | None = None
    for shrink in SHRINKS[:1] if stated else SHRINKS:
        heights = [each.stated_height_mm() or shrink * _usual_mm(spec, each, free) for each in shown]
        try:
            return _placed(spec, shown, heights, edge, room, set_text)
        except CannotMakeError as error:
            wrong = wrong or error
    assert wrong is not None
    raise wrong


def _usual_mm(spec: SignSpec, shown: Shown, free: BaseGeometry) -> float:
    """The usual height of a picture, by its place, in whole tenths."""
    x0, y0, x1, y1 = free.bounds if not free.is_empty else (0.0, 0.0, spec.width_mm, spec.height_mm)
    wide, high = x1 - x0, y1 - y0
    match shown.asked.place:
        case "left" | "right" if shown.asked.kind == "code":
            height = min(CODE_RATIO * high, CODE_WIDTH_RATIO * wide)
        case "left" | "right":
            height = min(BESIDE_RATIO * high, BESIDE_WIDTH_RATIO * wide / shown.ratio)
        case "above" | "below":
            height = min(OVER_RATIO * high, OVER_WIDTH_RATIO * wide / shown.ratio)
        case "middle":
            height = MIDDLE_RATIO * min(high, wide / shown.ratio)
        case str():
            height = CORNER_RATIO * min(spec.width_mm, spec.height_mm) / max(1.0, shown.ratio)
        case _:
            height = AT_RATIO * min(spec.width_mm, spec.height_mm) / max(1.0, shown.ratio)
    if shown.asked.kind == "code":
        return max(0.1, math.floor(10 * height / shown.size[1]) / 10) * shown.size[1]
    return max(0.1, math.floor(10 * height) / 10)


def _gap_mm(height: float) -> float:
    return min(max(GAP_RATIO * height, LEAST_GAP_MM), MOST_GAP_MM)


def _placed(
    spec: SignSpec,
    shown: Sequence[Shown],
    heights: Sequence[float],
    edge: Polygon,
    room: BaseGeometry,
    set_text: SetText,
) -> PlacedPicture:
    found: dict[int, tuple[Part, ...]] = {}
    taken = {"left": 0.0, "right": 0.0, "above": 0.0, "below": 0.0}
    for number, (each, height) in enumerate(zip(shown, heights, strict=True)):
        place = each.asked.place
        if isinstance(place, str) and place in taken:
            taken[place] += (height * each.ratio if place in ("left", "right") else height) + _gap_mm(height)
        elif isinstance(place, str) and place in _CORNERS:
            found[number] = _in_corner(spec, each, height, edge)
        else:
            middle = (spec.width_mm / 2, spec.height_mm / 2) if isinstance(place, str) else place
            found[number] = parts_of(spec, each, height, middle)
    x0, y0, x1, y1 = edge.bounds
    rest = box(x0 + taken["left"], y0 + taken["below"], x1 - taken["right"], y1 - taken["above"])
    if taken["left"] + taken["right"] >= x1 - x0 or taken["above"] + taken["below"] >= y1 - y0:
        raise _no_room(shown[0])
    shift = ((taken["left"] - taken["right"]) / 2, (taken["below"] - taken["above"]) / 2)
    in_the_way = [piece for parts in found.values() for part in parts for piece in polygons(part.area)]
    text = set_text(affinity.translate(edge, *shift), rest, in_the_way)
    lettering = text[0]
    sides = dict(zip(("left", "below", "right", "above"), lettering.ink_bounds_mm, strict=True))
    middle = ((sides["left"] + sides["right"]) / 2, (sides["below"] + sides["above"]) / 2)
    for number, (each, height) in enumerate(zip(shown, heights, strict=True)):
        place = each.asked.place
        if number in found or not isinstance(place, str):
            continue
        away = height * each.ratio if place in ("left", "right") else height
        outward = -1.0 if place in ("left", "below") else 1.0
        at = sides[place] + outward * (_gap_mm(height) + away / 2)
        sides[place] = at + outward * away / 2
        found[number] = parts_of(spec, each, height, (at, middle[1]) if place in ("left", "right") else (middle[0], at))
        if not all(shapely.covers(room, part.area) for part in found[number]):
            raise _no_room(each)
    parts = tuple(part for number in range(len(shown)) for part in found[number])
    return PlacedPicture(text=text, parts=parts, heights=tuple(heights))


def _in_corner(spec: SignSpec, shown: Shown, height: float, edge: Polygon) -> tuple[Part, ...]:
    """As near to the corner as the edge lets it lie, on the way to the sign's middle."""
    inset = CORNER_INSET_RATIO * min(spec.width_mm, spec.height_mm)
    if spec.frame:
        inset += spec.frame.reach_mm
    across, up = _CORNERS[str(shown.asked.place)]
    half = (height * shown.ratio / 2 + inset, height / 2 + inset)
    first = (spec.width_mm - half[0] if across else half[0], spec.height_mm - half[1] if up else half[1])
    middle = (spec.width_mm / 2, spec.height_mm / 2)
    way = math.dist(first, middle)
    shapely.prepare(edge)
    for number in range(math.ceil(way / STEP_MM) + 1):
        share = min(1.0, number * STEP_MM / way) if way else 1.0
        x, y = (a + share * (m - a) for a, m in zip(first, middle, strict=True))
        about = box(x - half[0], y - half[1], x + half[0], y + half[1])
        if shapely.covers(edge, shapely.buffer(about, -1e-6)):
            return parts_of(spec, shown, height, (x, y))
    raise _no_room(shown)


def _no_room(shown: Shown) -> CannotMakeError:
    where = shown.asked.kind
    error = CannotMakeError.at(
        where, Message("art.no_room", name=shown.name), Message("art.smaller_or_elsewhere", name=where)
    )
    assert isinstance(error, CannotMakeError)
    return error
