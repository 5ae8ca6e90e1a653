"""What is left beside the folders: `batch.json` for programs, `errors.csv` to be mended and run again."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from signgen.batching.identity import ReadHeading
from signgen.batching.index_page import index_html
from signgen.batching.layout import Group
from signgen.batching.ledger import Ledger, has_batch, reports_in
from signgen.batching.outcome import RowOutcome
from signgen.batching.packing_page import labels_html, packing_html
from signgen.batching.quote import Cost, Reckoner, invoice_csv, line, quote_csv
from signgen.batching.results import results_csv
from signgen.batching.table import ERROR_COLUMNS, Table
from signgen.batching.totals import Totals
from signgen.disk.ours import digest_of_file
from signgen.errors import AskError
from signgen.files import write_file
from signgen.messages import Message, Num
from signgen.messages.wording import Value, Wording

BATCH, ERRORS, QUOTE, INVOICE, RESULTS = "batch.json", "errors.csv", "quote.csv", "invoice.csv", "results.csv"
INDEX, PACKING, LABELS = "index.html", "packing.html", "labels.html"
FORMAT, VERSION = "signgen-batch", 1

REPORTS = (BATCH, ERRORS, QUOTE, INVOICE, RESULTS, INDEX, PACKING, LABELS)

_MARKS = {BATCH: b'{\n "format": "signgen-batch"', ERRORS: "\ufeffrow".encode(), QUOTE: "\ufeffrow".encode()}
"""How files begin that a batch wrote whose ledger told nothing of them."""

Outcomes = Callable[[], Iterator[RowOutcome]]
"""Goes through the outcomes in the order of rows, as often as it is asked to."""


def must_be_ours(out: Path, table: Table) -> None:
    """Raises: AskError when a file of a report's name is not ours, or is the list itself and not the rows that failed
    in the batch that is there."""
    reports = reports_in(out)
    for name in REPORTS:
        path = out / name
        if _is(path, table):
            if name == ERRORS and has_batch(out):
                continue
            remedy = Message("batching.give_another_out_copy_list")
            raise AskError.at("out", Message("batching.would_replaced_while_read", path=table.path), remedy)
        if not path.is_file() or reports.get(name) == "":
            continue
        if name in reports:
            if digest_of_file(path) != reports[name]:
                what = Message("batch.report_changed", path=str(path))
                raise AskError.at("out", what, Message("batch.use_or_move_it", path=str(path)))
            continue
        mark = _MARKS.get(name, b"")
        with path.open("rb") as stream:
            if not mark or stream.read(len(mark)) != mark:
                raise AskError.at(
                    "out",
                    Message("batching.not_signgen_s", path=path),
                    Message("batching.choose_another_folder_move_file"),
                )


def _is(path: Path, table: Table) -> bool:
    """Whether a report's path is the list that is read."""
    return table.path.name == path.name and table.path.absolute().parent == path.absolute().parent


def clear_reports(out: Path, table: Table) -> None:
    """Take away an earlier batch's reports: while a batch runs there are none, but the list if it is one of them."""
    for name in REPORTS:
        if not _is(out / name, table):
            (out / name).unlink(missing_ok=True)


def write_reports(
    out: Path,
    ledger: Ledger,
    totals: Totals,
    groups: Sequence[Group],
    sheets: Sequence[RowOutcome],
    reckoner: Reckoner | None,
    labels: str | None,
    language: str,
) -> None:
    """`errors.csv` only when a row failed, `quote.csv` and `invoice.csv` only where something is reckoned,
    `labels.html` only for a paper, and all others."""
    outcomes, heading = ledger.outcomes, ledger.heading
    assert heading is not None
    more: dict[str, Any] = {}
    parts: dict[str, Iterable[bytes]] = {}
    costs: dict[int, Cost] = {}
    if reckoner:
        by_group = [[sheets[sheet.number - 1] for sheet in group.sheets] for group in groups]
        rows = list(reckoner.rows(outcomes(), by_group if groups else None))
        costs = {outcome.row: cost for outcome, cost in rows}
        policy = Wording(language)(Message("batch.offcut_policy_sheets" if groups else "batch.offcut_policy"))
        parts[QUOTE] = quote_csv(rows, reckoner.quote)
        parts[INVOICE] = invoice_csv(rows, reckoner.quote, policy)
        more["quote"] = reckoner.quote.to_json()
    if groups:
        more["sheets"] = _sheets(groups, sheets)
    if totals.failed:
        parts[ERRORS] = _errors(heading, outcomes)
    parts[RESULTS] = results_csv(heading, outcomes(), sheets if groups else None, costs, language)
    about = Wording(language)(_about(totals, len(sheets) if groups else 0))
    currency = reckoner.quote.currency if reckoner else ""
    on_sheets = sheets if groups else None
    parts[INDEX] = index_html(out, heading.list_name, outcomes(), on_sheets, costs, currency, about, language)
    parts[PACKING] = packing_html(heading.list_name, outcomes(), on_sheets, language)
    if labels:
        parts[LABELS] = labels_html(heading.list_name, outcomes(), on_sheets, labels, language)
    parts[BATCH] = _batch(heading, ledger.count, outcomes, totals, more)
    ledger.write_down(dict.fromkeys(parts, ""))
    if ERRORS not in parts:
        (out / ERRORS).unlink(missing_ok=True)
    ledger.write_down({name: _written(out / name, content) for name, content in parts.items()})


def _about(totals: Totals, sheets: int) -> Message:
    """The batch in a sentence."""
    shared: dict[str, Value] = {"signs": totals.signs, "minutes": Num(totals.minutes, 0)}
    made = Message("index.on_sheets", sheets=sheets, **shared) if sheets else Message("index.alone", **shared)
    return Message("index.and_failed", made=made, count=totals.failed) if totals.failed else made


def _written(path: Path, parts: Iterable[bytes]) -> str:
    """Write a file; its SHA-256."""
    found = hashlib.sha256()

    def passing() -> Iterator[bytes]:
        for part in parts:
            found.update(part)
            yield part

    write_file(path, passing())
    return found.hexdigest()


def _sheets(groups: Sequence[Group], sheets: Sequence[RowOutcome]) -> list[dict[str, Any]]:
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


def _batch(
    heading: ReadHeading, rows: int, outcomes: Outcomes, totals: Totals, more: dict[str, Any]
) -> Iterator[bytes]:
    """The report piece by piece, so that it may have any number of rows."""
    head = {"format": FORMAT, "version": VERSION, "list": heading.list_name, "rows": rows}
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


def _sign(outcome: RowOutcome) -> dict[str, Any]:
    figures = {key: value for key, value in outcome.figures.items() if key != "sheet"}
    return {"row": outcome.row, "folder": outcome.folder, "copies": outcome.copies, **figures}


def _failure(outcome: RowOutcome) -> dict[str, Any]:
    return {
        "row": outcome.row,
        "field": outcome.field_named,
        "message": outcome.message,
        "exit_code": outcome.exit_code,
    }


def _errors(heading: ReadHeading, outcomes: Outcomes) -> Iterator[bytes]:
    """The rows that failed with what is wrong before them. The mark at its start makes spreadsheets read UTF-8."""
    yield "\ufeff".encode()
    yield line([*ERROR_COLUMNS, *heading.columns], heading.delimiter)
    for outcome in outcomes():
        if not outcome.made:
            cells = [str(outcome.row), outcome.field_named, outcome.message, *outcome.cells]
            yield line(cells, heading.delimiter)
