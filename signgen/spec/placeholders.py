"""Columns in braces: texts of a sign file that stand for many signs, and what each row of a list puts there.

`{column}` is a row's cell, `{row}` the row's number, `{serial}` counts rows from 1 and `{serial:03}` writes three
digits; `{{` and `}}` stand for braces.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping

from signgen.spec.keys.lettering import LINE

PLACE = re.compile(r"\{\{|\}\}|\{([^{}]*)\}|[{}]")

COUNTED = re.compile(r"\s*(row|serial)\s*(?::\s*(0?[1-9]))?\s*")
"""The row's number or the serial one, and in how many places."""

FIRST_ROW = 2
"""Below the header, as spreadsheets count."""


def column_key(name: str) -> str:
    """What a column's name means: 'Cap Height' and 'cap_height' are 'cap-height'."""
    return "-".join(name.strip().casefold().replace("_", " ").replace("-", " ").split())


def counted(name: str, row: int) -> str:
    """What `{row}` or `{serial:03}` stands for in a row."""
    found = COUNTED.fullmatch(name.casefold())
    assert found is not None  # `_places` has looked at all of them
    number = row if found[1] == "row" else row - FIRST_ROW + 1
    return format(number, found[2] or "")


def filled_of(key: str, value: object, place: Callable[[str], str]) -> object:
    """A value with its placeholders replaced. Cells are never looked through for placeholders again."""

    def fill(text: str) -> str:
        return PLACE.sub(lambda m: place(m[1]) if m[1] else m[0][0], text)

    if key == "text" and isinstance(value, str):
        value = value.splitlines()
    if key == LINE.name and isinstance(value, list) and all(isinstance(table, Mapping) for table in value):
        tables = [{name: fill(v) if isinstance(v, str) else v for name, v in table.items()} for table in value]
        return [table for table in tables if table.get("text") != ""] or ""
    if isinstance(value, list):
        filled = [(each, fill(each) if isinstance(each, str) else each) for each in value]
        return [after for before, after in filled if after == before or str(after).strip()]
    return fill(value) if isinstance(value, str) else value


def texts(value: object) -> Iterator[str]:
    """All texts of a value, be it one, a list of them, or tables that hold some."""
    for each in value if isinstance(value, list | tuple) else [value]:
        if isinstance(each, Mapping):
            yield from texts(list(each.values()))
        elif isinstance(each, str):
            yield each


def has_placeholders(base: Mapping[str, object]) -> bool:
    """Whether a row puts anything into these texts."""
    return any(match[1] for value in base.values() for text in texts(value) for match in PLACE.finditer(text))


def placeholders(base: Mapping[str, object]) -> tuple[str, ...]:
    """The columns that a base's texts want, in their order."""
    found = (match[1] for value in base.values() for text in texts(value) for match in PLACE.finditer(text))
    names = (name.strip() for name in found if name and not COUNTED.fullmatch(name.casefold()))
    return tuple(dict.fromkeys(names))
