"""The few lines for the terminal when a batch is done."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from pathlib import Path

from signgen.batching.proof import Proved
from signgen.batching.report import ERRORS, INDEX
from signgen.batching.run import Finished
from signgen.messages import Message, Num
from signgen.numbers import figure, span

LABEL = 10
MOST_TOLD = 5
"""Rows that are gone, or ask for the same, told one by one."""
LONGEST_WORDS = 60
MOST_SHEETS = 12
"""Sheets told one by one; batch.json has all."""


def summary_text(finished: Finished, out: Path) -> str:
    """What was made, how long it will cut, on how much board, with which cutters, and what to do next."""
    rows = [
        *_made(finished),
        *_settled(finished),
        *_sheets(finished),
        *_needed(finished),
        *_cost(finished),
        *_next(finished, out),
    ]
    labels = [label if number == 0 or rows[number - 1][0] != label else "" for number, (label, _) in enumerate(rows)]
    return "\n".join(f"{label:<{LABEL}}{text}" for label, (_, text) in zip(labels, rows, strict=True))


Row = tuple[str, str]


def _made(finished: Finished) -> Iterator[Row]:
    totals = finished.totals
    made = f"{totals.made} of {finished.rows} rows made"
    if totals.signs != totals.made:
        made += f", {totals.signs} signs with their copies"
    if finished.groups:
        made += f", on {totals.sheets} sheet{'' if totals.sheets == 1 else 's'}"
    yield "signs", made


def _settled(finished: Finished) -> Iterator[Row]:
    """What stayed of an earlier batch, what is gone, and rows that ask for the same."""
    settled = finished.settled
    if settled.moved:
        yield "before", str(Message("batch.kept_moved", count=len(settled.kept), moved=settled.moved))
    elif settled.kept:
        yield "before", str(Message("batch.kept", count=len(settled.kept)))
    for outcome in settled.gone[:MOST_TOLD]:
        words = " / ".join(outcome.figures.get("lines", ()) or outcome.cells)
        yield "before", _plain(str(Message("batch.gone", row=outcome.row, words=words[:LONGEST_WORDS])))
    if len(settled.gone) > MOST_TOLD:
        yield "before", str(Message("batch.gone_more", count=len(settled.gone) - MOST_TOLD))
    for twin in settled.twins[:MOST_TOLD]:
        yield "same", str(Message("batch.twins", row=twin.row, first=twin.first))
    if len(settled.twins) > MOST_TOLD:
        yield "same", str(Message("batch.twins_more", count=len(settled.twins) - MOST_TOLD))


def _sheets(finished: Finished) -> Iterator[Row]:
    for outcome in finished.sheets[:MOST_SHEETS]:
        told = outcome.figures
        if not outcome.made:
            yield "sheets", f"{outcome.folder}: failed: {_plain(outcome.message)}"
            continue
        width, height = told["offcut_mm"]
        signs = f"{told['signs']} sign{'' if told['signs'] == 1 else 's'}"
        offcut = f", offcut {figure(width)} x {figure(height)} mm" if min(width, height) >= 1 else ""
        waste = f"{100 * told['waste_ratio']:.0f} % waste{offcut}"
        yield "sheets", f"{outcome.folder}: {signs}, {span(told['minutes'])}, {waste}"
    if len(finished.sheets) > MOST_SHEETS:
        yield "sheets", f"and {len(finished.sheets) - MOST_SHEETS} more"
    for group in finished.groups:
        if group.apart is not None:
            sheets = tuple(Num(sheet.number) for sheet in group.sheets[:MOST_TOLD])
            yield "apart", _plain(str(Message("batch.sheets_apart", sheets=sheets, why=group.apart)))
    for group in finished.groups:
        width, height = group.holds_size_mm
        size = f"{figure(width)} x {figure(height)} mm"
        yield "fits", f"{group.holds} signs of {size} on an empty sheet, {figure(group.gap_mm)} mm between them"


def _needed(finished: Finished) -> Iterator[Row]:
    totals = finished.totals
    if totals.minutes:
        yield "time", f"about {span(totals.minutes)} of cutting"
    for (material, thickness), board in sorted(totals.boards.items()):
        area = f"{board.area_mm2 / 1e6:.2f} m2 of {material}, {figure(thickness, 2)} mm"
        yield "board", f"{board.count} board{'' if board.count == 1 else 's'}, {area}"
    for tool, wear in sorted(totals.cutters.items()):
        yield "cutter", f"{tool}: {wear.cut_length_mm / 1000:.1f} m in {span(wear.minutes)}"


def _cost(finished: Finished) -> Iterator[Row]:
    quote = finished.quote
    if quote is None or not finished.totals.made:
        return
    told = quote.to_json()
    parts = ", ".join(f"{name} {told[name]:.2f}" for name in ("board", "machine", "cutters"))
    yield "cost", f"{told['total']:.2f} {quote.currency}: {parts}"
    if quote.not_priced:
        yield "cost", f"without {', '.join(sorted(quote.not_priced))}, which has no price"
    if quote.invented:
        yield "cost", "With demo prices, which are invented: put your own into a shop file."


def _next(finished: Finished, out: Path) -> Iterator[Row]:
    made = finished.totals.made
    what = "sheet and every sign on it" if finished.groups else "sign"
    yield "checks", f"All checks passed for every {what}" if made else "Nothing was made"
    if made:
        yield "next", f"Each {'sheet' if finished.groups else 'sign'} has its folder in {out}: open {out / INDEX}."
    if finished.totals.failed:
        yield "next", f"Mend {out / ERRORS} and run the batch with it as the list and the same --out."


def failure_lines(finished: Finished) -> Iterator[str]:
    """A line for each of the first rows that failed; no control character of theirs reaches the terminal."""
    for outcome in finished.failures:
        yield _plain(f"row {outcome.row}: {outcome.field_named}: {outcome.message}")
    more = finished.totals.failed - len(finished.failures)
    if more > 0:
        yield f"and {more} more rows; all are in {ERRORS}"


def _plain(text: str) -> str:
    return "".join(c if unicodedata.category(c)[0] != "C" else " " for c in text)


def proof_lines(shown: Proved) -> Iterator[str]:
    """What a contact sheet shows and where it lies."""
    yield str(Message("proof.shown", count=shown.shown, path=str(shown.path)))
    if shown.failed:
        yield str(Message("proof.failed", count=len(shown.failed)))
    if shown.no_pdf:
        yield _plain(str(Message("proof.no_pdf", why=shown.no_pdf)))
