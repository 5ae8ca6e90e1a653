"""Every message that the source makes, found by reading it: key, names of the values, where."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

SOURCE = Path(__file__).parents[2] / "signgen"


class Made(NamedTuple):
    """`key` is a pattern where it is put together; `values` is None where they are handed on as a mapping."""

    where: str
    key: re.Pattern[str]
    values: frozenset[str] | None


def made_in(source: str, name: str) -> Iterator[Made]:
    """Every `Message(...)` of a module."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "Message":
            where = f"{name}:{node.lineno}"
            names = [keyword.arg for keyword in node.keywords]
            values = None if None in names else frozenset(filter(None, names))
            assert node.args, f"{where}: a message without a key"
            for key in _keys(node.args[0], where):
                yield Made(where, key, values)


def _keys(node: ast.expr, where: str) -> Iterator[re.Pattern[str]]:
    match node:
        case ast.Constant(value=str(text)):
            yield re.compile(re.escape(text))
        case ast.IfExp():
            yield from _keys(node.body, where)
            yield from _keys(node.orelse, where)
        case ast.JoinedStr():
            parts = (re.escape(str(part.value)) if isinstance(part, ast.Constant) else ".+" for part in node.values)
            yield re.compile("".join(parts))
        case _:
            raise AssertionError(f"{where}: the key of a message must be written out, or an f-string")


def all_made() -> list[Made]:
    return [
        made
        for path in sorted(SOURCE.rglob("*.py"))
        if path.name != "message.py"
        for made in made_in(path.read_text(encoding="utf-8"), str(path.relative_to(SOURCE)))
    ]
