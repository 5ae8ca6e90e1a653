"""A material by the word that people use for it, or why it is not cut here."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import did_you_mean
from signgen.shop.materials import Material
from signgen.shop.shop import Shop


def material_named(shop: Shop, said: str, where: str = "material") -> Material:
    """The material of a name, or of another word for it ('oak', 'Eiche'), whatever its case.

    Raises: AskError with the reason for stuff that is known and not cut here, else one that offers close words.
    """
    word = _plain(said)
    for material in shop.materials:
        if word == _plain(material.name):
            return material
    for material in shop.materials:
        if word in map(_plain, material.also):
            return material
    for reason, words in refused().items():
        if word in map(_plain, words):
            cause = Message(f"material.refused.{reason}")
            raise AskError.at(
                where, Message("material.refused", said=said, reason=cause), Message("material.use_other")
            )  # fmt: skip
    names = [name for material in shop.materials for name in (material.name, *material.also)]
    close = did_you_mean(said, names)
    if not close.startswith("Did"):
        close = did_you_mean(said, [material.name for material in shop.materials])
    raise AskError.at(where, f"There is no material '{said}'.", close)


@cache
def refused() -> dict[str, list[str]]:
    """Words for what is not cut here, by the reason, whose sentence is `material.refused.<reason>`."""
    found = tomllib.loads(files("signgen.shop").joinpath("data", "refused.toml").read_text(encoding="utf-8"))
    return {str(reason): [str(word) for word in words] for reason, words in found.items()}


def _plain(word: str) -> str:
    return " ".join(word.casefold().replace("-", " ").split())
