"""The sign's border and holes from their names and options."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import TYPE_CHECKING

from signgen.borders import BORDERS, Border, border_named
from signgen.borders.common import Eye
from signgen.borders.path import PathOutline, own_size_mm
from signgen.borders.rectangle import Rectangle
from signgen.borders.rounded import CORNER_RADIUS, Rounded
from signgen.errors import AskError, CannotMakeError
from signgen.holes import PATTERNS, HolePattern, pattern_named
from signgen.holes.common import HOLE_DIAMETER, INSET, SCREW, SCREW_FIT, diameter_of, inset_of
from signgen.holes.form import SLOT_LENGTH, HoleForm
from signgen.holes.keyholes import Keyholes
from signgen.messages import Message
from signgen.messages.figures import MM_PER_INCH, plain
from signgen.option import Option
from signgen.spec.asked import Asked
from signgen.spec.keys import KEY_BY_NAME
from signgen.spec.keys.families import BORDER_KEYS, FORM_KEYS, HOLE_KEYS
from signgen.spec.said_units import units_of
from signgen.units import POSITIVE, size_mm

if TYPE_CHECKING:
    from shapely.geometry import Polygon

Size = tuple[float, float]

INSIDE_RATIO = 0.75
"""From a hole's middle to the edge, over the usual inset: more than a thin wall, and so little less than usual that
holes in slightly rounded corners stay where they always are."""

LARGEST_MM, LEAST_SIDE_MM = (48.0, 24.0), 10.0
"""Sides without a unit up to the first two may be inches: signs of 48 x 24 in are made, and of 48 x 24 mm hardly any;
with a side under the third they can be nothing else (common practice)."""

Band = tuple[float, float]
"""A line round inside the edge: how far inside it begins and ends."""

MOST_WIDER_MM = 1.25
"""A hole that is wider than its screw wants by no more still holds it: the head of a No. 4, 5.7 mm wide, bears on
0.85 mm all round (derived here)."""

INSET_STEP_MM, COARSE_MM = 0.5, 0.1
"""How finely insets are tried, and the outline that they are tried on."""


def size_of(a: Asked) -> Size | None:
    """The size asked for; the file's own when the border is a path and no size was given."""
    border = a.text("border") if a.has("border") else None
    name, _, file = (border or "").partition(":")
    if a.has("size") or name.strip().casefold() != PathOutline.name or not file.strip():
        return None if _may_be_inches(a) else a.size("size")
    own = a.attempt(lambda: own_size_mm(file.strip()))
    if own is None:
        return None
    key = KEY_BY_NAME["size"]
    return a.attempt(lambda: size_mm(list(own), key.name, key.limits or POSITIVE))


def _may_be_inches(a: Asked) -> bool:
    """Keep a problem for a size without a unit that is too small for a sign in millimetres, or small beside a thickness
    in inches, and a usual one in inches: nobody knows but the user."""
    raw = a.raw("size")
    if not isinstance(raw, str) or not raw.strip()[-1:].isdigit():
        return False
    try:
        size = size_mm(raw, "size")
    except AskError:
        return False
    if max(size) > LARGEST_MM[0] or min(size) > LARGEST_MM[1]:
        return False
    if min(size) >= LEAST_SIDE_MM and units_of({"thickness": a.raw("thickness")}) == "mm":
        return False
    text = "x".join(plain(side) for side in size)
    inches = "x".join(plain(side * MM_PER_INCH) for side in size)
    a.wrong("size", Message("spec.size_may_be_inches", text=text, inches=inches), Message("spec.say_unit", text=text))
    a.value("units")
    return True


def border_of(a: Asked, size_mm: Size | None) -> Border | None:
    """The border asked for: by name, or rounded when only a corner radius was given, or a rectangle."""
    usual = Rounded.name if a.has(CORNER_RADIUS.name) else Rectangle.name
    name = a.text("border") if a.has("border") else usual
    found = a.attempt(lambda: border_named(name)) if name else None
    if found is None:
        _read_all(a, BORDER_KEYS)
        return None
    border, argument = found
    takers = {b.name: b.options for b in BORDERS}
    _only_its_own(
        a, BORDER_KEYS, border.options, Message("spec.border_no_such_option", name=border.name), "border", takers
    )
    values = _read_all(a, border.options)
    if size_mm is None or values is None:
        return None
    made = a.attempt(lambda: border.from_options(argument, values, *size_mm))
    if made is not None:
        a.attempt(lambda: made.outline(*size_mm, COARSE_MM))  # so that what does not fit is told with everything else
    return made


