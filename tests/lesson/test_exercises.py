"""Exercises: spoilt copies of a sign's programs, each sure to be caught."""

from __future__ import annotations

from pathlib import Path

import pytest

from signgen.errors import AskError
from signgen.folder import check_folder
from signgen.lesson.advice import hint
from signgen.lesson.exercises import MOST, answers, exercise_files, exercises
from signgen.lesson.pack import TEACHER, pack
from signgen.lesson.source import source_of
from signgen.messages.wording import Wording

SIGN = Path(__file__).parent.parent / "golden" / "heron-weir-9"


def written(tmp_path: Path, files: dict[str, bytes]) -> list[Path]:
    for name, content in files.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(content)
    return sorted({(tmp_path / name).parent for name in files})


def test_each_is_one_fault_that_check_finds_in_the_folder_as_written(tmp_path) -> None:
    source = source_of(SIGN)
    done = exercises(SIGN, source, 2, 7)
    folders = written(tmp_path, exercise_files(SIGN, done))
    assert len(folders) == 2
    for folder, exercise in zip(folders, done, strict=True):
        assert not check_folder(folder).report.passed
        changed = [
            path.name for path in folder.glob("*.nc") if path.read_bytes() != (SIGN / path.name).read_bytes()
        ]  # fmt: skip
        assert sorted(changed) == sorted(exercise.spoilt.texts)
    assert [each.spoilt.grade for each in done] == sorted(each.spoilt.grade for each in done)
    for language in ("en", "de"):
        wording = Wording(language)
        page = str(answers(done, wording))
        for exercise in done:
            three = [wording(hint(exercise.spoilt.cause, n)) for n in (1, 2, 3)]
            assert len(set(three)) == 3
        assert page.count("<article>") == 2
        assert not wording.lacking
    assert b'id="answers"' in pack(source, "en", extra=(answers(done, Wording()),))[TEACHER]


def test_more_than_there_are_kinds_is_refused_and_so_are_programs_that_do_not_pass(tmp_path) -> None:
    with pytest.raises(AskError):
        exercises(written(tmp_path, {"a/sign.toml": b'text = ["9"]'})[0], source_of(SIGN), 1, 1)


@pytest.mark.sweep
def test_every_kind_of_fault_is_caught_and_the_same_for_a_seed() -> None:
    source = source_of(SIGN)
    done = exercises(SIGN, source, MOST, 7)
    assert {"swapped", "false_comment", "wrong_cutter", "letter_digit", "g91"} <= {each.spoilt.name for each in done}
    again = exercises(SIGN, source, 3, 7)
    assert [each.spoilt for each in again] == [each.spoilt for each in exercises(SIGN, source, 3, 7)]
    assert [each.spoilt.name for each in again] != [each.spoilt.name for each in exercises(SIGN, source, 3, 8)]
