"""Work that goes wrong in the ways that workers must survive. In a module of its own, since workers import it."""

from __future__ import annotations

import json
import os
import signal
import time
from pathlib import Path

import numpy as np

from signgen.batching.outcome import RowOutcome


def double(n: int) -> int:
    return 2 * n


def slow_double(n: int) -> int:
    time.sleep(0.05 * (n % 3))
    return 2 * n


def process_id(_: int) -> int:
    return os.getpid()


def hang_at_three(n: int) -> int:
    if n == 3:
        time.sleep(3600)
    return 2 * n


def hang_deaf_at_three(n: int) -> int:
    """Hangs in a way that no signal but the strongest ends."""
    if n == 3:
        for each in (signal.SIGTERM, signal.SIGINT, signal.SIGHUP):
            signal.signal(each, signal.SIG_IGN)
        while True:
            pass
    return 2 * n


def die_at_three(n: int) -> int:
    if n == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return 2 * n


def leave_at_three(n: int) -> int:
    if n == 3:
        os._exit(7)
    return 2 * n


def fail_at_three(n: int) -> int:
    if n == 3:
        raise ZeroDivisionError("three is too many")
    return 2 * n


def hog_at_three(n: int) -> int:
    if n == 3:
        return len(b"".join(bytes(10_000_000) for _ in range(1000)))
    return 2 * n


def hog_arrays_at_three(n: int) -> int:
    if n == 3:
        return int(sum(array[0] for array in [np.ones(10_000_000) for _ in range(1000)]))
    return 2 * n


def die_once(item: tuple[int, str]) -> int:
    """Dies the first time that it is given an item, which a file remembers."""
    n, mark = item
    if n == 3 and not Path(mark).exists():
        Path(mark).touch()
        os.kill(os.getpid(), signal.SIGKILL)
    return 2 * n


def wait_for_ever(_: int) -> int:
    time.sleep(3600)
    return 0


class Stillborn:
    """Work that cannot even be unpickled in a new process."""

    def __call__(self, n: int) -> int:
        return n

    def __reduce__(self) -> tuple[object, tuple[int]]:
        return os._exit, (3,)


Made = tuple[RowOutcome, dict[str, bytes]]


def _made(n: int) -> Made:
    """A row that was made, and its folder."""
    report = {"format": "signgen-report", "files": ["report.json"], "n": n}
    return RowOutcome(row=n, folder=f"{n:04}"), {"report.json": json.dumps(report).encode()}


def make(n: int) -> Made:
    return _made(n)


def make_or_die(n: int) -> Made:
    if n == 3:
        os.kill(os.getpid(), signal.SIGKILL)
    return _made(n)


def make_or_fail(n: int) -> Made:
    if n == 3:
        raise ZeroDivisionError("three is too many")
    return _made(n)


def make_or_hang(n: int) -> Made:
    if n == 3:
        time.sleep(6)
    return _made(n)
