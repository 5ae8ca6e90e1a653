"""A list that was changed, mended or cut short is made again: what did not change stays; the same bytes come out."""

from __future__ import annotations

import csv
import random
import time
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.batching.ledger import LEDGER
from signgen.batching.rows_asked import read_rows
from signgen.cli import group
from signgen.errors import AskError, SignGenError
from tests.batching.making import SIGN, batch, lines_in_ledger, started, tree, workers_of, write_list

HEADER = "name,thickness"


def made(path: Path, out: Path, *words: str | Path) -> str:
    result = batch(path, *SIGN, "--out", out, "--workers", "1", *words)
    assert result.exception is None, result.output
    return result.output


def refused(path: Path, out: Path, *words: str | Path) -> str:
    before = {**tree(out), LEDGER: (out / LEDGER).read_bytes()}
    result = batch(path, *SIGN, "--out", out, *words)
    assert isinstance(result.exception, SignGenError), result.output
    assert {**tree(out), LEDGER: (out / LEDGER).read_bytes()} == before
    return str(result.exception.problems[0])


def times(out: Path) -> dict[str, tuple[int, int]]:
    """When each sign was made: of its report, the file and the time of its last change."""
    return {
        path.parent.name: (path.stat().st_ino, path.stat().st_mtime_ns) for path in sorted(out.glob("0*/report.json"))
    }


def uninterrupted(path: Path) -> dict[str, bytes]:
    """What one run of a list gives."""
    out = path.parent / "at-once"
    made(path, out, "--fresh")
    return tree(out)


@pytest.fixture
def first(tmp_path: Path) -> tuple[Path, Path]:
    path, out = write_list(tmp_path / "names.csv", ["A,", "B,x", "C,", "D,y"], HEADER), tmp_path / "out"
    made(path, out)
    return path, out


def test_mended_rows_go_back_to_their_numbers(first: tuple[Path, Path]) -> None:
    path, out = first
    then = times(out)
    errors = out / "errors.csv"
    errors.write_bytes(errors.read_bytes().replace(b"B,x", b"B,5"))  # one of two is mended, where it lies
    made(errors, out)
    assert sorted(times(out)) == ["0002-a", "0003-b", "0004-c"]
    rows = list(csv.reader(errors.read_text("utf-8-sig").splitlines()))
    assert [row[0] for row in rows[1:]] == ["5"]
    elsewhere = path.parent / "mended.csv"
    elsewhere.write_bytes(errors.read_bytes().replace(b"D,y", b"D,7"))  # the other one in a copy
    made(elsewhere, out)
    assert {name: time for name, time in times(out).items() if name in then} == then
    write_list(path, ["A,", "B,5", "C,", "D,7"], HEADER)
    assert tree(out) == uninterrupted(path)


def test_a_changed_list_makes_what_changed(first: tuple[Path, Path]) -> None:
    path, out = first
    then = times(out)
    write_list(path, ["New,", "A,", "C,", "E,5"], HEADER)  # one put in above, one mended away, one changed
    output = made(path, out, "--resume")
    now = times(out)
    assert sorted(now) == ["0002-new", "0003-a", "0004-c", "0005-e"]
    assert (now["0003-a"], now["0004-c"]) == (then["0002-a"], then["0004-c"])
    assert "2 rows as before, not made again; 1 of them under a new number" in output
    assert tree(out) == uninterrupted(path)


def test_rows_that_are_gone_are_said(first: tuple[Path, Path]) -> None:
    path, out = first
    write_list(path, ["A,"], HEADER)
    output = made(path, out, "--resume")
    assert "Row 4 (C) is not in the list any more" in output
    assert tree(out) == uninterrupted(path)
    write_list(path, ["B,", "A,"], HEADER)
    made(path, out, "--resume")
    output = made(write_list(path, ["A,"], HEADER), out, "--resume")
    assert "Row 2 (B)" not in output  # its number is A's now, who had another one
    assert "Row 3" not in output  # it is not gone, but moved up


