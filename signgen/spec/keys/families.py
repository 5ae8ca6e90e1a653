"""Outline and holes: what can be asked for comes from the borders and the hole patterns themselves."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Any

from msgspec.structs import replace

from signgen.borders import BORDERS
from signgen.holes import PATTERNS
from signgen.holes.form import FORM_OPTIONS
from signgen.option import Option


def _merged(families: Iterable[tuple[Option, ...]]) -> tuple[Option, ...]:
    """The options of a whole family, each name once; two members that share a name must share the option."""
    found: dict[str, Option] = {}
    for options in families:
        for option in options:
            if found.setdefault(option.name, option) != option:
                raise ValueError(f"two different options are called {option.name}")
    return tuple(found.values())


def _of_family(options: Iterable[Option], field: str) -> tuple[Option, ...]:
    """The options of an open family, written back by the member that has read them: the spec's border, or its holes."""

    def of_member(name: str) -> Callable[[Any], object]:
        return lambda spec: getattr(spec, field).asked().get(name)

    return tuple(replace(option, write=of_member(option.name)) for option in options)


BORDER_KEYS = _of_family(_merged(border.options for border in BORDERS), "border")
HOLE_KEYS = _of_family(_merged(pattern.options for pattern in PATTERNS), "holes")
FORM_KEYS = _of_family(FORM_OPTIONS, "hole_form")

_BORDER_NAMES = ", ".join(f"{b.name}:{b.argument}" if b.argument else b.name for b in BORDERS)
_HOLE_NAMES = ", ".join(f"{p.name}:{p.argument}" if p.argument else p.name for p in PATTERNS)


SHAPE: tuple[Option, ...] = (
    Option(
        name="border", kind="border", metavar="NAME", group="Shape", help=f"Outline of the sign: {_BORDER_NAMES}.",
        otherwise="rectangle, or rounded when corner-radius is given",
        write=lambda spec: spec.border.asked()["border"],
        words=("shape", "outline", "round", "circle", "oval", "arrow", "shield", "edge shape", "contour", "form",
            "silhouette", "round sign", "heart"), example="oval", often=True,
    ),
    *BORDER_KEYS,
)  # fmt: skip

HOLES: tuple[Option, ...] = (
    Option(
        name="holes", kind="word", metavar="PATTERN", group="Holes", default="none",
        help=f"Where holes go: {_HOLE_NAMES}.",
        write=lambda spec: spec.holes.asked()["holes"],
        words=("drill", "drill holes", "fixing holes", "mounting", "screw holes", "hanging holes",
            "hole pattern", "bolt holes"), example="corners", often=True,
    ),
    *HOLE_KEYS,
    *FORM_KEYS,
)  # fmt: skip
