"""`signgen.batch`: a sign for every row of a list, from Python."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from functools import cached_property
from pathlib import Path
from typing import Any, Literal, Unpack

from signgen.api.asked import plain
from signgen.api.options import Length, Options, Size
from signgen.batching.asked_sheet import read_sheet
from signgen.batching.order import CarriedFile, Order, begin_of, carry_out
from signgen.batching.report import BATCH
from signgen.batching.rows_asked import read_rows
from signgen.batching.summary import failure_lines, summary_text


class Batch:
    """A batch that was worked off, with everything in its folder: a folder for each row or sheet, batch.json,
    results.csv, and errors.csv with the rows that could not be made. `str` of it is the summary.

    >>> import pathlib, signgen, tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     _ = pathlib.Path(folder, "rooms.csv").write_text("room,size\\nKitchen,90x40\\nStore,9x4\\n")
    ...     done = signgen.batch(f"{folder}/rooms.csv", text="{room}", thickness=6, out=f"{folder}/out", workers=1)
    ...     minutes = done.report["rows_made"][0]["minutes"]
    >>> done.made, done.failed, minutes > 0
    (1, 1, True)
    >>> print(done.failures[0])
    row 3: size: ...
    """

    def __init__(self, carried: CarriedFile) -> None:
        self._carried = carried

    @property
    def folder(self) -> Path:
        """Where the rows' folders lie."""
        return self._carried.folder

    @property
    def made(self) -> int:
        """How many rows were made."""
        return self._carried.finished.totals.made

    @property
    def failed(self) -> int:
        """How many were not; errors.csv in the folder has them, with what is wrong."""
        return self._carried.finished.totals.failed

    @property
    def failures(self) -> tuple[str, ...]:
        """What is wrong with the first of them, a line each."""
        return tuple(failure_lines(self._carried.finished))

    @cached_property
    def report(self) -> dict[str, Any]:
        """What batch.json holds, by the schema of `signgen explain schema batch`."""
        report: dict[str, Any] = json.loads((self.folder / BATCH).read_text(encoding="utf-8"))
        return report

    def __repr__(self) -> str:
        return f"<signgen.Batch {str(self.folder)!r}, {self.made} made, {self.failed} failed>"

    def __str__(self) -> str:
        return summary_text(self._carried.finished, self.folder)


def batch(
    csv: str | os.PathLike[str],
    *,
    out: str | os.PathLike[str] | None = None,
    text: str | Sequence[str] | None = None,
    sign_file: str | os.PathLike[str] | None = None,
    sheet: Size | None = None,
    gap: Length | None = None,
    clamp_border: Length | None = None,
    turn: bool = True,
    keep_grain: bool = False,
    copies: int = 1,
    encoding: str | None = None,
    worksheet: str | None = None,
    ignore_columns: bool = False,
    quote: bool = False,
    labels: Literal["a4", "letter"] | None = None,
    files: Literal["all", "sheet", "programs"] = "all",
    resume: bool = False,
    fresh: bool = False,
    rows: str | None = None,
    workers: int | None = None,
    **options: Unpack[Options],
) -> Batch:
    """Make a sign for every row of a list, a folder each, or whole sheets of signs with `sheet`; as `signgen batch`.

    `text` holds the lines of lettering, with {column} for a cell; `options` are what is alike in all rows. `rows` are
    numbers as in '19,44-46'. In a folder that holds a batch, `resume` goes on with it and makes what is new or changed,
    `fresh` makes all rows anew. A script that calls this runs its own lines again in each worker: guard them with
    `if __name__ == "__main__"`.

    Lengths are millimetres as numbers, or texts with a unit; rows count as spreadsheets do, the names' row being 1.

    Raises: AskError and CannotMakeError for what is wrong whatever the rows hold; a bad row never raises.

    >>> import pathlib, signgen, tempfile
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     _ = pathlib.Path(folder, "rooms.csv").write_text("room\\nKitchen\\n")
    ...     like = {"size": (90, 40), "thickness": 6, "out": f"{folder}/out", "workers": 1}
    ...     signgen.batch(f"{folder}/rooms.csv", text="{room}", **like)
    <signgen.Batch '...out', 1 made, 0 failed>
    """
    given: dict[str, object] = {"out": out, "text": [text] if isinstance(text, str) else text}
    given |= {name.replace("_", "-"): value for name, value in options.items()}
    asked = {name: plain(value) for name, value in given.items() if value is not None}
    size = sheet if sheet is None or isinstance(sheet, str) else "x".join(f"{side}" for side in sheet)
    on_sheets = read_sheet(
        size,
        None if gap is None else f"{gap}",
        None if clamp_border is None else f"{clamp_border}",
        turn=turn,
        keep_grain=keep_grain,
    )
    order = Order(
        csv_file=Path(csv),
        asked=asked,
        sign_file=None if sign_file is None else Path(sign_file),
        sheet=on_sheets,
        copies=copies,
        encoding=encoding,
        worksheet=worksheet,
        ignore_columns=ignore_columns,
        quote=quote,
        labels=labels,
        files=files,
        begin=begin_of(resume=resume, fresh=fresh),
        rows=read_rows(rows),
        workers=workers,
    )
    return Batch(carry_out(order))
