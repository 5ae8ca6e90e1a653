"""A lesson made of a sign: every answer recomputed by a reading that shares no code with it."""

from __future__ import annotations

import json
import re
import shutil
import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.elsewhere import check_files
from signgen.errors import AskError, CannotMakeError
from signgen.lesson.asked import MOST_HOLES, asked
from signgen.lesson.numbers import words_used
from signgen.lesson.pack import PUPIL, TEACHER, chosen_pages, pack
from signgen.lesson.pages import OWN, PAGES
from signgen.lesson.source import source_of
from signgen.lesson.spoilt import spoilt_lines
from signgen.pipeline import make_job
from signgen.replay.motion import RAPID
from tests.asking import spec_of
from tests.checks.random_signs import sign_of
from tests.lesson.by_hand import WORD, answer

GOLDEN = Path(__file__).parent.parent / "golden"
SIGNS = ("heron-weir-9", "quince-cottage", "tannery-workshop", "quince-plate")


def wrong_answers(folder: Path) -> tuple[int, list[str]]:
    """How many questions there are, and those whose answer another reading does not find."""
    report = json.loads((folder / "report.json").read_text("utf-8"))
    thickness = report["sign"]["thickness_mm"]
    questions = [question for page in asked(source_of(folder)).values() for question in page]
    wrong = []
    for question in questions:
        text = (folder / question.file).read_text("ascii")
        found = answer(question, text, report, thickness)
        if found is None or abs(found - question.value) > max(question.tolerance / 4, 1e-6):
            wrong.append(f"{question.kind} {question.about} {question.file} {question.line}: {question.value} {found}")
    return len(questions), wrong


@pytest.mark.parametrize("name", SIGNS)
def test_every_answer_is_found_by_another_reading(name) -> None:
    count, wrong = wrong_answers(GOLDEN / name)
    assert count > 15
    assert wrong == []


OTHER_WAYS = {
    "one file": {"dialect": "one-file", "tabs": "3", "hole_diameter": "5"},
    "a changer, from behind": {
        "dialect": "changer", "holes": "keyholes", "hole_diameter": None, "inset": None, "origin": "stock",
    },
    "inches": {"dialect": "inch", "corner-radius": "15"},
    "drilled in cycles": {"dialect": "cycles", "hole_diameter": "5"},
    "full comments, from behind": {"holes": "keyholes", "hole_diameter": None, "inset": None, "comments": "full"},
}  # fmt: skip


@pytest.mark.parametrize("name", OTHER_WAYS)
def test_answers_of_all_cutters_in_one_file_and_of_programs_from_behind(name, tmp_path) -> None:
    changes = OTHER_WAYS[name]
    for file, content in make_job(spec_of(**changes), wanted="programs").files.items():
        (tmp_path / file).write_bytes(content)
    source = source_of(tmp_path)
    count, wrong = wrong_answers(tmp_path)
    assert count > 25
    assert wrong == []
    holes = [question for question in asked(source)["coordinates"] if question.kind == "hole"]
    assert len(holes) == (0 if changes.get("holes") == "keyholes" else 2 * MOST_HOLES)
    assert len({(program.file, program.place) for program in source.programs}) == len(source.programs)
    # the picture of places shows the sign where the edge is cut round it
    cutter = source.programs[-1].tool
    sides = [row for row in source.programs[-1].lines if row.end_mm and row.kind != RAPID and row.length_mm > 20]
    left = min(row.end_mm[0] for row in sides)
    assert source.shift_mm[0] == pytest.approx(left + cutter.diameter_mm / 2, abs=0.01)
    assert any(program.behind for program in source.programs) == (changes.get("holes") == "keyholes")
    for document in pack(source, "de").values():
        text = document.decode()
        assert all(program.file in text for program in source.programs)
        assert ("X zählt darum nach links" in text) == (changes.get("holes") == "keyholes")
        assert ("zählen in Zoll" in text) == (name == "inches")


@pytest.mark.parametrize(
    "more",
    [
        {},
        {"finish-pass": "0.3"},
        {"finish-pass": "0.3", "tabs": "14"},
        {"border": "scalloped", "holes": "side-pair"},
        {"dialect": "inch"},
    ],
)
def test_the_sides_of_the_sign_are_where_they_were_asked_for(more, tmp_path) -> None:
    """220 x 140 mm from the sign's corner; a finishing pass goes nearer than those before it."""
    files = make_job(spec_of(**more), wanted="programs").files
    for file, content in files.items():
        (tmp_path / file).write_bytes(content)
    found = {question.kind: question for question in asked(source_of(tmp_path))["coordinates"]}
    assert found["right_side"].value == pytest.approx(220, abs=1e-3)
    assert found["top_side"].value == pytest.approx(140, abs=1e-3)


