"""What in a folder is provably signgen's own: names as it gives them, with the very contents that its report lists.

A report that somebody planted, or a file that was changed by hand, thus never lets a make delete or replace what is not
its own.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import re
import stat
from collections.abc import Mapping
from pathlib import Path

from msgspec import Struct

from signgen.errors import SignGenError
from signgen.user_file import MOST_JSON_BYTES, read_bytes

REPORT = "report.json"
"""Names every file of the job; a folder that holds it is complete."""

FORMAT = "signgen-report"

NAME = re.compile(r"[a-z0-9][a-z0-9._-]{0,120}\.(?:nc|html|pdf|svg|png|json|toml|csv)")
"""How every file is called that goes into a job's folder: never a path, never hidden, never with a blank."""

MOST_BYTES = 500_000_000
"""No file of a job comes near."""

_BLOCK = 1 << 20


class Earlier(Struct, frozen=True, kw_only=True):
    """What an earlier make left in a folder: its files with their SHA-256, those it wrote that were changed since, and
    the lines of lettering; nothing of all that where no report lies."""

    ours: Mapping[str, str]
    changed: Mapping[str, str] = {}
    lines: tuple[str, ...] | None = None


NOTHING = Earlier(ours={})


def digest(content: bytes) -> str:
    """SHA-256 in hexadecimal digits."""
    return hashlib.sha256(content).hexdigest()


def digest_of_file(path: Path) -> str:
    """The same of a file; '' for what is no regular file, is enormous, or cannot be read."""
    found = hashlib.sha256()
    try:
        told = path.lstat()
        if not stat.S_ISREG(told.st_mode) or told.st_size > MOST_BYTES:
            return ""
        with path.open("rb") as stream:
            while block := stream.read(_BLOCK):
                found.update(block)
    except OSError:
        return ""
    return found.hexdigest()


def earlier_make(folder: Path) -> Earlier:
    """What the report in a folder proves. A name that signgen would not give is never ours."""
    try:
        raw = read_bytes(folder / REPORT, "out", MOST_JSON_BYTES)
        report = json.loads(raw.decode("utf-8"))
        there = {path.name for path in folder.iterdir()}
    except (OSError, ValueError, RecursionError, SignGenError):
        return NOTHING
    if not isinstance(report, dict) or report.get("format") != FORMAT or (folder / REPORT).is_symlink():
        return NOTHING
    listed = report.get("sha256")
    told = {} if not isinstance(listed, dict) else {name: sha for name, sha in listed.items() if name in there}
    found = {name: digest_of_file(folder / name) for name in told if NAME.fullmatch(name) and name != REPORT}
    ours = {name: sha for name, sha in found.items() if sha and sha == told[name]}
    changed = {name: sha for name, sha in found.items() if sha and name not in ours}
    return Earlier(ours={**ours, REPORT: digest(raw)}, changed=changed, lines=_lines(report))


def _lines(report: Mapping[str, object]) -> tuple[str, ...] | None:
    sign = report.get("sign")
    lines = sign.get("lines") if isinstance(sign, dict) else None
    return tuple(map(str, lines)) if isinstance(lines, list) else None


def remove_ours(folder: Path, known: Mapping[str, str]) -> None:
    """Take away files of these names and contents, and the folder when nothing else lies in it."""
    for name, sha in known.items():
        if NAME.fullmatch(name) and digest_of_file(folder / name) == sha:
            (folder / name).unlink(missing_ok=True)
    with contextlib.suppress(OSError):
        folder.rmdir()
