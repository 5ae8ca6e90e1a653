"""The batch read aloud: list -> recipe -> tasks -> workers -> outcomes (-> sheets -> workers) -> reports."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from functools import partial
from itertools import islice
from pathlib import Path
from typing import Literal

from msgspec import Struct
from msgspec.structs import replace

from signgen.batching.crew import Means, crew
from signgen.batching.identity import digest_of, heading_of
from signgen.batching.layout import Group, SheetHow
from signgen.batching.ledger import LEDGER, Ledger, has_batch
from signgen.batching.on_sheets import make_sheets, must_suit_sheets
from signgen.batching.outcome import RowOutcome, failed, lost
from signgen.batching.progress import Progress
from signgen.batching.quote import Quote, Reckoner
from signgen.batching.recipe import Recipe, Task
from signgen.batching.records import Record
from signgen.batching.report import clear_reports, must_be_ours, write_reports
from signgen.batching.rows_asked import RowsAsked
from signgen.batching.settle import Settled, settle
from signgen.batching.table import Table
from signgen.batching.totals import Totals, totals_of
from signgen.batching.work import make_row, prove_row
from signgen.disk.ours import REPORT
from signgen.errors import AskError, SignGenError, said_in
from signgen.files import sweep
from signgen.messages import Message
from signgen.pipeline import Wanted
from signgen.shop.prices import load_prices

USUAL_TIME_S, USUAL_MEMORY_MB = 120.0, 2000
"""A large sign full of text takes a few seconds and a few hundred megabytes."""

MOST_FAILURES_TOLD = 20

GO_ON = Message("batching.what_done_stays_same_command")

Begin = Literal["new", "resume", "fresh"]
"""In a folder that holds no batch; going on with the one that is there; or in its place."""


class How(Struct, frozen=True, kw_only=True):
    """How a batch is worked off. But for `sheet`, nothing of it changes what comes out. `sheet` None: each sign has a
    board and a folder of its own; `rows` None: all; `labels`: the paper for them (`packing_page.LABEL_SHEETS`);
    `files`: of each sign or sheet."""

    means: Means
    begin: Begin = "new"
    rows: RowsAsked | None = None
    sheet: SheetHow | None = None
    quote: bool = False
    labels: str | None = None
    files: Wanted = "all"


class Finished(Struct, frozen=True, kw_only=True):
    """A batch with a line in its ledger for every row. `failures`: the first of the rows that failed; `groups` of
    sheets, () without; `quote` None when none was asked for; `settled`: what stayed of an earlier batch."""

    totals: Totals
    rows: int
    failures: tuple[RowOutcome, ...]
    groups: tuple[Group, ...]
    sheets: tuple[RowOutcome, ...]
    quote: Quote | None
    settled: Settled


class BatchThereError(AskError):
    """The folder holds a batch, and nobody said what is to become of it."""


def usual_workers() -> int:
    """One for each core that this process may use."""
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:
        return os.cpu_count() or 1


def run_batch(table: Table, recipe: Recipe, out: Path, how: How) -> Finished:
    """A folder for each row that can be made, or for each sheet of them, and the reports.

    A list of rows that failed, and rows that are asked for by number, are made into the batch that is there; any other
    list takes its place, and what asks for the same as before stays.

    Raises: BatchThereError; AskError when the disk refuses to be written to, and then what was made stays for
    `resume`; AskError and CannotMakeError for what is wrong with the sheets whatever the rows hold.
    """
    there = has_batch(out)
    some = there and how.begin != "fresh" and (table.is_errors or how.rows is not None)
    _must_know_what_to_do(out, how, there=there and not some)
    must_be_ours(out, table)
    if how.rows:
        how.rows.must_be_in(table)
    shop_file = recipe.base.get("shop")
    reckoner = Reckoner(load_prices(Path(str(shop_file)) if shop_file else None)) if how.quote else None
    if how.sheet:
        recipe = recipe.for_sheets()
        must_suit_sheets(table, recipe, how.sheet)
    ledger = Ledger(out, fresh=how.begin == "fresh" or not there)

    def note(outcome: RowOutcome) -> None:
        if outcome.stops:
            raise AskError(
                [
                    replace(problem, remedy=Message("batching.said_2", remedy=problem.remedy, go_on=GO_ON))
                    for problem in outcome.problems
                ]
            )
        ledger.add(outcome)

    try:
        _head(table, recipe, out, how, ledger, some=some)
        clear_reports(out, table)
        settled = settle(
            out, _records(table, how), recipe, how.sheet, how.files, ledger, whole=not some,
            again=lambda row: some and how.rows is not None,
        )  # fmt: skip
        _work_off(table, recipe, out, how, ledger, note, settled)
        groups = make_sheets(recipe, out, how.sheet, how.files, how.means, ledger, note) if how.sheet else ()
        _must_all_be_there(out, ledger)
        sweep(out)  # a worker that was killed may have left half a folder beside its place
        ledger.remove_leftovers(sum(len(group.sheets) for group in groups))
        sheets = tuple(ledger.sheets())
        totals = totals_of(ledger.outcomes(), sheets if how.sheet else None)
        language = str(recipe.base.get("language") or "en")
        write_reports(out, ledger, totals, groups, sheets, reckoner, how.labels, language)
        bad = (outcome for outcome in ledger.outcomes() if not outcome.made)
        return Finished(
            totals=totals,
            rows=ledger.count,
            failures=tuple(islice(bad, MOST_FAILURES_TOLD)),
            groups=groups,
            sheets=sheets,
            quote=reckoner.quote if reckoner else None,
            settled=settled,
        )
    finally:
        ledger.close()


def _must_know_what_to_do(out: Path, how: How, *, there: bool) -> None:
    """`there`: a batch is, which this one would go on with or take the place of. Raises: AskError."""
    if how.begin == "resume" and not (out / LEDGER).is_file():
        remedy = Message("batching.leave_resume_out_give_out")
        raise AskError.at("resume", Message("batching.there_no_batch_in", out=out), remedy)
    if how.begin == "new" and there:
        raise BatchThereError.at("out", Message("batch.is_there", path=str(out)), Message("batch.resume_or_fresh"))


def _head(table: Table, recipe: Recipe, out: Path, how: How, ledger: Ledger, *, some: bool) -> None:
    """Say what the batch is of; `some` rows must be of the batch that is there. Raises: AskError."""
    heading = heading_of(table, recipe, how.sheet, how.files)
    known = ledger.heading
    if not some or known is None:
        ledger.head(heading)
        return
    if known.columns != heading.columns:
        what = Message("batch.other_columns", path=str(table.path), columns=known.columns)
        raise AskError.at(str(table.path), what, Message("batch.keep_the_columns"))
    if names := known.differs_from(heading):
        what = Message("batch.alike_differs", path=str(out), names=names)
        raise AskError.at("rows" if how.rows else str(table.path), what, Message("batch.ask_as_then"))
    if table.is_errors:
        strange = next((record.row for record in table.rows() if not ledger.knows(record.row)), None)
        if strange is not None:
            what = Message("batch.has_no_row", path=str(out), row=strange)
            raise AskError.at(str(table.path), what, Message("batch.leave_the_numbers"))


def _must_all_be_there(out: Path, ledger: Ledger) -> None:
    """What was made and is gone is not done. Raises: AskError."""
    for outcome in (*ledger.outcomes(), *ledger.sheets()):
        if outcome.made and outcome.folder and not (out / outcome.folder / REPORT).is_file():
            gone = Message("files.gone", path=str(out / outcome.folder))
            raise AskError.at("out", gone, Message("batch.resume_makes_it_again"))


def _records(table: Table, how: How) -> Iterator[Record]:
    """The rows that this batch is about."""
    for record in table.rows():
        if how.rows is None or record.row in how.rows:
            yield record


def _work_off(
    table: Table,
    recipe: Recipe,
    out: Path,
    how: How,
    ledger: Ledger,
    note: Callable[[RowOutcome], None],
    settled: Settled,
) -> None:
    """An outcome for every row."""
    count = sum(1 for _ in _records(table, how))
    progress = Progress(count, "rows")
    asked: dict[int, tuple[str, tuple[str, ...]]] = {}

    def told(outcome: RowOutcome) -> None:
        digest, cells = asked.pop(outcome.row)
        note(replace(outcome, digest=digest, cells=cells))
        progress.add(failed=not outcome.made)

    def tasks() -> Iterator[Task]:
        for record in _records(table, how):
            if record.row in settled.kept:
                progress.skip()
                continue
            asked[record.row] = "", record.cells
            try:
                with said_in(recipe.base.get("language")):
                    task = recipe.task(record)
            except SignGenError as error:
                told(failed(record.row, error))
                continue
            asked[record.row] = digest_of(task, how.sheet, how.files), record.cells
            yield task

    make = partial(prove_row, how=how.sheet) if how.sheet else partial(make_row, wanted=how.files)
    try:
        with crew(make, out, how.means, count) as workers:
            for done in workers.run(tasks()):
                task = done.item
                folder = "" if how.sheet else task.folder
                told(done.result or lost(task.row, folder, task.copies, done.lost))
    finally:
        progress.close()
