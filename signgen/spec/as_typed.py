"""Problems by the option that was typed, where another one follows from it: the screw that gave a hole its diameter."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from msgspec.structs import replace

from signgen.errors import SignGenError
from signgen.spec.keys import KEY_BY_NAME


@contextmanager
def named_as_typed(asked: Mapping[str, object]) -> Iterator[None]:
    """Problems raised meanwhile name an option that was asked for, where the one that they name was not, and just one
    was that stands in its place."""
    try:
        yield
    except SignGenError as error:
        error.problems = tuple(replace(each, where=typed_for(each.where, asked)) for each in error.problems)
        raise


def typed_for(name: str, asked: Mapping[str, object]) -> str:
    """The option asked for that stands in another's place; the name itself when that was asked for, or none was."""
    if name in asked or name not in KEY_BY_NAME:
        return name
    instead = [key for key in asked if key in KEY_BY_NAME and name in KEY_BY_NAME[key].replaces]
    return instead[0] if len(instead) == 1 else name
