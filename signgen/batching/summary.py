"""The few lines for the terminal when a batch is done."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from pathlib import Path

from signgen.batching.proof import Proved
from signgen.batching.report import ERRORS, INDEX
from signgen.batching.run import Finished
from signgen.job.survey import span_said
from signgen.messages import Message, Mm, Num, Sides
from signgen.messages.wording import Wording

LABEL = 10
MOST_TOLD = 5
"""Rows that are gone, or ask for the same, told one by one."""
LONGEST_WORDS = 60
MOST_SHEETS = 12
"""Sheets told one by one; batch.json has all."""


def summary_text(finished: Finished, out: Path, language: str = "en") -> str:
    """What was made, how long it will cut, on how much board, with which cutters, and what to do next."""
    say = Wording(language)
    rows = [
        *_made(finished),
        *_settled(finished),
        *_sheets(finished),
        *_needed(finished),
        *_cost(finished),
        *_next(finished, out),
    ]
    labels = [label if number == 0 or rows[number - 1][0] != label else "" for number, (label, _) in enumerate(rows)]
    named = [say(Message(f"batch_row.{label}")) if label else "" for label in labels]
    width = max(LABEL, *(len(label) + 1 for label in named))
    lines = (f"{label:<{width}}{_plain(say(text))}" for label, (_, text) in zip(named, rows, strict=True))
    return "\n".join((*lines, *say.lines(())))


Row = tuple[str, Message]


def _made(finished: Finished) -> Iterator[Row]:
    totals = finished.totals
    made = Message("batch_sum.made", made=totals.made, rows=finished.rows)
    if totals.signs != totals.made:
        made = Message("batch_sum.with_copies", made=made, signs=totals.signs)
    if finished.groups:
        made = Message("batch_sum.on_sheets", made=made, sheets=totals.sheets)
    yield "signs", made


def _settled(finished: Finished) -> Iterator[Row]:
    """What stayed of an earlier batch, what is gone, and rows that ask for the same."""
    settled = finished.settled
    if settled.moved:
        yield "before", Message("batch.kept_moved", count=len(settled.kept), moved=settled.moved)
    elif settled.kept:
        yield "before", Message("batch.kept", count=len(settled.kept))
    for outcome in settled.gone[:MOST_TOLD]:
        words = " / ".join(outcome.figures.get("lines", ()) or outcome.cells)
        yield "before", Message("batch.gone", row=outcome.row, words=words[:LONGEST_WORDS])
    if len(settled.gone) > MOST_TOLD:
        yield "before", Message("batch.gone_more", count=len(settled.gone) - MOST_TOLD)
    for twin in settled.twins[:MOST_TOLD]:
        yield "same", Message("batch.twins", row=twin.row, first=twin.first)
    if len(settled.twins) > MOST_TOLD:
        yield "same", Message("batch.twins_more", count=len(settled.twins) - MOST_TOLD)


def _sheets(finished: Finished) -> Iterator[Row]:
    for outcome in finished.sheets[:MOST_SHEETS]:
        told = outcome.figures
        if not outcome.made:
            yield "sheets", Message("batch_sum.sheet_failed", folder=outcome.folder, why=outcome.message)
            continue
        width, height = told["offcut_mm"]
        sheet = Message(
            "batch_sum.sheet",
            folder=outcome.folder,
            signs=int(told["signs"]),
            span=span_said(told["minutes"]),
            waste=Num(100 * told["waste_ratio"], 0),
        )
        if min(width, height) >= 1:
            sheet = Message("batch_sum.sheet_and_offcut", sheet=sheet, offcut=Sides((width, height), 1, True))
        yield "sheets", sheet
    if len(finished.sheets) > MOST_SHEETS:
        yield "sheets", Message("batch_sum.more_sheets", count=len(finished.sheets) - MOST_SHEETS)
    for group in finished.groups:
        if group.apart is not None:
            sheets = tuple(Num(sheet.number) for sheet in group.sheets[:MOST_TOLD])
            yield "apart", Message("batch.sheets_apart", sheets=sheets, why=group.apart)
    for group in finished.groups:
        size = Sides(group.holds_size_mm, 1, True)
        yield "fits", Message("batch_sum.fits", count=group.holds, size=size, gap=Mm(group.gap_mm, 1, True))


def _needed(finished: Finished) -> Iterator[Row]:
    totals = finished.totals
    if totals.minutes:
        yield "time", Message("batch_sum.cutting", span=span_said(totals.minutes))
    for (material, thickness), board in sorted(totals.boards.items()):
        area = Num(board.area_mm2 / 1e6, 2)
        thick = Mm(thickness, 2, True)
        yield "board", Message("batch_sum.boards", count=board.count, area=area, material=material, thickness=thick)
    for tool, wear in sorted(totals.cutters.items()):
        length = Num(wear.cut_length_mm / 1000, 1)
        yield "cutter", Message("batch_sum.cutter", tool=tool, length=length, span=span_said(wear.minutes))


def _cost(finished: Finished) -> Iterator[Row]:
    quote = finished.quote
    if quote is None or not finished.totals.made:
        return
    told = quote.to_json()
    parts = {name: Num(told[name], 2) for name in ("board", "machine", "cutters")}
    yield "cost", Message("batch_sum.cost", total=Num(told["total"], 2), currency=quote.currency, **parts)
    if quote.not_priced:
        yield "cost", Message("batch_sum.not_priced", names=tuple(sorted(quote.not_priced)))
    if quote.invented:
        yield "cost", Message("batch_sum.demo_prices")


def _next(finished: Finished, out: Path) -> Iterator[Row]:
    made = finished.totals.made
    what = "sheet" if finished.groups else "sign"
    yield "checks", Message(f"batch_sum.passed.{what}") if made else Message("batch_sum.nothing_made")
    if made:
        yield "next", Message(f"batch_sum.open.{what}", folder=str(out), page=str(out / INDEX))
    if finished.totals.failed:
        yield "next", Message("batch_sum.mend", errors=str(out / ERRORS))


def failure_lines(finished: Finished, language: str = "en") -> Iterator[str]:
    """A line for each of the first rows that failed; no control character of theirs reaches the terminal."""
    say = Wording(language)
    for outcome in finished.failures:
        told = Message("batch_sum.row", row=outcome.row, field=outcome.field_named, what=outcome.message)
        yield _plain(say(told))
    more = finished.totals.failed - len(finished.failures)
    if more > 0:
        yield say(Message("batch_sum.more_rows", count=more, file=ERRORS))


def _plain(text: str) -> str:
    return "".join(c if unicodedata.category(c)[0] != "C" else " " for c in text)


def proof_lines(shown: Proved, language: str = "en") -> Iterator[str]:
    """What a contact sheet shows and where it lies."""
    say = Wording(language)
    yield say(Message("proof.shown", count=shown.shown, path=str(shown.path)))
    if shown.failed:
        yield say(Message("proof.failed", count=len(shown.failed)))
    if shown.no_pdf:
        yield _plain(say(Message("proof.no_pdf", why=shown.no_pdf)))
