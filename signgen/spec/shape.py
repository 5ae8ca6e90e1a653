"""The sign's border and holes from their names and options."""

from __future__ import annotations

from collections.abc import Iterable

from signgen.borders import BORDERS, Border, border_named
from signgen.borders.path import PathOutline, own_size_mm
from signgen.borders.rectangle import Rectangle
from signgen.borders.rounded import CORNER_RADIUS, Rounded
from signgen.holes import PATTERNS, HolePattern, pattern_named
from signgen.holes.common import SCREW
from signgen.holes.form import HoleForm
from signgen.option import Option
from signgen.spec.asked import Asked
from signgen.spec.keys import BORDER_KEYS, FORM_KEYS, HOLE_KEYS, KEY_BY_NAME
from signgen.units import POSITIVE, size_mm

Size = tuple[float, float]


def size_of(a: Asked) -> Size | None:
    """The size asked for; the file's own when the border is a path and no size was given."""
    border = a.text("border") if a.has("border") else None
    name, _, file = (border or "").partition(":")
    if a.has("size") or name.strip().casefold() != PathOutline.name or not file.strip():
        return a.size("size")
    own = a.attempt(lambda: own_size_mm(file.strip()))
    if own is None:
        return None
    key = KEY_BY_NAME["size"]
    return a.attempt(lambda: size_mm(list(own), key.name, key.limits or POSITIVE))


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
    _only_its_own(a, BORDER_KEYS, border.options, f"The border '{border.name}' has no such option.", "border", takers)
    values = _read_all(a, border.options)
    if size_mm is None or values is None:
        return None
    return a.attempt(lambda: border.from_options(argument, values, *size_mm))


def holes_of(a: Asked, size_mm: Size | None) -> HolePattern | None:
    """The hole pattern asked for."""
    asked = a.text("holes")
    found = a.attempt(lambda: pattern_named(asked)) if asked else None
    if found is None:
        _read_all(a, HOLE_KEYS)
        return None
    pattern, argument = found
    takers = {p.name: p.options for p in PATTERNS}
    what = f"The hole pattern '{pattern.name}' has no such option."
    _only_its_own(a, HOLE_KEYS, pattern.options, what, "holes", takers)
    values = _read_all(a, pattern.options)
    if size_mm is None or values is None:
        return None
    return a.attempt(lambda: pattern.from_options(argument, values, *size_mm))


def form_of(a: Asked, holes: HolePattern | None) -> HoleForm | None:
    """Whether the holes are round or slots, and sunk or not."""
    given = [option for option in FORM_KEYS if a.has(option.name)]
    values = _read_all(a, FORM_KEYS)
    if holes is None or values is None:
        return None
    if holes.diameter_mm == 0:
        for option in given:
            if values[option.name] is not False:
                a.wrong(option.name, "There are no holes for it.", "Give holes too, or leave it out.")
        return HoleForm()
    if a.has(SCREW.name):
        values[SCREW.name] = a.value(SCREW.name)
    return a.attempt(lambda: HoleForm.from_options(values, holes.diameter_mm))


def _only_its_own(
    a: Asked, family: Iterable[Option], own: Iterable[Option], what: str, where: str,
    takers: dict[str, tuple[Option, ...]],
) -> None:  # fmt: skip
    """A problem for each option given that this member of the family does not read: nothing is ignored in silence."""
    for option in family:
        if a.has(option.name) and option not in own:
            names = [name for name, options in takers.items() if option in options]
            a.wrong(option.name, what, f"Leave it out, or give {where} as {' or '.join(names)}.")
            a.value(option.name)


def _read_all(a: Asked, options: Iterable[Option]) -> dict[str, object] | None:
    """Values of the options that were given; None when one of them is wrong."""
    given = [option.name for option in options if a.has(option.name)]
    values: dict[str, object] = {name: a.value(name) for name in given}
    return None if None in values.values() else values
