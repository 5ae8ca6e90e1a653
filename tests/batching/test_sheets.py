"""Batches on sheets: whole sheets made, verified, resumed, and judged again from disk."""

from __future__ import annotations

import json
import time
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.batching.ledger import LEDGER
from signgen.batching.run import BatchThereError
from signgen.cli import group
from signgen.errors import SignGenError
from signgen.pipeline import REPORT
from signgen.whole_sheet import dump_sheet, load_sheet
from tests.batching.making import SIGN, batch, started, tree, write_list
from tests.geometry.test_rectangles import least_sheets

ROWS = ["A,2", "B,1", "C,bad", "D,3", "E,1"]
SHEET = ["--sheet", "200x160"]


@pytest.fixture(scope="module")
def listed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write_list(tmp_path_factory.mktemp("list") / "names.csv", ROWS, "name,copies")


@pytest.fixture(scope="module")
def whole(listed: Path) -> Path:
    out = listed.parent / "whole"
    result = batch(listed, *SIGN, *SHEET, "--out", out, "--workers", "2")
    assert result.exception is None, result.exception
    assert result.exit_code == 0  # the runner sees what the command returns as a value, not as its exit code
    return out


def told(out: Path) -> dict[str, object]:
    report: dict[str, object] = json.loads((out / "batch.json").read_text(encoding="utf-8"))
    return report


def test_every_sheet_has_a_folder_and_rows_have_none(whole: Path) -> None:
    names = sorted(path.name for path in whole.iterdir())
    assert names == [
        "batch.json",
        "errors.csv",
        "index.html",
        LEDGER,
        "packing.html",
        "results.csv",
        "sheet-01",
        "sheet-02",
    ]
    for sheet in ("sheet-01", "sheet-02"):
        files = {path.name for path in (whole / sheet).iterdir()}
        assert files >= {"1-v-bit-90.nc", "2-end-mill-6.nc", "preview.html", "preview.png", "setup.html", "sheet.json"}
        assert files == set(json.loads((whole / sheet / REPORT).read_text(encoding="utf-8"))["files"])


def test_every_copy_of_every_good_row_is_on_a_sheet_once(whole: Path) -> None:
    sheets = told(whole)["sheets"]
    assert isinstance(sheets, list)
    rows = sorted(piece["row"] for sheet in sheets for piece in sheet["pieces"])
    assert rows == [2, 2, 3, 5, 5, 5, 6]
    assert [sheet["made"] for sheet in sheets] == [True, True]
    assert sheets[0]["holds"] == sheets[0]["signs"]
    assert sum(sheet["signs"] for sheet in sheets) == 7


def test_the_sheets_are_no_more_than_the_area_asks_for(whole: Path) -> None:
    room = (200 - 2 * 21.0, 160 - 2 * 21.0)
    assert len(told(whole)["sheets"]) == least_sheets([(60.0, 30.0)] * 7, room, 15.0)  # type: ignore[arg-type]


def test_shares_of_a_sheet_add_up(whole: Path) -> None:
    for sheet in told(whole)["sheets"]:  # type: ignore[attr-defined]
        offcut = sheet["offcut_mm"][0] * sheet["offcut_mm"][1] / (200 * 160)
        assert sheet["used_ratio"] == pytest.approx(sheet["signs"] * 60 * 30 / (200 * 160), abs=1e-3)
        assert sheet["used_ratio"] + sheet["waste_ratio"] + offcut == pytest.approx(1, abs=2e-3)


def test_every_check_passed_for_every_sheet(whole: Path) -> None:
    for folder in ("sheet-01", "sheet-02"):
        report = json.loads((whole / folder / REPORT).read_text(encoding="utf-8"))
        assert len(report["checks"]) > 15
        assert all(check["passed"] for check in report["checks"] if check["severity"] == "error")
        assert report["fastening"]["datum"] == "stock"
        assert len(report["fastening"]["screws_mm"]) >= 4
        assert report["stock"]["board_mm"] == [200, 160]
        assert [piece["name"] for piece in report["pieces"]] == [f"{n + 1}" for n in range(len(report["pieces"]))]


