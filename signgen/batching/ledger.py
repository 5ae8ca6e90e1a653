"""The batch's memory: what became of each row, on the disk as soon as it is known.

A heading says which list the batch is of and what is alike in all rows; a row's line has its cells and digits that
stand for what it asks for, so that a changed list finds again what it did not change. Of lines about the same row, and
of headings, the last holds. A row is made once its folder is there whole and its line is in the ledger, in that order.
"""

from __future__ import annotations

import json
from array import array
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import msgspec

from signgen.batching.identity import ReadHeading, heading_from
from signgen.batching.outcome import RowOutcome, outcome_from_json
from signgen.errors import AskError
from signgen.files import remove_folder, sweep
from signgen.journal import Journal
from signgen.messages import Message

LEDGER, EARLIER = "ledger.jsonl", ".signgen-earlier.jsonl"
"""The ledger, and the lines of ledgers that a new batch in the same folder took the place of."""

FORMAT, VERSION = "signgen-ledger", 2
_START = b'{"format": "signgen-ledger"'

_REPORTS = b'{"reports": '

_UNKNOWN = -1


def has_batch(out: Path) -> bool:
    """Whether a folder holds a batch, finished or not: a ledger with a heading."""
    path = out / LEDGER
    _must_be_ours(path)
    try:
        with path.open("rb") as stream:
            return stream.readline().endswith(b"\n")
    except OSError:
        return False


def reports_in(out: Path) -> dict[str, str]:
    """The reports that the ledgers in a folder tell of, each with its SHA-256; '' when it may be half written."""
    reports: dict[str, str] = {}
    for name in (EARLIER, LEDGER):
        try:
            with (out / name).open("rb") as stream:
                lines = [line for line in stream if line.startswith(_REPORTS) and line.endswith(b"\n")]
        except OSError:
            continue
        reports |= json.loads(lines[-1])["reports"] if lines else {}
    return reports


