"""A file of rows: how it is written, what its columns are called, and its records.

Comma, semicolon or tab is told from the header: the one that makes columns. UTF-8 with or without a byte order mark and
UTF-16 with one are read; any other encoding has to be named, for a guess would engrave wrong letters in silence.
"""

from __future__ import annotations

import codecs
import hashlib
import io
import stat
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from signgen.batching.guard import unguarded
from signgen.batching.records import LONGEST_RECORD, Record, records
from signgen.batching.workbook import is_workbook, read_workbook
from signgen.errors import AskError, Problem
from signgen.messages import Message, Num
from signgen.spec.placeholders import column_key
from signgen.user_file import LOOK, expanded, shown, why

DELIMITERS = (",", ";", "\t")

ERROR_COLUMNS = ("row", "field", "message")
"""What the file of failed rows has before the columns of the list; a list that begins like that is such a file."""

_MARKS = ((codecs.BOM_UTF8, "utf-8-sig"), (codecs.BOM_UTF16_LE, "utf-16"), (codecs.BOM_UTF16_BE, "utf-16"))
_WORKBOOKS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1")
"""How workbooks begin that were never saved as text: a ZIP archive, an OLE compound file."""
_HEAD = 64
"""Bytes in which every second one is zero when the text is UTF-16 without its mark."""
_BLOCK = 1 << 20
MOST_NUMBER_PROBLEMS = 12
MOST_ROWS = 1_048_576
"""As many as a sheet of the common spreadsheet programs has (from memory)."""
MOST_BYTES = 50_000_000
"""A hundred thousand rows of long texts; a list is read row by row, whatever its length."""


class Table(Struct, frozen=True, kw_only=True):
    """A list that can be read from its first character to its last.

    `columns` are the names as they stand in the header, trimmed; `count` the rows that hold something; `digest` the
    SHA-256 of the file. `is_errors`: the file was written by an earlier batch for the rows that failed; its first
    three columns are left out everywhere, and its rows keep the numbers that they had there. `book`: the rows of a
    spreadsheet's file, which is read at once.
    """

    path: Path
    encoding: str
    delimiter: str
    columns: tuple[str, ...]
    is_errors: bool
    count: int
    digest: str
    book: tuple[tuple[str, ...], ...] | None = None

    def rows(self) -> Iterator[Record]:
        """The records after the header that hold something, cells in the order of `columns`, none missing.

        Cells beyond the last column are a problem of their row unless they are blank.
        """
        for record in _records(self.path, self.encoding, self.delimiter, self.book):
            if record.row > 1 and not record.empty:
                yield self._fitted(record)

    def _fitted(self, record: Record) -> Record:
        cells, problem, row = record.cells, record.problem, record.row
        if self.is_errors:
            row = _old_number(cells)
            cells = tuple(unguarded(cell) for cell in cells[len(ERROR_COLUMNS) :])
        extra = [cell for cell in cells[len(self.columns) :] if cell.strip()]
        if extra and problem is None:
            problem = Problem(
                where="row",
                what=f"It has {len(cells)} cells, and the list has {len(self.columns)} columns.",
                remedy="Put quotes round a text that holds a comma, semicolon or tab.",
            )
        missing = len(self.columns) - len(cells)
        cells = (*cells[: len(self.columns)], *[""] * missing) if problem is None else (*cells, *[""] * missing)
        return Record(row=row, line=record.line, cells=cells, problem=problem)


def open_table(path: Path, encoding: str | None = None, worksheet: str | None = None) -> Table:
    """The list in a file, looked through once; of a spreadsheet's file the first sheet, or the one named.

    Raises: AskError when it cannot be read, has no header or no rows, or columns without a name or of the same name.
    """
    path = expanded(path, shown(path))
    _must_be_a_list(path)
    try:
        digest, start = _digest(path)
    except OSError as error:
        raise AskError.at(str(path), f"The list cannot be read: {error.strerror}.", "Look at the path.") from None
    book = None
    if is_workbook(path):
        book, encoding, delimiter = read_workbook(path, worksheet), "utf-8-sig", DELIMITERS[0]
    elif worksheet is not None:
        raise AskError.at("worksheet", Message("workbook.is_text", path=str(path)), Message("workbook.leave_it_out"))
    else:
        encoding = _encoding(path, start, encoding)
        delimiter = _delimiter(_header(path, encoding))
    first = next(_records(path, encoding, delimiter, book), None)
    if first is None:
        raise AskError.at(str(path), "The list is empty.", "Write a header and a row below it for each sign.")
    if first.problem:
        raise AskError.at(f"{path}:1", f"The header cannot be read. {first.problem.what}", first.problem.remedy)
    names = [name.strip() for name in first.cells]
    while names and not names[-1]:  # a spreadsheet leaves delimiters behind
        names.pop()
    is_errors = tuple(name.casefold() for name in names[: len(ERROR_COLUMNS)]) == ERROR_COLUMNS
    columns = tuple(names[len(ERROR_COLUMNS) :] if is_errors else names)
    _columns_make_sense(path, columns)
    count = sum(1 for record in _records(path, encoding, delimiter, book) if record.row > 1 and not record.empty)
    if not count:
        raise AskError.at(str(path), "The list has no rows.", "Write a row below the header for each sign.")
    if is_errors:
        _old_numbers_make_sense(path, _records(path, encoding, delimiter, book))
    return Table(
        path=path, encoding=encoding, delimiter=delimiter, columns=columns, is_errors=is_errors, count=count,
        digest=digest, book=book,
    )  # fmt: skip


