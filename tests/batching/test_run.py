"""Batches as a user meets them: folders, reports, interruptions, disks that are full."""

from __future__ import annotations

import csv
import io
import json
import os
import resource
import signal
import subprocess
import time
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.batching.ledger import LEDGER
from signgen.batching.report import REPORTS
from signgen.batching.run import GO_ON
from signgen.cli import group
from signgen.errors import SignGenError
from tests.batching.making import SIGN, batch, is_root, lines_in_ledger, started, tree, workers_of, write_list

ROWS = ["A,", "B,60", "C,0", "D,", "E,5x5", "F,40"]
"""The third asks for no thickness at all, and the fifth for none that is one."""


@pytest.fixture(scope="module")
def listed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    rows = [row.replace(",60", ",5").replace(",40", ",7") for row in ROWS]
    return write_list(tmp_path_factory.mktemp("list") / "names.csv", rows, "name,thickness")


@pytest.fixture(scope="module")
def whole(listed: Path) -> Path:
    """The batch that nothing interrupted."""
    out = listed.parent / "whole"
    result = batch(listed, *SIGN, "--out", out, "--workers", "2")
    assert result.exit_code == 0, result.exception
    return out


def problems(words: list[str | Path]) -> list[str]:
    result = batch(*words)
    assert isinstance(result.exception, SignGenError), result.output
    return [str(problem) for problem in result.exception.problems]


def test_a_bad_row_does_not_stop_the_good_ones(whole: Path) -> None:
    folders = sorted(path.name for path in whole.iterdir() if path.is_dir())
    assert folders == ["0002-a", "0003-b", "0005-d", "0007-f"]
    assert sorted(path.name for path in whole.iterdir() if path.is_file()) == [
        "batch.json", "errors.csv", "index.html", LEDGER, "packing.html", "results.csv",
    ]  # fmt: skip


def test_a_row_has_the_bytes_that_make_gives(whole: Path, tmp_path: Path) -> None:
    words = ["make", "B", *SIGN[2:], "--thickness", "5", "--out", str(tmp_path / "made")]
    result = CliRunner().invoke(group, words)
    assert result.exit_code == 0, result.exception
    assert tree(tmp_path / "made") == tree(whole / "0003-b")


def test_the_exit_code_says_that_rows_failed_and_the_summary_how_many(
    listed: Path, whole: Path, tmp_path: Path
) -> None:
    done = started(listed, *SIGN, "--out", tmp_path / "out", "--workers", "1")
    output, errors = done.communicate()
    assert done.returncode == 1
    assert "4 of 6 rows made" in output
    assert [line.split(":")[:2] for line in errors.splitlines()] == [["row 4", " thickness"], ["row 6", " thickness"]]
    assert tree(tmp_path / "out") == tree(whole)


def test_the_report_tells_every_row(whole: Path) -> None:
    told = json.loads((whole / "batch.json").read_text(encoding="utf-8"))
    assert (told["format"], told["version"], told["rows"]) == ("signgen-batch", 1, 6)
    assert [sign["row"] for sign in told["rows_made"]] == [2, 3, 5, 7]
    assert [row["row"] for row in told["rows_failed"]] == [4, 6]
    assert told["totals"]["made"] == 4
    assert [(board["thickness_mm"], board["count"]) for board in told["totals"]["boards"]] == [(5, 1), (6, 2), (7, 1)]
    minutes = 0.0
    for sign in told["rows_made"]:
        report = json.loads((whole / sign["folder"] / "report.json").read_text(encoding="utf-8"))
        assert sign["lines"] == report["sign"]["lines"]
        assert sign["minutes"] == report["minutes"]
        minutes += sum(program["minutes"] for program in report["programs"])
    assert told["totals"]["minutes"] == pytest.approx(minutes, abs=0.01)