class Ledger:
    """Outcomes by row, and by sheet where signs are laid on sheets. In memory are eight bytes a row."""

    def __init__(self, out: Path, *, fresh: bool) -> None:
        """Open the ledger in a folder: `fresh` to begin anew, else to go on with what it holds.

        Raises: AskError when the folder cannot be written, holds a ledger that is not ours, or one of another version.
        """
        self.out = out
        self.heading: ReadHeading | None = None
        _must_be_ours(out / LEDGER)
        self._journal = Journal(out / LEDGER)
        try:
            self._offsets = array("q")
            self._sheets: dict[int, int] = {}
            self._gone: dict[int, int] = {}
            self._read(fresh)
            if fresh:
                self._begin()
            sweep(out)
        except BaseException:
            self.close()
            raise

    def head(self, heading: ReadHeading) -> None:
        """From here on the batch is of this list. Raises: AskError when the disk refuses it."""
        if heading != self.heading:
            self._add({"format": FORMAT, "version": VERSION, **msgspec.to_builtins(heading)})
            self.heading = heading

    def write_down(self, reports: Mapping[str, str]) -> None:
        """The reports that this batch writes, each with its SHA-256; '' while it is being written."""
        self._add({"reports": dict(reports)})

    def knows(self, row: int) -> bool:
        return row < len(self._offsets) and self._offsets[row] != _UNKNOWN

    def add(self, outcome: RowOutcome) -> None:
        """Raises: AskError when the disk refuses it."""
        self._note(outcome.row, outcome.sheet, self._journal.add(outcome.to_json()))

    def forget(self, row: int) -> None:
        """A row that the list no longer has."""
        self._add({"row": row, "gone": True})
        self._part_with(row)

    def gone(self) -> Iterator[RowOutcome]:
        """What became of rows that the list no longer has, since a batch was last done."""
        for row in sorted(self._gone):
            yield outcome_from_json(self._journal.line_at(self._gone[row]))

    def _part_with(self, row: int) -> None:
        self._gone[row] = self._offsets[row]
        self._offsets[row] = _UNKNOWN

    def outcome(self, row: int) -> RowOutcome | None:
        """What became of a row, None when that is not known."""
        return outcome_from_json(self._journal.line_at(self._offsets[row])) if self.knows(row) else None

    def outcomes(self) -> Iterator[RowOutcome]:
        """The last of each row, in the order of rows."""
        for offset in self._offsets:
            if offset != _UNKNOWN:
                yield outcome_from_json(self._journal.line_at(offset))

    @property
    def count(self) -> int:
        """How many rows are known."""
        return len(self._offsets) - self._offsets.count(_UNKNOWN)

    def sheet(self, number: int) -> RowOutcome | None:
        """What became of a sheet, None when that is not known."""
        return outcome_from_json(self._journal.line_at(self._sheets[number])) if number in self._sheets else None

    def sheets(self) -> Iterator[RowOutcome]:
        """The last of each sheet, in their order."""
        for number in sorted(self._sheets):
            yield outcome_from_json(self._journal.line_at(self._sheets[number]))

    def remove_leftovers(self, sheets: int = 0) -> None:
        """Take away folders that this batch or an earlier one made here and that no row or sheet has now; sheets after
        the last are forgotten."""
        for number in [number for number in self._sheets if number > sheets]:
            del self._sheets[number]
        now = {outcome.folder for outcome in (*self.outcomes(), *self.sheets()) if outcome.made}
        gone = _folders(self._journal) - now
        path = self.out / EARLIER
        if path.is_file():
            earlier = Journal(path)
            gone |= _folders(earlier) - now
            earlier.close()
        for folder in sorted(gone):
            if (self.out / folder).is_dir():
                remove_folder(self.out / folder)
        path.unlink(missing_ok=True)

    def close(self) -> None:
        self._journal.close()

    def _add(self, told: Mapping[str, Any]) -> int:
        return self._journal.add(json.dumps(told, ensure_ascii=False, allow_nan=False).encode())

    def _note(self, row: int, sheet: int, offset: int) -> None:
        if sheet:
            self._sheets[sheet] = offset
            return
        self._gone.pop(row, None)
        short = row + 1 - len(self._offsets)
        if short > 0:
            self._offsets.extend([_UNKNOWN] * short)
        self._offsets[row] = offset

    def _read(self, fresh: bool) -> None:
        """What the journal tells. Raises: AskError when another version of signgen wrote it."""
        for offset, line in self._journal.lines():
            told = json.loads(line)
            if "format" in told:
                if told.get("version") != VERSION and not fresh:
                    what = Message("batch.ledger_of_another_version", path=str(self.out / LEDGER))
                    raise AskError.at("resume", what, Message("batch.begin_afresh"))
                self.heading = None if fresh else heading_from(told)
            elif "reports" in told:
                if all(told["reports"].values()):
                    self._gone = {}
            elif told.get("gone"):
                self._part_with(told["row"])
            else:
                self._note(int(told.get("row", 0)), int(told.get("sheet", 0)), offset)

    def _begin(self) -> None:
        """What an earlier ledger tells is kept aside until this batch is done."""
        if next(self._journal.lines(), None) is not None:
            earlier = Journal(self.out / EARLIER)
            for _, line in self._journal.lines():
                earlier.add(line, sync=False)
            earlier.close()
        self._journal.clear()
        self._offsets, self._sheets, self._gone = array("q"), {}, {}


def _folders(journal: Journal) -> set[str]:
    """Every folder that lines tell of; never one that lies elsewhere."""
    folders = (json.loads(line).get("folder", "") for _, line in journal.lines())
    return {folder for folder in folders if folder and folder == Path(folder).name}


def _must_be_ours(path: Path) -> None:
    """Raises: AskError when a file of the ledger's name is not one; its beginning may have been cut off."""
    if not path.is_file():
        return
    with path.open("rb") as stream:
        start = stream.read(len(_START))
    if not _START.startswith(start):
        raise AskError.at(
            "out", Message("batching.not_signgen_s", path=path), Message("batching.choose_another_folder_move_file")
        )
