"""Rows handed to a Dask cluster that exists. Workers make, this machine writes; the ledger is the same.

The optional extra `signgen[cluster]` brings dask.distributed. A cluster runs whatever it is sent, so it belongs into a
network whose users trust each other; files that a row names (a font, a shop file) must have the same path on every
worker.
"""

from __future__ import annotations

import contextlib
import importlib
import time
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from types import TracebackType
from typing import Any, Generic, TypeVar

from msgspec import Struct

from signgen.batching.outcome import RowOutcome
from signgen.batching.pool import TRIES, Done, PoolLimits
from signgen.batching.work import Made, place
from signgen.errors import AskError
from signgen.messages import Message
from signgen.version import __version__

T = TypeVar("T")

AHEAD = 2
"""Items at the cluster for each of its threads: one in work, one waiting, so that none stands idle."""

CONNECT_S = 15.0
POLL_S = 1.0
"""How often the clock is looked at when nothing comes."""


class _Sent(Generic[T], Struct):
    """An item at the cluster; it is given up at `deadline`."""

    item: T
    deadline: float


class Cluster(Generic[T]):
    """The same as `Pool` by the workers of a cluster, for work that gives files back."""

    def __init__(self, address: str, make: Callable[[T], Made], out: Path, limits: PoolLimits) -> None:
        """Raises: AskError when dask.distributed is missing, nobody answers at the address, no worker is there or one
        has another version of signgen."""
        self._make, self._out, self._limits = make, out, limits
        try:
            self._dask: Any = importlib.import_module("distributed")
        except ImportError:
            remedy = Message("batching.install_with_pip_install_signgen")
            raise AskError.at("scheduler", Message("batching.dask_distributed_not_installed"), remedy) from None
        try:
            self._client: Any = self._dask.Client(address, timeout=CONNECT_S)
        except (OSError, ValueError, TimeoutError) as error:
            what = Message(
                "batching.no_scheduler_answers", address=address, error=str(error) or Message("batching.took_too_long")
            )
            raise AskError.at("scheduler", what, Message("batching.start_one_with_dask_scheduler")) from None
        try:
            self._threads = self._must_be_alike()
        except BaseException:
            self._client.close()
            raise

    def __enter__(self) -> Cluster[T]:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._client.close()

    def _must_be_alike(self) -> int:
        """Threads of all workers, each of which has this very version."""
        threads = int(sum(self._client.nthreads().values()))
        if not threads:
            raise AskError.at(
                "scheduler", Message("batching.cluster_has_no_workers"), Message("batching.start_some_with_dask_worker")
            )
        try:
            versions = set(self._client.run(_version).values())
        except ImportError:
            versions = {"none"}
        if versions != {__version__}:
            what = Message("batching.workers_have_signgen", versions=tuple(sorted(versions)), here=__version__)
            raise AskError.at("scheduler", what, Message("batching.install_same_version_on_every"))
        return threads

    def run(self, items: Iterable[T]) -> Iterator[Done[T, RowOutcome]]:
        """Outcomes as they come. An item is lost when the cluster loses its workers over it, when it fails in a way
        that nobody foresaw twice, or when it is not back in time."""
        waiting = iter(items)
        sent: dict[Any, _Sent[T]] = {}
        exhausted = False
        # One that waits behind another may take the other's time too; starting to work is not told apart from waiting.
        patience = self._limits.time_s * (AHEAD + 1)
        while True:
            while not exhausted and len(sent) < AHEAD * self._threads:
                try:
                    item = next(waiting)
                except StopIteration:
                    exhausted = True
                    break
                future = self._client.submit(self._make, item, pure=False, retries=TRIES - 1)
                sent[future] = _Sent(item, time.monotonic() + patience)
            if not sent:
                return
            for future in self._finished(sent):
                done = self._done(future, sent[future])
                if done is not None:
                    del sent[future]
                    yield done

    def _finished(self, sent: dict[Any, _Sent[T]]) -> list[Any]:
        """Futures that are done or late; [] when there is none for a while."""
        with contextlib.suppress(TimeoutError):
            self._dask.wait(list(sent), timeout=POLL_S, return_when="FIRST_COMPLETED")
        now = time.monotonic()
        return [future for future, item in sent.items() if future.done() or item.deadline <= now]

    def _done(self, future: Any, sent: _Sent[T]) -> Done[T, RowOutcome] | None:
        """None when it is to be waited for again: a worker that dies takes what it has finished along, and another
        begins anew with it."""
        left = sent.deadline - time.monotonic()
        if not future.done() and left > 0:
            return None
        try:
            if future.status == "error":
                error = future.exception()
                return Done(sent.item, None, f"It failed on the cluster ({type(error).__name__}: {error})")
            outcome, files = future.result(timeout=max(left, POLL_S))
        except TimeoutError:
            self._client.cancel([future], force=True)
            return Done(sent.item, None, f"It took longer than {self._limits.time_s:g} s")
        finally:
            future.release()
        return Done(sent.item, place(outcome, files, self._out))


def _version() -> str:
    from signgen.version import __version__

    return __version__
