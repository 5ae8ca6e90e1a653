"""A process that is ended at any step leaves a folder that is all old or all new, and the next make works.

The child counts every renaming, removal and opening for writing that Python tells of (its audit events) and ends itself
in front of the k-th, for every k there is; then another one does, at every step of its own that ends the change.
"""

from __future__ import annotations

import json
import os
import shutil
import signal
import sys
from pathlib import Path

import pytest

from signgen.disk.change import is_unfinished
from signgen.disk.ours import digest
from signgen.files import write_folder

OLD, NEW, THIRD = "old", "new", "third"
BETWEEN, NONE = "in between", "none"


def job(text: str) -> dict[str, bytes]:
    """Files of a job: two that every text has, one of its own, one that never changes."""
    named = {
        "1-v-bit-90.nc": text.encode(), "2-end-mill-6.nc": text.encode() * 2, f"only-{text}.svg": b"x",
        "sign.toml": b"always the same",
    }  # fmt: skip
    sha = {name: digest(content) for name, content in named.items()}
    told = {"format": "signgen-report", "files": [*named, "report.json"], "sha256": sha, "sign": {"lines": [text]}}
    return {**named, "report.json": json.dumps(told).encode()}


def state(out: Path) -> dict[str, bytes]:
    if not out.exists():
        return {}
    return {path.name: path.read_bytes() for path in out.iterdir() if path.is_file()}


def ended(out: Path, kind: signal.Signals, step: int, text: str) -> bool:
    """Whether a process that brings `text` to a folder was ended, in front of its step of this number."""
    child = os.fork()
    if not child:
        left = step

        def count(event: str, told: tuple[object, ...]) -> None:
            nonlocal left
            writes = event == "open" and isinstance(told[1], str) and set(told[1]) & set("wxa+")
            if writes or event in ("os.rename", "os.remove", "os.rmdir", "os.mkdir", "os.chmod"):
                left -= 1
                if not left:
                    os.kill(os.getpid(), kind)

        try:
            signal.signal(kind, signal.SIG_DFL) if kind == signal.SIGTERM else None
            sys.addaudithook(count)
            write_folder(out, job(text))
            os._exit(0)
        finally:
            os._exit(1)
    _, status = os.waitpid(child, 0)
    assert status in (0, kind)
    return status == kind


def prepared(folder: Path, case: str) -> tuple[Path, dict[str, bytes]]:
    out = folder / "out"
    mine: dict[str, bytes] = {}
    if case != "nothing there":
        write_folder(out, job(OLD))
    if case == "something of the user's":
        mine = {"photo.jpg": b"mine", "2-mine.tap": b"mine"}
        for name, content in mine.items():
            (out / name).write_bytes(content)
        (out / "sketches").mkdir()
    return out, mine


CASES = [
    ("nothing there", "exchange", signal.SIGKILL),
    ("an earlier make", "exchange", signal.SIGKILL),
    ("an earlier make", "journal", signal.SIGTERM),
    ("something of the user's", "exchange", signal.SIGKILL),
]


@pytest.mark.parametrize(("case", "how", "kind"), CASES)
def test_a_kill_at_any_step_twice_leaves_old_or_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, case: str, how: str, kind: signal.Signals
) -> None:
    monkeypatch.setattr(os, "fsync", lambda descriptor: None)  # it matters to power cuts, not to kills
    if how == "journal":
        monkeypatch.setattr("signgen.files.exchanged", lambda one, other: False)
    out, mine = prepared(tmp_path, case)
    start = state(out)
    ages: set[str] = set()
    first = 0
    while ended(out, kind, first := first + 1, NEW):
        now = age(out, mine)
        assert now != NONE or case == "nothing there"
        ages.add(now)
        for second in (1, 4, 13):
            ended(out, kind, second, THIRD)
            assert age(out, mine) != NONE or now == NONE
        write_folder(out, job(THIRD))
        assert state(out) == {**mine, **job(THIRD)}
        assert [path.name for path in tmp_path.iterdir()] == ["out"], "nothing is left beside it"
        assert not [path for path in out.iterdir() if path.name.startswith(".")], "nor in it"
        restored(out, start)
    assert state(out) == {**mine, **job(NEW)}
    assert first > 8
    assert (OLD if start else NONE) in ages
    if case == "an earlier make" and how == "exchange":
        assert ages == {OLD, NEW}, "a folder that changes places is never in between"
    if mine or how == "journal":
        assert ages == {OLD, BETWEEN, NEW}


def age(out: Path, mine: dict[str, bytes]) -> str:
    """What is in the folder; fails when programs of two makes lie in it, or a report beside too few files."""
    now = state(out)
    assert {name: now.pop(name) for name in mine} == mine
    if is_unfinished(out):
        # In between, and it says so; even then there are never programs of two makes, nor a report.
        made = [{name for name in now if job(text).get(name) == now[name]} for text in (OLD, NEW, THIRD)]
        assert any(found == set(now) for found in made), sorted(now)
        whole = [text for text in (OLD, NEW, THIRD) if job(text) == now]
        assert whole or "report.json" not in now
        return whole[0] if whole else BETWEEN
    if not now:
        return NONE
    return next(text for text in (OLD, NEW, THIRD) if job(text) == now)


def restored(out: Path, start: dict[str, bytes]) -> None:
    """The folder as it was at first."""
    if not start:
        shutil.rmtree(out)
        return
    for name in state(out):
        (out / name).unlink()
    for name, content in start.items():
        (out / name).write_bytes(content)


def test_a_journal_that_was_planted_costs_no_file(tmp_path: Path) -> None:
    out, _ = prepared(tmp_path, "something of the user's")
    own = out / ".signgen-change"
    (own / "new").mkdir(parents=True)
    told = {"format": "signgen-change", "version": 1, "old": {"photo.jpg": digest(b"mine")}, "new": {}}
    (own / "begun.json").write_text(json.dumps(told))
    with pytest.raises(Exception, match="did not write"):
        write_folder(out, job(NEW))
    assert (out / "photo.jpg").read_bytes() == b"mine"
