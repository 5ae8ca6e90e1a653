"""Lists in spreadsheets' own files are read like the same list as text, and bounded whatever they unfold to."""

from __future__ import annotations

import datetime
import zipfile
from pathlib import Path
from typing import Any

import openpyxl
import pytest
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import Table, TableCell, TableRow
from odf.text import P

from signgen.batching.table import open_table
from signgen.batching.workbook import MOST_UNFOLDED_BYTES
from signgen.errors import AskError

ROWS: list[list[Any]] = [
    ["name", "thickness", "copies", "note"],
    ["Łódź <Mill>", 6.5, 2, None],
    [],
    ["Anna", 6.0, None, "late"],
    ["007", None, True, datetime.date(2026, 12, 1)],
]
READ = {2: ("Łódź <Mill>", "6.5", "2", ""), 4: ("Anna", "6", "", "late"), 5: ("007", "", "true", "2026-12-01")}


def xlsx(path: Path, rows: list[list[Any]], before: bool = False) -> Path:
    book = openpyxl.Workbook()
    if before:
        book.active.append(["nothing"])
        sheet = book.create_sheet("Signs")
    else:
        sheet = book.active
    for number, row in enumerate(rows, 1):
        for column, value in enumerate(row, 1):
            sheet.cell(number, column, value)
    book.save(path)
    return path


def ods(path: Path, rows: list[list[Any]], name: str = "Signs") -> Path:
    book = OpenDocumentSpreadsheet()
    for title, content in (("Notes", [["x"]]), (name, rows)) if name != "Signs" else ((name, rows),):
        table = Table(name=title)
        for row in content:
            line = TableRow() if row else TableRow(numberrowsrepeated=1)
            for value in row:
                line.addElement(_cell(value))
            if not row:
                line.addElement(TableCell(numbercolumnsrepeated=1000))
            table.addElement(line)
        table.addElement(TableRow(numberrowsrepeated=1_000_000))  # as the programs leave it
        book.spreadsheet.addElement(table)
    book.save(str(path))
    return path


def _cell(value: Any) -> TableCell:
    if isinstance(value, bool):
        return TableCell(valuetype="boolean", booleanvalue=str(value).lower())
    if isinstance(value, int | float):
        return TableCell(valuetype="float", value=value)
    if isinstance(value, datetime.date):
        return TableCell(valuetype="date", datevalue=value.isoformat())
    cell = TableCell(valuetype="string") if value is not None else TableCell()
    if value is not None:
        cell.addElement(P(text=value))
    return cell


def read(path: Path, worksheet: str | None = None) -> dict[int, tuple[str, ...]]:
    return {record.row: record.cells for record in open_table(path, None, worksheet).rows()}


@pytest.mark.parametrize(("name", "write"), [("list.xlsx", xlsx), ("LIST.ODS", ods)])
def test_a_spreadsheet_is_read_as_its_values(tmp_path: Path, name: str, write: Any) -> None:
    path = write(tmp_path / name, ROWS)
    assert read(path) == READ
    assert open_table(path).columns == ("name", "thickness", "copies", "note")


def test_a_sheet_can_be_named(tmp_path: Path) -> None:
    path = xlsx(tmp_path / "list.xlsx", ROWS, before=True)
    assert read(path, "Signs") == READ
    with pytest.raises(AskError, match="no sheet 'Sings'"):
        open_table(path, None, "Sings")
    assert read(ods(tmp_path / "list.ods", ROWS, "Other"), "Other") == READ
    text = tmp_path / "list.csv"
    text.write_text("name\nA\n")
    with pytest.raises(AskError, match="no spreadsheet's own file"):
        open_table(text, None, "Signs")


def test_a_cell_with_an_error_is_refused_by_its_place(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.append(["name"])
    book.active["A2"] = "#N/A"
    assert book.active["A2"].data_type == "e"
    book.save(tmp_path / "list.xlsx")
    with pytest.raises(AskError, match="Cell A2 holds an error"):
        open_table(tmp_path / "list.xlsx")


@pytest.mark.parametrize("name", ["list.xlsx", "list.ods"])
def test_what_unfolds_to_too_much_is_refused_before_it_is_unfolded(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive, archive.open("content.xml", "w") as part:
        for _ in range(MOST_UNFOLDED_BYTES // 1_000_000 + 1):
            part.write(b" " * 1_000_000)
    assert path.stat().st_size < 1_000_000
    with pytest.raises(AskError, match="unfolds to more"):
        open_table(path)


def test_rows_and_cells_that_are_said_to_repeat_are_bounded(tmp_path: Path) -> None:
    book = OpenDocumentSpreadsheet()
    table = Table(name="Signs")
    line = TableRow(numberrowsrepeated=10**9)
    line.addElement(_cell("name"))
    table.addElement(line)
    book.spreadsheet.addElement(table)
    book.save(str(tmp_path / "list.ods"))
    with pytest.raises(AskError, match="more cells than"):
        open_table(tmp_path / "list.ods")


@pytest.mark.parametrize("name", ["list.xlsx", "list.ods"])
def test_a_broken_file_is_refused_in_a_sentence(tmp_path: Path, name: str) -> None:
    whole = (xlsx if name == "list.xlsx" else ods)(tmp_path / name, ROWS).read_bytes()
    for broken in (b"", b"name\nA\n", whole[: len(whole) // 2], whole.replace(b"PK\x01\x02", b"PK\x01\x03")):
        (tmp_path / name).write_bytes(broken)
        with pytest.raises(AskError):
            open_table(tmp_path / name)
