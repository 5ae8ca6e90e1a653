"""Supervised workers: processes that are watched, so that a row that hangs, crashes or eats the memory fails alone.

An item is given to one worker at a time and at most twice in all. A worker's death is seen by the end of file on its
pipe; one that overruns its time is ended. Workers end when the pool does, and when the process that owns it does.
"""

from __future__ import annotations

import contextlib
import gc
import multiprocessing
import os
import signal
import threading
import time
from collections import deque
from collections.abc import Callable, Iterable, Iterator
from multiprocessing.connection import Connection, wait
from multiprocessing.context import SpawnProcess
from types import TracebackType
from typing import Any, Generic, TypeVar

from msgspec import Struct

from signgen.errors import CannotMakeError

T = TypeVar("T")
R = TypeVar("R")

TRIES = 2
"""A machine that was short of something for a moment deserves a second try; a row that kills twice is to blame."""

START_S = 120.0
"""A worker that has not begun after this time never will: it only has to import."""

MOST_STILLBORN = 3
"""Workers in a row that end before they begin; then it is not a row that is to blame."""

POLL_S = 1.0
"""How often the pool looks at its clock when nothing happens."""

GARBAGE_EVERY = 20_000
"""Objects made between two looks for garbage: a row makes some ten thousand that live as long as it does."""

_ENVIRONMENT = {
    # Workers share the cores already.
    "OMP_NUM_THREADS": "1",
    "OPENBLAS_NUM_THREADS": "1",
    "MKL_NUM_THREADS": "1",
    # Memory that a row gave back is kept for the next instead of asking the system for it anew (glibc): a tenth of the
    # time.
    "MALLOC_MMAP_THRESHOLD_": str(1 << 30),
    "MALLOC_TRIM_THRESHOLD_": str(1 << 30),
}


class PoolLimits(Struct, frozen=True, kw_only=True):
    """What an item may take: seconds, and megabytes more than an idle worker (where the system can limit that)."""

    time_s: float
    memory_mb: int


class Done(Struct, Generic[T, R], frozen=True):
    """An item and its result; `lost` says why there is none, in a sentence."""

    item: T
    result: R | None
    lost: str = ""


class Pool(Generic[T, R]):
    """Workers that call `work` on items. `work` is a function of a module, or a partial of one, since it is sent to
    new processes."""

    def __init__(self, work: Callable[[T], R], workers: int, limits: PoolLimits) -> None:
        self._work = work
        self._count = workers
        self._limits = limits
        self._workers: list[Worker[T, R]] = []
        self._stillborn = 0

    def __enter__(self) -> Pool[T, R]:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        for worker in self._workers:
            worker.end()
        self._workers.clear()

    def process_ids(self) -> tuple[int, ...]:
        """Of the workers that there are."""
        return tuple(worker.process.pid or 0 for worker in self._workers)

    def run(self, items: Iterable[T]) -> Iterator[Done[T, R]]:
        """Results as they come, in no order. Items are drawn only when a worker is free for them.

        Raises: CannotMakeError when no worker can be started.
        """
        waiting = iter(items)
        again: deque[tuple[T, int]] = deque()
        exhausted = False
        while True:
            free = [worker for worker in self._workers if worker.free]
            while not exhausted or again:
                if not free and len(self._workers) >= self._count:
                    break
                if again:
                    item, tries = again.popleft()
                else:
                    try:
                        item, tries = next(waiting), 0
                    except StopIteration:
                        exhausted = True
                        continue
                worker = free.pop() if free else self._started()
                worker.give(item, tries + 1, self._limits.time_s)
            busy = [worker for worker in self._workers if not worker.free]
            if not busy:
                return
            for worker in self._ready(busy):
                yield from self._answer(worker, again)

    def _started(self) -> Worker[T, R]:
        worker = Worker(self._work, self._limits)
        self._workers.append(worker)
        return worker

    def _ready(self, busy: list[Worker[T, R]]) -> list[Worker[T, R]]:
        """Workers that have something to say, have died or have run out of time; [] when none has for a while."""
        left = min(worker.deadline for worker in busy) - time.monotonic()
        told = wait([worker.pipe for worker in busy], min(max(left, 0.0), POLL_S))
        now = time.monotonic()
        return [worker for worker in busy if worker.pipe in told or worker.deadline <= now]

    def _answer(self, worker: Worker[T, R], again: deque[tuple[T, int]]) -> Iterator[Done[T, R]]:
        item, tries = worker.item, worker.tries
        kind, content = worker.answer()
        if kind == READY:
            self._stillborn = 0
            return
        if kind == RESULT:
            yield Done(item, content)
            return
        begun = worker.begun
        worker.end()
        self._workers.remove(worker)
        if not begun:
            self._stillborn += 1
            if self._stillborn >= MOST_STILLBORN:
                raise CannotMakeError.at(
                    "workers", f"No worker can be started: {content}.", "Allow more memory, or fewer workers."
                )
            again.append((item, tries - 1))
        elif tries < TRIES:
            again.append((item, tries))
        else:
            yield Done(item, None, f"{content}, twice")


