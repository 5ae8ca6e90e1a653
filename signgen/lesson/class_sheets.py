"""A class on shared sheets: the list that a batch lays out, and what came of it for the class page."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Sequence
from pathlib import Path

from signgen.errors import AskError
from signgen.lesson.school_class import Pupil, PupilsJob, Stint
from signgen.lesson.source import tool_of
from signgen.messages import Message
from signgen.messages.values import Sides
from signgen.pipeline import REPORT
from signgen.spec.placeholders import FIRST_ROW
from signgen.user_file import MOST_JSON_BYTES, read_bytes
from signgen.words.words import words_in

FOLDER, LIST = "sheets", "sheets.csv"
BATCH = "batch.json"


def sheet_list(pupils: Sequence[Pupil]) -> str:
    """The pupils' signs as a list for a batch with the same sign file, a row each in their order."""
    columns = list(dict.fromkeys(key for pupil in pupils for key in pupil.cells))
    out = io.StringIO()
    writer = csv.DictWriter(out, columns, lineterminator="\n")
    writer.writeheader()
    for pupil in pupils:
        writer.writerow(pupil.cells)
    return out.getvalue()


def sheets_made(folder: Path, made: Sequence[PupilsJob], language: str) -> tuple[Stint, ...]:
    """What is fitted and run for each sheet that a batch of these pupils' list made in a folder. Raises: AskError where
    its reports are not as they were written."""
    try:
        told = json.loads(read_bytes(folder / BATCH, str(folder), MOST_JSON_BYTES))
        return tuple(_stint(folder, row, made, language) for row in told["sheets"] if row["made"])
    except (ValueError, KeyError, TypeError, IndexError) as error:
        raise AskError.at(str(folder), Message("lesson.no_sheets"), Message("lesson.make_sheets_again")) from error


def _stint(folder: Path, row: dict[str, object], made: Sequence[PupilsJob], language: str) -> Stint:
    words = words_in(language)
    name = str(row["folder"])
    report = json.loads(read_bytes(folder / name / REPORT, name, MOST_JSON_BYTES))
    pieces = row["pieces"]
    if not isinstance(pieces, list):
        raise TypeError
    size = Sides((float(str(row["width_mm"])), float(str(row["height_mm"]))), 1, True)
    names = tuple(made[int(piece["row"]) - FIRST_ROW].pupil.name for piece in pieces)
    return Stint(
        head=Message("lesson.class_sheet", folder=f"{FOLDER}/{name}", size=size, names=names),
        fittings=tuple(
            Message(
                "lesson.class_fit_sheet",
                cutter=tool_of(each["tool"]).called,
                file=str(each["file"]),
                time=words.span(float(each["minutes"])),
            )
            for each in report["programs"]
        ),
    )
