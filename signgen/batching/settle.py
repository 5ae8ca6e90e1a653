"""What of an earlier batch stays when its list is made again: rows are known by what they ask for and by their number.

A row that asks for the same as before stays as it is. One that asks for what another row's folder holds, which itself
asks for that no more (rows were put in or taken out above it), takes that folder over under its own number.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from signgen.batching.identity import digest_of
from signgen.batching.layout import SheetHow
from signgen.batching.ledger import Ledger
from signgen.batching.outcome import RowOutcome
from signgen.batching.recipe import Recipe, Task
from signgen.batching.records import Record
from signgen.disk.ours import REPORT
from signgen.errors import SignGenError
from signgen.files import moved
from signgen.pipeline import Wanted
from signgen.user_file import is_there


class Twin(Struct, frozen=True):
    """A row that asks for the same sign as one before it."""

    row: int
    first: int


class Settled(Struct, frozen=True, kw_only=True):
    """Rows that need not be made: `kept` are as they were, and of those `moved` have another number now. `gone`: rows
    that the list no longer has; `twins`: rows that ask for the same sign as an earlier one."""

    kept: frozenset[int]
    moved: int
    gone: tuple[RowOutcome, ...]
    twins: tuple[Twin, ...]


class _Wish(Struct, frozen=True):
    """A row that is not there yet as the list wants it."""

    task: Task
    digest: str
    cells: tuple[str, ...]


def settle(
    out: Path,
    records: Iterable[Record],
    recipe: Recipe,
    sheet: SheetHow | None,
    files: Wanted,
    ledger: Ledger,
    *,
    whole: bool,
    again: Callable[[int], bool],
) -> Settled:
    """Compare a list with the ledger, and bring folders and ledger to the list's numbers.

    `whole`: rows that are not among the records are gone; else they stay as they are. `again`: whether a row is to be
    made whatever is there.
    """
    kept: set[int] = set()
    seen: set[int] = set()
    wishes: dict[int, _Wish] = {}
    firsts: dict[str, int] = {}
    twins: list[Twin] = []
    for record in records:
        seen.add(record.row)
        try:
            task = recipe.task(record)
        except SignGenError:
            continue  # it is said when rows are made
        digest = digest_of(task, sheet, files)
        if firsts.setdefault(digest, record.row) != record.row:
            twins.append(Twin(record.row, firsts[digest]))
        if again(record.row):
            continue
        wish = _Wish(task, digest, record.cells)
        known = ledger.outcome(record.row)
        if known and _serves(known, wish, out) and _taken_over(known, wish, ledger, out):
            kept.add(record.row)
        elif whole:
            wishes[record.row] = wish
    moves = _moves(wishes, kept, ledger, out) if whole else ()
    gone = tuple(each for each in ledger.outcomes() if each.row not in seen) if whole else ()
    for outcome in gone:
        ledger.forget(outcome.row)
    taken = {wishes[row].digest for row in moves}  # not gone: under another number now
    # those too that an interrupted batch did not come to say
    gone = tuple(outcome for outcome in ledger.gone() if outcome.digest not in taken)
    return Settled(kept=frozenset(kept | set(moves)), moved=len(moves), gone=gone, twins=tuple(twins))


def _serves(known: RowOutcome, wish: _Wish, out: Path) -> bool:
    """Whether what was made for a row is what is wished for, and still there."""
    there = not known.folder or (out / known.folder / REPORT).is_file()
    return known.made and known.digest == wish.digest and there


def _moves(wishes: dict[int, _Wish], kept: set[int], ledger: Ledger, out: Path) -> tuple[int, ...]:
    """Rows that took over what another row had."""
    if not wishes:
        return ()
    wanted = {wish.digest for wish in wishes.values()}
    offers: dict[str, list[int]] = {}
    for outcome in ledger.outcomes():
        there = not outcome.folder or (out / outcome.folder / REPORT).is_file()
        if outcome.digest in wanted and outcome.row not in kept and outcome.made and there:
            offers.setdefault(outcome.digest, []).append(outcome.row)
    waiting = []
    for row, wish in wishes.items():
        if offers.get(wish.digest):
            waiting.append((row, offers[wish.digest].pop(0)))
    had = {source: ledger.outcome(source) for _, source in waiting}
    done: list[int] = []
    while waiting:
        # A row's line tells where its own folder is until that has moved: rows that nobody waits to leave go first.
        leaving = {source for _, source in waiting}
        ready = [move for move in waiting if move[0] not in leaving or move[0] == move[1]] or waiting[:1]
        for row, source in ready:
            before = had[source]
            if before and _serves(before, wishes[row], out) and _taken_over(before, wishes[row], ledger, out):
                done.append(row)
            waiting.remove((row, source))
    return tuple(done)


def _taken_over(known: RowOutcome, wish: _Wish, ledger: Ledger, out: Path) -> bool:
    """Let a row have what was made for it, under the name that it would have now; whether that could be done."""
    task = wish.task
    folder = task.folder if known.folder else ""
    now = replace(known, row=task.row, folder=folder, copies=task.copies, cells=wish.cells)
    moves = folder != known.folder
    if moves and is_there(out / folder):
        return False
    # The line comes first: who is killed between the two finds the folder by the line of the row that it comes from.
    if now != known:
        ledger.add(now)
    return not moves or moved(out / known.folder, out / folder)
