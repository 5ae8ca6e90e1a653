"""A file that somebody names, read whole or refused in a sentence: the one door for everything that is read.

Only regular files are read: a pipe would be waited for, a device may never end. No more is read than the limit,
whatever the system says of the length.
"""

from __future__ import annotations

import errno
import json
import os
import re
import stat
import tomllib
from pathlib import Path
from typing import Any

from signgen.errors import AskError, SignGenError
from signgen.messages import Message, Num, Sentence

MOST_TOML_BYTES = 1_000_000
"""A sign file of forty lines has some ten thousand; a shop of a thousand cutters has two hundred thousand."""

MOST_JSON_BYTES = 64_000_000
"""The report of a sheet with a thousand signs has two million."""

MOST_PROGRAM_BYTES = 8_000_000
"""Three hundred thousand lines, ten hours and more of cutting; the longest that is made here has a tenth."""

MOST_DIGITS = 300
"""Of one number. More cannot be meant, and Python refuses to read some thousand in its own words."""

MOST_VALUES = 20_000
"""Keys and values of one file: a thousand cutters have fifteen thousand."""

MOST_PARTS = 40
"""Of one dotted key, and tables in each other: a sign file has two."""

LOOK = Message("files.look_at_the_path")

_DIGITS = re.compile(rf"[0-9_]{{{MOST_DIGITS + 1},}}|0x[0-9a-fA-F_]{{{MOST_DIGITS + 1},}}")
_DOTTED = re.compile(rf"^[ \t\[]*(?:[^\s.=#\"']+[ \t]*\.[ \t]*){{{MOST_PARTS},}}", re.MULTILINE)
_PLACE = re.compile(r"(?P<what>.*) \(at line (?P<line>\d+), column \d+\)$", re.DOTALL)
_NOT_BLOCKING = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0) | getattr(os, "O_CLOEXEC", 0)


def why(error: OSError | ValueError | RuntimeError) -> Sentence:
    """What the system has against a path, in a few words."""
    if isinstance(error, OSError):
        return error.strerror or str(error) or type(error).__name__
    return Message("files.nul" if isinstance(error, ValueError) else "files.leads_nowhere")


def shown(path: str | os.PathLike[str]) -> str:
    """A path for a message: one line of printable characters, a long one shortened in its middle."""
    text = "".join(c if c.isprintable() else f"\\x{ord(c):02x}" for c in os.fspath(path))
    return text if len(text) <= 160 else f"{text[:100]}...{text[-50:]}"


def expanded(path: str | os.PathLike[str], where: str, remedy: Sentence = LOOK) -> Path:
    """The path with `~` as the user's home. Raises: AskError for the home of nobody."""
    try:
        return Path(path).expanduser()
    except RuntimeError as error:
        raise AskError.at(where, Message("files.unread", path=shown(path), why=why(error)), remedy) from None


def is_there(path: Path) -> bool:
    """Whether something lies at a path; False too where the system can't even look, as for a name that is too long."""
    try:
        return path.exists()
    except (OSError, ValueError):
        return False


def read_bytes(path: str | os.PathLike[str], where: str, most: int, *, remedy: Sentence = LOOK) -> bytes:
    """The whole file, at most `most` bytes. `where` is the word that the user typed.

    Raises: AskError when it cannot be read, is no regular file or is longer.
    """
    name = shown(path)
    try:
        descriptor = os.open(expanded(path, where, remedy), os.O_RDONLY | _NOT_BLOCKING)
        with os.fdopen(descriptor, "rb") as stream:
            if not stat.S_ISREG(os.fstat(descriptor).st_mode):
                raise AskError.at(where, Message("files.no_file", path=name), Message("files.save_it_first"))
            raw = stream.read(most + 1)
    except IsADirectoryError:
        raise AskError.at(where, Message("files.folder", path=name), remedy) from None
    except (OSError, ValueError) as error:
        if isinstance(error, OSError) and error.errno in (errno.EMFILE, errno.ENFILE):
            remedy = Message("files.too_many_open")
        raise AskError.at(where, Message("files.unread", path=name, why=why(error)), remedy) from None
    if len(raw) > most:
        what = Message("files.too_large", path=name, most=Num(most / 1e6))
        raise AskError.at(where, what, Message("files.is_it_the_right_one"))
    return raw


def read_toml(path: str | os.PathLike[str], where: str, advice: Sentence = "") -> dict[str, Any]:
    """The keys of a TOML file. `where` leads the problem when the file cannot be read; else the file and its line do.

    Raises: AskError.
    """
    raw = read_bytes(path, where, MOST_TOML_BYTES)
    return toml_of(raw, shown(path), advice)


def toml_of(raw: bytes, name: str, advice: Sentence = "") -> dict[str, Any]:
    """The keys of TOML text. Raises: AskError with the name and the line."""
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise AskError.at(f"{name}:{line}", Message("files.no_utf8"), Message("files.save_as_utf8")) from None
    for pattern, message in ((_DIGITS, Message("files.many_digits")), (_DOTTED, Message("files.many_parts"))):
        if slip := pattern.search(text):
            line = text.count("\n", 0, slip.start()) + 1
            raise AskError.at(f"{name}:{line}", message, Message("files.mend_line"))
    try:
        found = tomllib.loads(text)
    except RecursionError:
        raise AskError.at(name, Message("files.deep"), Message("files.mend_file")) from None
    except ValueError as error:  # TOMLDecodeError is one; a date that no calendar has is another
        match = _PLACE.match(str(error))
        where, what = (f"{name}:{match['line']}", match["what"]) if match else (name, str(error))
        raise AskError.at(where, Message("files.no_toml", why=what), _advice(text, match, advice)) from None
    if _count(found) > MOST_VALUES:
        raise AskError.at(name, Message("files.many_values", most=MOST_VALUES), Message("files.is_it_the_right_one"))
    return found


def _count(value: object) -> int:
    """Values and keys in a TOML table; `MOST_PARTS` and its reader's own bound keep it from going deep."""
    if isinstance(value, dict):
        return sum(1 + _count(each) for each in value.values())
    return sum(1 + _count(each) for each in value) if isinstance(value, list) else 0


def _advice(text: str, match: re.Match[str] | None, otherwise: Sentence) -> Sentence:
    """What to do about a line that TOML does not take; the usual slip is a text without quotes."""
    lines = text.splitlines()
    line = lines[int(match["line"]) - 1] if match and int(match["line"]) <= len(lines) else ""
    _, equals, value = line.partition("=")
    if equals and value.strip() and value.strip()[0] not in "\"'[{+-.0123456789":
        return Message("files.put_quotes", value=value.strip()[:80])
    return otherwise or Message("files.write_toml")


def read_json(path: Path, where: str, *, remedy: Sentence) -> Any:
    """What a JSON file holds. Raises: AskError."""
    raw = read_bytes(path, where, MOST_JSON_BYTES, remedy=remedy)
    try:
        return json.loads(raw.decode("utf-8"))
    except (ValueError, RecursionError):
        raise AskError.at(where, Message("files.no_json", path=shown(path.name)), remedy) from None


def unwritable(path: Path, error: OSError | ValueError | RuntimeError, where: str = "out") -> SignGenError:
    """The error of a place that cannot be written."""
    remedy = Message("files.choose_a_folder")
    return AskError.at(where, Message("files.unwritten", path=shown(path), why=why(error)), remedy)
