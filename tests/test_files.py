"""Folders come to their new state as a whole, or not at all."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from signgen.disk.ours import digest
from signgen.errors import AskError
from signgen.files import must_have_lines, remove_folder, sweep, write_file, write_folder


def make(**contents: str) -> dict[str, bytes]:
    named = {name.replace("_", "."): text.encode() for name, text in contents.items()}
    sha = {name: digest(content) for name, content in named.items()}
    report = {"format": "signgen-report", "files": [*named, "report.json"], "sha256": sha}
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


@pytest.mark.parametrize("fails_at", [1, 2, 3, 4, 5, 6, 7, 8])
def test_when_a_step_fails_the_old_state_comes_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails_at: int
) -> None:
    write_folder(tmp_path, make(x_nc="old", gone_nc="old"))
    (tmp_path / "photo.jpg").write_text("mine")  # so that the folder cannot be exchanged as a whole
    before = {path.name: path.read_bytes() for path in tmp_path.iterdir()}
    real, calls = Path.replace, 0

    def replace(source: Path, target: Path) -> Path:
        nonlocal calls
        calls += 1
        if calls == fails_at:
            raise OSError(28, "No space left on device")
        return real(source, target)

    monkeypatch.setattr(Path, "replace", replace)
    if fails_at > 7:
        write_folder(tmp_path, make(x_nc="new", y_nc="new"))
        assert calls == 7, "every step was tried"
        return
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


def test_a_new_folder_comes_by_one_renaming(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen: list[tuple[list[str], bool]] = []
    real = Path.rename

    def rename(source: Path, target: Path) -> Path:
        seen.append((names(source), target.exists()))
        return real(source, target)

    monkeypatch.setattr(Path, "rename", rename)
    write_folder(tmp_path / "a", make(x_nc="1"))
    assert seen == [(["report.json", "x.nc"], False)]
    assert names(tmp_path) == ["a"]


def test_a_folder_with_nothing_else_in_it_changes_in_one_step(tmp_path: Path) -> None:
    write_folder(tmp_path / "a", make(x_nc="1", y_nc="2"))
    (tmp_path / "a").chmod(0o750)
    before = (tmp_path / "a").stat().st_ino
    write_folder(tmp_path / "a", make(x_nc="3"))
    assert names(tmp_path / "a") == ["report.json", "x.nc"]
    assert (tmp_path / "a" / "x.nc").read_text() == "3"
    assert names(tmp_path) == ["a"]
    assert (tmp_path / "a").stat().st_ino != before, "this system exchanges folders"
    assert (tmp_path / "a").stat().st_mode & 0o777 == 0o750


def test_a_folder_that_somebody_stands_in_stays_the_same_folder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_folder(tmp_path / "a", make(x_nc="1", y_nc="2"))
    monkeypatch.chdir(tmp_path / "a")
    write_folder(Path(), make(x_nc="3"))
    assert names(Path()) == ["report.json", "x.nc"]
    assert names(tmp_path) == ["a"]


def test_a_link_to_a_folder_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "link").symlink_to("real")
    for text in ("1", "2"):
        write_folder(tmp_path / "link", make(x_nc=text))
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real" / "x.nc").read_text() == "2"


@pytest.mark.parametrize("other", [False, True])
def test_a_planted_report_never_costs_a_file(tmp_path: Path, other: bool) -> None:
    """A file that is not as the report has it, and names that signgen would never give, are not its own."""
    precious = {"notes.nc": b"mine", ".profile": b"mine", "Thesis.pdf": b"mine", "a b.nc": b"mine"}
    for name, content in precious.items():
        (tmp_path / name).write_bytes(content)
    sha = {name: digest(b"theirs" if name == "notes.nc" else content) for name, content in precious.items()}
    report = {"format": "signgen-report", "files": [*precious, "report.json"], "sha256": sha}
    (tmp_path / "report.json").write_text(json.dumps(report))
    with pytest.raises(AskError) as error:
        write_folder(tmp_path, make(notes_nc="1") if other else make(x_nc="1"))
    assert "notes.nc" in str(error.value)
    assert {name: (tmp_path / name).read_bytes() for name in precious} == precious
    (tmp_path / "notes.nc").unlink()
    write_folder(tmp_path, make(x_nc="1"))
    assert {name for name in precious if (tmp_path / name).exists()} == set(precious) - {"notes.nc"}


def test_a_report_without_digests_proves_nothing(tmp_path: Path) -> None:
    (tmp_path / "x.nc").write_text("mine")
    (tmp_path / "report.json").write_text('{"format": "signgen-report", "files": ["x.nc", "report.json"]}')
    with pytest.raises(AskError):
        write_folder(tmp_path, make(x_nc="1"))
    assert (tmp_path / "x.nc").read_text() == "mine"


def test_what_was_changed_by_hand_is_not_lost_but_for_the_sign_file_that_was_read(tmp_path: Path) -> None:
    write_folder(tmp_path, make(x_nc="1", sign_toml="a = 1"))
    (tmp_path / "x.nc").write_text("slower")
    with pytest.raises(AskError) as error:
        write_folder(tmp_path, make(x_nc="2", sign_toml="a = 2"))
    assert "x.nc" in str(error.value)
    assert (tmp_path / "x.nc").read_text() == "slower"
    (tmp_path / "x.nc").write_text("1")
    (tmp_path / "sign.toml").write_text("a = 3  # mine")
    write_folder(tmp_path, make(x_nc="2", sign_toml="a = 3"), ["sign.toml"])
    assert (tmp_path / "sign.toml").read_text() == "a = 3"


def test_a_folder_that_nobody_named_keeps_its_lettering(tmp_path: Path) -> None:
    files = make(x_nc="1")
    report = json.loads(files["report.json"]) | {"sign": {"lines": ["17", "Larkspur Lane"]}}
    write_folder(tmp_path / "17", {**files, "report.json": json.dumps(report).encode()})
    must_have_lines(tmp_path / "17", ["17", "Larkspur Lane"])
    must_have_lines(tmp_path / "18", ["18"])
    with pytest.raises(AskError) as error:
        must_have_lines(tmp_path / "17", ["17", "Quince Lane"])
    assert "17-2" in str(error.value)
    assert "Larkspur Lane" in str(error.value)


def test_what_a_process_left_when_it_was_ended_is_swept_away_and_nothing_else(tmp_path: Path) -> None:
    (tmp_path / ".signgen-stage-0123abcd").mkdir()
    (tmp_path / ".signgen-stage-0123abcd" / "x.nc").write_text("half")
    (tmp_path / ".signgen-stage-89abcdef").write_text("half")
    (tmp_path / ".signgen-stage-mine").write_text("mine")
    (tmp_path / ".signgen-stage-00000000").mkdir()
    (tmp_path / ".signgen-stage-00000000" / "My thesis.txt").write_text("mine")
    sweep(tmp_path)
    assert names(tmp_path) == [".signgen-stage-00000000", ".signgen-stage-mine"]
    assert names(tmp_path / ".signgen-stage-00000000") == ["My thesis.txt"]


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
    write_folder(tmp_path / "a", make(x_nc="1"))
    write_folder(tmp_path / "b", make(x_nc="1"))
    (tmp_path / "b" / "photo.jpg").write_text("mine")
    remove_folder(tmp_path / "a")
    remove_folder(tmp_path / "b")
    assert names(tmp_path) == ["b"]
    assert names(tmp_path / "b") == ["photo.jpg"]
