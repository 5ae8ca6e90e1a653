"""What is left beside the folders: `batch.json` for programs, `errors.csv` to be mended and run again."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

from signgen.batching.guard import guarded
from signgen.batching.layout import Group
from signgen.batching.outcome import Outcome
from signgen.batching.quote import Reckoner, quote_csv
from signgen.batching.table import ERROR_COLUMNS, Table
from signgen.batching.totals import Totals
from signgen.errors import AskError
from signgen.files import write_file

BATCH, ERRORS, QUOTE = "batch.json", "errors.csv", "quote.csv"
FORMAT, VERSION = "signgen-batch", 1

_OURS = {BATCH: b'{\n "format": "signgen-batch"', ERRORS: "\ufeffrow".encode(), QUOTE: "\ufeffrow".encode()}
"""How files begin that an earlier batch wrote."""

Outcomes = Callable[[], Iterator[Outcome]]
"""Goes through the outcomes in the order of rows, as often as it is asked to."""


def must_be_ours(out: Path, table: Table) -> None:
    """Raises: AskError when a file of a report's name is not ours, or is the list itself."""
    if table.path.absolute().parent == out.absolute() and table.path.name in _OURS:
        remedy = "Give another --out, or copy the list to another place first."
        raise AskError.at("out", f"{table.path} would be replaced while it is read.", remedy)
    for name, mark in _OURS.items():
        path = out / name
        if not path.is_file():
            continue
        with path.open("rb") as stream:
            if stream.read(len(mark)) != mark:
                raise AskError.at("out", f"{path} is not signgen's.", "Choose another folder, or move the file away.")


def clear_reports(out: Path) -> None:
    """Take away an earlier batch's reports: while a batch runs there are none."""
    for name in _OURS:
        (out / name).unlink(missing_ok=True)


def write_reports(
    out: Path,
    table: Table,
    outcomes: Outcomes,
    totals: Totals,
    groups: Sequence[Group],
    sheets: Sequence[Outcome],
    reckoner: Reckoner | None,
) -> None:
    """`errors.csv` only when a row failed, `quote.csv` only where something is reckoned, and `batch.json`."""
    more: dict[str, Any] = {}
    if reckoner:
        costs = reckoner.rows(outcomes(), sheets if groups else None)
        write_file(out / QUOTE, quote_csv(costs, reckoner.quote))
        more["quote"] = reckoner.quote.to_json()
    if groups:
        more["sheets"] = _sheets(groups, sheets)
    if totals.failed:
        write_file(out / ERRORS, _errors(table, outcomes))
    write_file(out / BATCH, _batch(table, outcomes, totals, more))


def _sheets(groups: Sequence[Group], sheets: Sequence[Outcome]) -> list[dict[str, Any]]:
    """Every sheet, with what is told of its group: the gap between signs, and how many of the most frequent size go on
    an empty sheet."""
    group_of = {sheet.number: group for group in groups for sheet in group.sheets}
    told = []
    for outcome in sheets:
        group = group_of[outcome.sheet]
        shared = {"gap_mm": group.gap_mm, "holds": group.holds, "holds_size_mm": list(group.holds_size_mm)}
        figures = outcome.figures if outcome.made else {"message": outcome.message, "exit_code": outcome.exit_code}
        told.append({"sheet": outcome.sheet, "folder": outcome.folder, "made": outcome.made, **shared, **figures})
    return told


def _batch(table: Table, outcomes: Outcomes, totals: Totals, more: dict[str, Any]) -> Iterator[bytes]:
    """The report piece by piece, so that it may have any number of rows."""
    head = {"format": FORMAT, "version": VERSION, "list": table.path.name, "rows": table.count}
    head |= {"totals": totals.to_json(), **more}
    text = json.dumps(head, indent=1, ensure_ascii=False, allow_nan=False)
    yield text.removesuffix("\n}").encode()
    yield from _listed("rows_made", (_sign(outcome) for outcome in outcomes() if outcome.made))
    yield from _listed("rows_failed", (_failure(outcome) for outcome in outcomes() if not outcome.made))
    yield b"\n}\n"


def _listed(key: str, values: Iterator[dict[str, Any]]) -> Iterator[bytes]:
    yield f',\n "{key}": ['.encode()
    separator = "\n  "
    for value in values:
        yield (separator + json.dumps(value, ensure_ascii=False, allow_nan=False)).encode()
        separator = ",\n  "
    yield b"\n ]"


def _sign(outcome: Outcome) -> dict[str, Any]:
    figures = {key: value for key, value in outcome.figures.items() if key != "sheet"}
    return {"row": outcome.row, "folder": outcome.folder, "copies": outcome.copies, **figures}


def _failure(outcome: Outcome) -> dict[str, Any]:
    return {
        "row": outcome.row,
        "field": outcome.field_named,
        "message": outcome.message,
        "exit_code": outcome.exit_code,
    }


def _errors(table: Table, outcomes: Outcomes) -> Iterator[bytes]:
    """The rows that failed with what is wrong before them. The mark at its start makes spreadsheets read UTF-8."""
    yield "\ufeff".encode()
    yield _line(table, [*ERROR_COLUMNS, *table.columns])
    bad = (outcome for outcome in outcomes() if not outcome.made)
    outcome = next(bad, None)
    for record in table.rows():
        if outcome is None:
            return
        if record.row == outcome.row:
            yield _line(table, [str(outcome.row), outcome.field_named, outcome.message, *record.cells])
            outcome = next(bad, None)


def _line(table: Table, cells: list[str]) -> bytes:
    stream = io.StringIO(newline="")
    csv.writer(stream, delimiter=table.delimiter).writerow([guarded(cell) for cell in cells])
    return stream.getvalue().encode("utf-8", "replace")
