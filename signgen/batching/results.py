"""`results.csv`: the list as it came, with what became of each row, or of each of its pieces on sheets, behind it."""

from __future__ import annotations

import codecs
import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from signgen.batching.guard import guarded
from signgen.batching.identity import ReadHeading
from signgen.batching.outcome import RowOutcome
from signgen.batching.quote import Cost
from signgen.messages import Message
from signgen.messages.wording import Wording

COLUMNS = ("row", "folder", "sheet", "piece", "x_mm", "y_mm", "minutes", "cost", "verdict")

Place = tuple[str, str, Mapping[str, Any]]
"""The sheet's folder, its number and the piece on it."""


def places_of(sheets: Iterable[RowOutcome]) -> dict[int, list[Place]]:
    """Where the signs of each row lie."""
    places: dict[int, list[Place]] = {}
    for sheet in sheets:
        if sheet.made:
            for piece in sheet.figures["pieces"]:
                places.setdefault(piece["row"], []).append((sheet.folder, str(sheet.sheet), piece))
    return places


def results_csv(
    heading: ReadHeading,
    outcomes: Iterable[RowOutcome],
    sheets: Sequence[RowOutcome] | None,
    costs: Mapping[int, Cost],
    language: str,
) -> Iterator[bytes]:
    """In the list's own delimiter and encoding. On sheets (None: without) each piece has a line, and so has each row
    that failed; minutes are those of one sign by itself, the cost that of one sign, '' where nothing was reckoned."""
    say = Wording(language)
    encoder = codecs.getincrementalencoder(heading.encoding)("replace")
    stream = io.StringIO(newline="")
    writer = csv.writer(stream, delimiter=heading.delimiter)

    def line(cells: Iterable[str]) -> bytes:
        writer.writerow([guarded(cell) for cell in cells])
        text = stream.getvalue()
        stream.seek(0)
        stream.truncate()
        return encoder.encode(text)

    yield line([*heading.columns, *COLUMNS])
    places = places_of(sheets or ())
    for outcome in outcomes:
        cells = outcome.cells[: len(heading.columns)]
        if not outcome.made:
            verdict = say(Message("batch.verdict_failed", where=outcome.field_named, what=outcome.message))
            yield line([*cells, str(outcome.row), *[""] * (len(COLUMNS) - 2), verdict])
            continue
        cost = f"{costs[outcome.row].whole:.2f}" if outcome.row in costs else ""
        last = [f"{outcome.figures['minutes']:.2f}", cost, say(Message("batch.verdict_verified"))]
        if sheets is None:
            yield line([*cells, str(outcome.row), outcome.folder, "", "", "", "", *last])
        for folder, sheet, piece in places.get(outcome.row, ()):
            place = [sheet, piece["name"], f"{piece['x_mm']:.3f}", f"{piece['y_mm']:.3f}"]
            yield line([*cells, str(outcome.row), folder, *place, *last])
