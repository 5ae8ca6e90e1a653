"""A folder that holds other things too comes to its new state by a journal: begun, and then always ended.

Everything new is written first, into a hidden folder inside the place. Then one renaming says that the change has begun
(`begun.json`); whoever comes after a kill ends it. The old files go before the first new one comes, the report first of
all and last of all, so that old and new programs never lie side by side and a folder with a report is whole.
"""

from __future__ import annotations

import contextlib
import json
from collections.abc import Iterator, Mapping
from pathlib import Path

from signgen.disk.ours import NAME, REPORT, digest, digest_of_file
from signgen.disk.stage import held, remove_plain, settle, write
from signgen.errors import AskError
from signgen.messages import Message
from signgen.user_file import MOST_JSON_BYTES, read_bytes, shown

CHANGE = ".signgen-change"
_BEGUN, _NEW, _OLD = "begun.json", "new", "old"
_FORMAT = "signgen-change"


def change(place: Path, old: Mapping[str, str], files: Mapping[str, bytes]) -> None:
    """Replace the files `old` (names and SHA-256) of a folder by `files`. When a step fails the old state comes back.

    Raises: OSError; AskError when another process is at it.
    """
    with _own(place) as own:
        try:
            for name, content in files.items():
                write(own / _NEW / name, [content])
            new = {name: digest(content) for name, content in files.items()}
            _begin(own, old, new)
            _go(place, own, old, new)
        except BaseException:
            _undo(place, own, old, files)
            raise


def finish(place: Path) -> None:
    """End a change that was begun and not ended, and take away what one left that was not even begun.

    Raises: OSError; AskError when another process is at it, or a file stands in the way.
    """
    if is_unfinished(place) or (place / CHANGE).is_dir():
        with _own(place) as own:
            if (own / _BEGUN).is_file():
                _go(place, own, *_begun(own))


def is_unfinished(place: Path) -> bool:
    """Whether a change was begun in a folder and not ended."""
    return (place / CHANGE / _BEGUN).is_file()


def must_be_finished(place: Path) -> None:
    """Raises: AskError for a folder that is neither old nor new."""
    if is_unfinished(place):
        raise AskError.at(shown(place), Message("files.in_between"), Message("files.make_again"))


@contextlib.contextmanager
def _own(place: Path) -> Iterator[Path]:
    """The hidden folder, this process's own; taken away afterwards unless what was begun could not be ended."""
    own = place / CHANGE
    if own.is_symlink():
        raise AskError.at("out", Message("files.not_ours", path=shown(own)), Message("files.move_away"))
    own.mkdir(exist_ok=True)
    with held(own) as free:
        if not free:
            what = Message("files.another_writes", path=shown(place))
            raise AskError.at("out", what, Message("files.wait"))
        try:
            if not (own / _BEGUN).is_file():
                _clear(own)
                own.mkdir(exist_ok=True)
            for part in (_NEW, _OLD):
                (own / part).mkdir(exist_ok=True)
            yield own
        finally:
            if not (own / _BEGUN).is_file():
                _clear(own)


def _clear(own: Path) -> None:
    for part in (own / _NEW, own / _OLD, own):
        if part.is_dir() and not part.is_symlink():
            remove_plain(part)


def _begin(own: Path, old: Mapping[str, str], new: Mapping[str, str]) -> None:
    told = {"format": _FORMAT, "version": 1, "old": dict(old), "new": dict(new)}
    waiting = own / f"part-{_BEGUN}"
    write(waiting, [json.dumps(told).encode()])
    settle(own / _NEW)
    waiting.replace(own / _BEGUN)
    settle(own)


def _begun(own: Path) -> tuple[Mapping[str, str], Mapping[str, str]]:
    """What was begun: old and new files with their SHA-256. Raises: AskError when the journal is not ours."""
    try:
        told = json.loads(read_bytes(own / _BEGUN, "out", MOST_JSON_BYTES).decode("utf-8"))
        old, new = dict(told["old"]), dict(told["new"])
        if told["format"] == _FORMAT and all(NAME.fullmatch(name) for name in (*old, *new)):
            return old, new
    except (ValueError, KeyError, TypeError, RecursionError):
        pass
    raise AskError.at("out", Message("files.not_ours", path=shown(own)), Message("files.move_away"))


def _go(place: Path, own: Path, old: Mapping[str, str], new: Mapping[str, str]) -> None:
    """From the beginning, or from wherever it was ended. Raises: OSError; AskError when a file is in the way."""
    for name in sorted(old, key=lambda name: name != REPORT):
        waits = (own / _NEW / name).is_file()
        if digest_of_file(place / name) == old[name] and (waits or new.get(name) != old[name]):
            (place / name).replace(own / _OLD / name)
    for name in sorted(new, key=lambda name: name == REPORT):
        if digest_of_file(own / _NEW / name) == new[name]:
            if (place / name).exists() or (place / name).is_symlink():
                what = Message("files.in_the_way_of_change", path=shown(place / name))
                raise AskError.at("out", what, Message("files.move_away"))
            (own / _NEW / name).replace(place / name)
    settle(place)
    (own / _BEGUN).unlink()


def _undo(place: Path, own: Path, old: Mapping[str, str], files: Mapping[str, bytes]) -> None:
    """Back to the old state. Raises: OSError, and then the next make goes on to the new one."""
    if not (own / _BEGUN).is_file():
        return
    for name in files:
        if not (own / _NEW / name).exists() and (place / name).is_file():
            (place / name).replace(own / _NEW / name)
    for name in old:
        if (own / _OLD / name).exists():
            (own / _OLD / name).replace(place / name)
    (own / _BEGUN).unlink()
