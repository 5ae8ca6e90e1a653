"""How a terminal is treated: colours where somebody looks at them, and a sign of life from work that takes long."""

from __future__ import annotations

import os
import sys
import threading
import time
from types import TracebackType
from typing import TextIO

BOLD, GREEN, RED, PLAIN = "\x1b[1m", "\x1b[32m", "\x1b[31m", "\x1b[0m"
LABEL = 10
"""Width of the summary's labels."""

PATIENCE_S, EVERY_S = 1.0, 0.25
"""Work that is done sooner says nothing; then the line is written anew so often."""


def wants_colour(stream: TextIO) -> bool:
    """Only a terminal gets colours, and none where NO_COLOR is set (no-color.org) or the terminal is dumb."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def tinted(summary: str, verdict: str, *, passed: bool) -> str:
    """The summary with its labels bold, and green or red behind the label `verdict`."""
    lines = []
    shade = ""
    for line in summary.split("\n"):
        label, text = line[:LABEL], line[LABEL:]
        if label.strip():
            shade = (GREEN if passed else RED) if label.strip() == verdict else ""
            label = f"{BOLD}{label}{PLAIN}"
        lines.append(f"{label}{shade}{text}{PLAIN}" if shade else f"{label}{text}")
    return "\n".join(lines)


class Waiting:
    """While it lasts, a line on a terminal that says what is being done and for how long; nothing elsewhere."""

    def __init__(self, stream: TextIO | None = None, *, quiet: bool = False) -> None:
        self._stream = stream or sys.stderr
        self._shown = self._stream.isatty() and not quiet
        self._stage = ""
        self._since = time.monotonic()
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._tell, daemon=True)

    def stage(self, words: str) -> None:
        """What is done from now on."""
        self._stage = words

    def __enter__(self) -> Waiting:
        if self._shown:
            self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._over.set()
        if self._shown:
            self._thread.join()

    def _tell(self) -> None:
        wait = PATIENCE_S
        written = False
        while not self._over.wait(wait):
            self._stream.write(f"\r{self._stage} ({time.monotonic() - self._since:.0f} s)\x1b[K")
            self._stream.flush()
            written, wait = True, EVERY_S
        if written:
            self._stream.write("\r\x1b[K")
            self._stream.flush()
