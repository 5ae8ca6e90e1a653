"""A material by the word that people use for it, or why it is not cut here."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import close_to, did_you_mean
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
            cause = Message(f"unfit.{reason}")
            raise AskError.at(
                where, Message("material_words.not_cut", said=said, reason=cause), Message("material_words.use_other")
            )  # fmt: skip
    names = [material.name for material in shop.materials]
    known = [*names, *(word for material in shop.materials for word in material.also)]
    what = Message("option.there_no", kind="material", name=said)
    raise AskError.at(where, what, did_you_mean(said, known if close_to(said, known) else names))


@cache
def refused() -> dict[str, list[str]]:
    """Words for what is not cut here, by the reason, whose sentence is `unfit.<reason>`."""
    found = tomllib.loads(files("signgen.shop").joinpath("data", "refused.toml").read_text(encoding="utf-8"))
    return {str(reason): [str(word) for word in words] for reason, words in found.items()}


def _plain(word: str) -> str:
    return " ".join(word.casefold().replace("-", " ").split())
