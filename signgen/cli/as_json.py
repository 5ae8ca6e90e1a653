"""Answers for other programs: one JSON document on standard output, a problem's on one line of standard error. Their
formats are in `signgen.schemas`."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

import click

from signgen.errors import SignGenError, gathered

if TYPE_CHECKING:
    from signgen.schemas.answers import ToldProblem

json_option = click.option("--json", "as_json", is_flag=True, help="Print JSON (signgen explain schema).")


def echo_json(value: object) -> None:
    """Print a format's value; in ASCII, which every terminal and pipe takes."""
    from msgspec import to_builtins

    click.echo(json.dumps(to_builtins(value), indent=1, allow_nan=False))


def wants_json(words: list[str]) -> bool:
    """Whether --json was typed; also when the other words cannot be read."""
    options = words[: words.index("--")] if "--" in words else words
    return "--json" in options


def error_as_json(error: SignGenError | click.ClickException) -> str:
    """What is wrong, in one line of JSON."""
    from msgspec import to_builtins

    from signgen.schemas.answers import ErrorReport

    report = ErrorReport(exit_code=error.exit_code, problems=list(_told(error)))
    return json.dumps(to_builtins(report), allow_nan=False)


def _told(error: SignGenError | click.ClickException) -> Iterator[ToldProblem]:
    from signgen.messages.wording import Wording
    from signgen.schemas.answers import ToldProblem as Told

    if isinstance(error, click.ClickException):
        param = getattr(error, "param", None)
        where = str(param.name or "").replace("_", "-") if isinstance(param, click.Parameter) else ""
        yield Told(where=where, what=error.format_message(), remedy="")
        return
    wording = Wording(error.language)
    for problem in gathered(error.problems):
        yield Told(where=problem.where, what=wording(problem.what), remedy=wording(problem.remedy))


def show(error: SignGenError | click.ClickException, plainly: Callable[[], object]) -> None:
    """Tell an error on standard error: as JSON where that was asked for, else plainly."""
    if wants_json(sys.argv[1:]):
        click.echo(error_as_json(error), err=True)
    else:
        plainly()
