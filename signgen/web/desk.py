"""Supervised processes at which the requests of many people take turns: one that hangs is ended and replaced."""

from __future__ import annotations

import queue
import threading
import time
from collections.abc import Callable
from types import TracebackType
from typing import Generic, TypeVar

from signgen.batching.pool import PoolLimits, Worker

T = TypeVar("T")
R = TypeVar("R")

LOOK_S = 0.05
"""How often it is asked whether somebody still waits for the answer."""


class LostError(Exception):
    """There is no answer; says why, in a sentence."""


class Desk(Generic[T, R]):
    """`count` processes that call `work`, a function of a module. Safe to ask from many threads."""

    def __init__(self, work: Callable[[T], R], count: int, limits: PoolLimits) -> None:
        self._work = work
        self._limits = limits
        self._closed = threading.Event()
        # The last one used comes first: its caches are warm.
        self._free: queue.LifoQueue[Worker[T, R] | None] = queue.LifoQueue()
        for _ in range(count):
            self._free.put(None)
        self._count = count

    def __enter__(self) -> Desk[T, R]:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        """End every process, also those that work."""
        self._closed.set()
        for _ in range(self._count):
            worker = self._free.get()
            if worker is not None:
                worker.end()

    def ask(self, item: T, patience_s: float, is_wanted: Callable[[], bool] = lambda: True) -> R:
        """The answer. `patience_s`: how long to wait for a free process. When `is_wanted` turns false the work is
        stopped.

        Raises: LostError when there is none: no process was free, it took too long, it needed too much memory, its
            process died, or nobody wants it any more.
        """
        try:
            worker = self._free.get(timeout=patience_s)
        except queue.Empty:
            raise LostError("every place is taken") from None
        is_whole = False
        try:
            if worker is None:
                worker = self._new()
            worker.give(item, 1, self._limits.time_s)
            answer = self._answer(worker, is_wanted)
            is_whole = True
            return answer
        finally:
            if worker is not None and not is_whole:
                worker.end()
            self._free.put(worker if is_whole else None)  # whatever happened, the next one finds the place

    def _new(self) -> Worker[T, R]:
        try:
            return Worker(self._work, self._limits)
        except OSError as error:
            raise LostError(f"no process can be started ({error})") from error

    def _answer(self, worker: Worker[T, R], is_wanted: Callable[[], bool]) -> R:
        from signgen.batching.pool import READY, RESULT

        while True:
            left = worker.deadline - time.monotonic()
            if left > 0 and not worker.pipe.poll(min(left, LOOK_S)):
                if self._closed.is_set() or not is_wanted():
                    raise LostError("nobody waits for it any more")
                continue
            kind, content = worker.answer()
            if kind == RESULT:
                answer: R = content
                return answer
            if kind != READY:
                raise LostError(str(content))
