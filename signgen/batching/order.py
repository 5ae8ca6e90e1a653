"""A batch as it is ordered, from the command line or from Python: the list, what is alike in all rows, and how."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from msgspec import Struct

from signgen.batching.crew import Means
from signgen.batching.layout import SheetHow
from signgen.batching.ledger import has_batch
from signgen.batching.pool import PoolLimits
from signgen.batching.proof import Proved, make_proof
from signgen.batching.recipe import Recipe, make_recipe
from signgen.batching.rows_asked import RowsAsked
from signgen.batching.run import USUAL_MEMORY_MB, USUAL_TIME_S, Begin, Finished, How, run_batch, usual_workers
from signgen.batching.table import Table, open_table
from signgen.errors import AskError, said_in
from signgen.messages import Message
from signgen.messages.language import language_or_english
from signgen.pipeline import Wanted, gather
from signgen.spec.safe_name import safe_name


class Order(Struct, frozen=True, kw_only=True):
    """`asked`: what is alike in all rows, over the sign file; None of the rest is as it is usual."""

    csv_file: Path
    asked: Mapping[str, object]
    sign_file: Path | None = None
    sheet: SheetHow | None = None
    copies: int = 1
    encoding: str | None = None
    worksheet: str | None = None
    ignore_columns: bool = False
    quote: bool = False
    labels: str | None = None
    files: Wanted = "all"
    begin: Begin = "new"
    rows: RowsAsked | None = None
    workers: int | None = None
    scheduler: str | None = None
    time_limit_s: float | None = None
    memory_limit_mb: int | None = None


class CarriedFile(Struct, frozen=True, kw_only=True):
    """A batch that was worked off: its list, its folder, what became of the rows, and the language of
    what is alike in all of them."""

    table: Table
    folder: Path
    finished: Finished
    language: str


def begin_of(*, resume: bool, fresh: bool) -> Begin:
    """Raises: AskError for both."""
    if resume and fresh:
        raise AskError.at("fresh", Message("batch.resume_and_fresh"), Message("batch.leave_one_out"))
    return "resume" if resume else "fresh" if fresh else "new"


class _Ready(Struct, frozen=True, kw_only=True):
    """An order that makes sense as far as it can be known before any row is made."""

    table: Table
    recipe: Recipe
    folder: Path
    means: Means


def _ready(order: Order) -> _Ready:
    """Raises: AskError for what is wrong whatever the rows hold."""
    base = gather(order.asked, order.sign_file)
    with said_in(base.get("language")):
        table = open_table(order.csv_file, order.encoding, order.worksheet)
        recipe = make_recipe(table, base, copies=order.copies, ignore_columns=order.ignore_columns)
    folder = Path(str(base.get("out") or safe_name(order.csv_file.stem)))
    limits = PoolLimits(time_s=order.time_limit_s or USUAL_TIME_S, memory_mb=order.memory_limit_mb or USUAL_MEMORY_MB)
    means = Means(workers=order.workers or usual_workers(), limits=limits, scheduler=order.scheduler)
    return _Ready(table=table, recipe=recipe, folder=folder, means=means)


def show(order: Order) -> Proved:
    """The contact sheet of an order, in its folder. Raises: as `make_proof`, and AskError as `carry_out`."""
    ready = _ready(order)
    means = ready.means
    return make_proof(ready.table, ready.recipe, ready.folder, order.rows, means.workers, means.limits)


def carry_out(order: Order) -> CarriedFile:
    """Work a batch off. Raises: as `run_batch`, and AskError for what is wrong whatever the rows hold."""
    ready = _ready(order)
    table, recipe, folder, means = ready.table, ready.recipe, ready.folder, ready.means
    if order.rows and order.sheet and has_batch(folder):
        folder = folder / order.rows.name  # its sheets may be cut already: these rows get sheets of their own
    how = How(
        means=means,
        begin=order.begin,
        rows=order.rows,
        sheet=order.sheet,
        quote=order.quote,
        labels=order.labels,
        files=order.files,
    )
    language = language_or_english(recipe.base.get("language"))
    with said_in(language):
        finished = run_batch(table, recipe, folder, how)
    return CarriedFile(table=table, folder=folder, finished=finished, language=language)
