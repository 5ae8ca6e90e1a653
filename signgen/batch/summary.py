"""The few lines for the terminal when a batch is done."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from pathlib import Path

from signgen.batch.report import ERRORS
from signgen.batch.run import Finished
from signgen.batch.table import Table
from signgen.sheet.numbers import figure, span


def summary_text(finished: Finished, table: Table, out: Path) -> str:
    """What was made, how long it will cut, on how much board, with which cutters, and what to do next."""
    totals = finished.totals
    made = f"{totals.made} of {table.count} rows made"
    if totals.signs != totals.made:
        made += f", {totals.signs} signs with their copies"
    rows = [("signs", made)]
    if totals.made:
        rows.append(("time", f"about {span(totals.minutes)} of cutting"))
    for (material, thickness), board in sorted(totals.boards.items()):
        area = f"{board.area_mm2 / 1e6:.2f} m2 of {material}, {figure(thickness, 2)} mm"
        rows.append(("board", f"{board.count} boards, {area}"))
    for tool, wear in sorted(totals.cutters.items()):
        rows.append(("cutter", f"{tool}: {wear.cut_length_mm / 1000:.1f} m in {span(wear.minutes)}"))
    rows.append(("checks", "All checks passed for every sign" if totals.made else "Nothing was made"))
    if totals.failed:
        rows.append(("next", f"Mend {out / ERRORS} and run the batch with it and another --out."))
    else:
        rows.append(("next", f"Each sign has its folder in {out}; print its setup.html."))
    labels = [label if number == 0 or rows[number - 1][0] != label else "" for number, (label, _) in enumerate(rows)]
    return "\n".join(f"{label:<10}{text}" for label, (_, text) in zip(labels, rows, strict=True))


def failure_lines(finished: Finished) -> Iterator[str]:
    """A line for each of the first rows that failed; no control character of theirs reaches the terminal."""
    for outcome in finished.failures:
        text = f"row {outcome.row}: {outcome.field_named}: {outcome.message}"
        yield "".join(c if unicodedata.category(c)[0] != "C" else " " for c in text)
    more = finished.totals.failed - len(finished.failures)
    if more > 0:
        yield f"and {more} more rows; all are in {ERRORS}"
