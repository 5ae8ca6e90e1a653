"""`signgen make` as a user meets it: exit codes, messages, folders."""

from __future__ import annotations

import gc
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from signgen.cli import group
from signgen.cli.make_command import GARBAGE_EVERY, rarely_tidied
from signgen.errors import SignGenError, said_in
from signgen.units import length_mm

HOUSE = ["17", "Larkspur Lane", "--size", "220x140", "--thickness", "12", "--holes", "corners"]
HOLES = ["--hole-diameter", "7", "--inset", "14"]


def run(*words: str) -> Result:
    return CliRunner().invoke(group, ["make", *words])


def problems(result: Result) -> list[str]:
    assert isinstance(result.exception, SignGenError), result.output
    return [str(problem) for problem in result.exception.problems]


@pytest.fixture(scope="module")
def house(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("house") / "17"
    result = run(*HOUSE, *HOLES, "--material", "birch-plywood", "--out", str(out))
    assert result.exit_code == 0, result.exception
    return out


def test_every_file_is_there_and_listed(house: Path) -> None:
    there = {path.name for path in house.iterdir()}
    assert there == {
        "0-outline.nc",
        "1-v-bit-90.nc",
        "2-end-mill-6.nc",
        "setup.html",
        "preview.svg",
        "preview.png",
        "preview.html",
        "report.json",
        "sign.toml",
    }
    assert set(json.loads((house / "report.json").read_text())["files"]) == there


def test_the_report_keeps_to_the_contract(house: Path) -> None:
    report = json.loads((house / "report.json").read_text())
    assert (report["format"], report["version"]) == ("signgen-report", 1)
    assert report["sign"]["width_mm"] == 220
    assert report["sign"]["lines"] == ["17", "Larkspur Lane"]
    first, second = report["programs"]
    assert first["file"] == "1-v-bit-90.nc"
    tool = {"kind": "v-bit", "diameter_mm": 12, "angle_deg": 90, "tip_mm": 0, "shank_mm": 6}
    assert tool.items() <= first["tool"].items()
    assert second["tool"]["kind"] == "end-mill"
    assert second["extent"]["x_mm"][0] == -3
    assert second["extent"]["y_mm"][0] == -3
    assert second["extent"]["z_mm"][0] == -0.3
    assert report["minutes"] == pytest.approx(first["minutes"] + second["minutes"], abs=0.02)
    assert all(check["passed"] for check in report["checks"])
    assert len(report["fastening"]["screws_mm"]) >= 4


def test_programs_keep_to_the_contract(house: Path) -> None:
    for name in ("1-v-bit-90.nc", "2-end-mill-6.nc"):
        lines = (house / name).read_bytes().decode("ascii").splitlines()
        code = [line for line in lines if not line.startswith("(")]
        assert {"G17", "G21", "G40", "G49", "G54", "G80", "G90", "G94"} <= set(code[0].split())
        assert code[1].startswith("G0 Z")  # up, before anything moves across
        assert code[2].startswith("S")
        assert code[2].endswith("M3")
        assert code[3].startswith("G4 P")
        assert code[-2:] == ["M5", "M2"]
        heading = "\n".join(line for line in lines if line.startswith("("))
        assert all(word in heading for word in ("17 / Larkspur Lane", "Tool:", "Board:", "X0 Y0", "Z0"))


def test_the_same_input_gives_the_same_bytes_elsewhere(
    house: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    assert run(*HOUSE, *HOLES, "--material", "birch-plywood", "--out", "again").exit_code == 0
    for path in house.iterdir():
        assert (tmp_path / "again" / path.name).read_bytes() == path.read_bytes(), path.name


def test_the_sign_file_makes_the_same_bytes(house: Path, tmp_path: Path) -> None:
    assert run("--from", str(house / "sign.toml"), "--out", str(tmp_path / "again")).exit_code == 0
    for path in house.iterdir():
        assert (tmp_path / "again" / path.name).read_bytes() == path.read_bytes(), path.name


def test_options_go_before_the_sign_file(house: Path, tmp_path: Path) -> None:
    result = run("--from", str(house / "sign.toml"), "--holes", "none", "--json", "--out", str(tmp_path / "bare"))
    assert result.exit_code == 0, result.exception
    assert json.loads(result.output)["sign"]["holes"] == []


def test_without_a_folder_the_first_line_names_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert run("../Quince & Co", "--size", "150x60", "--thickness", "6").exit_code == 0
    assert [path.name for path in tmp_path.iterdir()] == ["quince-co"]


def test_check_judges_the_folder(house: Path, tmp_path: Path) -> None:
    assert CliRunner().invoke(group, ["check", str(house)], standalone_mode=False).return_value == 0
    copy = tmp_path / "copy"
    copy.mkdir()
    for path in house.iterdir():
        (copy / path.name).write_bytes(path.read_bytes())
    program = copy / "2-end-mill-6.nc"
    program.write_text(program.read_text().replace("Z-0.3", "Z-0.9"))
    result = CliRunner().invoke(group, ["check", str(copy)], standalone_mode=False)
    assert result.return_value == 5
    assert "do not run" in result.output
    assert "C107" in result.output


BAD = [
    (["--size", "220x140", "--thickness", "12"], 2, "text"),
    (["", "--size", "220x140", "--thickness", "12"], 2, "text"),
    (["17", "--size", "0x140", "--thickness", "12"], 2, "size"),
    (["17", "--size", "220x-5", "--thickness", "12"], 2, "size"),
    (["17", "--size", "90000x140", "--thickness", "12"], 2, "size"),
    (["17", "--size", "nanx140", "--thickness", "12"], 2, "size"),
    (["17", "--thickness", "12"], 2, "size"),
    (["17", "--size", "220x140"], 2, "thickness"),
    (["17", "--size", "220x140", "--thickness", "12", "--font", "barlov"], 2, "font"),
    (["17", "--size", "220x140", "--thickness", "12", "--border", "blob"], 2, "border"),
    (["17", "--size", "220x140", "--thickness", "12", "--material", "granite"], 2, "material"),
    (["17", "--size", "220x140", "--thickness", "12", "--machine", "mill"], 2, "machine"),
    (["17", "--size", "220x140", "--thickness", "12", "--dialect", "klingon"], 2, "dialect"),
    (["17", "--size", "220x140", "--thickness", "12", "--finish", "gold"], 2, "finish"),
    (["17 東", "--size", "220x140", "--thickness", "12"], 2, "text"),
    (["17", "--size", "220x140", "--thickness", "12", "--holes", "at:300,20"], 4, "holes"),
    (["HHH", "--size", "220x140", "--thickness", "12", "--holes", "at:110,70", "--cap-height", "60"], 4, "cap-height"),
    (["17", "--size", "220x140", "--thickness", "12", "--holes", "corners", "--end-mill", "6"], 4, "end-mill"),
    (["17", "--size", "220x140", "--thickness", "60", "--z-zero", "top"], 4, "thickness"),
    (["17", "--size", "220x140", "--thickness", "12", "--depth", "11.9"], 4, "depth"),
    (["A long text for a small sign", "--size", "40x20", "--thickness", "6"], 4, "text"),
    (["17", "--size", "220x140", "--thickness", "12", "--board", "225x145"], 4, "board"),
    (["17", "--size", "900x140", "--machine", "desktop-router", "--thickness", "12"], 4, "size"),
]


@pytest.mark.parametrize(("words", "code", "where"), BAD, ids=[" ".join(words)[:60] for words, _, _ in BAD])
def test_bad_input_says_where_what_and_what_to_do_and_leaves_nothing(
    words: list[str], code: int, where: str, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    result = run(*words, "--out", str(out))
    assert isinstance(result.exception, SignGenError), result.output
    assert result.exception.exit_code == code, problems(result)
    assert where in {problem.where for problem in result.exception.problems}, problems(result)
    for problem in result.exception.problems:
        assert str(problem.what).endswith(".")
        assert str(problem.remedy).endswith(".")
        assert "\n" not in str(problem)
    assert list(tmp_path.iterdir()) == []


def test_all_problems_of_a_broken_sign_file_at_once(tmp_path: Path) -> None:
    file = tmp_path / "sign.toml"
    file.write_text('text = ["17"]\nsize = "220x0"\nthickness = "thick"\nmateriel = "mdf"\nborder = "blob"\n')
    found = problems(run("--from", str(file), "--out", str(tmp_path / "out")))
    assert len(found) == 4
    assert any("material" in line for line in found)
    assert not (tmp_path / "out").exists()


def test_a_sign_file_that_is_no_toml_names_its_line(tmp_path: Path) -> None:
    file = tmp_path / "sign.toml"
    file.write_text('text = ["17"]\nsize = "220x140\n')
    (problem,) = problems(run("--from", str(file)))
    assert "sign.toml:2:" in problem


def test_a_folder_that_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    result = run(*HOUSE, *HOLES, "--out", str(tmp_path / "file" / "out"))
    assert isinstance(result.exception, SignGenError)
    assert result.exception.exit_code == 2
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_garbage_is_looked_for_as_usual_after_the_command() -> None:
    usual = gc.get_threshold()
    with rarely_tidied():
        assert gc.get_threshold()[0] == GARBAGE_EVERY
    assert gc.get_threshold() == usual


def test_what_is_wrong_is_said_in_the_language_of_the_sign() -> None:
    with pytest.raises(SignGenError) as caught, said_in("de"):
        length_mm("12 ells", "inset")
    assert list(caught.value.lines()) == ["inset: '12 ells' hat eine unbekannte Einheit. mm, cm, m, in oder ft nehmen."]
