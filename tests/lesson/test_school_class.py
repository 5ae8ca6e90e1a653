"""A class: a sign, programs and a lesson for each name of a list."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.batching.recipe import make_recipe
from signgen.batching.table import open_table
from signgen.cli import group
from signgen.errors import AskError
from signgen.folder import check_folder
from signgen.lesson.class_sheets import sheet_list
from signgen.lesson.school_class import Pupil, PupilsJob, class_page, loads, pupils_in
from signgen.pipeline import gather, read_sign

SIGN = 'text = ["x"]\nsize = "110x40"\nthickness = 9\nmaterial = "softwood"\nholes = "none"\n'


def one(name: str, *cutters: tuple[str, str, float]) -> PupilsJob:
    pupil = Pupil(name=name, folder=name.lower(), asked={})
    return PupilsJob(pupil=pupil, text=name, board_mm=(150, 80), travel_mm=(400, 300), cutters=cutters)


def test_each_pupil_has_a_folder_that_passes_and_a_bad_row_stops_nobody(tmp_path) -> None:
    (tmp_path / "sign.toml").write_text(SIGN)
    (tmp_path / "names.csv").write_text("name;thickness\nAda;\nBen;thick\n", encoding="utf-8")
    arguments = ["lesson", str(tmp_path / "sign.toml"), "--class", str(tmp_path / "names.csv"), "--pages", "words,arcs"]
    run = CliRunner().invoke(group, [*arguments, "--out", str(tmp_path / "out")], standalone_mode=False)
    assert run.return_value == 1
    assert check_folder(tmp_path / "out" / "ada").report.passed
    assert (tmp_path / "out" / "ada" / "pupil.html").is_file()
    assert not (tmp_path / "out" / "ben").exists()
    page = (tmp_path / "out" / "class.html").read_text("utf-8")
    assert "Ada" in page
    assert "thick" in page
    everything = (tmp_path / "out" / "print-all.html").read_text("utf-8")
    assert everything.count("<main") == 1
    assert everything.count("<html") == everything.count("</html>") == 1


def test_a_class_on_shared_sheets_fits_each_cutter_once_a_sheet(tmp_path) -> None:
    (tmp_path / "sign.toml").write_text(SIGN + 'comments = "full"\n')
    (tmp_path / "names.csv").write_text("name,text,size\nAda,7 | Ada,120x50\nBen,,\nCleo,,wide\nDan,,\n")
    arguments = ["lesson", str(tmp_path / "sign.toml"), "--class", str(tmp_path / "names.csv"), "--pages", "words"]
    out = tmp_path / "out"
    run = CliRunner().invoke(group, [*arguments, "--out", str(out), "--sheet", "380x280"], standalone_mode=False)
    assert run.return_value == 1  # Cleo's size is none
    assert check_folder(out / "sheets" / "sheet-01").report.passed
    page = (out / "class.html").read_text("utf-8")
    assert "needs 6 fittings of a cutter; on shared sheets it is 2" in page
    assert re.search("Sheet sheets/sheet-01, 380 x 280 mm: (Ada|Ben|Dan), (Ada|Ben|Dan) and (Ada|Ben|Dan)<", page)
    for program in (out / "sheets" / "sheet-01").glob("[1-9]-*.nc"):
        assert f"run {program.name}: " in page
        said = [line for line in program.read_text("ascii").splitlines() if line.startswith("(- ")]
        assert said
        assert all(re.search(r": [1-3]: [^:]+\)$", line) for line in said), "each names the sign that it is about"
    pieces = (out / "sheets" / "sheet-01" / "sheet.json").read_text("utf-8")
    assert all(name in pieces for name in ("Ada", "Ben", "Dan"))


def test_sheets_are_for_a_class(tmp_path) -> None:
    (tmp_path / "sign.toml").write_text(SIGN)
    asked = ["lesson", str(tmp_path / "sign.toml"), "--sheet", "380x280", "--out", str(tmp_path / "out")]
    with pytest.raises(AskError, match="Sheets are for the signs of a class"):
        CliRunner().invoke(group, asked, standalone_mode=False, catch_exceptions=False)
    assert not (tmp_path / "out").exists()


def test_boards_side_by_side_share_their_cutters() -> None:
    """Travel of 400 x 300 mm takes 2 x 3 boards of 150 x 80 mm; seven pupils are two loads, four fittings for 14."""
    made = [one(f"P{n}", ("1.nc", "V-bit", 2.0), ("2.nc", "mill", 3.0)) for n in range(7)]
    runs = loads(made)
    assert [len(run.made) for run in runs] == [6, 1]
    assert runs[0].minutes("mill") == 18
    for language, text in (
        ("en", "needs 14 fittings of a cutter; boards side by side need 4"),
        ("de", "14 Fräserwechsel"),
    ):
        assert text in class_page(made, language)


@pytest.mark.parametrize(
    ("text", "what"),
    [("who\nAda\n", "no list of names"), ("name\nAda\nADA\n", "names ADA again"), ("name,x\n,1\n", "has no name")],
)
def test_lists_that_cannot_be_used_say_why(tmp_path: Path, text: str, what: str) -> None:
    (tmp_path / "names.csv").write_text(text)
    with pytest.raises(AskError, match=what):
        pupils_in(str(tmp_path / "names.csv"))


def test_lines_and_other_keys_are_each_pupils_own(tmp_path: Path) -> None:
    (tmp_path / "names.csv").write_text("name,text,size\nAda,7|Ada,120x50\nBen,,\n")
    ada, ben = pupils_in(str(tmp_path / "names.csv"))
    assert ada.asked == {"text": ["7", "Ada"], "size": "120x50"}
    assert ben.asked == {"text": ["Ben"]}


def test_placeholders_of_the_sign_file_are_filled_as_a_batch_fills_them(tmp_path: Path) -> None:
    (tmp_path / "sign.toml").write_text(SIGN.replace('["x"]', '["{name}", "House {house}, {{{serial:02}}}"]'))
    (tmp_path / "names.csv").write_text(
        "name,house,thickness,text\nAda,Elm,12,\nBen Łuk,Ash,,\nZoë,Oak,,Out | of line\n"
    )
    base = gather({}, tmp_path / "sign.toml")
    pupils = pupils_in(str(tmp_path / "names.csv"), base)
    assert [pupil.asked for pupil in pupils] == [
        {"text": ["Ada", "House Elm, {01}"], "thickness": "12"},
        {"text": ["Ben Łuk", "House Ash, {02}"]},
        {"text": ["Out", "of line"]},
    ]
    (tmp_path / "sheets.csv").write_text(sheet_list(pupils), encoding="utf-8")
    table = open_table(tmp_path / "sheets.csv", None)
    recipe = make_recipe(table, base)
    for pupil, record in zip(pupils, table.rows(), strict=True):
        asked = recipe.task(record).asked
        assert read_sign(asked).text.lines == read_sign(gather(pupil.asked, tmp_path / "sign.toml")).text.lines
        assert asked["thickness"] == pupil.asked.get("thickness", base["thickness"])


def test_a_placeholder_without_a_column_is_named(tmp_path: Path) -> None:
    (tmp_path / "names.csv").write_text("name\nAda\n")
    with pytest.raises(AskError, match=r"no column for \{house\}"):
        pupils_in(str(tmp_path / "names.csv"), {"text": "{name} of {house}"})
