"""`signgen.make`: a sign from Python."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from functools import partial
from pathlib import Path
from typing import Unpack

from signgen.api.job import Job
from signgen.api.options import Options
from signgen.errors import CheckFailedError
from signgen.pipeline import gather, make_job, read_sign


def make(*text: str, sign_file: str | os.PathLike[str] | None = None, **options: Unpack[Options]) -> Job:
    """Make one sign and prove it; nothing is written. Each text is a line of lettering.

    Options are those of `signgen make`, hyphens as underscores; lengths are millimetres as numbers, or texts with a
    unit ("3 1/2 in"), sizes texts or pairs. An option of None counts as not given. `sign_file` is a TOML file of the
    same keys, over which options go.

    >>> import signgen
    >>> signgen.make("17", size=(90, 60), thickness="6mm", border="rounded", corner_radius=8)
    <signgen.Job '17', 90 x 60 x 6 mm, 2 programs, all ... checks passed>
    >>> signgen.make("17", size="90x60", thicknes=6)
    Traceback (most recent call last):
        ...
    signgen.errors.AskError: thicknes: ...

    Raises: AskError with every problem at once, by the option's name; ShopError; CannotMakeError;
        CheckFailedError, whose `picture()` shows where.
    """
    asked = read_options(text, options)
    return made_of(gather(asked, Path(sign_file) if sign_file is not None else None))


def read_options(text: Sequence[str], options: Mapping[str, object]) -> dict[str, object]:
    """What was asked for, by the keys of a sign file."""
    asked = {name.replace("_", "-"): plain(value) for name, value in options.items() if value is not None}
    return asked | ({"text": list(text)} if text else {})


def made_of(asked: Mapping[str, object]) -> Job:
    """The job of what was asked for, whole. Raises: as `make`."""
    try:
        return Job(make_job(read_sign(asked)), asked)
    except CheckFailedError as error:
        raise shown(error) from None


def plain(value: object) -> object:
    """A value as a sign file would hold it: paths as texts, tuples as lists."""
    if isinstance(value, os.PathLike):
        return os.fspath(value)
    if isinstance(value, Mapping):
        return {name: plain(each) for name, each in value.items()}
    return [plain(each) for each in value] if isinstance(value, list | tuple) else value


def shown(error: CheckFailedError) -> CheckFailedError:
    """The error with its picture, which is drawn when somebody looks."""
    from signgen.pictures.board_picture import board_png, marks_of

    if error.case is not None:
        error.draw = partial(board_png, error.case, marks_of(error.case, error.report))
    return error
