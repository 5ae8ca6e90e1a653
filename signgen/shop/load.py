"""The shop from its files: what ships with signgen, and a file of the user's own that adds to it or replaces rows.

A user's file holds tables [tool.NAME], [material.NAME] and [machine.NAME], and perhaps [prices] (`prices.py`), laid
out as in `data/*.toml`. Its rows
come before those that ship, and a row of the same name takes the place of the other as a whole. With
`only-these-tools = true` at its top the cutters that ship are left out, so that the planner takes none that is not
at hand.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path
from typing import Protocol, TypeVar

from signgen.errors import AskError, Problem, ShopError
from signgen.messages import Message
from signgen.option import did_you_mean
from signgen.shop.kinds import machine_of, material_of, tool_of
from signgen.shop.rows import ShopRow
from signgen.shop.shop import Shop
from signgen.user_file import MOST_TOML_BYTES, expanded, read_bytes, toml_of

SHIPPED = ("tools.toml", "materials.toml", "machines.toml")
_NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


class _Named(Protocol):
    @property
    def name(self) -> str: ...


N = TypeVar("N", bound=_Named)


def load_shop(user_file: Path | None = None) -> Shop:
    """Cutters, materials and machines; the user's rows first, then those that ship.

    Raises: ShopError with every problem of every file (`where` is the file and the key); AskError when the user's
    file cannot be read.
    """
    problems: list[Problem] = []
    shipped = [tables(files("signgen.shop").joinpath("data", name).read_bytes(), name, problems) for name in SHIPPED]
    own = {} if user_file is None else tables(own_bytes(user_file), user_file.name, problems)
    only_own = own.pop("only-these-tools", False) if own else False
    where = user_file.name if user_file else ""
    if not isinstance(only_own, bool):
        problems.append(Problem(where=f"{where}: only-these-tools", what=Message("shop.neither_true_nor_false")))
    sources = [(where, own), *zip(SHIPPED, shipped, strict=True)]
    for file, table in sources:
        for key in table:
            if key not in ("tool", "material", "machine", "prices"):  # prices are read by whoever asks for them
                remedy = did_you_mean(key, ("tool", "material", "machine", "prices", "only-these-tools"))
                problems.append(
                    Problem(where=f"{file}: {key}", what=Message("shop.there_no_such_table"), remedy=remedy)
                )
    tool_sources = sources[:1] if only_own is True else sources
    tools = _rows(tool_sources, "tool", tool_of, problems)
    materials = _rows(sources, "material", material_of, problems)
    machines = _rows(sources, "machine", machine_of, problems)
    if problems:
        raise ShopError(problems)
    path = None if user_file is None else str(expanded(user_file, "shop").absolute())
    return Shop(tools=tools, materials=materials, machines=machines, user_file=path)


def own_bytes(path: Path) -> bytes:
    """Of a user's shop file. Raises: AskError."""
    return read_bytes(path, "shop", MOST_TOML_BYTES)


def tables(raw: bytes, where: str, problems: list[Problem]) -> dict[str, object]:
    """The tables of a shop file; what is wrong with it as a whole is added to the problems."""
    try:
        return toml_of(raw, where)
    except AskError as error:
        problems += error.problems
        return {}


def _rows(
    sources: list[tuple[str, dict[str, object]]], kind: str, make: Callable[[str, ShopRow], N | None],
    problems: list[Problem],
) -> tuple[N, ...]:  # fmt: skip
    """The good rows of one kind, the first of each name; the problems of the bad ones are added."""
    found: dict[str, N | None] = {}
    for file, tables in sources:
        table = tables.get(kind, {})
        if not isinstance(table, dict):
            problems.append(
                Problem(
                    where=f"{file}: {kind}",
                    what=Message("shop.not_table"),
                    remedy=Message("shop.write_name", kind=kind),
                )
            )
            continue
        for name, raw in table.items():
            where = f"{file}: {kind}.{name}"
            if not isinstance(raw, dict):
                problems.append(
                    Problem(where=where, what=Message("shop.not_table"), remedy=Message("shop.write_name", kind=kind))
                )
            elif not _NAME.fullmatch(name):
                remedy = Message("shop.use_z_0_9_single")
                problems.append(Problem(where=where, what=Message("shop.not_name", name=name), remedy=remedy))
            elif name not in found:
                row = ShopRow(where, raw)
                found[name] = make(name, row)
                problems += row.problems
    return tuple(row for row in found.values() if row is not None)