def _must_be_a_list(path: Path) -> None:
    """Raises: AskError for what is no regular file, or is too large for a list: each sign has some hundred bytes."""
    try:
        told = path.stat()
    except (OSError, ValueError) as error:
        raise AskError.at(shown(path), Message("files.unread", path=shown(path), why=why(error)), LOOK) from None
    if stat.S_ISDIR(told.st_mode):
        raise AskError.at(shown(path), Message("files.folder", path=shown(path)), LOOK)
    if not stat.S_ISREG(told.st_mode):
        raise AskError.at(shown(path), Message("files.no_file", path=shown(path)), Message("files.save_it_first"))
    if told.st_size > MOST_BYTES:
        what = Message("files.too_large", path=shown(path), most=Num(MOST_BYTES / 1e6))
        raise AskError.at(shown(path), what, Message("files.is_it_the_right_one"))


def _columns_make_sense(path: Path, columns: tuple[str, ...]) -> None:
    problems = []
    if not columns:
        advice = "The first row names the columns: keys of the sign file, or names of your own."
        problems.append(Problem(where=f"{path}:1", what="The list has no header.", remedy=advice))
    for number, name in enumerate(columns, 1):
        if not name:
            remedy = "Name it in the first row, or delete it."
            problems.append(Problem(where=f"{path}:1", what=f"Column {number} has no name.", remedy=remedy))
    for name, times in Counter(column_key(name) for name in columns if name).items():
        if times > 1:
            what = f"{times} columns are called '{name}'."
            problems.append(Problem(where=f"{path}:1", what=what, remedy="Give each its own name."))
    if problems:
        raise AskError(problems)


def _old_number(cells: tuple[str, ...]) -> int:
    """The row's number in the list that it failed in, 0 when that is none."""
    text = cells[0].strip() if cells else ""
    return int(text) if text.isascii() and text.isdecimal() and 2 <= int(text[:9]) <= MOST_ROWS else 0


def _old_numbers_make_sense(path: Path, found: Iterator[Record]) -> None:
    """Raises: AskError when rows that failed have no number or the same one."""
    lines: dict[int, int] = {}
    problems: list[Problem] = []
    for record in found:
        if record.row == 1 or record.empty:
            continue
        number, where = _old_number(record.cells), f"{path}:{record.line}"
        if not number:
            what = Message("batch.no_old_number", text=(record.cells[:1] or ("",))[0].strip()[:40])
            problems.append(Problem(where=where, what=what, remedy=Message("batch.leave_the_numbers")))
        elif number in lines:
            what = Message("batch.old_number_twice", row=number, line=lines[number])
            problems.append(Problem(where=where, what=what, remedy=Message("batch.leave_the_numbers")))
        lines.setdefault(number, record.line)
    if problems:
        raise AskError(problems[:MOST_NUMBER_PROBLEMS])


def _records(path: Path, encoding: str, delimiter: str, book: tuple[tuple[str, ...], ...] | None) -> Iterator[Record]:
    if book is not None:
        yield from (Record(row=row, line=row, cells=cells) for row, cells in enumerate(book, 1))
        return
    with path.open(encoding=encoding, newline="") as stream:
        yield from records(stream, delimiter)


def _digest(path: Path) -> tuple[str, bytes]:
    """SHA-256 of the file, and its first block."""
    digest, start = hashlib.sha256(), b""
    with path.open("rb") as stream:
        while block := stream.read(_BLOCK):
            start = start or block
            digest.update(block)
    return digest.hexdigest(), start


def _encoding(path: Path, start: bytes, asked: str | None) -> str:
    """The encoding that was asked for or that a mark names, else UTF-8; the whole file is decoded to be sure."""
    if asked:
        try:
            io.TextIOWrapper(io.BytesIO(), encoding=asked)  # says whether it is one of text
            encoding = codecs.lookup(asked).name
        except (LookupError, ValueError):
            advice = "Use a name such as utf-8, windows-1252 or iso-8859-2."
            raise AskError.at("encoding", f"There is no encoding '{asked}' of text.", advice) from None
    else:
        encoding = next((name for mark, name in _MARKS if start.startswith(mark)), "utf-8")
        head = start[:_HEAD] if encoding == "utf-8" else b""
        if head.startswith(_WORKBOOKS) or head.count(0) * 4 > len(head):
            what = "The list is not UTF-8 text: it is a spreadsheet's own file, or UTF-16 without its mark."
            raise AskError.at(str(path), what, "Save it as CSV (UTF-8).")
    encoding = "utf-8-sig" if encoding == "utf-8" else encoding
    decoder = codecs.getincrementaldecoder(encoding)()
    line = 1
    try:
        with path.open("rb") as stream:
            while block := stream.read(_BLOCK):
                line += decoder.decode(block).count("\n")
        decoder.decode(b"", final=True)
    except UnicodeError as error:
        what = f"This is not {encoding.removesuffix('-sig')} text."
        if isinstance(error, UnicodeDecodeError):
            line += error.object[: error.start].count(b"\n")
            what = f"Byte 0x{error.object[error.start]:02X} is not {encoding.removesuffix('-sig')} text."
        remedy = "Save the list as CSV (UTF-8), or name its encoding, as in --encoding windows-1252."
        raise AskError.at(f"{path}:{line}", what, remedy) from None
    return encoding


def _header(path: Path, encoding: str) -> str:
    with path.open(encoding=encoding, newline="") as stream:
        return stream.readline(LONGEST_RECORD)


def _delimiter(header: str) -> str:
    """The delimiter that parts the header, outside quotes, into the most columns; a comma when none does."""
    outside = "".join(part for i, part in enumerate(header.split('"')) if i % 2 == 0)
    return max(DELIMITERS, key=outside.count)
