"""What a browser asks for, into what `signgen make` would be asked for: nothing in it reaches a file of this machine.

Only files that the same person has handed over can be named, as `own:NAME`; they stand in that person's folder.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

from signgen.borders.path import PathOutline
from signgen.errors import AskError, Problem
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.messages import Message
from signgen.option import Option, did_you_mean
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE, LINE_KEY_BY_NAME

OWN = "own:"
"""Before the name of a file that was handed over."""

PLAIN = frozenset({"length", "size", "angle", "number", "count", "choice", "word", "lines", "flag"})
"""Kinds of options that name no file. A kind that is neither here nor read below cannot be asked for on the page."""

MOST_TEXT = 4000
"""Characters of a value."""


def asked_from(wanted: object, own: Mapping[str, Path]) -> dict[str, object]:
    """The keys with their values as a sign file would hold them; empty texts count as not given. `own`: the files of
    this person by name.

    Raises: AskError with every key that is unknown, or whose value names a file that was not handed over.
    """
    if not isinstance(wanted, Mapping):
        raise AskError.at("", Message("web.not_a_table"))
    found: dict[str, object] = {}
    problems: list[Problem] = []
    for name, value in _given(wanted):
        try:
            if name == LINE.name:
                found[name] = [dict(_values(table, own, LINE_KEY_BY_NAME)) for table in _tables(value)]
            else:
                found |= dict(_values({name: value}, own, keys.KEY_BY_NAME))
        except AskError as error:
            problems += error.problems
    if problems:
        raise AskError(problems)
    return found


def _given(table: Mapping[Any, Any]) -> Iterator[tuple[str, object]]:
    for name, value in table.items():
        if not isinstance(name, str) or len(name) > MOST_TEXT:
            raise AskError.at("", Message("web.not_a_table"))
        if value is not None and value != "" and value != []:
            yield name, value


def _tables(value: object) -> list[Mapping[Any, Any]]:
    if not isinstance(value, list) or not all(isinstance(each, Mapping) for each in value):
        raise AskError.at(LINE.name, Message("web.not_a_table"))
    return value


def _values(
    table: Mapping[Any, Any], own: Mapping[str, Path], options: Mapping[str, Option]
) -> Iterator[tuple[str, object]]:
    for name, value in _given(table):
        option = options.get(name)
        if option is None or name == keys.OUT.name:
            raise AskError.at(name[:80], Message("spec.there_no_such_key"), did_you_mean(name[:80], options))
        yield name, _value(option, value, own)


def _value(option: Option, value: object, own: Mapping[str, Path]) -> object:
    if isinstance(value, list):
        if len(value) > MOST_TEXT or not all(isinstance(each, str | int | float) for each in value):
            raise AskError.at(option.name, Message("web.not_a_value"))
        return [each[:MOST_TEXT] if isinstance(each, str) else each for each in value]
    if not isinstance(value, str | int | float):
        raise AskError.at(option.name, Message("web.not_a_value"))
    if option.kind in PLAIN:
        return value[:MOST_TEXT] if isinstance(value, str) else value
    text = str(value).strip()[:MOST_TEXT]
    match option.kind:
        case "font":
            return str(_file(option, text, own)) if text.startswith(OWN) else _face(option, text)
        case "border":
            name, colon, file = text.partition(":")
            if name.strip().casefold() != PathOutline.name:
                return text
            return f"{PathOutline.name}:{_file(option, file.strip() if colon else '', own)}"
        case "path":
            return str(_file(option, text, own))
    raise AskError.at(option.name, Message("web.only_in_the_terminal"), Message("web.use_the_command"))


def _file(option: Option, text: str, own: Mapping[str, Path]) -> Path:
    path = own.get(text.removeprefix(OWN)) if text.startswith(OWN) else None
    if path is None:
        raise AskError.at(option.name, Message("web.no_files"), Message("web.hand_it_over"))
    return path


def _face(option: Option, text: str) -> str:
    names = [face.name for face in (*catalogue(), *stroke_catalogue())]
    if text.casefold() not in names:
        what = Message("lettering.there_no_face_named", asked=repr(text[:80]))
        raise AskError.at(option.name, what, did_you_mean(text[:80], names))
    return text
