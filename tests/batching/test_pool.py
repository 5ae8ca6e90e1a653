"""Workers are watched: whatever one item does, the others come out."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from signgen.batching.pool import Pool, PoolLimits
from signgen.errors import CannotMakeError
from tests.batching import faults

PLENTY = PoolLimits(time_s=60, memory_mb=1000)


def results(
    work: Callable[[Any], Any], items: list[Any], workers: int = 2, limits: PoolLimits = PLENTY
) -> dict[Any, Any]:
    with Pool(work, workers, limits) as pool:
        return {done.item: done.lost or done.result for done in pool.run(items)}


def alive(process: int) -> bool:
    try:
        state = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0]
    except FileNotFoundError:
        return False
    return state != "Z"


def gone(processes: list[int]) -> bool:
    for _ in range(100):
        if not any(alive(process) for process in processes):
            return True
        time.sleep(0.1)
    return False


@pytest.mark.parametrize("workers", [1, 2, 5])
def test_results_do_not_depend_on_the_number_of_workers(workers: int) -> None:
    assert results(faults.slow_double, list(range(12)), workers) == {n: 2 * n for n in range(12)}


def test_no_items_no_workers() -> None:
    with Pool(faults.double, 2, PLENTY) as pool:
        assert list(pool.run([])) == []
        assert pool.process_ids() == ()


def test_items_are_drawn_only_when_a_worker_is_free() -> None:
    drawn = 0

    def items() -> Iterator[int]:
        nonlocal drawn
        for n in range(50):
            drawn += 1
            yield n

    with Pool(faults.double, 2, PLENTY) as pool:
        for number, _ in enumerate(pool.run(items()), 1):
            assert drawn <= number + 2


@pytest.mark.parametrize(
    ("work", "limits", "reason"),
    [
        (faults.hang_at_three, PoolLimits(time_s=1, memory_mb=1000), "It took longer than 1 s"),
        (faults.hang_deaf_at_three, PoolLimits(time_s=1, memory_mb=1000), "It took longer than 1 s"),
        (faults.die_at_three, PLENTY, "Its worker ended (SIGKILL)"),
        (faults.leave_at_three, PLENTY, "Its worker ended (exit code 7)"),
        (faults.fail_at_three, PLENTY, "(ZeroDivisionError: three is too many)"),
        (faults.hog_at_three, PoolLimits(time_s=60, memory_mb=300), "It needed more than 300 MB of memory"),
        (faults.hog_arrays_at_three, PoolLimits(time_s=60, memory_mb=300), "It needed more than 300 MB of memory"),
    ],
)
def test_an_item_that_goes_wrong_fails_alone(work: Callable[[int], int], limits: PoolLimits, reason: str) -> None:
    found = results(work, list(range(6)), 2, limits)
    assert reason in found.pop(3)
    assert found == {n: 2 * n for n in range(6) if n != 3}


def test_an_item_whose_worker_died_once_is_tried_again(tmp_path: Path) -> None:
    mark = str(tmp_path / "died")
    found = results(faults.die_once, [(n, mark) for n in range(6)])
    assert Path(mark).exists()
    assert found == {(n, mark): 2 * n for n in range(6)}


def test_a_worker_that_is_killed_costs_nothing() -> None:
    with Pool(faults.slow_double, 2, PLENTY) as pool:
        found = {}
        for done in pool.run(range(20)):
            found[done.item] = done.result
            if len(found) in (3, 12):
                os.kill(pool.process_ids()[0], signal.SIGKILL)
    assert found == {n: 2 * n for n in range(20)}


def test_workers_that_cannot_begin_are_not_blamed_on_an_item() -> None:
    with pytest.raises(CannotMakeError) as error, Pool(faults.Stillborn(), 2, PLENTY) as pool:
        list(pool.run(range(5)))
    assert "exit code 3" in str(error.value)


def test_workers_end_with_the_pool() -> None:
    with Pool(faults.wait_for_ever, 2, PoolLimits(time_s=1, memory_mb=1000)) as pool:
        running = pool.run(range(2))
        first = next(running)
        processes = list(pool.process_ids())
        assert "longer" in first.lost
    assert gone(processes)


def test_workers_end_when_their_owner_is_killed() -> None:
    code = (
        "import sys\n"
        "from signgen.batching.pool import Pool, PoolLimits\n"
        "from tests.batching import faults\n"
        "with Pool(faults.process_id, 2, PoolLimits(time_s=60, memory_mb=1000)) as pool:\n"
        "    for done in pool.run(range(10**9)):\n"
        "        print(*pool.process_ids(), flush=True)\n"
    )
    owner = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE, text=True)
    assert owner.stdout is not None
    processes: list[int] = []
    while len(processes) < 2:
        line = owner.stdout.readline()
        assert line, "the owner ended by itself"
        processes = [int(word) for word in line.split()]
    owner.kill()
    owner.wait()
    owner.stdout.close()
    assert gone(processes)
