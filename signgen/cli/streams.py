"""Standard output as the system gives it: a pipe that somebody closed is no error, a full disk is one."""

from __future__ import annotations

import errno
import io
import sys
from typing import IO

FULL = frozenset({errno.EMFILE, errno.ENFILE})
DISK = frozenset({errno.ENOSPC, errno.EIO, errno.EFBIG})


class _Open(io.RawIOBase):
    """Writes on to a stream; when nobody reads it any more, to nowhere."""

    def __init__(self, below: IO[bytes]) -> None:
        self._below = below
        self._closed_by_reader = False

    def writable(self) -> bool:
        return True

    def isatty(self) -> bool:
        return self._below.isatty()

    def fileno(self) -> int:
        return self._below.fileno()

    def write(self, data: object, /) -> int:
        view = memoryview(data)  # type: ignore[arg-type]
        if self._closed_by_reader:
            return len(view)
        try:
            return self._below.write(view)
        except BrokenPipeError:
            self._closed_by_reader = True
            return len(view)


def patient_output() -> None:
    """Let standard output and standard error be closed by whoever reads them, as `head` does: what the command does and
    its exit code stay the same."""
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        below = getattr(getattr(stream, "buffer", None), "raw", None)
        if below is None:  # closed from the start, or not the system's own
            continue
        stream.flush()
        patient = io.TextIOWrapper(
            io.BufferedWriter(_Open(below)),
            encoding=stream.encoding,
            errors=stream.errors,
            line_buffering=stream.line_buffering or name == "stderr",
        )
        setattr(sys, name, patient)


def said_of(error: OSError) -> str:
    """What the system refused, in a line."""
    where = f"{error.filename}: " if error.filename else "standard output: " if error.errno in DISK else ""
    remedy = " Too many files are open at once: end other programs, or raise the limit." if error.errno in FULL else ""
    return f"{where}{error.strerror or error}.{remedy}"