def test_programs_engrave_all_signs_before_any_edge_is_cut(whole: Path) -> None:
    last = (whole / "sheet-01" / "2-end-mill-6.nc").read_text()
    comments = [line.strip("()") for line in last.splitlines() if line.startswith("(") and ": " in line]
    edges = [number for number, line in enumerate(comments) if line.endswith(": edge")]
    assert edges == list(range(len(comments) - len(edges), len(comments)))
    first = (whole / "sheet-01" / "1-v-bit-90.nc").read_text()
    assert "(Sheet 1 of 2: " in first
    assert "edge" not in first


def test_the_page_tells_which_sign_is_which(whole: Path) -> None:
    page = (whole / "sheet-01" / "setup.html").read_text(encoding="utf-8")
    pieces = json.loads((whole / "sheet-01" / REPORT).read_text(encoding="utf-8"))["pieces"]
    for piece in pieces:
        assert f"<li><b>{piece['name']}</b> {piece['lines'][0]} <small>row {piece['row']}</small></li>" in page
    assert "bottom-left corner of the board" in (whole / "sheet-01" / "1-v-bit-90.nc").read_text()


def test_results_do_not_depend_on_the_number_of_workers(listed: Path, whole: Path, tmp_path: Path) -> None:
    batch(listed, *SIGN, *SHEET, "--out", tmp_path / "out", "--workers", "1")
    assert tree(tmp_path / "out") == tree(whole)


@pytest.mark.parametrize("at", [pytest.param("rows", marks=pytest.mark.sweep), "sheets"])
def test_an_interrupted_batch_resumes_to_the_same_bytes(listed: Path, whole: Path, tmp_path: Path, at: str) -> None:
    out = tmp_path / "out"
    owner = started(listed, *SIGN, *SHEET, "--out", out, "--workers", "1")
    while not (
        (out / LEDGER).exists() and (out / LEDGER).read_bytes().count(b'"row":' if at == "rows" else b'"sheet":') > 1
    ):
        assert owner.poll() is None
        time.sleep(0.005)
    owner.kill()
    owner.communicate()
    assert not (out / "batch.json").exists()
    assert batch(listed, *SIGN, *SHEET, "--out", out, "--resume", "--workers", "1").exception is None
    assert tree(out) == tree(whole)


