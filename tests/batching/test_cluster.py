"""Rows at a Dask cluster: the same bytes as by this machine's own processes, and failures that stay alone."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from signgen.batching.cluster import Cluster
from signgen.batching.outcome import RowOutcome
from signgen.batching.pool import PoolLimits
from signgen.errors import AskError, SignGenError
from tests.batching import faults
from tests.batching.making import SIGN, batch, tree, write_list

ROWS = ["A,1", "B,bad", "C,2", "D,1"]
PLENTY = PoolLimits(time_s=60, memory_mb=1000)


@pytest.fixture(scope="module")
def scheduler() -> Iterator[str]:
    """The address of a cluster of two processes on this machine."""
    distributed = pytest.importorskip("distributed", reason="the extra signgen[cluster] is not installed")
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, processes=True, dashboard_address=None, silence_logs=50
    ) as cluster:
        yield str(cluster.scheduler_address)


@pytest.fixture(scope="module")
def listed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_list(tmp_path_factory.mktemp("list") / "names.csv", ROWS, "name,copies")


@pytest.mark.parametrize("more", [[], ["--sheet", "200x160"]])
def test_a_cluster_gives_the_bytes_that_this_machine_gives(
    scheduler: str, listed: Path, tmp_path: Path, more: list[str]
) -> None:
    for name, words in (("here", ["--workers", "1"]), ("there", ["--scheduler", scheduler])):
        assert batch(listed, *SIGN, *more, "--out", tmp_path / name, *words).exception is None
    assert tree(tmp_path / "there") == tree(tmp_path / "here")
    assert len(tree(tmp_path / "here")) > 7


def outcomes(
    scheduler: str, make: Callable[[int], Any], out: Path, limits: PoolLimits = PLENTY
) -> dict[int, RowOutcome | str]:
    with Cluster(scheduler, make, out, limits) as cluster:
        return {done.item: done.lost or done.result or "" for done in cluster.run(range(8))}


@pytest.mark.parametrize(
    ("make", "reason"),
    [(faults.make_or_die, "KilledWorker"), (faults.make_or_fail, "ZeroDivisionError: three is too many")],
)
def test_a_row_that_goes_wrong_fails_alone(
    scheduler: str, tmp_path: Path, make: Callable[[int], Any], reason: str
) -> None:
    found = outcomes(scheduler, make, tmp_path)
    assert reason in str(found.pop(3))
    assert found == {n: RowOutcome(row=n, folder=f"{n:04}") for n in range(8) if n != 3}
    assert sorted(path.name for path in tmp_path.iterdir()) == [f"{n:04}" for n in range(8) if n != 3]


def test_a_row_that_hangs_is_given_up(scheduler: str, tmp_path: Path) -> None:
    found = outcomes(scheduler, faults.make_or_hang, tmp_path, PoolLimits(time_s=1, memory_mb=1000))
    assert found[3] == "It took longer than 1 s"
    assert all(isinstance(found[n], RowOutcome) for n in range(3))


def test_rows_are_drawn_a_few_at_a_time(scheduler: str, tmp_path: Path) -> None:
    drawn = 0

    def items() -> Iterator[int]:
        nonlocal drawn
        for n in range(40):
            drawn += 1
            yield n

    with Cluster(scheduler, faults.make, tmp_path, PLENTY) as cluster:
        for number, _ in enumerate(cluster.run(items()), 1):
            assert drawn <= number + 4


def problem(*words: str | Path) -> str:
    result = batch(*words)
    assert isinstance(result.exception, SignGenError), result.output
    (told,) = result.exception.problems
    assert told.where == "scheduler"
    return str(told)


def test_nobody_at_the_address_is_said_at_once(listed: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pytest.importorskip("distributed", reason="the extra signgen[cluster] is not installed")
    monkeypatch.setattr("signgen.batching.cluster.CONNECT_S", 0.5)
    told = problem(listed, *SIGN, "--out", tmp_path / "out", "--scheduler", "tcp://127.0.0.1:9")
    assert "No scheduler answers at tcp://127.0.0.1:9" in told


def test_without_the_extra_it_is_named(listed: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "distributed", None)
    told = problem(listed, *SIGN, "--out", tmp_path / "out", "--scheduler", "tcp://127.0.0.1:9")
    assert "pip install 'signgen[cluster]'" in told


def test_workers_of_another_version_are_refused(
    scheduler: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("signgen.batching.cluster.__version__", "99.0")
    with pytest.raises(AskError, match=r"Its workers have signgen 0\.\d+\.\d+, and this is 99\.0"):
        Cluster(scheduler, faults.make, tmp_path, PLENTY)
