"""The likeliest cause of what is wrong with a beginner's program, first and once."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.elsewhere import check_files
from signgen.job.judged import Judged
from signgen.lesson.advice import advice, hints, what
from signgen.lesson.likely import likely
from signgen.messages.wording import Wording
from tests.lesson.beginners import FAULTY, GOOD, STYLES, changed, moved
from tests.schemas.strict import must_fit

BOARD = ["--stock", "200x100x12", "--z-zero", "top", "--material", "softwood", "--tool", "end-mill-6"]
ASKED = {"stock": "200x100x12", "z-zero": "top", "material": "softwood"}


def judged(tmp_path, *texts: str, tools=("end-mill-6",), **asked: str) -> Judged:
    paths = []
    for number, text in enumerate(texts):
        path = tmp_path / f"{number}.nc"
        path.write_text(text, encoding="utf-8")
        paths.append(str(path))
    return check_files(paths, ASKED | {key.replace("_", "-"): value for key, value in asked.items()}, tools)


@pytest.mark.parametrize("style", STYLES)
def test_right_programs_in_five_manners_pass(tmp_path, style) -> None:
    one = judged(tmp_path, STYLES[style])
    assert one.report.passed
    assert likely(one.case, one.report).causes == ()
    assert advice(one, Wording("en")) == ""


@pytest.mark.parametrize("name", FAULTY)
def test_the_first_cause_is_the_real_one(tmp_path, name) -> None:
    text, kind, line = FAULTY[name]
    one = judged(tmp_path, text)
    cause = likely(one.case, one.report).causes[0]
    assert (cause.kind, cause.line) == (kind, line)
    for language in ("en", "de"):
        wording = Wording(language)
        told = advice(one, wording)
        assert " ".join(wording(what(cause)).split()) in " ".join(told.split())
        assert not wording.lacking


def test_there_are_fifty() -> None:
    assert len(FAULTY) >= 50


def test_files_that_were_swapped_are_named(tmp_path) -> None:
    small = changed(("6 mm end mill", "3 mm end mill"))
    one = judged(tmp_path, small, GOOD, tools=("end-mill-6", "end-mill-3"))
    assert [cause.kind for cause in likely(one.case, one.report).causes][:1] == ["swapped"]


def test_heights_from_the_top_where_the_bottom_was_said(tmp_path) -> None:
    one = judged(tmp_path, GOOD, z_zero="bottom")
    assert likely(one.case, one.report).causes[0].kind == "z_zero_top"


def test_other_checks_are_not_silenced_by_a_line_that_cannot_be_read(tmp_path) -> None:
    """The letter O comes first; that the spindle never starts is told all the same."""
    one = judged(tmp_path, changed(("X100", "X1O0"), ("S14000 M3\n", "")))
    assert [cause.kind for cause in likely(one.case, one.report).causes] == ["letter_digit", "no_spindle"]
    ran = {result.code for result in one.report.results if not result.skipped}
    assert {"C101", "C102", "C105"} <= ran
    assert not one.report.passed


def test_what_is_no_program_is_called_so(tmp_path) -> None:
    one = judged(tmp_path, "{\\rtf1 G0 X0}")
    assert likely(one.case, one.report).causes[0].kind == "no_text_file"


def test_hints_lead_to_the_answer_one_by_one(tmp_path) -> None:
    one = judged(tmp_path, changed(("X100", "X1O0")))
    first, second, third = (hints(one, number, Wording("en")) for number in (1, 2, 3))
    assert "line 10" not in first
    assert "letter O" not in first
    assert "line 10" in second
    assert "letter O" in third


def test_the_commands(tmp_path) -> None:
    good, bad = tmp_path / "good.nc", tmp_path / "bad.nc"
    good.write_text(GOOD)
    bad.write_text(changed(("Y70", "Y7O")))
    run = CliRunner().invoke(group, ["check", str(bad), *BOARD], standalone_mode=False)
    assert "Likeliest cause: bad.nc, line 11" in run.output
    assert run.return_value == 5
    run = CliRunner().invoke(group, ["check", str(bad), *BOARD, "--hint", "2", "--language", "de"])
    assert "Hinweis 2 von 3: Sieh Zeile 11 von bad.nc an." in run.output
    run = CliRunner().invoke(group, ["check", "--each", str(good), str(bad), *BOARD], standalone_mode=False)
    assert "1 of 2 may run." in run.output
    assert run.return_value == 5
    run = CliRunner().invoke(group, ["check", str(bad), *BOARD, "--all"])
    assert "What was compared" in run.output


def test_the_same_for_programs_that_read_the_verdict(tmp_path) -> None:
    good, bad = tmp_path / "good.nc", tmp_path / "bad.nc"
    good.write_text(GOOD)
    bad.write_text(changed(("Y70", "Y7O"), ("S14000 M3\n", "")))
    run = CliRunner().invoke(group, ["check", "--each", str(good), str(bad), *BOARD, "--json", "--language", "de"])
    fine, wrong = json.loads(run.output)
    must_fit("check", fine)
    must_fit("check", wrong)
    assert fine["causes"] == []
    first, second = wrong["causes"]
    assert (first["kind"], first["file"], first["line"]) == ("letter_digit", "bad.nc", 10)
    assert (first["text"], first["right"]) == ("G1 Y7O", "G1 Y70")
    assert "Zeile 10" in first["hints"][1]
    assert first["hints"][2] == first["message"]
    assert second["kind"] == "no_spindle"
    for number, said in enumerate(first["hints"], 1):
        run = CliRunner().invoke(group, ["check", str(bad), *BOARD, "--hint", str(number), "--language", "de"])
        assert said in run.output


def test_letters_beyond_ascii_in_a_comment_are_spelled_out(tmp_path) -> None:
    one = judged(tmp_path, changed(("G0 Z20\n", "(Gr\u00f6\u00dfe caf\u00e9 60)\nG0 Z20\n")))
    found = next(cause for cause in likely(one.case, one.report).causes if "60" in cause.right)
    assert found.right == "(Groesse cafe 60)"


def test_zero_at_each_corner_is_told_apart(tmp_path) -> None:
    for kind, dx, dy in (("zero_middle", -100, -50), ("zero_top_right", -200, -100), ("zero_bottom_right", -200, 0)):
        one = judged(tmp_path, moved(dx, dy))
        assert likely(one.case, one.report).causes[0].kind == kind
