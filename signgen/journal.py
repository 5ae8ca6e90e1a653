"""Lines kept whatever happens to the process that writes them; with `files.py` all that writes to disk."""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path

from signgen.disk.stage import lock
from signgen.errors import AskError, SignGenError
from signgen.messages import Message

_BLOCK = 1 << 16


class Journal:
    """Lines that are added one at a time; each is on the disk when `add` returns. Only one process at a time holds a
    journal, where the system has locks for that.

    A line that was cut off when the process ended is not there. Offsets are those of a line's first byte.
    """

    def __init__(self, path: Path) -> None:
        """Raises: AskError when it cannot be written, or when another process holds it."""
        self.path = path
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            # No buffer: what a full disk has refused must not be waiting to be written later.
            self._writer = path.open("r+b" if path.exists() else "w+b", buffering=0)
        except OSError as error:
            raise self._refused(error) from error
        if not lock(self._writer.fileno()):
            self._writer.close()
            remedy = "Wait for it, or choose another folder."
            raise AskError.at("out", f"Another batch is writing into {path.parent}.", remedy)
        self._reader = path.open("rb")
        self._end = self._end_of_last_line()
        self._writer.truncate(self._end)

    def lines(self) -> Iterator[tuple[int, bytes]]:
        """Every line, without its end, with its offset."""
        self._reader.seek(0)
        offset = 0
        for line in self._reader:
            yield offset, line.rstrip(b"\n")
            offset += len(line)

    def line_at(self, offset: int) -> bytes:
        self._reader.seek(offset)
        return self._reader.readline().rstrip(b"\n")

    def add(self, line: bytes, *, sync: bool = True) -> int:
        """Write a line; its offset. Without `sync` it may be lost with the machine's power, not with the process.

        Raises: AskError, and then no part of the line stays.
        """
        self._must_be_there()
        offset = self._end
        left = memoryview(line + b"\n")
        try:
            self._writer.seek(offset)
            while left:
                left = left[self._writer.write(left) :]
            if sync:
                os.fsync(self._writer.fileno())
        except OSError as error:
            with contextlib.suppress(OSError):
                self._writer.truncate(offset)
            raise self._refused(error) from error
        self._end = offset + len(line) + 1
        return offset

    def clear(self) -> None:
        """Forget every line."""
        self._writer.truncate(0)
        self._end = 0

    def close(self) -> None:
        """Let other processes have it."""
        self._reader.close()
        self._writer.close()

    def _must_be_there(self) -> None:
        """Raises: AskError when the file was deleted or moved away while it is held: lines would go nowhere."""
        held = os.fstat(self._writer.fileno())
        try:
            there = self.path.stat()
        except OSError:
            there = None
        if there is None or (os.name != "nt" and not os.path.samestat(held, there)):
            raise AskError.at("out", Message("files.gone", path=str(self.path.parent)), Message("files.make_all_again"))

    def _end_of_last_line(self) -> int:
        end = self._reader.seek(0, os.SEEK_END)
        while end:
            start = max(0, end - _BLOCK)
            self._reader.seek(start)
            found = self._reader.read(end - start).rfind(b"\n")
            if found >= 0:
                return start + found + 1
            end = start
        return 0

    def _refused(self, error: OSError) -> SignGenError:
        what = f"{self.path} cannot be written: {error.strerror or error}."
        return AskError.at("out", what, "Choose a folder that you may write to, on a disk with room.")
