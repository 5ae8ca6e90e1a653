"""The sign file: the same words as the options, one a line, in TOML. `signgen explain sign-file` is its reference.

Every key is an option of `signgen make` without its dashes, and options on the command line go before the file's
(`merge.py`). Lines that are set each in its own way have a table each instead of their place in `text`
(`keys/lettering.py`). Words on the command line, or in a row of a list, take the place of the tables' words, one after
the other. Paths (of the kinds `path`, `font` and `border`) are seen from the folder that the file lies in.

`sign.toml`, which `make` writes, is such a file with every default filled in, so that the sign comes out the same
when a default changes. What was left to the planner (the end mill, the cap height, the board) stays left to it, as
a comment.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path

from signgen.errors import AskError
from signgen.messages import Message
from signgen.option import Option, written
from signgen.spec import keys
from signgen.spec.keys.lettering import LINE, LINE_KEY_BY_NAME
from signgen.spec.lines import asked_of_line
from signgen.spec.paths import seen_from
from signgen.spec.sign_spec import SignSpec
from signgen.user_file import expanded, read_toml, shown

MOST_KEYS = 400
"""Each that there is, three times."""


FORMAT, VERSION = "signgen-sign", 1
"""What a written sign file says of itself. One that says nothing is taken for this version."""

HEAD = "# A sign for signgen: `signgen make --from` this file makes it again. Lengths are millimetres."


def load_sign_file(path: Path) -> dict[str, object]:
    """The keys of a sign file with their values as they stand there, paths made absolute. Whether they are known
    and make sense is for `read_spec` to say.

    Raises: AskError with the file and, where there is one, the line.
    """
    found: dict[str, object] = read_toml(path, shown(path))
    if len(found) > MOST_KEYS:
        what = Message("files.many_keys", count=len(found), most=MOST_KEYS)
        raise AskError.at(shown(path), what, Message("files.is_it_the_right_one"))
    _must_be_ours(found.pop("format", FORMAT), found.pop("version", VERSION), shown(path))
    folder = expanded(path, shown(path)).parent
    tables = found.get(LINE.name)
    _see_paths_from(folder, found, keys.KEY_BY_NAME)
    for table in tables if isinstance(tables, list) else ():
        if isinstance(table, dict):
            _see_paths_from(folder, table, LINE_KEY_BY_NAME)
    return found


def _must_be_ours(written: object, version: object, where: str) -> None:
    """Raises: AskError for another program's file, and for one of a version to come."""
    if written != FORMAT:
        raise AskError.at(
            where, Message("files.other_format", format=str(written)), Message("files.is_it_the_right_one")
        )
    if isinstance(version, bool) or not isinstance(version, int) or not 1 <= version <= VERSION:
        what = Message("files.other_version", version=str(version), known=str(VERSION))
        raise AskError.at(where, what, Message("files.newer_signgen"))


def stamped(text: str) -> str:
    """A resolved sign file as it goes to the disk: it says its format and version."""
    return text.replace(f"{HEAD}\n", f'{HEAD}\nformat = "{FORMAT}"\nversion = {VERSION}\n', 1)


def _see_paths_from(folder: Path, table: dict[str, object], options: Mapping[str, Option]) -> None:
    for name, value in table.items():
        if name in options and (own := options[name].table):
            first = own[0]
            if isinstance(value, str) and value.strip():
                table[name] = seen_from(folder, first, value)
            for each in value if isinstance(value, list) else ():
                if isinstance(each, dict):
                    _see_paths_from(folder, each, {key.name: key for key in own})
        elif name in options and isinstance(value, str) and value.strip():
            table[name] = seen_from(folder, options[name], value)


def dump_sign_file(spec: SignSpec) -> str:
    """The resolved sign file: reading it gives an equal spec. Keys stand in the order of `signgen make --help`."""
    values = asked_of(spec)
    out = [HEAD]
    group = ""
    for key in keys.KEYS:
        if key.name not in values and not key.left_open:
            continue
        if key.group != group:
            group = key.group
            out += ["", f"# {group}"]
        if key.name in values:
            out.append(f"{key.name} = {_toml(values[key.name])}")
        else:
            out.append(f"# {key.name}: {key.left_open}")
    for line in spec.text.own_lines:
        out += ["", f"[[{LINE.name}]]"]
        out += [f"{key} = {_toml(value)}" for key, value in asked_of_line(spec.text, line).items()]
    return "\n".join(out) + "\n"


def asked_of(spec: SignSpec) -> dict[str, object]:
    """What would have to be asked for, every default written out, to get an equal spec from the same shop file; the
    tables of lines apart."""
    return written(keys.KEYS, spec) | {name: _listed(value) for name, value in spec.more}


def _listed(value: object) -> object:
    return list(value) if isinstance(value, tuple) else value


def _toml(value: object) -> str:
    """A value as TOML writes it. JSON's texts are TOML's, since control characters never get this far."""
    match value:
        case str():
            return json.dumps(value, ensure_ascii=False)
        case list():
            return "[" + ", ".join(_toml(each) for each in value) + "]"
        case dict():
            return "{ " + ", ".join(f"{key} = {_toml(each)}" for key, each in value.items()) + " }"
        case bool():
            return "true" if value else "false"
        case float() if value.is_integer():
            return str(int(value))
        case _:
            return repr(value)