@pytest.mark.parametrize(("border", "kinds"), [("oval", set()), ("arched", {"right_side"}), ("gable", {"right_side"})])
def test_a_side_that_is_not_straight_is_not_asked_for(border, kinds, tmp_path) -> None:
    for file, content in make_job(spec_of(border=border, holes="centre", inset=None), wanted="programs").files.items():
        (tmp_path / file).write_bytes(content)
    found = {question.kind for question in asked(source_of(tmp_path))["coordinates"]}
    assert found & {"right_side", "top_side"} == kinds


@pytest.mark.sweep
@pytest.mark.parametrize("seed", range(30))
def test_every_answer_of_random_signs(seed, tmp_path) -> None:
    for further in range(20):
        try:
            job = make_job(spec_of(**sign_of(seed + 1000 * further) | {"dialect": "plain"}))
            break
        except (AskError, CannotMakeError):
            continue
    for name, content in job.files.items():
        (tmp_path / name).write_bytes(content)
    count, wrong = wrong_answers(tmp_path)
    assert count > 5
    assert wrong == []
    made = pack(source_of(tmp_path), "de")
    assert len(made[PUPIL]) < len(made[TEACHER])


def test_answers_follow_the_program_on_disk_and_not_what_wrote_it(tmp_path) -> None:
    folder = Path(shutil.copytree(GOLDEN / "heron-weir-9", tmp_path / "sign"))
    (program,) = [path for path in folder.glob("*.nc") if "end-mill" in path.name]
    program.write_text(re.sub(r"S(\d+) M3", "S9000 M3", program.read_text()))
    after = {(q.kind, q.about, q.file): q.value for page in asked(source_of(folder)).values() for q in page}
    assert after["speed", "", program.name] == 9000
    assert wrong_answers(folder)[1] == []


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_pupil_has_no_answers_and_the_teacher_has_all(language) -> None:
    source = source_of(GOLDEN / "heron-weir-9")
    made = pack(source, language)
    pupil, teacher = made[PUPIL].decode(), made[TEACHER].decode()
    questions = [question for page in asked(source).values() for question in page]
    assert teacher.count('class="found"') == len(questions)
    assert pupil.count('class="blank"') == len(questions)
    assert 'class="found"' not in pupil
    for one in spoilt_lines(source):
        assert one.spoilt != one.right
        assert f"<pre>{one.spoilt}</pre>" in pupil
    assert len(spoilt_lines(source)) >= 3
    for text in (pupil, teacher):
        assert all(f'id="{name}"' in text for name in PAGES)
        assert text.count("<svg") == text.count("<desc>")
        assert "http://" not in text.replace("http://www.w3.org/2000/svg", "")
        assert "<script" not in text


def test_word_cards_hold_exactly_the_words_used() -> None:
    for name in SIGNS:
        source = source_of(GOLDEN / name)
        used = set()
        for program in source.programs:
            for letter, value in WORD.findall(re.sub(r"\([^)]*\)", "", program.text)):
                used.add(f"{letter}{float(value):g}" if letter in "GM" else letter)
        assert set(words_used(source.programs)) == used


def test_the_program_that_the_teacher_is_given_cuts_what_was_asked(tmp_path) -> None:
    (tmp_path / "own.nc").write_text(OWN)
    asked_of = {"stock": "100x80x12", "z-zero": "top", "material": "softwood"}
    one = check_files([str(tmp_path / "own.nc")], asked_of, ["end-mill-6"])
    assert one.report.passed
    board = one.case.boards[-1]
    for x, y, depth in ((20, 40, 2), (60, 60, 2), (80, 40, 2), (84.8, 40, 2), (40, 40, 0), (72, 40, 0)):
        j, i = int((y - board.y0_mm) / board.cell_mm), int((x - board.x0_mm) / board.cell_mm)
        assert board.z_mm[j, i] == pytest.approx(12 - depth, abs=0.01), (x, y)


def test_pages_are_chosen_by_name_and_level() -> None:
    assert chosen_pages("arcs, words", None) == ("arcs", "words")
    assert set(chosen_pages(None, 1)) | set(chosen_pages(None, 2)) == set(PAGES)
    with pytest.raises(AskError, match="no page 'arcx'"):
        chosen_pages("arcx", None)
    made = pack(source_of(GOLDEN / "heron-weir-9"), "en", ("arcs",), large=True, easy=True)
    assert b'class="large easy"' in made[PUPIL]
    assert b"@font-face" in made[PUPIL]
    assert b'id="tabs"' not in made[PUPIL]


def test_the_command_takes_a_folder_and_a_sign_file(tmp_path) -> None:
    run = CliRunner().invoke(group, ["lesson", str(GOLDEN / "heron-weir-9"), "--out", str(tmp_path / "a")])
    assert run.exit_code == 0
    assert {path.name for path in (tmp_path / "a").iterdir()} == {PUPIL, TEACHER}
    run = CliRunner().invoke(group, ["lesson", str(tmp_path), "--out", str(tmp_path / "b")])
    assert isinstance(run.exception, AskError)
    assert tomllib.loads((GOLDEN / "heron-weir-9" / "sign.toml").read_text())["text"]
