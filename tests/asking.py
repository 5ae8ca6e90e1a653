"""How tests ask for a sign: the house number of the README, with changes."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from signgen.borders import Border, border_named
from signgen.dialects import DIALECTS
from signgen.holes import HolePattern, pattern_named
from signgen.messages import Message
from signgen.shop.load import load_shop
from signgen.spec.read import read_spec
from signgen.spec.sign_spec import SignSpec

HOUSE_NUMBER: dict[str, Any] = {
    "text": ["17", "Larkspur Lane"],
    "size": "220x140",
    "thickness": "12",
    "material": "birch-plywood",
    "holes": "corners",
    "hole-diameter": "7",
    "inset": "14",
    "layout": "filled",
}


def spec_of(**changes: Any) -> SignSpec:
    """The house number with changes; underscores stand for hyphens, None takes a key away."""
    asked = {**HOUSE_NUMBER, **{name.replace("_", "-"): value for name, value in changes.items()}}
    asked = {name: value for name, value in asked.items() if value is not None}
    return read_spec(asked, load_shop(None), dialects=tuple(dialect.name for dialect in DIALECTS))


def english(said: Any) -> Any:
    """A sentence, or each of several, as English text."""
    return said if said is None else str(said) if isinstance(said, Message | str) else tuple(map(str, said))


def read_border(asked: str, options: Mapping[str, object], width_mm: float, height_mm: float) -> Border:
    """The border of a name with those of its options that were asked for (values of `read_option` by option name)."""
    border, argument = border_named(asked)
    return border.from_options(argument, options, width_mm, height_mm)


def read_holes(asked: str, options: Mapping[str, object], width_mm: float, height_mm: float) -> HolePattern:
    """The same for a hole pattern."""
    pattern, argument = pattern_named(asked)
    return pattern.from_options(argument, options, width_mm, height_mm)
