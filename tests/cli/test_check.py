"""`signgen check` as a user meets it: folders that make wrote, and programs from anywhere."""

from __future__ import annotations

import io
import json
import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from PIL import Image

from signgen.checks import CHECKS
from signgen.cli import group
from signgen.dialects import DIALECTS
from signgen.errors import AskError
from tests.test_elsewhere import SLOT

BOARD = ("--stock", "200x100x12", "--z-zero", "top", "--tool", "end-mill-6")


def check(*words: str) -> tuple[int, str]:
    """Exit code and output. Raises: what a user would be told."""
    result: Result = CliRunner().invoke(group, ["check", *words], standalone_mode=False)
    if result.exception is not None:
        raise result.exception
    return int(result.return_value), result.output


@pytest.fixture(scope="module")
def plaque(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("made") / "plaque"
    words = [
        "12",
        "--size",
        "90x60",
        "--thickness",
        "9",
        "--holes",
        "top-pair",
        "--hole-diameter",
        "7",
        "--inset",
        "12",
    ]
    result = CliRunner().invoke(group, ["make", *words, "--out", str(out)])
    assert result.exit_code == 0, result.exception
    return out


@pytest.fixture
def slot(tmp_path: Path) -> Path:
    path = tmp_path / "slot.nc"
    path.write_text(SLOT)
    return path


def test_the_verdict_is_the_first_line_and_every_check_has_its_own(plaque: Path) -> None:
    code, said = check(str(plaque))
    assert code == 0
    first, *rest = said.splitlines()
    assert first == f"{plaque}: all {len(CHECKS)} checks passed."
    for each in CHECKS:
        (line,) = (line for line in rest if line.startswith(f"  {each.code} {each.name} "))
        assert len(line) > 40
    assert "What was found" not in said


def test_a_finding_has_its_place_its_line_its_cause_and_its_remedy(plaque: Path, tmp_path: Path) -> None:
    copy = shutil.copytree(plaque, tmp_path / "copy")
    program = copy / "2-end-mill-6.nc"
    lines = program.read_text().splitlines()
    number, line = next((n, line) for n, line in enumerate(lines, 1) if re.search(r"^G1 [XY].*Z-0\.3", line))
    lines[number - 1] = line.replace("Z-0.3", "Z-0.9")
    program.write_text("\n".join(lines) + "\n")
    code, said = check(str(copy), "--picture", str(tmp_path / "board.png"))
    assert code == 5
    assert said.splitlines()[0].startswith(f"{copy}: do not run: ")
    found = said[said.index("What was found") :]
    assert re.search(
        rf"  \d+\. C107 depth_limit: 2-end-mill-6\.nc, line {number}, at \(.*\) on the sign\n"
        rf"       {re.escape(lines[number - 1])}\n"
        r"     The tip goes to 0\.900 mm below the board at .*\n"
        r"     To do: .*",
        found,
    )


@pytest.mark.parametrize("dialect", [dialect.name for dialect in DIALECTS])
def test_a_folder_of_any_dialect_is_judged_as_it_was_made(dialect: str, tmp_path: Path) -> None:
    out = tmp_path / "out"
    words = ["7", "--size", "60x60", "--thickness", "9", "--dialect", dialect, "--out", str(out)]
    result = CliRunner().invoke(group, ["make", *words])
    assert result.exit_code == 0, result.exception
    assert check(str(out))[0] == 0
    program = sorted(out.glob("*.nc"))[-1]
    before, _, after = program.read_text().rpartition("M5")
    program.write_text(before + after)
    assert check(str(out))[0] == 5


def test_programs_that_make_wrote_pass_as_programs_from_elsewhere(plaque: Path) -> None:
    report = json.loads((plaque / "report.json").read_text())
    stock, programs = report["stock"], report["programs"]
    board = f"{stock['min_width_mm']}x{stock['min_height_mm']}x9"
    zero = f"{stock['datum_x_mm']},{stock['datum_y_mm']}"
    files = [str(plaque / program["file"]) for program in programs]
    tools = [word for program in programs for word in ("--tool", Path(program["file"]).stem[2:])]
    code, said = check(*files, "--stock", board, "--zero", zero, *tools, "--json")
    (one,) = json.loads(said)
    assert code == 0
    assert one["passed"]
    assert [check["code"] for check in one["checks"] if check["findings"]] == []
    for mine, theirs in zip(programs, one["survey"]["programs"], strict=True):
        assert theirs["minutes"] == pytest.approx(mine["minutes"], abs=0.02)
        assert theirs["cut_length_mm"] == pytest.approx(mine["cut_length_mm"], abs=0.2)
        assert theirs["travel_length_mm"] == pytest.approx(mine["travel_length_mm"], abs=0.2)
        assert theirs["extent"]["z_mm"] == pytest.approx(mine["extent"]["z_mm"], abs=1e-3)


def test_a_program_from_anywhere(slot: Path) -> None:
    code, said = check(str(slot), *BOARD)
    assert code == 0
    first = said.splitlines()[0]
    assert first.startswith(f"{slot}: ")
    assert "with a warning" in first
    assert "need a drawing and were left out" in first
    for words in (
        "200 x 100 x 12 mm",
        "Desktop router fits",
        "X 50 to 110",
        "3 mm below the board's top",
        "1,200 mm/min",
    ):
        assert words in said
    slot.write_text(SLOT.replace("G1 Z-3", "G0 Z-3"))
    code, said = check(str(slot), *BOARD, "--all")
    assert code == 5
    assert "C102 rapids_clear" in said[said.index("What was found") :]


@pytest.mark.parametrize("suffix", ["png", "svg"])
def test_the_picture_shows_what_is_left(slot: Path, tmp_path: Path, suffix: str) -> None:
    path = tmp_path / "pictures" / f"board.{suffix}"
    assert check(str(slot), *BOARD, "--picture", str(path))[0] == 0
    if suffix == "svg":
        assert 'width="200mm"' in path.read_text()
        return
    picture = Image.open(io.BytesIO(path.read_bytes()))
    assert picture.width / picture.height == pytest.approx(2, abs=0.01)


@pytest.mark.parametrize(
    ("words", "where"),
    [
        ((), {"stock", "tool"}),
        (("--stock", "200x100x12"), {"tool"}),
        (("--stock", "200x100", "--tool", "spoon", "--zero", "1,2,3"), {"stock", "tool"}),
        ((*BOARD, "--zero", "1,2;3,4"), {"zero"}),
        ((*BOARD, "--zero", "left"), {"zero"}),
        ((*BOARD, "--tool", "drill-5"), {"tool"}),
        ((*BOARD, "--machine", "mill", "--material", "cheese"), {"machine", "material"}),
        ((*BOARD, "--picture", "board.gif"), {"picture"}),
    ],
)
def test_what_is_wrong_with_the_question_is_said_at_once(slot: Path, words: tuple[str, ...], where: set[str]) -> None:
    with pytest.raises(AskError) as error:
        check(str(slot), *words)
    assert {problem.where.split(".")[0] for problem in error.value.problems} == where
    assert all(problem.remedy for problem in error.value.problems)


def test_screws_of_the_setup_sheet_are_kept_clear_even_when_the_program_was_edited(
    plaque: Path, tmp_path: Path
) -> None:
    copy = shutil.copytree(plaque, tmp_path / "copy")
    report = json.loads((copy / "report.json").read_text())
    x, y = -12.5, 30.0
    report["fastening"]["screws_mm"] = [[x, y], [102.5, 30.0]]
    (copy / "report.json").write_text(json.dumps(report))
    assert check(str(copy))[0] == 0
    program = copy / "1-v-bit-90.nc"
    lines = program.read_text().splitlines()
    last = max(n for n, line in enumerate(lines) if line.startswith("G1"))
    lines[last + 1 : last + 1] = ["G0 Z19", f"G0 X{x} Y{y}", "G0 Z10.5", "G0 Z19"]
    program.write_text("\n".join(lines) + "\n")
    code, said = check(str(copy))
    assert code == 5
    assert f"the screw at X{x:g} Y{y:g}" in said


def test_clamps_are_kept_clear(plaque: Path, slot: Path) -> None:
    code, said = check(str(plaque), "--clamps", "-25,20,20x20", "--clamp-height", "4")
    assert code == 5
    assert "C124 fixings_clear" in said[said.index("What was found") :]
    assert check(str(slot), *BOARD, "--clamps", "10,10,20x20", "--screws", "190,10")[0] == 0
    assert check(str(slot), *BOARD, "--clamps", "70,30,20x20")[0] == 5
    assert check(str(slot), *BOARD, "--screws", "80,46")[0] == 5


def test_cells_as_asked(plaque: Path, slot: Path, tmp_path: Path) -> None:
    assert "cell 0.30 mm" in check(str(plaque), "--cell", "0.3")[1]
    assert check(str(slot), *BOARD, "--cell", "0.3")[0] == 0
    with pytest.raises(AskError) as error:
        check(str(slot), "--stock", "2000x1500x12", "--tool", "end-mill-6", "--cell", "0.05")
    assert "too many cells" in str(error.value)
    words = ["make", "7", "--size", "60x60", "--thickness", "9", "--cell", "0.3", "--out", str(tmp_path / "seven")]
    made = CliRunner().invoke(group, [*words, "--json"])
    assert made.exit_code == 0, made.exception
    said = {row["code"]: row["detail"] for row in json.loads(made.output)["checks"]}
    assert "cell 0.30 mm" in said["C109"]
    assert "cell = 0.3" in (tmp_path / "seven" / "sign.toml").read_text()


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(AskError) as error:
        check(str(tmp_path / "none.nc"), *BOARD)
    assert "cannot be read" in str(error.value)


def test_what_a_folder_knows_by_itself_is_not_asked(plaque: Path) -> None:
    with pytest.raises(AskError) as error:
        check(str(plaque), "--stock", "200x100x12")
    assert error.value.problems[0].where == "stock"


def test_a_folder_without_a_sign_is_told_apart_from_programs(tmp_path: Path) -> None:
    with pytest.raises(AskError) as error:
        check(str(tmp_path))
    assert "sign.toml" in str(error.value)


def test_one_picture_is_of_one_board(plaque: Path, slot: Path, tmp_path: Path) -> None:
    with pytest.raises(AskError) as error:
        check(str(plaque), str(slot), *BOARD, "--picture", str(tmp_path / "board.png"))
    assert error.value.problems[0].where == "picture"
    assert not (tmp_path / "board.png").exists()
