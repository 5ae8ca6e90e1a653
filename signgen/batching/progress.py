"""One line on a terminal that says how far the batch is."""

from __future__ import annotations

import sys
import time
from collections import deque
from typing import TextIO

from signgen.numbers import span

EVERY_S = 0.2
"""Between two states of the line: quicker than one reads, too slow to cost anything."""

RECENT = 50
"""Rows whose pace is taken for the pace of the rest."""


class Progress:
    """Rewrites its line in place; says nothing at all where the stream is no terminal."""

    def __init__(self, total: int, noun: str, stream: TextIO | None = None) -> None:
        """`noun`: what is counted, in the plural."""
        self._total, self._noun, self._done, self._failed = total, noun, 0, 0
        self._stream = stream or sys.stderr
        self._shown = self._stream.isatty()
        self._times = deque([time.monotonic()], maxlen=RECENT + 1)
        self._next = 0.0

    def add(self, *, failed: bool) -> None:
        """One more is done."""
        now = time.monotonic()
        self._done += 1
        self._failed += failed
        self._times.append(now)
        if self._shown and now >= self._next:
            self._next = now + EVERY_S
            self._stream.write(f"\r{self.line()}\x1b[K")
            self._stream.flush()

    def skip(self) -> None:
        """One more, which an interrupted batch had done already: it says nothing about the pace."""
        self._done += 1

    def line(self) -> str:
        """'312 of 1000 rows, 4.1 a second, 2 min 48 s left, 3 failed'."""
        passed = self._times[-1] - self._times[0]
        rate = (len(self._times) - 1) / passed if passed > 0 else 0.0
        parts = [f"{self._done} of {self._total} {self._noun}"]
        if rate:
            parts.append(f"{rate:.1f} a second" if rate >= 1 else f"{rate * 60:.1f} a minute")
            parts.append(f"{span((self._total - self._done) / rate / 60)} left")
        if self._failed:
            parts.append(f"{self._failed} failed")
        return ", ".join(parts)

    def close(self) -> None:
        """Leave the line empty for what is printed next."""
        if self._shown:
            self._stream.write("\r\x1b[K")
            self._stream.flush()