def test_errors_can_be_mended_and_run_again(listed: Path, whole: Path, tmp_path: Path) -> None:
    text = (whole / "errors.csv").read_text(encoding="utf-8-sig")
    rows = list(csv.reader(io.StringIO(text)))
    assert rows[0] == ["row", "field", "message", "name", "thickness"]
    assert [(row[0], row[1], *row[3:]) for row in rows[1:]] == [
        ("4", "thickness", "C", "0"),
        ("6", "thickness", "E", "5x5"),
    ]
    mended = tmp_path / "mended.csv"
    mended.write_text("\ufeff" + text.replace("C,0", "C,6").replace("E,5x5", "E,6"), encoding="utf-8")
    result = batch(mended, *SIGN, "--out", tmp_path / "out")
    assert result.exception is None
    there = sorted(path.name for path in (tmp_path / "out").iterdir())
    assert there == ["0004-c", "0006-e", "batch.json", "index.html", LEDGER, "packing.html", "results.csv"]


def test_cells_that_would_run_as_formulas_are_guarded_in_the_errors(tmp_path: Path) -> None:
    path = write_list(tmp_path / "n.csv", ["=cmd|' /C calc'!A0,bad", "-3,bad", "@x,bad"], "name,thickness")
    batch(path, *SIGN, "--out", tmp_path / "out")
    rows = list(csv.reader(io.StringIO((tmp_path / "out" / "errors.csv").read_text(encoding="utf-8-sig"))))
    assert [row[3] for row in rows[1:]] == ["'=cmd|' /C calc'!A0", "-3", "'@x"]


def test_a_row_that_cannot_be_read_comes_back_to_be_mended(tmp_path: Path) -> None:
    path = write_list(tmp_path / "n.csv", ['"Anna,1', "B\0o,bad"], "name,thickness")
    batch(path, *SIGN, "--out", tmp_path / "out")
    rows = list(csv.reader(io.StringIO((tmp_path / "out" / "errors.csv").read_text(encoding="utf-8-sig"))))
    assert rows[1][3:] == ['"Anna', "1"]
    assert rows[2][3:] == ["B\0o", "bad"]


def test_an_interrupted_batch_resumes_to_the_same_bytes(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "2")
    while lines_in_ledger(out) < 2:
        assert owner.poll() is None
        time.sleep(0.01)
    workers = workers_of(owner.pid)
    assert workers
    owner.kill()
    owner.communicate()
    for _ in range(100):
        if not any(Path(f"/proc/{worker}/cmdline").exists() for worker in workers):
            break
        time.sleep(0.1)
    known = lines_in_ledger(out)
    assert not (out / "batch.json").exists()
    for folder in out.iterdir():  # whatever is there under its own name is whole
        if folder.is_dir() and not folder.name.startswith("."):
            assert tree(folder) == tree(whole / folder.name)
    before = {path: path.stat().st_mtime_ns for path in out.glob("0*/report.json")}
    (out / ".signgen-stage-0123abcd").mkdir()  # as a killed worker leaves it
    again = started(listed, *SIGN, "--out", out, "--workers", "2", "--resume")
    again.communicate()
    assert again.returncode == 1
    assert tree(out) == tree(whole)
    kept = [path for path, then in before.items() if path.stat().st_mtime_ns == then]
    assert len(kept) >= known - 2  # two of the known rows may be the bad ones


@pytest.mark.sweep
def test_half_a_folder_of_a_killed_worker_is_taken_away(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "1")
    while lines_in_ledger(out) < 1:
        assert owner.poll() is None
        time.sleep(0.01)
    half = out / ".signgen-stage-0123abcd"
    half.mkdir()
    (half / "report.json").write_text("{}")
    owner.communicate()
    assert tree(out) == tree(whole)


@pytest.mark.sweep
def test_a_killed_worker_costs_nothing(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "2")
    while lines_in_ledger(out) < 2:
        assert owner.poll() is None
        time.sleep(0.01)
    os.kill(workers_of(owner.pid)[0], signal.SIGKILL)
    owner.communicate()
    assert owner.returncode == 1
    assert tree(out) == tree(whole)


