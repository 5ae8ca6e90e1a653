"""A sign file with options of the command line on top of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from signgen.borders import border_named
from signgen.errors import AskError
from signgen.holes import pattern_named
from signgen.holes.form import COUNTERSINK
from signgen.holes.none import NoHoles
from signgen.option import Option
from signgen.spec.asked import is_off
from signgen.spec.keys import KEY_BY_NAME
from signgen.spec.keys.families import BORDER_KEYS, FORM_KEYS, HOLE_KEYS
from signgen.spec.keys.lettering import LINE
from signgen.spec.lines import with_words
from signgen.spec.pictures import with_own_keys


def merged(file: Mapping[str, object], asked: Mapping[str, object]) -> dict[str, object]:
    """All keys, the command line's before the file's. What the file says only about a thing that the command line
    replaces (the inset of holes that are no longer wanted, the diameter of another bit) goes with that thing."""
    given = {key: value for key, value in asked.items() if value is not None}
    gone = {each for name in given if (key := KEY_BY_NAME.get(name)) for each in key.replaces}
    gone |= _not_taken(given.get("border"), BORDER_KEYS, lambda name: border_named(name)[0].options)
    gone |= _not_taken(given.get("holes"), HOLE_KEYS, lambda name: pattern_named(name)[0].options)
    if str(given.get("holes")).strip().casefold() == NoHoles.name:
        gone |= {option.name for option in FORM_KEYS}
    if given.get(COUNTERSINK.name) is False:
        gone |= {"screw-head", "head-diameter", "head-angle"}
    if given.get("finish") == "through" and "panel" not in {**file, **given}:
        gone.add("depth")
    gone |= {key.name for key in KEY_BY_NAME.values() if key.needs in given and is_off(given[key.needs])}
    whole = {key: value for key, value in file.items() if key not in gone} | given
    if "text" in given and LINE.name in file:
        whole[LINE.name] = with_words(file[LINE.name], whole.pop("text"))
    return whole | with_own_keys(file, given)


def _not_taken(name: object, family: Iterable[Option], options_of: Callable[[str], tuple[Option, ...]]) -> set[str]:
    """The family's options that its member of this name does not read; none when there is no such member, which
    `read_spec` will report."""
    if not isinstance(name, str):
        return set()
    try:
        own = {option.name for option in options_of(name.strip())}
    except AskError:
        return set()
    return {option.name for option in family if option.name not in own}
