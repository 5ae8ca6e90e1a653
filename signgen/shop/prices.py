"""What boards, the machine's time and the cutters' wear cost: from the [prices] of the shop's files.

The figures that ship are invented, so that a quote can be shown; `Price.invented` says which those are.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib.resources import files
from pathlib import Path

from msgspec import Struct

from signgen.errors import Problem, ShopError
from signgen.messages import Message
from signgen.option import did_you_mean, word
from signgen.shop.load import own_bytes, tables
from signgen.shop.rows import ShopRow
from signgen.units import POSITIVE, Limits, size_mm

SHIPPED = "prices.toml"
_PRICE = Limits(least=0, greatest=1_000_000)
_LIFE_M = Limits(least=0, greatest=1_000_000, open_below=True)
_KINDS = ("material", "machine", "tool")


class Price(Struct, frozen=True, kw_only=True):
    """What a unit costs: a cubic millimetre of board, a minute of a machine, a millimetre of a cutter's way."""

    each: float
    invented: bool


class Prices(Struct, frozen=True, kw_only=True):
    """By the names of materials, machines and tools; a name that is not there has no price."""

    currency: str
    board_mm3: Mapping[str, Price]
    machine_min: Mapping[str, Price]
    tool_mm: Mapping[str, Price]


def load_prices(user_file: Path | None = None) -> Prices:
    """The prices; the user's rows go before those that ship. Raises: ShopError with every problem; AskError when the
    user's file cannot be read."""
    problems: list[Problem] = []
    shipped = tables(files("signgen.shop").joinpath("data", SHIPPED).read_bytes(), SHIPPED, problems).get("prices", {})
    name = user_file.name if user_file else ""
    own = tables(own_bytes(user_file), name, problems).get("prices", {}) if user_file else {}
    currency = ""
    found: dict[str, dict[str, Price]] = {kind: {} for kind in _KINDS}
    for file, raw, invented in ((name, own, False), (SHIPPED, shipped, True)):
        where = f"{file}: prices"
        if not isinstance(raw, dict):
            problems.append(Problem(where=where, what=Message("shop.not_table"), remedy=Message("shop.write_prices")))
            continue
        for key in raw:
            if key not in (*_KINDS, "currency"):
                remedy = did_you_mean(key, (*_KINDS, "currency"))
                problems.append(Problem(where=f"{where}.{key}", what=Message("shop.there_no_such_key"), remedy=remedy))
        row = ShopRow(where, raw)
        currency = currency or row.read("currency", word, "") or ""
        problems += row.problems
        for kind, make in _MAKERS.items():
            rows = raw.get(kind, {})
            if not isinstance(rows, dict) or not all(isinstance(each, dict) for each in rows.values()):
                remedy = Message("shop.write_prices_name", kind=kind)
                problems.append(Problem(where=f"{where}.{kind}", what=Message("shop.not_table_tables"), remedy=remedy))
                continue
            for each, table in rows.items():
                row = ShopRow(f"{where}.{kind}.{each}", table)
                cost = make(row)
                problems += row.problems
                if cost is not None:
                    found[kind].setdefault(each, Price(each=cost, invented=invented))
    if problems:
        raise ShopError(problems)
    return Prices(currency=currency, board_mm3=found["material"], machine_min=found["machine"], tool_mm=found["tool"])


def _board(row: ShopRow) -> float | None:
    size = row.read("sheet", lambda raw, where: size_mm(raw, where, POSITIVE))
    thickness, price = row.length("thickness", POSITIVE), row.number("price", _PRICE)
    if not row.finish() or size is None or thickness is None or price is None:
        return None
    return price / (size[0] * size[1] * thickness)


def _machine(row: ShopRow) -> float | None:
    hour = row.number("hour", _PRICE)
    return hour / 60 if row.finish() and hour is not None else None


def _tool(row: ShopRow) -> float | None:
    price, life = row.number("price", _PRICE), row.number("life", _LIFE_M)
    return price / (life * 1000) if row.finish() and price is not None and life is not None else None


_MAKERS: dict[str, Callable[[ShopRow], float | None]] = {"material": _board, "machine": _machine, "tool": _tool}
