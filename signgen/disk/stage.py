"""Files and folders that wait beside their place until they are whole, and what is left of them after a kill."""

from __future__ import annotations

import contextlib
import os
import re
import stat
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from signgen.disk.ours import NAME

STAGE = ".signgen-stage-"
"""How names begin that wait beside their places."""

_STAGED = re.compile(re.escape(STAGE) + r"[0-9a-f]{8}")


def unused() -> str:
    """Part of a name that nobody has given before. `secrets` has the same, and imports hashes and ciphers for it."""
    return os.urandom(4).hex()


def write(path: Path, parts: Iterable[bytes]) -> None:
    """A new file, on the disk when this returns."""
    with path.open("xb") as stream:
        stream.writelines(parts)
        stream.flush()
        os.fsync(stream.fileno())


def settle(folder: Path) -> None:
    """Put a folder's own list of names on the disk, where the system has that."""
    with contextlib.suppress(OSError), _opened(folder) as descriptor:
        if descriptor is not None:
            os.fsync(descriptor)


@contextlib.contextmanager
def _opened(path: Path) -> Iterator[int | None]:
    if os.name == "nt":  # folders cannot be opened there
        yield None
        return
    descriptor = os.open(path, os.O_RDONLY)
    try:
        yield descriptor
    finally:
        os.close(descriptor)


@contextlib.contextmanager
def held(path: Path) -> Iterator[bool]:
    """While it lasts, the file or folder is this process's own; whether it could be had. True where the system or the
    disk has no locks, for then nobody minds. The system gives it back when the process ends, however it does."""
    with _opened(path) as descriptor:
        yield descriptor is None or lock(descriptor)


def lock(descriptor: int) -> bool:
    """Whether the file is now this process's own; where there are no such locks, nobody minds."""
    try:
        import fcntl
    except ImportError:
        return True
    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return True
    return True


@contextlib.contextmanager
def staged(beside: Path, files: Mapping[str, bytes]) -> Iterator[Path]:
    """A folder beside a place, with these files in it; what is left of it afterwards is taken away. Raises: OSError."""
    stage = beside.with_name(f"{STAGE}{unused()}")
    stage.mkdir()
    try:
        with held(stage):
            for name, content in files.items():
                write(stage / name, [content])
            settle(stage)
            yield stage
    finally:
        remove_plain(stage)


def remove_plain(folder: Path) -> None:
    """Take away the files of a folder that are called as signgen calls them, and the folder when nothing is left."""
    with contextlib.suppress(OSError):
        for path in folder.iterdir():
            if NAME.fullmatch(path.name) and not stat.S_ISDIR(path.lstat().st_mode):
                path.unlink(missing_ok=True)
        folder.rmdir()


def sweep(folder: Path) -> None:
    """Take away what waited in a folder when its process was ended; what another process still writes stays."""
    try:
        left = [path for path in folder.iterdir() if _STAGED.fullmatch(path.name) and not path.is_symlink()]
    except OSError:
        return
    for path in left:
        with contextlib.suppress(OSError), held(path) as free:
            if free and path.is_dir():
                remove_plain(path)
            elif free and path.is_file():
                path.unlink(missing_ok=True)
