"""Rows that are asked for by their numbers, as in `19,44-46`."""

from __future__ import annotations

import re

from msgspec import Struct

from signgen.batching.table import MOST_ROWS, Table
from signgen.errors import AskError
from signgen.messages import Message

_PART = re.compile(r"(\d{1,7})(?:\s*-\s*(\d{1,7}))?")


class RowsAsked(Struct, frozen=True, kw_only=True):
    """Rows from the first to the last of each part."""

    parts: tuple[tuple[int, int], ...]

    def __contains__(self, row: int) -> bool:
        return any(first <= row <= last for first, last in self.parts)

    @property
    def name(self) -> str:
        """For a folder: 'rows-19_44-46'."""
        return "rows-" + "_".join(f"{first}" if first == last else f"{first}-{last}" for first, last in self.parts)

    def must_be_in(self, table: Table) -> None:
        """Raises: AskError when the list has no row of one of the parts."""
        left = set(self.parts)
        for record in table.rows():
            left -= {part for part in left if part[0] <= record.row <= part[1]}
            if not left:
                return
        first = min(left)[0]
        raise AskError.at("rows", Message("batch.no_such_row", row=first), Message("batch.how_rows_count"))


def read_rows(text: str | None) -> RowsAsked | None:
    """The rows that a text names, None when there is no text. Raises: AskError.

    >>> asked = read_rows("19, 44-46")
    >>> asked.name, 45 in asked, 47 in asked
    ('rows-19_44-46', True, False)
    """
    if text is None:
        return None
    parts: list[tuple[int, int]] = []
    for part in text.split(","):
        found = _PART.fullmatch(part.strip())
        first, last = (int(found[1]), int(found[2] or found[1])) if found else (0, 0)
        if not 2 <= first <= last <= MOST_ROWS:
            what = Message("batch.no_row_numbers", text=part.strip())
            raise AskError.at("rows", what, Message("batch.write_row_numbers"))
        parts.append((first, last))
    return RowsAsked(parts=tuple(sorted(set(parts))))
