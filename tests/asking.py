"""How tests ask for a sign: the house number of the README, with changes."""

from __future__ import annotations

from typing import Any

from signgen.dialects import DIALECTS
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
