"""The batch's memory: what became of each row, on the disk as soon as it is known.

Its first line says what the batch is of, so that a batch is only ever resumed with the same list, sign file and
program. A row is made once its folder is there whole and its line is in the ledger, in that order.
"""

from __future__ import annotations

import json
from array import array
from collections.abc import Iterator, Mapping
from pathlib import Path

from signgen.batching.outcome import Outcome, outcome_from_json
from signgen.errors import AskError
from signgen.files import remove_folder, sweep
from signgen.journal import Journal
from signgen.pipeline import REPORT

LEDGER, EARLIER = "ledger.jsonl", ".signgen-earlier.jsonl"
"""The ledger, and the lines of ledgers that a new batch in the same folder took the place of."""

FORMAT = "signgen-ledger"
_START = b'{"format": "signgen-ledger"'

_UNKNOWN = -1


class Ledger:
    """Outcomes by row, and by sheet where signs are laid on sheets. In memory are eight bytes a row."""

    def __init__(self, out: Path, identity: Mapping[str, str], *, resume: bool) -> None:
        """Open the ledger in a folder: with `resume` to go on, else anew.

        Raises: AskError when there is nothing to resume or the batch was another one, when the folder cannot be
        written, or holds a ledger that is not ours.
        """
        self.out = out
        if resume and not (out / LEDGER).is_file():
            remedy = "Leave --resume out, or give the --out of the batch that was interrupted."
            raise AskError.at("resume", f"There is no batch in {out}.", remedy)
        _must_be_ours(out / LEDGER)
        self._journal = Journal(out / LEDGER)
        try:
            self._offsets = array("q")
            self._sheets: dict[int, int] = {}
            if resume:
                self._go_on(identity)
            else:
                self._begin(identity)
            sweep(out)
        except BaseException:
            self.close()
            raise

    def knows(self, row: int) -> bool:
        return row < len(self._offsets) and self._offsets[row] != _UNKNOWN

    def add(self, outcome: Outcome) -> None:
        """Raises: AskError when the disk refuses it."""
        self._note(outcome, self._journal.add(outcome.to_json()))

    def outcomes(self) -> Iterator[Outcome]:
        """The last of each row, in the order of rows."""
        for offset in self._offsets:
            if offset != _UNKNOWN:
                yield outcome_from_json(self._journal.line_at(offset))

    def sheet(self, number: int) -> Outcome | None:
        """What became of a sheet, None when that is not known."""
        return outcome_from_json(self._journal.line_at(self._sheets[number])) if number in self._sheets else None

    def sheets(self) -> Iterator[Outcome]:
        """The last of each sheet, in their order."""
        for number in sorted(self._sheets):
            yield outcome_from_json(self._journal.line_at(self._sheets[number]))

    def remove_leftovers(self, sheets: int = 0) -> None:
        """Take away folders that an earlier batch made here and this one did not, and sheets after the last, which a
        row that failed when the batch was interrupted may leave."""
        for number in [number for number in self._sheets if number > sheets]:
            remove_folder(self.out / outcome_from_json(self._journal.line_at(self._sheets.pop(number))).folder)
        path = self.out / EARLIER
        if not path.is_file():
            return
        earlier = Journal(path)
        for _, line in earlier.lines():
            then = outcome_from_json(line)
            if then.folder and then.folder == Path(then.folder).name and then.folder != self._folder_now(then):
                remove_folder(self.out / then.folder)
        earlier.close()
        path.unlink()

    def close(self) -> None:
        self._journal.close()

    def _folder_now(self, then: Outcome) -> str:
        """The folder that this batch made for the same row or sheet, '' when it made none."""
        if then.sheet:
            outcome = self.sheet(then.sheet)
        else:
            known = self.knows(then.row)
            outcome = outcome_from_json(self._journal.line_at(self._offsets[then.row])) if known else None
        return outcome.folder if outcome and outcome.made else ""

    def _note(self, outcome: Outcome, offset: int) -> None:
        if outcome.sheet:
            self._sheets[outcome.sheet] = offset
            return
        short = outcome.row + 1 - len(self._offsets)
        if short > 0:
            self._offsets.extend([_UNKNOWN] * short)
        self._offsets[outcome.row] = offset

    def _begin(self, identity: Mapping[str, str]) -> None:
        """What an earlier ledger tells is kept aside until this batch is done."""
        if next(self._journal.lines(), None) is not None:
            earlier = Journal(self.out / EARLIER)
            for offset, line in self._journal.lines():
                if offset:
                    earlier.add(line, sync=False)
            earlier.close()
        self._journal.clear()
        self._journal.add(json.dumps({"format": FORMAT, "version": 1, **identity}, ensure_ascii=False).encode())

    def _go_on(self, identity: Mapping[str, str]) -> None:
        first = next(self._journal.lines(), None)
        if first is None:
            self._begin(identity)
            return
        header = json.loads(first[1])
        changed = [name for name, value in identity.items() if header.get(name) != value]
        if changed:
            raise AskError.at(
                "resume",
                f"The batch in {self.out} is another one: {', '.join(changed)} changed since.",
                "Leave --resume out to make all rows again.",
            )
        for offset, line in self._journal.lines():
            if not offset:
                continue
            outcome = outcome_from_json(line)
            if outcome.made and (not outcome.folder or (self.out / outcome.folder / REPORT).is_file()):
                self._note(outcome, offset)


def _must_be_ours(path: Path) -> None:
    """Raises: AskError when a file of the ledger's name is not one; its beginning may have been cut off."""
    if not path.is_file():
        return
    with path.open("rb") as stream:
        start = stream.read(len(_START))
    if not _START.startswith(start):
        raise AskError.at("out", f"{path} is not signgen's.", "Choose another folder, or move the file away.")
