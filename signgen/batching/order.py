"""A batch as it is ordered, from the command line or from Python: the list, what is alike in all rows, and how."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from msgspec import Struct

from signgen.batching.crew import Means
from signgen.batching.layout import SheetHow
from signgen.batching.pool import Limits
from signgen.batching.recipe import make_recipe
from signgen.batching.run import USUAL_MEMORY_MB, USUAL_TIME_S, Finished, How, run_batch, usual_workers
from signgen.batching.table import Table, open_table
from signgen.pipeline import gather
from signgen.spec.safe_name import safe_name


class Order(Struct, frozen=True, kw_only=True):
    """`asked`: what is alike in all rows, over the sign file; None of the rest is as it is usual."""

    csv_file: Path
    asked: Mapping[str, object]
    sign_file: Path | None = None
    sheet: SheetHow | None = None
    copies: int = 1
    encoding: str | None = None
    ignore_columns: bool = False
    quote: bool = False
    resume: bool = False
    workers: int | None = None
    scheduler: str | None = None
    time_limit_s: float | None = None
    memory_limit_mb: int | None = None


class Carried(Struct, frozen=True, kw_only=True):
    """A batch that was worked off: its list, its folder and what became of the rows."""

    table: Table
    folder: Path
    finished: Finished


def carry_out(order: Order) -> Carried:
    """Work a batch off. Raises: as `run_batch`, and AskError for what is wrong whatever the rows hold."""
    base = gather(order.asked, order.sign_file)
    table = open_table(order.csv_file, order.encoding)
    recipe = make_recipe(table, base, copies=order.copies, ignore_columns=order.ignore_columns)
    folder = Path(str(base.get("out") or safe_name(order.csv_file.stem)))
    limits = Limits(time_s=order.time_limit_s or USUAL_TIME_S, memory_mb=order.memory_limit_mb or USUAL_MEMORY_MB)
    means = Means(workers=order.workers or usual_workers(), limits=limits, scheduler=order.scheduler)
    how = How(means=means, resume=order.resume, sheet=order.sheet, quote=order.quote)
    return Carried(table=table, folder=folder, finished=run_batch(table, recipe, folder, how))