@pytest.mark.sweep
def test_equal_words_of_other_sizes_may_change_places(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", ["A,5", "A,6"], HEADER), tmp_path / "out"
    made(path, out)
    made(write_list(path, ["A,7", "A,5", "A,6"], HEADER), out, "--resume")
    assert tree(out) == uninterrupted(path)
    made(write_list(path, ["A,5", "A,7", "A,6"], HEADER), out, "--resume")
    assert tree(out) == uninterrupted(path)


@pytest.mark.sweep
def test_other_options_make_all_rows_again(first: tuple[Path, Path]) -> None:
    path, out = first
    result = batch(path, *SIGN, "--material", "mdf", "--out", out, "--resume")
    assert result.exception is None
    assert "as before" not in result.output
    assert 'material = "mdf"' in (out / "0002-a" / "sign.toml").read_text()


@pytest.mark.sweep
def test_a_shop_file_that_changed_makes_its_rows_again(tmp_path: Path) -> None:
    path, out, shop = write_list(tmp_path / "n.csv", ["A"]), tmp_path / "out", tmp_path / "shop.toml"
    shop.write_text("only-these-tools = false\n")
    made(path, out, "--shop", shop)
    assert "1 row as before" in made(path, out, "--shop", shop, "--resume")
    shop.write_text("# measured again\nonly-these-tools = false\n")
    assert "as before" not in made(path, out, "--shop", shop, "--resume")


def test_nothing_that_is_there_is_made_again_unasked(first: tuple[Path, Path]) -> None:
    path, out = first
    assert "holds a batch already" in refused(path, out)
    both = batch(path, *SIGN, "--out", out, "--resume", "--fresh")
    assert isinstance(both.exception, AskError)
    then = times(out)
    made(path, out, "--fresh")
    assert all(now != then[name] for name, now in times(out).items())


def test_rows_by_number(first: tuple[Path, Path]) -> None:
    path, out = first
    then, before = times(out), tree(out)
    made(path, out, "--rows", "4-5")
    now = times(out)
    assert now["0002-a"] == then["0002-a"]
    assert now["0004-c"] != then["0004-c"]
    assert tree(out) == before
    assert "has no row 9" in refused(path, out, "--rows", "2,9-12")
    assert "'2-' is no number" in refused(path, out, "--rows", "2-")
    assert "finish" in refused(path, out, "--rows", "2", "--finish", "recess")
    fresh = path.parent / "some"
    made(path, fresh, "--rows", "2")
    assert sorted(times(fresh)) == ["0002-a"]
    made(path, fresh, "--resume")  # and then the others
    assert tree(fresh) == before


def test_a_broken_piece_gets_a_sheet_of_its_own(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", ["A", "B", "C"]), tmp_path / "out"
    made(path, out, "--sheet", "300x200")
    before = tree(out)
    made(path, out, "--rows", "3", "--sheet", "130x100")  # an offcut
    own = out / "rows-3"
    assert '"row": 3' in (own / "sheet-01" / "sheet.json").read_text()
    assert "130" in (own / "sheet-01" / "setup.html").read_text()
    assert {name: content for name, content in tree(out).items() if not name.startswith("rows-3")} == before


def test_rows_that_failed_elsewhere_are_refused(first: tuple[Path, Path], tmp_path: Path) -> None:
    _, out = first
    strange = write_list(tmp_path / "e.csv", ["77,thickness,bad,Z,5"], "row,field,message,name,thickness")
    assert "has no row 77" in refused(strange, out)
    strange = write_list(tmp_path / "e.csv", ["3,thickness,bad,Z"], "row,field,message,name")
    assert "has the columns name, thickness" in refused(strange, out)
    for rows in (["3,,,Z,5", "3,,,Y,5"], ["x,,,Z,5"], ["1,,,Z,5"]):
        strange = write_list(tmp_path / "e.csv", rows, "row,field,message,name,thickness")
        assert "Leave the column row" in refused(strange, out)


def test_mended_rows_are_not_thrown_away(first: tuple[Path, Path]) -> None:
    path, out = first
    errors = out / "errors.csv"
    errors.write_bytes(errors.read_bytes().replace(b"B,x", b"B,5"))
    assert "was changed after signgen wrote it" in refused(path, out, "--resume")


def test_rows_that_ask_for_the_same_are_said(tmp_path: Path) -> None:
    output = made(write_list(tmp_path / "n.csv", ["A", "B", "A"]), tmp_path / "out")
    assert "Rows 2 and 4 ask for the same sign" in output


def test_rows_are_numbered_in_texts(tmp_path: Path) -> None:
    path, out = write_list(tmp_path / "n.csv", ["A", "", "B"]), tmp_path / "out"
    made(path, out, "--text", "{row}", "--text", "No {serial:03}", "--cap-height", "3")
    toml = (out / "0004-b" / "sign.toml").read_text()
    assert '"B"' in toml
    assert '"4"' in toml
    assert '"No 003"' in toml
    result = batch(path, *SIGN, "--text", "{serial:x}", "--out", out, "--fresh")
    assert isinstance(result.exception, AskError)


def test_numbers_of_rows() -> None:
    asked = read_rows(" 44-46 ,19")
    assert asked is not None
    assert [row for row in range(60) if row in asked] == [19, 44, 45, 46]
    for text in ("", "1", "0-3", "5-4", "a", "3,,4", "3;4", "99999999"):
        with pytest.raises(AskError):
            read_rows(text)


def test_results_stand_behind_the_list_as_it_came(tmp_path: Path) -> None:
    path = tmp_path / "n.csv"
    path.write_bytes("name;note;thickness\nJürgen;Tür;\nB;x;y\n".encode("windows-1252"))
    out = tmp_path / "out"
    made(path, out, "--encoding", "windows-1252", "--ignore-columns", "--language", "de")
    lines = (out / "results.csv").read_bytes().decode("windows-1252").splitlines()
    assert lines[0] == "name;note;thickness;row;folder;sheet;piece;x_mm;y_mm;minutes;cost;verdict"
    assert lines[1].startswith("Jürgen;Tür;;2;0002-jurgen;;;;;1.")
    assert lines[1].endswith(";;geprüft")
    assert lines[2].startswith("B;x;y;3;;;;;;;;nicht gemacht: thickness: ")
    then = times(out)
    path.write_bytes("name;note;thickness\nJürgen;Tor;\nB;x;y\n".encode("windows-1252"))
    made(path, out, "--encoding", "windows-1252", "--ignore-columns", "--language", "de", "--resume")
    assert times(out) == then  # a note is no part of the sign, and the results have the new one
    assert b";Tor;" in (out / "results.csv").read_bytes()


@pytest.mark.sweep
@pytest.mark.parametrize("sheet", [(), ("--sheet", "300x200")])
def test_sixty_rows_mended_changed_cut_short_and_killed_ten_times(tmp_path: Path, sheet: tuple[str, ...]) -> None:
    dice = random.Random(60)
    names = [f"{name}{number},{dice.choice(['', '5', '7'])}" for number in range(12) for name in "ABCDE"]
    for bad in (7, 30, 51):
        names[bad] = f"Bad{bad},x"
    path, out = write_list(tmp_path / "names.csv", names, HEADER), tmp_path / "out"

    def killed(*words: str | Path) -> None:
        owner = started(*words, *SIGN, *sheet, "--out", out, "--workers", "2")
        goal = lines_in_ledger(out) + dice.randint(1, 8)
        while lines_in_ledger(out) < goal and owner.poll() is None:
            time.sleep(0.005)
        workers = workers_of(owner.pid)
        owner.kill()
        owner.communicate()
        for _ in range(200):
            if not any(Path(f"/proc/{worker}/cmdline").exists() for worker in workers):
                break
            time.sleep(0.05)

    killed(path)
    for _ in range(4):
        killed(path, "--resume")
    made(path, out, *sheet, "--resume")
    then = times(out)
    errors = out / "errors.csv"
    errors.write_bytes(errors.read_bytes().replace(b",x", b",6"))
    killed(errors)
    made(errors, out, *sheet)
    assert {name: each for name, each in times(out).items() if name in then} == then  # nothing else was made
    mended = [name.replace(",x", ",6") for name in names]
    changed = [*mended[:20], "Put in,5", *mended[20:40], "Instead,7", *mended[41:55]]
    write_list(path, changed, HEADER)
    for _ in range(4):
        killed(path, "--resume")
    output = made(path, out, *sheet, "--resume")
    assert "not in the list any more" in output
    assert len(set(times(out).values()) - set(then.values())) <= 5 or sheet  # three mended, two new
    alone = tmp_path / "at-once"
    made(path, alone, *sheet)
    assert tree(out) == tree(alone)


@pytest.mark.parametrize("sheet", [(), pytest.param(("--sheet", "300x200"), marks=pytest.mark.sweep)])
def test_pages_and_pictures_come_when_they_are_wanted(tmp_path: Path, sheet: tuple[str, ...]) -> None:
    path, out, at_once = write_list(tmp_path / "n.csv", ["A"]), tmp_path / "out", tmp_path / "at-once"
    made(path, out, *sheet, "--files", "programs")
    (job,) = (each for each in out.iterdir() if each.is_dir())
    files = {each.name for each in job.iterdir()}
    assert not any(name.endswith((".html", ".png", ".svg")) for name in files)
    checked = CliRunner().invoke(group, ["check", str(job)], standalone_mode=False)
    assert checked.exception is None
    assert "preview.png" not in (out / "index.html").read_text("utf-8")
    programs = {name: (job / name).read_bytes() for name in files if name.endswith(".nc")}
    made(path, out, *sheet, "--files", "sheet", "--resume")
    assert {each.name for each in job.iterdir()} == files | {"setup.html"}
    made(path, out, *sheet, "--resume")
    made(path, at_once, *sheet)
    assert tree(out) == tree(at_once)
    assert {name: (job / name).read_bytes() for name in programs} == programs
