"""One row's sign, made and written: what a worker does."""

from __future__ import annotations

import errno
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from signgen.batch.outcome import Outcome, failed
from signgen.batch.recipe import Task
from signgen.errors import SignGenError
from signgen.files import place_folder
from signgen.pipeline import Job, make_job, read_sign
from signgen.sheet.job_facts import JobFacts
from signgen.sheet.numbers import rounded
from signgen.shop.load import load_shop
from signgen.shop.shop import Shop

DISK_ERRORS = frozenset({errno.ENOSPC, errno.EDQUOT, errno.EROFS, errno.EIO, errno.EACCES, errno.EPERM, errno.EFBIG})
"""What the disk says when no row's folder can be written."""


@lru_cache(maxsize=8)
def shop_of(path: Path | None) -> Shop:
    """The shop, read once: a batch is made with one state of it."""
    return load_shop(path)


def make_row(task: Task) -> tuple[Outcome, Mapping[str, bytes]]:
    """A row's outcome and every file of its folder, none when it cannot be made."""
    try:
        job: Job = make_job(read_sign(task.asked, shop_of))
    except SignGenError as error:
        return failed(task.row, error, task.folder, task.copies), {}
    return Outcome(row=task.row, folder=task.folder, copies=task.copies, figures=figures(job.facts)), job.files


def place_row(outcome: Outcome, files: Mapping[str, bytes], out: Path) -> Outcome:
    """Write a row's folder below `out`; the outcome, which is another one when that fails."""
    if not files:
        return outcome
    try:
        place_folder(out / outcome.folder, files)
    except SignGenError as error:
        cause = error.__cause__
        stops = isinstance(cause, OSError) and cause.errno in DISK_ERRORS
        return failed(outcome.row, error, outcome.folder, outcome.copies, stops=stops)
    return outcome


def write_row(task: Task, out: Path) -> Outcome:
    """Make a row's sign and write its folder below `out`."""
    return place_row(*make_row(task), out)


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
        "minutes": rounded(sum(program.minutes for program in facts.programs), 2),
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
        for program in facts.programs
    ]