def holes_of(
    a: Asked,
    size_mm: Size | None,
    border: Border | None,
    lines: Sequence[Band] = (),
    bore: Callable[[float], float | None] = lambda diameter_mm: diameter_mm,
) -> HolePattern | None:
    """The hole pattern asked for. Without an inset, holes keep the usual one, or what they need to lie well inside a
    border that is no rectangle and off the `lines` that run round inside the edge. `bore`: the next larger hole that
    can be made, for screws in whose own hole no cutter of the shop fits."""
    asked = a.text("holes")
    found = a.attempt(lambda: pattern_named(asked)) if asked else None
    if found is None:
        _read_all(a, HOLE_KEYS)
        return None
    pattern, argument = found
    takers = {p.name: p.options for p in PATTERNS}
    what = Message("spec.hole_pattern_no_such_option", name=pattern.name)
    _only_its_own(a, HOLE_KEYS, pattern.options, what, "holes", takers)
    values = _read_all(a, pattern.options)
    if size_mm is None or values is None:
        return None
    if pattern is not Keyholes and SCREW.name in values and not a.has(SLOT_LENGTH.name):
        values = _bored(values, bore)
    made = a.attempt(lambda: pattern.from_options(argument, values, *size_mm))
    if made is None or border is None or INSET not in pattern.options or {INSET.name, "ring-diameter"} & values.keys():
        return made
    return _moved_inside(made, pattern, argument, values, border, size_mm, lines)


def _bored(values: dict[str, object], bore: Callable[[float], float | None]) -> dict[str, object]:
    """With the diameter of the hole in place of the screw, where the screw's own is made by no cutter and one that is
    little wider is; as they are otherwise, for the pattern or the planner to say what is wrong."""
    try:
        own = diameter_of(values)
    except AskError:
        return values
    wider = bore(own)
    if wider is None or not own < wider <= own + MOST_WIDER_MM:
        return values
    rest = {name: value for name, value in values.items() if name not in (SCREW.name, SCREW_FIT.name)}
    return rest | {HOLE_DIAMETER.name: wider}


def _moved_inside(
    usual: HolePattern, pattern: type[HolePattern], argument: str, values: Mapping[str, object], border: Border,
    size_mm: Size, lines: Sequence[Band],
) -> HolePattern:  # fmt: skip
    """The pattern with the least inset, from the usual one up, at which all its holes have wood around them; as it is
    when there is none, which the drawing will say."""
    try:
        edge = border.outline(*size_mm, COARSE_MM)
    except CannotMakeError:
        return usual
    least = INSIDE_RATIO * inset_of({}, usual.diameter_mm)
    eyes = border.eyes(*size_mm)
    inset = inset_of({}, usual.diameter_mm)
    made = usual
    while inset <= min(size_mm) / 2:
        if _lies_inside(made, edge, eyes, least, size_mm, lines):
            return made
        inset += INSET_STEP_MM
        try:
            made = pattern.from_options(argument, {**values, INSET.name: inset}, *size_mm)
        except AskError:
            break
    return usual


def _lies_inside(
    holes: HolePattern, edge: Polygon, eyes: tuple[Eye, ...], least_mm: float, size_mm: Size, lines: Sequence[Band]
) -> bool:
    """Whether every hole's middle lies inside, this far from the edge, clear of the border's own holes, and with room
    for a screw's head (twice the hole, common practice) off the lines."""
    from shapely.geometry import Point

    for _, x, y in holes.centres(*size_mm):
        middle = Point(x, y)
        inset = edge.exterior.distance(middle)
        if not edge.contains(middle) or inset < least_mm:
            return False
        if any(low - holes.diameter_mm < inset < high + holes.diameter_mm for low, high in lines):
            return False
        if any(math.dist((x, y), (ex, ey)) < holes.diameter_mm + d for _, ex, ey, d in eyes):
            return False
    return True


def form_of(a: Asked, holes: HolePattern | None) -> HoleForm | None:
    """Whether the holes are round or slots, and sunk or not."""
    given = [option for option in FORM_KEYS if a.has(option.name)]
    values = _read_all(a, FORM_KEYS)
    if holes is None or values is None:
        return None
    if isinstance(holes, Keyholes):
        for option in given:
            if values[option.name] is not False:
                a.wrong(
                    option.name,
                    Message("spec.keyholes_not_through_board"),
                    Message("spec.leave_out_give_holes_another"),
                )
        return HoleForm()
    if holes.diameter_mm == 0:
        for option in given:
            if values[option.name] is not False:
                a.wrong(option.name, Message("spec.there_no_holes"), Message("spec.give_holes_too_leave_out"))
        return HoleForm()
    if a.has(SCREW.name):
        values[SCREW.name] = a.value(SCREW.name)
    return a.attempt(lambda: HoleForm.from_options(values, holes.diameter_mm))


def _only_its_own(
    a: Asked, family: Iterable[Option], own: Iterable[Option], what: Message, where: str,
    takers: dict[str, tuple[Option, ...]],
) -> None:  # fmt: skip
    """A problem for each option given that this member of the family does not read: nothing is ignored in silence."""
    taken = {option.name for option in own}
    for option in family:
        if a.has(option.name) and option.name not in taken:
            names = [name for name, options in takers.items() if any(each.name == option.name for each in options)]
            a.wrong(option.name, what, Message("spec.leave_out_give", where=where, names=tuple(names)))
            a.value(option.name)


def _read_all(a: Asked, options: Iterable[Option]) -> dict[str, object] | None:
    """Values of the options that were given; None when one of them is wrong."""
    given = [option.name for option in options if a.has(option.name)]
    values: dict[str, object] = {name: a.value(name) for name in given}
    return None if None in values.values() else values