def test_a_sheet_that_fails_fails_with_its_rows(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    out.mkdir()
    (out / "sheet-02").write_text("a file of mine")
    assert batch(listed, *SIGN, *SHEET, "--out", out, "--workers", "1").exception is None
    report = told(out)
    assert [sheet["made"] for sheet in report["sheets"]] == [True, False]  # type: ignore[attr-defined]
    assert "is a file" in report["sheets"][1]["message"]  # type: ignore[index]
    on_it = {row["row"] for row in report["rows_failed"]}  # type: ignore[attr-defined]
    assert 4 in on_it
    assert len(on_it) > 1
    assert tree(out / "sheet-01") == tree(whole / "sheet-01")
    assert (out / "sheet-02").read_text() == "a file of mine"
    (out / "sheet-02").unlink()
    assert batch(listed, *SIGN, *SHEET, "--out", out, "--resume", "--workers", "1").exception is None
    assert tree(out) == tree(whole)


def test_a_sheet_on_disk_is_judged_again(whole: Path, tmp_path: Path) -> None:
    def check(folder: Path) -> int | str | None:
        result = CliRunner().invoke(group, ["check", str(folder)], standalone_mode=False)
        assert not isinstance(result.exception, SignGenError), result.exception
        code: int | str | None = result.return_value
        return code

    assert check(whole / "sheet-01") == 0
    for name, content in tree(whole / "sheet-01").items():
        (tmp_path / name).write_bytes(content)
    program = tmp_path / "2-end-mill-6.nc"
    program.write_text(program.read_text().replace("Z-0.3", "Z0.4"))
    assert check(tmp_path) == 5


def test_a_sheet_file_comes_back(whole: Path) -> None:
    path = whole / "sheet-01" / "sheet.json"
    assert dump_sheet(load_sheet(path)) == path.read_bytes()


@pytest.mark.sweep
def test_a_batch_with_folders_gives_way_to_one_with_sheets_and_back(listed: Path, whole: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    few = write_list(tmp_path / "few.csv", ["A,2", "B,1"], "name,copies")
    pages = ["batch.json", "index.html", LEDGER, "packing.html", "results.csv"]
    batch(few, *SIGN, "--out", out, "--workers", "1")
    signs = tree(out)
    asked = batch(few, *SIGN, *SHEET, "--out", out, "--workers", "1")
    assert isinstance(asked.exception, BatchThereError), "another kind of batch took the place of one that is there"
    assert tree(out) == signs
    batch(few, *SIGN, *SHEET, "--out", out, "--fresh", "--workers", "1")
    assert sorted(path.name for path in out.iterdir()) == sorted([*pages, "sheet-01"])
    batch(few, *SIGN, "--out", out, "--fresh", "--workers", "1")
    assert sorted(path.name for path in out.iterdir()) == sorted([*pages, "0002-a", "0003-b"])


@pytest.mark.parametrize(
    ("words", "where", "what"),
    [
        (["--sheet", "60x60", "--clamp-border", "25"], "sheet", "leave no room"),
        (["--sheet", "900x900"], "sheet", "reaches 400 x 400 mm"),
        (["--sheet", "200x160", "--gap", "5"], "gap", "too little for two cuts"),
        (["--sheet", "200x160", "--board", "200x160"], "board", "no board of their own"),
        (["--gap", "5"], "gap", "There is no sheet"),
    ],
)
def test_what_would_be_wrong_with_every_sheet_is_said_at_once(
    listed: Path, tmp_path: Path, words: list[str], where: str, what: str
) -> None:
    result = batch(listed, *SIGN, *words, "--out", tmp_path / "out")
    assert isinstance(result.exception, SignGenError), result.output
    (problem,) = result.exception.problems
    assert problem.where == where
    assert what in str(problem.what)
    assert not (tmp_path / "out").exists()


def test_a_sign_that_no_sheet_holds_fails_alone(tmp_path: Path) -> None:
    path = write_list(tmp_path / "n.csv", ["A,60x30", "B,180x40"], "name,size")
    assert batch(path, *SIGN, *SHEET, "--out", tmp_path / "out", "--workers", "1").exception is None
    report = told(tmp_path / "out")
    assert [row["row"] for row in report["rows_made"]] == [2]  # type: ignore[attr-defined]
    (failure,) = report["rows_failed"]  # type: ignore[misc]
    assert failure["field"] == "size"
    assert "is larger than the 158 x 118 mm" in failure["message"]


def test_each_different_sign_has_its_own_template(tmp_path: Path) -> None:
    rows = write_list(tmp_path / "names.csv", ["A,2", "B,1"], "name,copies")
    asked = ("--holes", "top-pair", "--hole-diameter", "3", "--inset", "6", "--template", "a4")
    result = batch(rows, *SIGN, *asked, "--sheet", "300x260", "--out", tmp_path / "out")
    assert result.exit_code == 0, result.output
    folder = tmp_path / "out" / "sheet-01"
    pages = sorted(path.name for path in folder.glob("template-*.html"))
    assert len(pages) == 2
    assert {path.name for path in folder.glob("template-*.svg")} == {page.replace("html", "svg") for page in pages}
    titles = " ".join((folder / page).read_text(encoding="utf-8") for page in pages)
    assert "Drilling template: A." in titles
    assert "Drilling template: B." in titles
    assert "template-*.html" in (folder / "setup.html").read_text(encoding="utf-8")
