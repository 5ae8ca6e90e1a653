"""What a batch is of, and what a row asks for in a few digits: by these an interrupted or changed batch goes on."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

import msgspec
from msgspec import Struct

from signgen.batching.layout import SheetHow
from signgen.batching.recipe import Recipe, Task
from signgen.batching.table import Table
from signgen.disk.ours import digest_of_file
from signgen.pipeline import Wanted
from signgen.version import __version__

DIGITS = 32
"""Hexadecimal digits kept of a SHA-256: 128 bits, so that no two rows of any list share them by chance."""


class ReadHeading(Struct, frozen=True, kw_only=True):
    """The list that a batch is of, as its reports show it, and what is alike in all rows, in plain values."""

    list_name: str
    columns: tuple[str, ...]
    encoding: str
    delimiter: str
    alike: Mapping[str, Any]

    def differs_from(self, other: ReadHeading) -> tuple[str, ...]:
        """Words for what is not alike in all rows of both."""
        names = sorted(self.alike.keys() | other.alike.keys())
        return tuple(name for name in names if self.alike.get(name) != other.alike.get(name))


def heading_of(table: Table, recipe: Recipe, sheet: SheetHow | None, wanted: Wanted) -> ReadHeading:
    """The heading of a batch that is about to be made."""
    alike: dict[str, object] = {key: value for key, value in recipe.base.items() if key != "out"}
    alike |= {"copies": recipe.copies, "sheet": repr(sheet) if sheet else "", "files": wanted}
    plain = json.loads(json.dumps(alike, sort_keys=True, default=str))
    return ReadHeading(
        list_name=table.path.name,
        columns=table.columns,
        encoding=table.encoding,
        delimiter=table.delimiter,
        alike=plain,
    )


def heading_from(told: Mapping[str, Any]) -> ReadHeading:
    """Raises: msgspec.ValidationError when it is none."""
    return msgspec.convert(told, ReadHeading)


def digest_of(task: Task, sheet: SheetHow | None, wanted: Wanted = "all") -> str:
    """Everything that decides what a row's sign becomes, but its number and the name of its folder."""
    files = sorted((path, _digest(path, *_state(path))) for path in _files(task.asked))
    told = [__version__, task.asked, repr(sheet), files, "" if sheet else wanted]
    return hashlib.sha256(json.dumps(told, sort_keys=True, default=str).encode()).hexdigest()[:DIGITS]


def _files(asked: Mapping[str, object]) -> Iterator[str]:
    """Files that values name: a shop's, a font's with the number of its face, an outline's behind 'path:'."""
    for key, value in asked.items():
        tables = [table for table in value if isinstance(table, Mapping)] if isinstance(value, list) else []
        for table in tables:
            yield from _files(table)
        if key != "text" and isinstance(value, str):
            file = value.partition("#")[0].removeprefix("path:").strip()
            if file and _state(file) != (0, 0):
                yield file


def _state(path: str) -> tuple[int, int]:
    """When a file was changed, and its size; zeros for what is none."""
    try:
        place = Path(path)
        told = place.stat()
        return (told.st_mtime_ns, told.st_size) if place.is_file() else (0, 0)
    except (OSError, ValueError):
        return 0, 0


@lru_cache(maxsize=256)
def _digest(path: str, changed_ns: int, size: int) -> str:
    return digest_of_file(Path(path).resolve())
