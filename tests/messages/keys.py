"""Every message that the source makes, found by reading it: key, names of the values, where."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

SOURCE = Path(__file__).parents[2] / "signgen"
HAND_ON = {"messages/wording.py", "words/words.py"}
"""They hand on keys that stand elsewhere."""


class Made(NamedTuple):
    """`key` is a pattern where it is put together; `values` is None where they are handed on as a mapping. `loose`:
    one of several that the papers choose from, each with its own values."""

    where: str
    key: re.Pattern[str]
    values: frozenset[str] | None
    loose: bool = False


def made_in(source: str, name: str) -> Iterator[Made]:
    """Every `Message(...)` of a module, and every `words(...)`, `words.html(...)` and `words.count(...)` of the papers.
    Only papers may look a key up in a table of their own (`words(key)`); `tests/words` watches them."""
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call) or (how := _called(node.func)) is None:
            continue
        where = f"{name}:{node.lineno}"
        names = [keyword.arg for keyword in node.keywords]
        values = None if None in names else frozenset(filter(None, names))
        if how == "words" and not node.args:  # another thing of that name
            continue
        assert node.args, f"{where}: a message without a key"
        if how == "of":  # a whole group for a script
            yield from (
                Made(where, re.compile(rf"{key.pattern}\..+"), None, True) for key in _keys(node.args[0], where)
            )
            continue
        if how != "Message" and not isinstance(node.args[0], ast.Constant | ast.JoinedStr | ast.IfExp):
            continue
        for key in _keys(node.args[0], where):
            if how == "count":
                key, values = re.compile(rf"{key.pattern}\.(one|many)"), (values or frozenset()) | {"count"}
            yield Made(where, key, values, how != "Message" and ".+" in key.pattern)


def _called(function: ast.expr) -> str | None:
    """'Message', 'words', 'html', 'count' or 'of'."""
    match function:
        case ast.Name(id="Message" | "words" as name):
            return name
        case ast.Attribute(value=ast.Name(id="words"), attr="html" | "count" | "of" as name):
            return name
    return None


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
        if str(path.relative_to(SOURCE)) not in HAND_ON
        for made in made_in(path.read_text(encoding="utf-8"), str(path.relative_to(SOURCE)))
    ]
