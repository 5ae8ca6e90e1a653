"""How far the batch is: on a terminal only."""

from __future__ import annotations

import io

import pytest

from signgen.batching.progress import Progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    now = [100.0]
    monkeypatch.setattr("signgen.batching.progress.time.monotonic", lambda: now[0])
    return now


def test_says_rate_and_time_left(clock: list[float]) -> None:
    progress = Progress(1000, "rows", Terminal())
    for number in range(312):
        clock[0] += 0.25
        progress.add(failed=number % 104 == 0)
    assert progress.line() == "312 of 1000 rows, 4.0 a second, 3 min left, 3 failed"


def test_slow_rows_are_counted_by_the_minute(clock: list[float]) -> None:
    progress = Progress(10, "rows", Terminal())
    clock[0] += 4
    progress.add(failed=False)
    assert progress.line() == "1 of 10 rows, 15.0 a minute, 40 s left"


def test_rows_done_before_say_nothing_about_the_pace(clock: list[float]) -> None:
    progress = Progress(1000, "rows", Terminal())
    for _ in range(900):
        progress.skip()
    clock[0] += 1
    progress.add(failed=False)
    assert progress.line() == "901 of 1000 rows, 1.0 a second, 1 min 40 s left"


def test_a_terminal_gets_one_line_that_is_wiped_in_the_end(clock: list[float]) -> None:
    terminal = Terminal()
    progress = Progress(3, "rows", terminal)
    clock[0] += 1
    progress.add(failed=False)
    progress.close()
    assert terminal.getvalue() == "\r1 of 3 rows, 1.0 a second, 10 s left\x1b[K\r\x1b[K"


def test_a_file_gets_nothing(clock: list[float]) -> None:
    stream = io.StringIO()
    progress = Progress(3, "rows", stream)
    clock[0] += 1
    progress.add(failed=False)
    progress.close()
    assert stream.getvalue() == ""
