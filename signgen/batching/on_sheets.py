"""The second half of a batch on sheets: rows that were proved are laid out, and every sheet is made as a whole."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial
from itertools import islice
from pathlib import Path

from msgspec.structs import replace

from signgen.batching.crew import Means, crew
from signgen.batching.layout import Group, SheetHow, digest_of, folder_of, lay_out
from signgen.batching.ledger import Ledger
from signgen.batching.outcome import RowOutcome, lost
from signgen.batching.pool import PoolLimits
from signgen.batching.progress import Progress
from signgen.batching.recipe import Recipe
from signgen.batching.records import Record
from signgen.batching.shop import shop_of
from signgen.batching.table import Table
from signgen.batching.work import make_sheet_row
from signgen.drawing.draw import draw
from signgen.errors import AskError, SignGenError
from signgen.features.tab import Tab
from signgen.messages import Message
from signgen.operations.plan import make_plan
from signgen.pipeline import Wanted, read_sign
from signgen.whole_sheet import SheetAsked, dump_sheet

TIMES_LONGER, TIMES_MORE = 10, 2
"""A sheet may take so many times the seconds and the memory of a single sign."""

ROWS_TRIED = 50
"""Rows looked at for one that tells whether the sheet suits its machine and cutters."""


def must_suit_sheets(table: Table, recipe: Recipe, how: SheetHow) -> None:
    """Find out early what would be wrong with every sheet. Raises: AskError."""
    if "board" in recipe.base or "board" in recipe.keys:
        raise AskError.at(
            "board", Message("batching.signs_on_sheet_have_no"), Message("batching.leave_out_sheet_board")
        )
    for record in islice(table.rows(), ROWS_TRIED):
        try:
            spec = read_sign(recipe.task(record).asked, shop_of)
            drawing = draw(spec)
            cutter = make_plan(drawing, spec).around_mm
        except SignGenError:
            continue  # the row will fail by itself
        how.must_reach(spec.machine, cutter)
        how.gap_for(cutter, len(drawing.of(Tab)))
        return


def make_sheets(
    recipe: Recipe,
    out: Path,
    how: SheetHow,
    files: Wanted,
    means: Means,
    ledger: Ledger,
    note: Callable[[RowOutcome], None],
) -> tuple[Group, ...]:
    """A folder for each sheet. Rows of a sheet that cannot be made as a whole have failed."""
    made = [outcome for outcome in ledger.outcomes() if outcome.made]
    groups = lay_out(made, {outcome.row: _asked(recipe, outcome) for outcome in made}, how)
    sheets = [sheet for group in groups for sheet in group.sheets]
    of_row = {outcome.row: outcome for outcome in made}
    progress = Progress(len(sheets), "sheets")

    def waiting() -> Iterator[SheetAsked]:
        for sheet in sheets:
            known = ledger.sheet(sheet.number)
            if known and known.made and known.figures["digest"] == digest_of(dump_sheet(sheet), files):
                progress.skip()
            else:
                yield sheet

    limits = PoolLimits(time_s=TIMES_LONGER * means.limits.time_s, memory_mb=TIMES_MORE * means.limits.memory_mb)
    try:
        with crew(partial(make_sheet_row, wanted=files), out, replace(means, limits=limits), len(sheets)) as workers:
            for done in workers.run(waiting()):
                sheet = done.item
                outcome = done.result or lost(0, folder_of(sheet), 1, done.lost, sheet.number)
                note(outcome)
                if not outcome.made:
                    for row in dict.fromkeys(piece.row for piece in sheet.pieces):
                        note(_failed_with(outcome, of_row[row]))
                progress.add(failed=not outcome.made)
    finally:
        progress.close()
    return groups


def _asked(recipe: Recipe, outcome: RowOutcome) -> Mapping[str, object]:
    """What a row asks for, by the cells that the ledger keeps."""
    return recipe.task(Record(row=outcome.row, line=0, cells=outcome.cells)).asked


def _failed_with(sheet: RowOutcome, row: RowOutcome) -> RowOutcome:
    """The outcome of a row whose sheet failed as a whole."""
    problems = tuple(
        replace(problem, what=Message("batching.on_which_failed_whole", folder=sheet.folder, what=problem.what))
        for problem in sheet.problems
    )
    return RowOutcome(
        row=row.row, copies=row.copies, problems=problems, exit_code=sheet.exit_code, digest=row.digest, cells=row.cells
    )
