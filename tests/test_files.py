"""Folders come to their new state as a whole, or not at all."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from signgen.errors import AskError
from signgen.files import place_folder, remove_folder, sweep, write_file, write_folder


def make(**contents: str) -> dict[str, bytes]:
    named = {name.replace("_", "."): text.encode() for name, text in contents.items()}
    report = {"format": "signgen-report", "files": [*named, "report.json"]}
    return {**named, "report.json": json.dumps(report).encode()}


def names(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_writes_a_folder_that_was_not_there(tmp_path: Path) -> None:
    write_folder(tmp_path / "a" / "b", make(x_nc="1", y_nc="2"))
    assert names(tmp_path / "a" / "b") == ["report.json", "x.nc", "y.nc"]
    assert (tmp_path / "a" / "b" / "y.nc").read_text() == "2"


def test_replaces_and_removes_the_files_of_the_earlier_make_and_nothing_else(tmp_path: Path) -> None:
    write_folder(tmp_path, make(x_nc="1", y_nc="2"))
    (tmp_path / "photo.jpg").write_text("mine")
    write_folder(tmp_path, make(x_nc="3"))
    assert names(tmp_path) == ["photo.jpg", "report.json", "x.nc"]
    assert (tmp_path / "x.nc").read_text() == "3"


def test_a_file_that_is_not_ours_is_never_overwritten(tmp_path: Path) -> None:
    (tmp_path / "x.nc").write_text("mine")
    with pytest.raises(AskError) as error:
        write_folder(tmp_path, make(x_nc="1", y_nc="2"))
    assert "x.nc" in str(error.value)
    assert names(tmp_path) == ["x.nc"]
    assert (tmp_path / "x.nc").read_text() == "mine"


def test_names_that_lead_out_of_the_folder_are_never_ours(tmp_path: Path) -> None:
    (tmp_path / "precious").write_text("mine")
    out = tmp_path / "out"
    out.mkdir()
    report = {"format": "signgen-report", "files": ["../precious", "report.json"]}
    (out / "report.json").write_text(json.dumps(report))
    write_folder(out, make(x_nc="1"))
    assert (tmp_path / "precious").read_text() == "mine"


@pytest.mark.parametrize("fails_at", [1, 2, 3, 4, 5, 6])
def test_when_a_step_fails_the_old_state_comes_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails_at: int
) -> None:
    write_folder(tmp_path, make(x_nc="old", gone_nc="old"))
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    real, calls = Path.replace, 0

    def replace(source: Path, target: Path) -> Path:
        nonlocal calls
        calls += 1
        if calls == fails_at:
            raise OSError(28, "No space left on device")
        return real(source, target)

    monkeypatch.setattr(Path, "replace", replace)
    with pytest.raises(AskError) as error:
        write_folder(tmp_path, make(x_nc="new", y_nc="new"))
    assert "No space left" in str(error.value)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == before


def test_a_folder_that_cannot_be_made_leaves_nothing_behind(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(AskError) as error:
        write_folder(tmp_path / "file" / "out", make(x_nc="1"))
    assert error.value.problems[0].where == "out"
    assert names(tmp_path) == ["file"]


def test_a_folder_is_placed_by_one_renaming(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[tuple[list[str], bool]] = []
    real = Path.replace

    def replace(source: Path, target: Path) -> Path:
        seen.append((names(source), target.exists()))
        return real(source, target)

    monkeypatch.setattr(Path, "replace", replace)
    place_folder(tmp_path / "a", make(x_nc="1"))
    assert seen == [(["report.json", "x.nc"], False)]
    assert names(tmp_path) == ["a"]


def test_placing_a_folder_takes_the_place_of_the_earlier_one(tmp_path: Path) -> None:
    place_folder(tmp_path / "a", make(x_nc="1", y_nc="2"))
    place_folder(tmp_path / "a", make(x_nc="3"))
    assert names(tmp_path / "a") == ["report.json", "x.nc"]
    assert (tmp_path / "a" / "x.nc").read_text() == "3"
    assert names(tmp_path) == ["a"]


def test_placing_a_folder_leaves_what_is_not_ours(tmp_path: Path) -> None:
    place_folder(tmp_path / "a", make(x_nc="1", y_nc="2"))
    (tmp_path / "a" / "photo.jpg").write_text("mine")
    place_folder(tmp_path / "a", make(x_nc="3"))
    assert names(tmp_path / "a") == ["photo.jpg", "report.json", "x.nc"]
    (tmp_path / "b").write_text("a file of mine")
    with pytest.raises(AskError):
        place_folder(tmp_path / "b", make(x_nc="3"))
    assert (tmp_path / "b").read_text() == "a file of mine"


@pytest.mark.parametrize("ended_at", [1, 2, 3])
def test_a_placing_that_is_ended_leaves_the_old_folder_or_the_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, ended_at: int
) -> None:
    class EndedError(BaseException):
        """What is left when a process is killed: nothing is tidied after it."""

    place_folder(tmp_path / "a", make(x_nc="old"))
    steps = 0

    def end(*_: object, **__: object) -> None:
        raise EndedError

    def step(source: Path, target: Path) -> Path:
        nonlocal steps
        steps += 1
        if steps == ended_at:
            raise EndedError
        return real(source, target)

    real = Path.replace
    monkeypatch.setattr(Path, "replace", step)
    monkeypatch.setattr("signgen.files._remove_tree", end)
    with pytest.raises(EndedError):
        place_folder(tmp_path / "a", make(x_nc="new"))
    monkeypatch.undo()
    sweep(tmp_path)
    assert names(tmp_path) == ["a"]
    assert (tmp_path / "a" / "x.nc").read_text() == ("new" if ended_at == 3 else "old")
    assert names(tmp_path / "a") == ["report.json", "x.nc"]


def test_a_file_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    def parts(fails: bool) -> Iterator[bytes]:
        yield b"new "
        if fails:
            raise OSError(28, "No space left on device")
        yield b"text"

    (tmp_path / "x").write_text("old")
    with pytest.raises(AskError):
        write_file(tmp_path / "x", parts(True))
    assert (tmp_path / "x").read_text() == "old"
    write_file(tmp_path / "x", parts(False))
    assert (tmp_path / "x").read_text() == "new text"
    assert names(tmp_path) == ["x"]


def test_removing_a_folder_leaves_what_is_not_ours(tmp_path: Path) -> None:
    place_folder(tmp_path / "a", make(x_nc="1"))
    place_folder(tmp_path / "b", make(x_nc="1"))
    (tmp_path / "b" / "photo.jpg").write_text("mine")
    remove_folder(tmp_path / "a")
    remove_folder(tmp_path / "b")
    assert names(tmp_path) == ["b"]
    assert names(tmp_path / "b") == ["photo.jpg"]