@pytest.mark.sweep
def test_an_interrupt_says_how_to_go_on(listed: Path, whole: Path, tmp_path: Path) -> None:
    def heard() -> None:  # tests that run in the background inherit that Ctrl-C is not for them
        signal.signal(signal.SIGINT, signal.SIG_DFL)

    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "2", start_new_session=True, preexec_fn=heard)
    while lines_in_ledger(out) < 1:
        assert owner.poll() is None
        time.sleep(0.01)
    os.killpg(owner.pid, signal.SIGINT)  # what Ctrl-C does: workers get it too
    _, errors = owner.communicate()
    assert owner.returncode == 130, errors
    assert errors.splitlines()[-1] == f"Stopped. {GO_ON}"
    assert "Traceback" not in errors
    assert batch(listed, *SIGN, "--out", out, "--resume").exception is None
    assert tree(out) == tree(whole)


def test_files_that_may_not_grow_stop_the_batch_and_it_resumes(listed: Path, whole: Path, tmp_path: Path) -> None:
    def limited() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (20_000, 20_000))

    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "2", preexec_fn=limited)
    _, errors = owner.communicate()
    assert owner.returncode == 2
    assert "File too large" in errors
    assert str(GO_ON) in errors
    assert {path.name for path in out.iterdir() if not path.name.startswith(".signgen")} == {LEDGER}
    assert batch(listed, *SIGN, "--out", out, "--resume").exception is None
    assert tree(out) == tree(whole)


