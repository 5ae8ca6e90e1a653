"""Who makes the rows: processes of this machine, or the workers of a cluster. What comes out is the same."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from types import TracebackType
from typing import Protocol, TypeVar

from msgspec import Struct

from signgen.batching.outcome import RowOutcome
from signgen.batching.pool import Done, Pool, PoolLimits
from signgen.batching.work import Made, make_and_place

T = TypeVar("T")


class Means(Struct, frozen=True, kw_only=True):
    """How many processes at once, or the address of a cluster's `scheduler`; and what one row may take."""

    workers: int
    limits: PoolLimits
    scheduler: str | None = None


class Crew(Protocol[T]):
    """Makes items and writes their folders."""

    def __enter__(self) -> Crew[T]: ...

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None: ...

    def run(self, items: Iterable[T]) -> Iterator[Done[T, RowOutcome]]:
        """Outcomes as they come, in no order; items are drawn a few at a time."""
        ...


def crew(make: Callable[[T], Made], out: Path, means: Means, count: int) -> Crew[T]:
    """Workers for so many items, to be used in a `with` statement.

    Raises: AskError when a cluster was asked for that cannot be had.
    """
    if means.scheduler is None:
        return Pool(partial(make_and_place, make=make, out=out), max(1, min(means.workers, count)), means.limits)
    from signgen.batching.cluster import Cluster

    return Cluster(means.scheduler, make, out, means.limits)
