"""Names in a batch's sign file that mean nothing, found before any row is made: every row would fail for them alike."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

from msgspec.structs import replace

from signgen.borders import border_named
from signgen.dialects import DIALECTS
from signgen.errors import AskError, Problem
from signgen.holes import pattern_named
from signgen.lettering.faces import open_face
from signgen.option import pick
from signgen.shop.load import load_shop
from signgen.shop.named import material_named
from signgen.spec.read import one_of

_Reader = Callable[[str], object]


def wrong_names(fixed: Mapping[str, object]) -> Iterator[Problem]:
    """What is wrong with names among `fixed`, the keys that are the same for every row.

    Names of a shop are looked for only when the shop is known: `shop` None says that it is not the same for every row.
    Raises: ShopError when the shop's data is wrong.
    """
    readers: dict[str, _Reader] = {
        "border": border_named,
        "holes": pattern_named,
        "dialect": lambda name: pick(name, (dialect.name for dialect in DIALECTS), "dialect"),
        "font": open_face,
        "ornament-font": open_face,
    }
    for key, read in readers.items():
        yield from _tried(key, fixed.get(key), read)
    yield from _of_shop(fixed)


def _of_shop(fixed: Mapping[str, object]) -> Iterator[Problem]:
    if "shop" in fixed and fixed["shop"] is None:
        return
    file = fixed.get("shop")
    try:
        shop = load_shop(Path(str(file)) if file else None)
    except AskError as error:
        yield from (replace(problem, where="shop") for problem in error.problems)
        return
    mills = [tool for tool in shop.tools if tool.kind == "end-mill"]
    yield from _tried("material", fixed.get("material"), lambda name: material_named(shop, name))
    yield from _tried("machine", fixed.get("machine"), lambda name: one_of(shop.machines, name, "machine"))
    yield from _tried("end-mill-name", fixed.get("end-mill-name"), lambda name: one_of(mills, name, "end-mill-name"))


def _tried(key: str, value: object, read: _Reader) -> Iterator[Problem]:
    if not isinstance(value, str) or not value.strip():
        return
    try:
        read(value.strip())
    except AskError as error:
        yield from (replace(problem, where=key) for problem in error.problems)
