"""The batch read aloud: list -> recipe -> tasks -> outcomes."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from signgen.batch.outcome import Outcome, failed
from signgen.batch.recipe import Recipe
from signgen.batch.table import Table
from signgen.batch.work import write_row
from signgen.errors import SignGenError


def run_batch(table: Table, recipe: Recipe, out: Path) -> Iterator[Outcome]:
    """What becomes of each row, in their order."""
    for record in table.rows():
        try:
            task = recipe.task(record)
        except SignGenError as error:
            yield failed(record.row, error)
            continue
        yield write_row(task, out)
