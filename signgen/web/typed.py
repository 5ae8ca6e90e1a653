"""The command line that makes the same sign, to show and to copy."""

from __future__ import annotations

import shlex
from collections.abc import Iterator, Mapping
from typing import Any

from signgen.spec import keys
from signgen.spec.keys.lettering import LINE
from signgen.spec.typed_lines import SETTING


def command_line(asked: Mapping[str, object]) -> str:
    """In the quotes of a POSIX shell. Lines stand last, behind `--` where one of them looks like an option.

    >>> command_line({"text": ["17", "Damson Lane"], "size": "220x120", "sharp-corners": True})
    "signgen make --size 220x120 --sharp-corners 17 'Damson Lane'"
    """
    lines = list(_lines(asked))
    options = [
        word for name, value in asked.items() if name not in ("text", LINE.name) for word in _option(name, value)
    ]
    apart = ["--"] if any(line.startswith("-") for line in lines) else []
    return shlex.join(["signgen", "make", *options, *apart, *lines])


def _option(name: str, value: object) -> list[str]:
    if keys.KEY_BY_NAME[name].kind == "flag":
        return [f"--{name}" if str(value).strip().casefold() in ("true", "yes", "on", "1") else f"--no-{name}"]
    return [f"--{name}", "x".join(map(str, value)) if isinstance(value, list) else str(value)]


def _lines(asked: Mapping[str, Any]) -> Iterator[str]:
    text = asked.get("text", ())
    for line in [text] if isinstance(text, str) else text:
        yield _escaped(str(line))
    for table in asked.get(LINE.name, ()):
        yield _escaped(str(table.get("text", "")))
        yield from (f"+{name}={value}" for name, value in table.items() if name != "text")


def _escaped(line: str) -> str:
    return f"+{line}" if SETTING.fullmatch(line) else line
