"""Lists in spreadsheet files: Office Open XML (.xlsx) by openpyxl, OpenDocument (.ods) by odfpy, both an extra.

A cell is read as its value, not as it is shown: 7 that is shown as 007 is '7' unless it was typed as text. Formulas
stand for the results that the spreadsheet program saved. Files are ZIP archives of XML, and small ones can unfold to
anything; what they say of their sizes is looked at before anything is unfolded, and cells are counted.
"""

from __future__ import annotations

import datetime
import importlib
import zipfile
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

from signgen.errors import AskError
from signgen.messages import Message, Num

XLSX, ODS = ".xlsx", ".ods"
SUFFIXES = (XLSX, ODS)
_LIBRARIES = {XLSX: "openpyxl", ODS: "odf"}

MOST_UNFOLDED_BYTES = 100_000_000
"""Of all parts together: twice the largest list of text, since cells are wrapped in XML."""
MOST_PARTS = 2_000
MOST_CELLS = 2_000_000
MOST_COLUMNS = 2_000

Row = tuple[str, ...]


def is_workbook(path: Path) -> bool:
    return path.suffix.casefold() in SUFFIXES


def read_workbook(path: Path, worksheet: str | None) -> tuple[Row, ...]:
    """Rows of the first sheet or of the named one, from its first row on, blank cells ''.

    Raises: AskError when the library is missing, the file is broken or too large, or has no such sheet; for a cell
    that holds an error.
    """
    suffix = path.suffix.casefold()
    try:
        library: Any = importlib.import_module(_LIBRARIES[suffix])
    except ImportError:
        raise AskError.at(str(path), Message("workbook.no_library"), Message("workbook.install")) from None
    _must_be_small(path)
    try:
        rows = _xlsx(path, worksheet, library) if suffix == XLSX else _ods(path, worksheet)
        return tuple(_bounded(path, rows))
    except AskError:
        raise
    except Exception as error:  # whatever a broken file makes of the libraries
        what = Message("workbook.broken", path=str(path), why=f"{type(error).__name__}: {error}"[:200])
        raise AskError.at(str(path), what, Message("workbook.save_again")) from None


def _must_be_small(path: Path) -> None:
    """Raises: AskError for what is no archive or unfolds to more than a list holds."""
    try:
        with zipfile.ZipFile(path) as archive:
            parts = archive.infolist()
    except (OSError, zipfile.BadZipFile, ValueError, NotImplementedError) as error:
        what = Message("workbook.broken", path=str(path), why=str(error)[:200])
        raise AskError.at(str(path), what, Message("workbook.save_again")) from None
    if len(parts) > MOST_PARTS or sum(part.file_size for part in parts) > MOST_UNFOLDED_BYTES:
        _too_large(path)


def _too_large(path: Path) -> None:
    what = Message("workbook.too_large", path=str(path), most=Num(MOST_UNFOLDED_BYTES / 1e6))
    raise AskError.at(str(path), what, Message("workbook.save_as_text"))


def _bounded(path: Path, rows: Iterable[Row]) -> Iterator[Row]:
    """The rows without blank cells at their ends. Raises: AskError when there are too many cells."""
    count = 0
    for row in rows:
        end = len(row)
        while end and not row[end - 1]:
            end -= 1
        count += 1 + end
        if count > MOST_CELLS:
            _too_large(path)
        yield row[:end]


def _named(path: Path, worksheet: str | None, names: list[str]) -> int:
    """The number of the sheet that is asked for. Raises: AskError when there is none."""
    if worksheet is None and names:
        return 0
    if worksheet in names:
        return names.index(worksheet)
    what = Message("workbook.no_sheet", path=str(path), name=worksheet or "")
    raise AskError.at("worksheet", what, Message("workbook.name_one", names=tuple(names[:20])))


def _xlsx(path: Path, worksheet: str | None, library: Any) -> Iterator[Row]:
    book = library.load_workbook(path, read_only=True, data_only=True, keep_links=False)
    try:
        sheet = book.worksheets[_named(path, worksheet, [each.title for each in book.worksheets])]
        for row in sheet.iter_rows(max_col=MOST_COLUMNS):
            yield tuple(_text(path, cell.value, cell.data_type, getattr(cell, "coordinate", "")) for cell in row)
    finally:
        book.close()


def _text(path: Path, value: object, kind: str, place: str) -> str:
    """A cell's value as a list of text would have it. Raises: AskError for an error."""
    if kind == "e":
        what = Message("workbook.cell_error", place=place, text=str(value))
        raise AskError.at(f"{path}:{place}", what, Message("workbook.mend_cell"))
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return str(int(value)) if value.is_integer() else repr(value)
    if isinstance(value, datetime.datetime) and value.time() == datetime.time():
        return value.date().isoformat()
    return value.isoformat() if isinstance(value, datetime.date | datetime.time) else str(value)


def _ods(path: Path, worksheet: str | None) -> Iterator[Row]:
    from odf.opendocument import load
    from odf.table import CoveredTableCell, Table, TableCell, TableRow

    tables = load(str(path)).spreadsheet.getElementsByType(Table)
    table = tables[_named(path, worksheet, [str(each.getAttribute("name")) for each in tables])]
    cell_kinds = {TableCell(check_grammar=False).qname, CoveredTableCell(check_grammar=False).qname}
    blank = 0  # rows that hold nothing count only when one comes behind them
    for row in table.getElementsByType(TableRow):
        times = int(row.getAttribute("numberrowsrepeated") or 1)
        cells: list[str] = []
        for cell in row.childNodes:
            if cell.qname in cell_kinds:
                said = _ods_text(path, cell)
                repeated = int(cell.getAttribute("numbercolumnsrepeated") or 1)
                cells += [said] * min(repeated, max(0, MOST_COLUMNS - len(cells)))
        if not any(cells):
            blank += times
            continue
        if blank + times > MOST_CELLS:
            _too_large(path)
        yield from [()] * blank
        yield from [tuple(cells)] * times
        blank = 0


def _ods_text(path: Path, cell: Any) -> str:
    """What a cell holds. Raises: AskError for an error."""
    from odf import teletype
    from odf.text import P

    kind, value = cell.getAttribute("valuetype"), cell.getAttribute("value")
    shown = "\n".join(teletype.extractText(each) for each in cell.getElementsByType(P))
    if kind in ("float", "currency", "percentage") and value is not None:
        return _text(path, float(value), "n", "")
    if kind == "date":
        return str(cell.getAttribute("datevalue"))
    if kind == "boolean":
        return str(cell.getAttribute("booleanvalue"))
    if shown.startswith(("#N/A", "#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "Err:")) and cell.getAttribute("formula"):
        return _text(path, shown, "e", "")
    return shown
