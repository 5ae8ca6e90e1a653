"""One row's sign or one sheet, made, proved and written: what workers do."""

from __future__ import annotations

import errno
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, TypeVar

from signgen.batching.layout import SheetHow, digest_of, folder_of, must_fit, sheet_figures
from signgen.batching.outcome import RowOutcome, failed
from signgen.batching.recipe import Task
from signgen.batching.shop import shop_of
from signgen.errors import SignGenError, said_in
from signgen.fastening.offcut import leftover
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from signgen.files import write_folder
from signgen.job.facts import JobFacts
from signgen.numbers import rounded
from signgen.operations.choose import may_clear
from signgen.pipeline import MadeJob, Wanted, make_job, prove, read_sign
from signgen.spec.as_typed import named_as_typed
from signgen.whole_sheet import SHEET, SheetAsked, make_sheet, size_of

T = TypeVar("T")

DISK_ERRORS = frozenset({errno.ENOSPC, errno.EDQUOT, errno.EROFS, errno.EIO, errno.EACCES, errno.EPERM, errno.EFBIG})
"""What the disk says when no row's folder can be written."""


Made = tuple[RowOutcome, Mapping[str, bytes]]
"""What became of a row or a sheet, and every file of its folder, none when there is to be no folder."""


def make_row(task: Task, wanted: Wanted = "all") -> Made:
    """A row's outcome and every file of its folder, none when it cannot be made."""
    try:
        with said_in(task.asked.get("language")), named_as_typed(task.asked):
            job: MadeJob = make_job(read_sign(task.asked, shop_of), wanted=wanted)
    except SignGenError as error:
        return failed(task.row, error, task.folder, task.copies), {}
    return RowOutcome(row=task.row, folder=task.folder, copies=task.copies, figures=figures(job.facts)), job.files


def place(outcome: RowOutcome, files: Mapping[str, bytes], out: Path) -> RowOutcome:
    """Write an outcome's folder below `out`; the outcome, which is another one when that fails."""
    if not files:
        return outcome
    try:
        write_folder(out / outcome.folder, files)
    except SignGenError as error:
        cause = error.__cause__
        stops = isinstance(cause, OSError) and cause.errno in DISK_ERRORS
        return failed(outcome.row, error, outcome.folder, outcome.copies, stops=stops, sheet=outcome.sheet)
    return outcome


def make_and_place(item: T, make: Callable[[T], Made], out: Path) -> RowOutcome:
    """Make a row or a sheet and write its folder below `out`: what a worker of this machine does."""
    return place(*make(item), out)


def prove_row(task: Task, how: SheetHow) -> Made:
    """Prove that a row's sign can be made, for a sheet that is made later; nothing is written."""
    try:
        with said_in(task.asked.get("language")), named_as_typed(task.asked):
            facts = prove(read_sign(task.asked, shop_of))
        must_fit(facts.spec, how, facts.programs[-1].tool.diameter_mm)
    except SignGenError as error:
        return failed(task.row, error, "", task.copies), {}
    drawing = facts.drawing
    told = sheet_figures(
        facts.spec,
        [size_of(hole) for hole in drawing.of(Hole)],
        [tool.name for tool in may_clear(drawing, facts.spec)],
        len(drawing.of(Tab)),
        rounded(drawing.edge.area, 2),
    )
    return RowOutcome(row=task.row, copies=task.copies, figures={**figures(facts), "sheet": told}), {}


def make_sheet_row(sheet: SheetAsked, wanted: Wanted = "all") -> Made:
    """A sheet's outcome and every file of its folder."""
    folder = folder_of(sheet)
    try:
        job = make_sheet(sheet, shop_of, wanted)
    except SignGenError as error:
        return failed(0, error, folder, sheet=sheet.number), {}
    return RowOutcome(row=0, sheet=sheet.number, folder=folder, figures=sheet_told(sheet, job, wanted)), job.files


def sheet_told(sheet: SheetAsked, job: MadeJob, wanted: Wanted) -> dict[str, Any]:
    """What the batch's report tells of one sheet."""
    facts = job.facts
    left_over = leftover(facts.drawing, facts.stock, facts.programs[-1].tool.diameter_mm)
    return {
        "digest": digest_of(job.files[SHEET], wanted),
        "width_mm": rounded(sheet.size_mm[0], 4),
        "height_mm": rounded(sheet.size_mm[1], 4),
        "thickness_mm": rounded(facts.drawing.thickness_mm, 4),
        "material": facts.spec.material.name,
        "machine": facts.spec.machine.name,
        "signs": len(sheet.pieces),
        "minutes": rounded(sum(program.minutes for program in facts.programs), 2),
        "programs": programs_told(facts),
        "used_ratio": rounded(left_over.used_ratio, 4),
        "offcut_mm": [rounded(value, 1) for value in left_over.offcut_mm],
        "waste_ratio": rounded(left_over.waste_ratio(facts.stock), 4),
        "pieces": [
            {"name": piece.name, "row": piece.row, "x_mm": rounded(piece.x_mm, 3), "y_mm": rounded(piece.y_mm, 3),
             "turned": piece.turned}
            for piece in sheet.pieces
        ],
    }  # fmt: skip


def figures(facts: JobFacts) -> dict[str, Any]:
    """What the batch's report tells of one sign."""
    return {
        "lines": list(facts.spec.text.lines),
        "width_mm": rounded(facts.drawing.width_mm, 4),
        "height_mm": rounded(facts.drawing.height_mm, 4),
        "thickness_mm": rounded(facts.drawing.thickness_mm, 4),
        "material": facts.spec.material.name,
        "machine": facts.spec.machine.name,
        "board_mm": [rounded(facts.stock.width_mm, 4), rounded(facts.stock.height_mm, 4)],
        "minutes": rounded(sum(program.minutes for program in facts.every_program), 2),
        "programs": programs_told(facts),
    }


def programs_told(facts: JobFacts) -> list[dict[str, Any]]:
    """What the batch's report tells of a job's programs."""
    return [
        {
            "file": program.file,
            "tool": program.tool.name,
            "minutes": rounded(program.minutes, 2),
            "cut_length_mm": rounded(program.cut_length_mm, 1),
        }
        for program in facts.every_program
    ]
