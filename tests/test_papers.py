"""What lies beside the programs in a folder on disk: sheet, report, and files that do not belong there."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from signgen.errors import AskError
from signgen.files import write_folder
from signgen.folder import check_folder
from signgen.pipeline import make_job
from tests.asking import spec_of


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    return dict(make_job(spec_of(text=["4"], size="100x60", holes="none", hole_diameter=None, inset=None)).files)


@pytest.fixture
def folder(files: dict[str, bytes], tmp_path: Path) -> Path:
    write_folder(tmp_path / "sign", files)
    return tmp_path / "sign"


def said(folder: Path) -> list[str]:
    results = [result for result in check_folder(folder).report.results if result.code == "C145"]
    return [f"{finding.file}: {finding.message!s}" for result in results for finding in result.findings]


def reported(folder: Path, change: Any) -> None:
    path = folder / "report.json"
    told = json.loads(path.read_text())
    change(told)
    path.write_text(json.dumps(told))


def test_a_folder_as_it_was_made_passes(folder: Path) -> None:
    assert check_folder(folder).report.passed
    assert said(folder) == []


def test_a_sheet_that_was_changed_is_named(folder: Path) -> None:
    page = folder / "setup.html"
    page.write_text(page.read_text().replace("90 degree", "60 degree", 1))
    assert not check_folder(folder).report.passed
    assert said(folder) == ["setup.html: It is not what make wrote with these programs."]


def test_a_sheet_that_is_gone_is_no_fault_of_the_programs(folder: Path) -> None:
    (folder / "setup.html").unlink()
    assert said(folder) == []


def test_a_report_that_says_another_speed_is_named(folder: Path) -> None:
    reported(folder, lambda told: told["programs"][0].update(spindle_rpm=9000))
    assert any("spindle_rpm 9000" in line for line in said(folder))


@pytest.mark.parametrize("name", ["2-end-mill-6.tap", "3-drill-5.NGC", "1-v-bit-90.txt", "other.gcode", "4.NC"])
def test_what_may_be_taken_for_a_program_of_the_sign_is_refused(folder: Path, name: str) -> None:
    (folder / name).write_text("G0 Z5\nM2\n")
    with pytest.raises(AskError) as refused:
        check_folder(folder)
    assert f"{name} does not belong to this sign." in str(refused.value)


def test_a_note_and_a_photograph_may_lie_there(folder: Path) -> None:
    (folder / "notes.txt").write_text("paint it blue")
    (folder / "finished.jpg").write_bytes(b"")
    assert check_folder(folder).report.passed
