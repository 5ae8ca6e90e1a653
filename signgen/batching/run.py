"""The batch read aloud: list -> recipe -> tasks -> workers -> outcomes (-> sheets -> workers) -> reports."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Callable, Iterator
from functools import partial
from itertools import islice
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.batching.crew import Means, crew
from signgen.batching.layout import Group, SheetHow
from signgen.batching.ledger import Ledger
from signgen.batching.on_sheets import make_sheets, must_suit_sheets
from signgen.batching.outcome import Outcome, failed, lost
from signgen.batching.progress import Progress
from signgen.batching.quote import Quote, Reckoner
from signgen.batching.recipe import Recipe, Task
from signgen.batching.report import clear_reports, must_be_ours, write_reports
from signgen.batching.table import Table
from signgen.batching.totals import Totals, totals_of
from signgen.batching.work import make_row, prove_row
from signgen.disk.ours import REPORT
from signgen.errors import AskError, SignGenError
from signgen.files import sweep
from signgen.messages import Message
from signgen.shop.prices import load_prices
from signgen.user_file import MOST_TOML_BYTES, read_bytes
from signgen.version import __version__

USUAL_TIME_S, USUAL_MEMORY_MB = 120.0, 2000
"""A large sign full of text takes a few seconds and a few hundred megabytes."""

MOST_FAILURES_TOLD = 20

GO_ON = "What is done stays; the same command with --resume goes on from there."


class How(Struct, frozen=True, kw_only=True):
    """How a batch is worked off. But for `sheet`, nothing of it changes what comes out. `sheet` None: each sign has a
    board and a folder of its own."""

    means: Means
    resume: bool = False
    sheet: SheetHow | None = None
    quote: bool = False


class Finished(Struct, frozen=True, kw_only=True):
    """A batch with a line in its ledger for every row. `failures`: the first of the rows that failed; `groups` of
    sheets, () without; `quote` None when none was asked for."""

    totals: Totals
    failures: tuple[Outcome, ...]
    groups: tuple[Group, ...]
    sheets: tuple[Outcome, ...]
    quote: Quote | None


def usual_workers() -> int:
    """One for each core that this process may use."""
    try:
        return len(os.sched_getaffinity(0))
    except AttributeError:
        return os.cpu_count() or 1


def run_batch(table: Table, recipe: Recipe, out: Path, how: How) -> Finished:
    """A folder for each row that can be made, or for each sheet of them, and the reports.

    Raises: AskError when the disk refuses to be written to, and then what was made stays for `resume`; AskError and
    CannotMakeError for what is wrong with the sheets whatever the rows hold.
    """
    must_be_ours(out, table)
    shop_file = recipe.base.get("shop")
    reckoner = Reckoner(load_prices(Path(str(shop_file)) if shop_file else None)) if how.quote else None
    if how.sheet:
        recipe = recipe.for_sheets()
        must_suit_sheets(table, recipe, how.sheet)
    ledger = Ledger(out, identity(table, recipe, how), resume=how.resume)

    def note(outcome: Outcome) -> None:
        if outcome.stops:
            raise AskError([replace(problem, remedy=f"{problem.remedy} {GO_ON}") for problem in outcome.problems])
        ledger.add(outcome)

    try:
        clear_reports(out)
        _work_off(table, recipe, out, how, ledger, note)
        groups = make_sheets(table, recipe, out, how.sheet, how.means, ledger, note) if how.sheet else ()
        _must_all_be_there(out, ledger)
        sweep(out)  # a worker that was killed may have left half a folder beside its place
        ledger.remove_leftovers(sum(len(group.sheets) for group in groups))
        sheets = tuple(ledger.sheets())
        totals = totals_of(ledger.outcomes(), sheets if how.sheet else None)
        write_reports(out, table, ledger.outcomes, totals, groups, sheets, reckoner)
        bad = (outcome for outcome in ledger.outcomes() if not outcome.made)
        return Finished(
            totals=totals,
            failures=tuple(islice(bad, MOST_FAILURES_TOLD)),
            groups=groups,
            sheets=sheets,
            quote=reckoner.quote if reckoner else None,
        )
    finally:
        ledger.close()


def _must_all_be_there(out: Path, ledger: Ledger) -> None:
    """What was made and is gone is not done. Raises: AskError."""
    for outcome in (*ledger.outcomes(), *ledger.sheets()):
        if outcome.made and outcome.folder and not (out / outcome.folder / REPORT).is_file():
            gone = Message("files.gone", path=str(out / outcome.folder))
            raise AskError.at("out", gone, Message("batch.resume_makes_it_again"))


def identity(table: Table, recipe: Recipe, how: How) -> dict[str, str]:
    """What a batch is of, each by a word that a message can use."""
    asked = {"base": recipe.base, "copies": recipe.copies, "columns": [recipe.keys, recipe.places]}
    shop_file = recipe.base.get("shop")
    return {
        "list": table.digest,
        "sign file": hashlib.sha256(json.dumps(asked, sort_keys=True, default=str).encode()).hexdigest(),
        "shop file": _digest(Path(str(shop_file))) if shop_file else "",
        "sheet": repr(how.sheet),
        "version of signgen": __version__,
    }


def _digest(path: Path) -> str:
    """Of a file that may not be there; who needs it will say so."""
    try:
        return hashlib.sha256(read_bytes(path, "shop", MOST_TOML_BYTES)).hexdigest()
    except AskError:
        return ""


def _work_off(
    table: Table, recipe: Recipe, out: Path, how: How, ledger: Ledger, note: Callable[[Outcome], None]
) -> None:
    """An outcome for every row."""
    progress = Progress(table.count, "rows")

    def told(outcome: Outcome) -> None:
        note(outcome)
        progress.add(failed=not outcome.made)

    def tasks() -> Iterator[Task]:
        for record in table.rows():
            if ledger.knows(record.row):
                progress.skip()
                continue
            try:
                task = recipe.task(record)
            except SignGenError as error:
                told(failed(record.row, error))
                continue
            yield task

    make = partial(prove_row, how=how.sheet) if how.sheet else make_row
    try:
        with crew(make, out, how.means, table.count) as workers:
            for done in workers.run(tasks()):
                task = done.item
                folder = "" if how.sheet else task.folder
                told(done.result or lost(task.row, folder, task.copies, done.lost))
    finally:
        progress.close()
