"""What is asked for from Python, as a sign file would hold it, and errors as Python shows them."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from functools import partial

from signgen.errors import CheckFailedError


def read_options(text: Sequence[str], options: Mapping[str, object]) -> dict[str, object]:
    """What was asked for, by the keys of a sign file."""
    asked = {name.replace("_", "-"): plain(value) for name, value in options.items() if value is not None}
    return asked | ({"text": list(text)} if text else {})


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