@pytest.mark.sweep
@pytest.mark.skipif(not is_root(), reason="only root may mount a small disk")
def test_a_full_disk_stops_the_batch_and_it_resumes(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "disk"
    out.mkdir()
    size = sum(map(len, tree(whole / "0002-a").values()))
    mount = ["mount", "-t", "tmpfs", "-o", f"size={int(2.5 * size)}", "tmpfs", str(out)]
    if subprocess.run(mount, capture_output=True, check=False).returncode:
        pytest.skip("this system lets nobody mount a small disk")
    try:
        owner = started(listed, *SIGN, "--out", out, "--workers", "2")
        _, errors = owner.communicate()
        assert owner.returncode == 2
        assert "No space left on device" in errors
        for folder in out.glob("0*"):
            assert tree(folder) == tree(whole / folder.name)
        subprocess.run(["mount", "-o", f"remount,size={40 * size}", str(out)], check=True)
        assert batch(listed, *SIGN, "--out", out, "--resume").exception is None
        assert tree(out) == tree(whole)
    finally:
        subprocess.run(["umount", "-l", str(out)], check=True)


def test_a_folder_that_cannot_be_written_is_said_at_once(listed: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    (told,) = problems([listed, *SIGN, "--out", tmp_path / "file" / "out"])
    assert told.startswith("out: ")
    assert "cannot be written" in told
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


@pytest.mark.skipif(is_root(), reason="nothing is forbidden to root")
def test_a_folder_without_permission_is_said_at_once(listed: Path, tmp_path: Path) -> None:
    (tmp_path / "closed").mkdir(mode=0o500)
    (told,) = problems([listed, *SIGN, "--out", tmp_path / "closed" / "out"])
    assert "cannot be written" in told


def test_a_row_that_takes_too_much_memory_fails_alone(tmp_path: Path) -> None:
    path = write_list(tmp_path / "n.csv", ["A,60x30", "B,2500x2500"], "name,size")
    machine = tmp_path / "shop.toml"
    machine.write_text(
        '[machine.large]\nlabel = "Large"\ntravel = [3000, 3000, 150]\ntop-feed = [6000, 6000, 2000]\n'
        "rapid = [8000, 8000, 3000]\nacceleration = [600, 600, 300]\ncorner-tolerance = 0.02\n"
        'spindle-rpm = [6000, 24000]\nspindle-start = 6\ncollet = 20\nsource = "invented"\n'
    )
    words = ["--text", "{name}", "--thickness", "6", "--cap-height", "8", "--shop", machine, "--out", tmp_path / "out"]
    assert batch(path, *words, "--memory-limit", "130").exception is None
    told = json.loads((tmp_path / "out" / "batch.json").read_text())
    assert [row["row"] for row in told["rows_made"]] == [2]
    assert [row["exit_code"] for row in told["rows_failed"]] == [70]
    assert "twice" in told["rows_failed"][0]["message"]


def test_there_must_be_something_to_resume(listed: Path, tmp_path: Path) -> None:
    assert "There is no batch in" in problems([listed, *SIGN, "--out", tmp_path / "none", "--resume"])[0]


def test_a_new_batch_takes_the_place_of_the_earlier_one(tmp_path: Path) -> None:
    out = tmp_path / "out"
    batch(write_list(tmp_path / "n.csv", ["A,", "B,", "C,", "D,bad"], "name,thickness"), *SIGN, "--out", out)
    (out / "0003-b" / "photo.jpg").write_text("mine")
    (out / "notes.txt").write_text("mine")
    batch(write_list(tmp_path / "n.csv", ["A,5", "X,"], "name,thickness"), *SIGN, "--out", out, "--fresh")
    there = sorted(path.name for path in out.iterdir())
    assert there == [
        "0002-a",
        "0003-b",
        "0003-x",
        "batch.json",
        "index.html",
        LEDGER,
        "notes.txt",
        "packing.html",
        "results.csv",
    ]
    assert [path.name for path in (out / "0003-b").iterdir()] == ["photo.jpg"]
    assert "thickness = 5" in (out / "0002-a" / "sign.toml").read_text()


@pytest.mark.parametrize("name", [*REPORTS, LEDGER])
def test_a_file_that_is_not_ours_is_never_overwritten(tmp_path: Path, name: str) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / name).write_text("mine, and it ends in no line end")
    (told,) = problems([write_list(tmp_path / "n.csv", ["A"]), *SIGN, "--out", out])
    assert "is not signgen's" in told
    assert [path.name for path in out.iterdir()] == [name]
    assert (out / name).read_text() == "mine, and it ends in no line end"


def test_the_list_itself_is_never_overwritten(tmp_path: Path) -> None:
    path = write_list(tmp_path / "results.csv", ["A,bad"], "name,thickness")
    before = path.read_bytes()
    (told,) = problems([path, *SIGN, "--out", tmp_path])
    assert "would be replaced while it is read" in told
    assert path.read_bytes() == before


def test_nothing_is_written_outside_the_folder(tmp_path: Path) -> None:
    rows = ["../x,../../y", "/e,/tmp/z", "~,", "con,..", "A,."]
    result = batch(write_list(tmp_path / "n.csv", rows, "name,out"), *SIGN, "--out", tmp_path / "a" / "out")
    assert result.exception is None
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a", "n.csv"]
    assert sorted(path.name for path in (tmp_path / "a").iterdir()) == ["out"]
    folders = sorted(path.name for path in (tmp_path / "a" / "out").iterdir() if path.is_dir())
    assert folders == ["0002-y", "0003-tmp-z", "0004-sign", "0005-sign", "0006-sign"]


def test_copies_count_in_the_totals(tmp_path: Path) -> None:
    path = write_list(tmp_path / "n.csv", ["A,3", "B,"], "name,copies")
    result = batch(path, *SIGN, "--out", tmp_path / "out", "--copies", "2", "--json")
    told = json.loads(result.output)
    once = {sign["row"]: sign["minutes"] for sign in told["rows_made"]}
    assert told["totals"]["signs"] == 5
    assert told["totals"]["minutes"] == pytest.approx(3 * once[2] + 2 * once[3], abs=0.05)
    assert told["totals"]["boards"][0]["count"] == 5


def test_a_folder_that_vanishes_is_not_claimed_as_done(listed: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    owner = started(listed, *SIGN, "--out", out, "--workers", "1")
    while lines_in_ledger(out) < 1:
        assert owner.poll() is None
        time.sleep(0.01)
    out.rename(tmp_path / "elsewhere")
    _, said = owner.communicate()
    assert owner.returncode == 2
    assert "has gone" in said
    assert not (out / "batch.json").exists()