READY, RESULT, LOST = "ready", "result", "lost"


class Worker(Generic[T, R]):
    """A process and its end of a pipe. It may be given its first item before it is ready."""

    def __init__(self, work: Callable[[T], R], limits: PoolLimits) -> None:
        context = multiprocessing.get_context("spawn")
        self.pipe, theirs = context.Pipe()
        self.process: SpawnProcess = context.Process(target=_serve, args=(theirs, work, limits.memory_mb), daemon=True)
        with _environment():
            self.process.start()
        theirs.close()  # or the end of file would never come
        self._limits = limits
        self._item: T | None = None
        self.tries = 0
        self.free = True
        self.begun = False
        self.deadline = time.monotonic() + START_S

    @property
    def item(self) -> T:
        assert self._item is not None
        return self._item

    def give(self, item: T, tries: int, time_s: float) -> None:
        self._item, self.tries, self.free = item, tries, False
        if self.begun:
            self.deadline = time.monotonic() + time_s
        with contextlib.suppress(OSError):  # a dead worker: `answer` will see the end of file
            self.pipe.send(item)

    def answer(self) -> tuple[str, Any]:
        """What the worker says: ready, a result, or that the item is lost, with the reason; lost too when it is dead
        or late."""
        if not self.pipe.poll():
            return LOST, f"It took longer than {self._limits.time_s:g} s" if self.begun else "it does not begin"
        try:
            kind, content = self.pipe.recv()
        except (EOFError, OSError):
            self.process.join(POLL_S)
            return LOST, f"Its worker ended ({_ending(self.process.exitcode)})"
        if kind == READY:
            self.begun = True
            self.deadline = time.monotonic() + self._limits.time_s
        elif kind == RESULT:
            self.free, self._item = True, None
        return kind, content

    def end(self) -> None:
        self.process.kill()
        self.process.join()
        self.process.close()
        self.pipe.close()


def _ending(code: int | None) -> str:
    if code is None:
        return "it does not answer any more"
    try:
        return signal.Signals(-code).name if code < 0 else f"exit code {code}"
    except ValueError:
        return f"signal {-code}"


@contextlib.contextmanager
def _environment() -> Iterator[None]:
    """Processes started here see these variables, unless the user has said otherwise."""
    added = {name: value for name, value in _ENVIRONMENT.items() if name not in os.environ}
    os.environ.update(added)
    try:
        yield
    finally:
        for name in added:
            del os.environ[name]


def _serve(pipe: Connection, work: Callable[[T], R], memory_mb: int) -> None:
    """A worker's life: items in, results out, until the pipe ends."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C reaches the whole group; the pool's owner ends its workers
    threading.Thread(target=_end_with_parent, daemon=True).start()
    _limit_memory(memory_mb)
    gc.freeze()  # what the imports left need never be looked through for garbage
    gc.set_threshold(GARBAGE_EVERY)
    pipe.send((READY, None))
    while True:
        try:
            item = pipe.recv()
        except EOFError:
            return
        try:
            answer: tuple[str, object] = RESULT, work(item)
        except MemoryError:
            answer = LOST, f"It needed more than {memory_mb} MB of memory"
        except Exception as error:  # the border of the process: whatever a row does, the others go on
            answer = LOST, f"It failed in a way that nobody foresaw ({type(error).__name__}: {error})"
        pipe.send(answer)


def _end_with_parent() -> None:
    """End this process, whatever it is doing, when the one that started it is gone."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        os._exit(1)


def _limit_memory(megabytes: int) -> None:
    """Allow this process so much more address space than it has now; where the system cannot, nothing is limited."""
    try:
        import resource

        with open("/proc/self/statm") as statm:  # noqa: PTH123
            now = int(statm.read().split()[0]) * resource.getpagesize()
    except (ImportError, OSError):
        return
    _, hard = resource.getrlimit(resource.RLIMIT_AS)
    limit = now + megabytes * 1_000_000
    resource.setrlimit(resource.RLIMIT_AS, (limit if hard < 0 else min(limit, hard), hard))
