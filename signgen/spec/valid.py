"""A finished spec is valid however it came to be: read, copied with changes, or built by hand."""

from __future__ import annotations

from collections.abc import Iterable
from operator import attrgetter

from signgen.errors import AskError, Problem
from signgen.option import Option, read_option
from signgen.spec import keys


def must_be_valid(spec: object) -> None:
    """Every value of a spec, written as a sign file would ask for it, must be one that its option reads.

    Raises: AskError with every problem at once, by the options' names.
    """
    problems = list(_problems(keys.KEYS, spec))
    if problems:
        raise AskError(problems)


def _problems(options: Iterable[Option], spec: object) -> Iterable[Problem]:
    for option in options:
        write = option.write or (attrgetter(option.field) if option.field else None)
        value = write(spec) if write else None
        if value is None:
            continue
        try:
            read_option(option, value)
        except AskError as error:
            yield from error.problems
