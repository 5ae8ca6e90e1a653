"""Records of a table of text, one at a time, in bounded memory whatever the file holds.

A record that is broken (a quote that is never closed, a line of megabytes) comes out as a Record with a problem, and
reading goes on with the line after the one on which it began.
"""

from __future__ import annotations

import csv
from collections import deque
from collections.abc import Iterator
from typing import TextIO

from msgspec import Struct

from signgen.errors import Problem
from signgen.messages import Message

LONGEST_RECORD = 1_000_000
"""Characters of one record, all its lines and columns together: a thousand columns of a thousand characters."""

MOST_LINES = 1000
"""Lines of one record; a quote that nobody closed would swallow more."""

QUOTE_ADVICE = Message("batching.close_text_with_quote_write")


class Record(Struct, frozen=True, kw_only=True):
    """`row` counts records as a spreadsheet does: the first is 1, empty ones count. `line`: of the file, from 1.
    `problem`: what keeps the record from being read; `cells` then has what could be made out of its first line."""

    row: int
    line: int
    cells: tuple[str, ...]
    problem: Problem | None = None

    @property
    def empty(self) -> bool:
        """Nothing but blanks."""
        return self.problem is None and not any(cell.strip() for cell in self.cells)


def records(stream: TextIO, delimiter: str) -> Iterator[Record]:
    """Every record of a stream that was opened with newline=''."""
    csv.field_size_limit(LONGEST_RECORD)  # of the process; the longest record is the limit that acts
    lines = _Lines(stream)
    reader = csv.reader(lines, delimiter=delimiter, strict=True, skipinitialspace=True)
    row = 0
    while True:
        row += 1
        line = lines.begin()
        try:
            yield Record(row=row, line=line, cells=tuple(next(reader)))
        except StopIteration:
            return
        except (csv.Error, _SwollenError) as error:
            yield Record(row=row, line=line, cells=lines.give_back(delimiter), problem=_problem(error))
            reader = csv.reader(lines, delimiter=delimiter, strict=True, skipinitialspace=True)


def _problem(error: Exception) -> Problem:
    if isinstance(error, _SwollenError):
        return Problem(where="row", what=error.what, remedy=QUOTE_ADVICE)
    text = str(error)
    if "end of data" in text:
        return Problem(where="row", what=Message("batching.quote_that_opens_text_never"), remedy=QUOTE_ADVICE)
    if "expected after" in text:
        what = Message("batching.something_follows_quote_that_closes")
        return Problem(where="row", what=what, remedy=QUOTE_ADVICE)
    return Problem(where="row", what=Message("batching.row_cannot_read", text=text), remedy=QUOTE_ADVICE)


class _SwollenError(Exception):
    """A record has more lines or characters than any row of signs."""

    def __init__(self, what: Message) -> None:
        super().__init__(what)
        self.what = what


class _Lines:
    """Lines of a stream, those of the record that is being read kept, so that they can be given back."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream
        self._back: deque[str] = deque()
        self._taken: list[str] = []
        self._size = 0
        self._line = 1

    def __iter__(self) -> Iterator[str]:
        return self

    def __next__(self) -> str:
        fresh = not self._back
        line = self._stream.readline(LONGEST_RECORD) if fresh else self._back.popleft()
        if not line:
            raise StopIteration
        self._taken.append(line)
        self._size += len(line)
        if len(line) >= LONGEST_RECORD and line[-1] not in "\r\n":
            if fresh:
                self._skip_line()
            raise _SwollenError(Message("batching.line_has_more_than_characters", longest_record=LONGEST_RECORD))
        if self._size > LONGEST_RECORD or len(self._taken) > MOST_LINES:
            raise _SwollenError(Message("batching.quoted_text_goes_on_more", count=len(self._taken) - 1))
        return line

    def begin(self) -> int:
        """A new record starts: the number of its first line."""
        self._line += len(self._taken)
        self._taken, self._size = [], 0
        return self._line

    def give_back(self, delimiter: str) -> tuple[str, ...]:
        """All lines of this record but the first are read again; the cells of the first, as well as can be told."""
        first, *rest = self._taken
        self._back.extendleft(reversed(rest))
        self._taken = [first]
        return tuple(first[: LONGEST_RECORD // 100].rstrip("\r\n").split(delimiter))

    def _skip_line(self) -> None:
        while True:
            part = self._stream.readline(LONGEST_RECORD)
            if not part or part[-1] in "\r\n":
                return
