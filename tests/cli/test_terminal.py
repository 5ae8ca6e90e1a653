"""Colours on terminals only, a line from work that takes long, and silence when it is asked for."""

from __future__ import annotations

import io
import os
import pty
import re
import subprocess
import sys
import time
from pathlib import Path

import pytest

from signgen.cli import terminal
from signgen.cli.terminal import GREEN, RED, Waiting, tinted, wants_colour

SMALL = ["-m", "signgen", "make", "7", "--size", "80x60", "--thickness", "12", "--out"]
SUMMARY = "sign      17\n          200 x 120\nchecks    All 3 checks passed\n          indeed\nnext      Open x"


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def bare(text: str) -> str:
    return re.sub(r"\x1b\[[0-9;]*m", "", text)


@pytest.mark.parametrize(
    ("stream", "environment", "wanted"),
    [
        (Terminal(), {}, True),
        (io.StringIO(), {}, False),
        (Terminal(), {"NO_COLOR": "1"}, False),
        (Terminal(), {"NO_COLOR": ""}, True),
        (Terminal(), {"TERM": "dumb"}, False),
    ],
)
def test_colours_are_for_terminals_that_want_them(
    monkeypatch: pytest.MonkeyPatch, stream: io.StringIO, environment: dict[str, str], wanted: bool
) -> None:
    """Source: no-color.org: when NO_COLOR is present and not empty, no colour."""
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    assert wants_colour(stream) is wanted


@pytest.mark.parametrize(("passed", "shade"), [(True, GREEN), (False, RED)])
def test_the_verdict_is_green_or_red_on_all_its_lines_and_no_word_changes(passed: bool, shade: str) -> None:
    text = tinted(SUMMARY, "checks", passed=passed)
    assert bare(text) == SUMMARY
    assert [line for line in text.split("\n") if shade in line] == text.split("\n")[2:4]


def test_long_work_says_what_it_does_and_clears_its_line(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(terminal, "PATIENCE_S", 0.05)
    monkeypatch.setattr(terminal, "EVERY_S", 0.02)
    stream = Terminal()
    with Waiting(stream) as waiting:
        waiting.stage("Planning")
        time.sleep(0.2)
    said = stream.getvalue()
    assert "\rPlanning (0 s)" in said
    assert said.endswith("\r\x1b[K")


@pytest.mark.parametrize(("stream", "quiet"), [(io.StringIO(), False), (Terminal(), True)])
def test_nothing_is_said_where_nobody_looks(monkeypatch: pytest.MonkeyPatch, stream: io.StringIO, quiet: bool) -> None:
    monkeypatch.setattr(terminal, "PATIENCE_S", 0.01)
    with Waiting(stream, quiet=quiet) as waiting:
        waiting.stage("Planning")
        time.sleep(0.05)
    assert stream.getvalue() == ""


def test_quick_work_says_nothing() -> None:
    stream = Terminal()
    with Waiting(stream) as waiting:
        waiting.stage("Planning")
    assert stream.getvalue() == ""


def test_an_error_passes_through_and_the_line_is_gone(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(terminal, "PATIENCE_S", 0.01)
    stream = Terminal()

    def work() -> None:
        with Waiting(stream):
            time.sleep(0.05)
            raise ValueError("broken")

    with pytest.raises(ValueError, match="broken"):
        work()
    assert stream.getvalue().endswith("\r\x1b[K")


def on_a_terminal(out: Path, *words: str, **environment: str) -> str:
    """What the command prints to a terminal of its own."""
    ours, theirs = pty.openpty()
    process = subprocess.Popen(
        [sys.executable, *SMALL, str(out), *words],
        stdout=theirs, stderr=theirs, env={**os.environ, "TERM": "xterm", **environment},
    )  # fmt: skip
    os.close(theirs)
    parts = []
    while True:
        try:
            part = os.read(ours, 4096)
        except OSError:  # the other end is closed
            break
        if not part:
            break
        parts.append(part)
    os.close(ours)
    assert process.wait() == 0
    return b"".join(parts).decode().replace("\r\n", "\n")


def test_a_terminal_gets_colours_unless_it_says_no(tmp_path: Path) -> None:
    environment = {"NO_COLOR": ""}
    assert GREEN in on_a_terminal(tmp_path / "a", **environment)
    plain = on_a_terminal(tmp_path / "b", NO_COLOR="1")
    assert "checks passed" in plain
    assert GREEN not in plain
    assert "\x1b[1m" not in plain


def test_a_pipe_gets_none_and_quiet_prints_nothing(tmp_path: Path) -> None:
    piped = subprocess.run([sys.executable, *SMALL, str(tmp_path / "a")], capture_output=True, text=True, check=True)
    assert "checks passed" in piped.stdout
    assert "\x1b" not in piped.stdout + piped.stderr
    quiet = subprocess.run(
        [sys.executable, *SMALL, str(tmp_path / "b"), "--quiet"], capture_output=True, text=True, check=True
    )
    assert quiet.stdout + quiet.stderr == ""
    assert (tmp_path / "b" / "setup.html").exists()


def test_quiet_still_says_what_is_wrong(tmp_path: Path) -> None:
    command = [sys.executable, *SMALL, str(tmp_path / "a"), "--quiet", "--thickness", "0"]
    failed = subprocess.run(command, capture_output=True, text=True, check=False)
    assert failed.returncode == 2
    assert failed.stderr.startswith("thickness:")
