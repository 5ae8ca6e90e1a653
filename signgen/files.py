"""The only door to the disk for jobs: a folder comes to its new state as a whole or not at all, however a process ends.

A folder that is new comes by one renaming. One that holds nothing but an earlier make's files changes places with the
new one in one step, where the system has such a step. Otherwise `disk/change.py` has a journal that the next make ends.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Collection, Iterable, Iterator, Mapping
from pathlib import Path

from signgen.disk.change import change, finish
from signgen.disk.exchange import exchanged, may_be_exchanged
from signgen.disk.ours import NAME, REPORT, Earlier, earlier_make, remove_ours
from signgen.disk.stage import STAGE, held, settle, staged, sweep, unused, write
from signgen.errors import AskError
from signgen.messages import Message
from signgen.user_file import expanded, is_there, shown, unwritable

__all__ = [
    "moved",
    "must_have_lines",
    "remove_folder",
    "superseded",
    "sweep",
    "write_file",
    "write_files",
    "write_folder",
]


def write_folder(out: Path, files: Mapping[str, bytes], superseded: Collection[str] = ()) -> None:
    """Bring the folder `out` to hold exactly `files` and whatever in it is not ours.

    Files that an earlier make wrote there are replaced or removed; anything else is left alone. `files` must hold
    report.json, whose keys `files` and `sha256` name the others. `superseded` names files of an earlier make that may
    be replaced even if they were changed since: the sign file that this make was read from.

    Raises: AskError when the folder cannot be written, or when a file in it that is not ours stands in the way.
    """
    strange = [name for name in files if not NAME.fullmatch(name)]
    if REPORT not in files or strange:
        raise ValueError(f"these are not the files of a job: {', '.join(strange)}")
    place = _place(out)
    try:
        if is_there(place):
            if not place.is_dir():
                raise AskError.at("out", Message("files.is_a_file", path=shown(out)), Message("files.choose_a_name"))
            finish(place)
            _renew(out, place, files, superseded)
        else:
            with _folders(place.parent), staged(place, files) as stage:
                stage.rename(place)
            settle(place.parent)
        sweep(place.parent)
    except OSError as error:
        raise unwritable(out, error) from error


def _place(out: Path) -> Path:
    """Where a path leads, through links. Raises: AskError for a name that no disk takes."""
    try:
        return out.resolve()
    except (OSError, ValueError, RuntimeError) as error:  # a NUL; links that lead in a circle
        raise unwritable(out, error) from error


def _renew(out: Path, place: Path, files: Mapping[str, bytes], superseded: Collection[str]) -> None:
    """From the old state to the new one. Raises: OSError, AskError."""
    earlier = earlier_make(place)
    old = dict(earlier.ours)
    if REPORT in old:
        old |= {name: earlier.changed[name] for name in superseded if name in earlier.changed}
    _nothing_in_the_way(out, place, files, old, earlier)
    if not ({path.name for path in place.iterdir()} <= set(old) and _changed_places(place, files, old)):
        change(place, old, files)


def _changed_places(place: Path, files: Mapping[str, bytes], old: Collection[str]) -> bool:
    """Whether a new folder is now in the old one's place; False, and nothing happened, where that cannot be had."""
    done = False
    try:
        with staged(place, files) as new:
            if may_be_exchanged(place, new):
                done = exchanged(place, new)
            if done:
                _give_back(new, place, old)
                settle(place.parent)
    except OSError:  # nothing may be made beside the folder, or its disk is full: inside it may be room or a reason
        if done:
            raise
    return done


def _nothing_in_the_way(
    out: Path, place: Path, files: Mapping[str, bytes], old: Mapping[str, str], earlier: Earlier
) -> None:
    changed = [name for name in earlier.changed if name not in old]
    if changed:
        raise AskError.at(
            "out",
            Message("files.changed_since", path=shown(out), names=tuple(changed), count=len(changed)),
            Message("files.keep_what_you_want"),
        )
    in_the_way = [name for name in files if name not in old and is_there(place / name)]
    if in_the_way:
        raise AskError.at(
            "out",
            Message("files.in_the_way", path=shown(out), names=tuple(in_the_way)),
            Message("files.move_the_file"),
        )


def _give_back(gone: Path, place: Path, old: Collection[str]) -> None:
    """What somebody put into the old folder in the moment of the exchange goes into the new one."""
    for path in gone.iterdir():
        if path.name not in old and not is_there(place / path.name):
            path.rename(place / path.name)


def superseded(read: str | None, out: Path) -> tuple[str, ...]:
    """The name in the folder `out` of the file that was read, if it lies there."""
    if read is None or _place(expanded(read, "from")).parent != _place(out):
        return ()
    return (Path(read).name,)


def must_have_lines(out: Path, lines: Collection[str]) -> None:
    """A folder that nobody named is only made anew for the same lettering. Raises: AskError."""
    there = earlier_make(out).lines
    if there is not None and there != tuple(lines):
        what = Message("files.another_sign", path=shown(out), lines=" / ".join(there)[:100])
        raise AskError.at("out", what, Message("files.name_a_folder", name=_free_name(out)))


def _free_name(out: Path) -> str:
    return next(name for n in range(2, 10_000) if not is_there(out.with_name(name := f"{out.name}-{n}")))


def write_files(out: Path, files: Mapping[str, bytes], where: str) -> None:
    """Bring the named files into the folder `out`, in place of those of the same names; none when one of them cannot be
    written at all.

    Raises: AskError, naming the option `where`, when the folder cannot be written.
    """
    waiting = {name: out / f"{STAGE}{unused()}" for name in files}
    try:
        with _folders(out):
            try:
                for name, content in files.items():
                    write(waiting[name], [content])
                for name in files:
                    waiting[name].replace(out / name)
            finally:
                for path in waiting.values():
                    path.unlink(missing_ok=True)
            sweep(out)
    except (OSError, ValueError, RuntimeError) as error:
        raise unwritable(out, error, where) from error


def write_file(path: Path, parts: Iterable[bytes]) -> None:
    """A whole file or none: written beside its place, part by part, and renamed. Raises: AskError."""
    stage = path.with_name(f"{STAGE}{unused()}")
    try:
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            stage.touch(exist_ok=False)
            with held(stage), stage.open("wb") as stream:
                stream.writelines(parts)
                stream.flush()
                os.fsync(stream.fileno())
            stage.replace(path)
        finally:
            stage.unlink(missing_ok=True)
    except (OSError, ValueError, RuntimeError) as error:
        raise unwritable(path, error) from error


def remove_folder(out: Path) -> None:
    """Take away what an earlier make wrote into a folder, and the folder when nothing else lies in it."""
    finish(out)
    remove_ours(out, earlier_make(out).ours)


def moved(out: Path, place: Path) -> bool:
    """Give the folder of a job another name beside its own; whether nothing was in the way of that."""
    finish(out)
    if is_there(place):
        return False
    try:
        out.rename(place)
        settle(place.parent)
    except OSError:
        return False
    return True


@contextlib.contextmanager
def _folders(out: Path) -> Iterator[None]:
    """Make the folder and those above it; on failure take away again those that were made."""
    missing = [folder for folder in (out, *out.parents) if not folder.exists()]
    try:
        out.mkdir(parents=True, exist_ok=True)
        yield
    except BaseException:
        for folder in missing:
            with contextlib.suppress(OSError):
                folder.rmdir()
        raise
