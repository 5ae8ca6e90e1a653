"""Processes at the desk: one that hangs, dies or is not wanted any more is replaced, and the next request is served."""

from __future__ import annotations

import os
import signal
import threading
import time

import pytest

from signgen.batching.pool import PoolLimits
from signgen.web.desk import Desk, LostError


def work(item: object) -> object:
    match item:
        case "hang":
            time.sleep(60)
        case "die":
            os.kill(os.getpid(), signal.SIGKILL)
        case "fail":
            raise RuntimeError("for a test")
        case "eat":
            return len(bytearray(3_000_000_000))
    return item


LIMITS = PoolLimits(time_s=1.0, memory_mb=500)


@pytest.mark.parametrize(
    ("item", "why"), [("hang", "longer than"), ("die", "SIGKILL"), ("fail", "for a test"), ("eat", "MB")]
)
def test_a_request_that_is_lost_leaves_its_place_to_the_next(item: str, why: str) -> None:
    with Desk(work, 1, LIMITS) as desk:
        with pytest.raises(LostError, match=why):
            desk.ask(item, 5)
        assert desk.ask("again", 5) == "again"


def test_a_process_that_died_while_it_was_idle_is_replaced() -> None:
    with Desk(work, 1, LIMITS) as desk:
        assert desk.ask("now", 5) == "now"
        (worker,) = desk._free.queue  # the process at rest
        os.kill(worker.process.pid, signal.SIGKILL)
        worker.process.join()
        with pytest.raises(LostError, match="SIGKILL"):
            desk.ask("again", 5)
        assert desk.ask("again", 5) == "again"


def test_a_process_that_cannot_be_started_leaves_its_place(monkeypatch: pytest.MonkeyPatch) -> None:
    def no_more(*_: object) -> object:
        raise BlockingIOError(11, "Resource temporarily unavailable")

    with Desk(work, 1, LIMITS) as desk:
        with monkeypatch.context() as patched:
            patched.setattr("signgen.web.desk.Worker", no_more)
            with pytest.raises(LostError, match="no process can be started"):
                desk.ask("now", 5)
        assert desk.ask("again", 5) == "again"


def test_what_nobody_wants_any_more_is_stopped() -> None:
    wanted = threading.Event()
    wanted.set()
    with Desk(work, 1, PoolLimits(time_s=30, memory_mb=500)) as desk:
        threading.Timer(0.3, wanted.clear).start()
        with pytest.raises(LostError, match="nobody"):
            desk.ask("hang", 5, wanted.is_set)


def test_who_finds_every_place_taken_waits_no_longer_than_the_patience() -> None:
    with Desk(work, 1, PoolLimits(time_s=3, memory_mb=500)) as desk:
        other = threading.Thread(target=lost, args=(desk,))
        other.start()
        time.sleep(0.2)
        with pytest.raises(LostError, match="taken"):
            desk.ask("again", 0.1)
        other.join()


def lost(desk: Desk[object, object]) -> None:
    with pytest.raises(LostError):
        desk.ask("hang", 5)


def test_nothing_is_left_when_it_closes() -> None:
    with Desk(work_of_pid, 1, LIMITS) as desk:
        process = desk.ask(None, 5)
    with pytest.raises(ProcessLookupError):
        os.kill(process, 0)


def work_of_pid(_: object) -> int:
    return os.getpid()
