"""Programs told line by line."""

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.dialects import dialect_named
from signgen.errors import AskError
from signgen.lesson.line_facts import facts_of
from signgen.lesson.line_words import told
from signgen.lesson.read_aloud import lines_data, read_aloud
from signgen.messages.wording import Wording
from signgen.proving.sides import sides_of
from signgen.proving.written import written
from signgen.replay.reader import read_program
from signgen.replay.steps import trace
from signgen.shop.manner import Manner
from tests.asking import spec_of

GOLDEN = Path(__file__).parent.parent / "golden"
PROGRAMS = sorted(GOLDEN.rglob("*.nc"))
ARC = "G21 G90 G17\nS12000 M3\nG0 Z5\nG0 X10 Y0\nG1 Z-1 F300\n(corner)\nG3 X20 Y10 I0 J10 F600\nG1 Y20\nY30\nM5\nM2\n"


def said(text: str, line: int, language: str = "en") -> str:
    facts = facts_of(trace(text))[line - 1]
    return " ".join(Wording(language)(sentence) for sentence in told(facts))


def test_an_arc_is_told_with_centre_radius_length_feed_and_time() -> None:
    """A quarter of a circle of 10 mm: 15.708 mm, at 600 mm/min 1.57 s. Plane geometry."""
    text = said(ARC, 7)
    for part in ("counterclockwise", "X10 Y0 Z-1", "X20 Y10 Z-1", "centre X10 Y10", "radius 10 mm", "90 degrees"):
        assert part in text
    assert "15.708 mm" in text
    assert "600 mm/min in 1.57 s" in text
    assert 'Pass 1 of 1 (Z-1) under the comment "corner"' in text


def test_a_line_without_a_motion_word_says_which_is_in_force() -> None:
    assert "G1 is in force since line 8" in said(ARC, 9)
    assert "G1 gilt seit Zeile 8" in said(ARC, 9, "de")


def test_a_first_move_names_the_axes_that_it_gives_and_no_others() -> None:
    assert said(ARC, 3) == "G0 Z5: rapid move to Z5, from wherever the tool stands."


def test_inches_are_told_as_they_are_written() -> None:
    text = said("G20 G90 G17 G94\nG0 X0 Y0 Z1\nG1 X2 F10\nM2\n", 3)
    assert "to X2 Y0 Z1, 50.8 mm" in text
    assert "feed 10 inches a minute" in text


def test_what_cannot_be_read_says_why_and_the_rest_is_told() -> None:
    text = "G21 G90\nG1 X1O F100\nG0 Z5\nM2\n"
    assert "cannot be read" in said(text, 2)
    assert "rapid move to Z5" in said(text, 3)


def test_lines_behind_the_end_are_never_run() -> None:
    assert "never run" in said("M2\nG0 X1\n", 2)


@pytest.mark.parametrize("path", PROGRAMS, ids=lambda path: f"{path.parent.name}/{path.name}")
def test_every_line_of_every_program_names_its_motion(path) -> None:
    """By the plain reader, which knows nothing of the explanation: which lines move, and how."""
    text = path.read_text("ascii")
    replay, facts, wording = read_program(text), facts_of(trace(text)), Wording("en")
    kinds = {int(line): int(kind) for line, kind in zip(replay.motions.line, replay.motions.kind, strict=True)}
    words = {
        0: ("rapid", "already"),
        1: ("cut", "straight", "already"),
        2: ("arc clockwise",),
        3: ("counterclockwise",),
    }
    for row in facts:
        sentences = [wording(sentence) for sentence in told(row)]
        assert sentences
        kind = kinds.get(row.step.number)
        if kind is not None:
            assert any(word in sentence for word in words[kind] for sentence in sentences), row.step.text
    assert replay.motions.end_mm.tolist() == trace(text).motions.end_mm.tolist()


def test_data_and_text_of_one_line() -> None:
    data = lines_data("x.nc", ARC, 7, Wording("en"))
    (row,) = data["lines"]
    assert row["centre_mm"] == (10.0, 10.0)
    assert row["pass"] == 1
    assert "G3 X20 Y10" in read_aloud("x.nc", ARC, 7, Wording("en"))
    with pytest.raises(AskError, match="no line 99"):
        read_aloud("x.nc", ARC, 99, Wording("en"))


def test_the_command(tmp_path) -> None:
    (tmp_path / "a.nc").write_text(ARC)
    run = CliRunner().invoke(group, ["explain", str(tmp_path / "a.nc"), "--line", "7", "--language", "de"])
    assert "gegen den Uhrzeigersinn" in run.output
    run = CliRunner().invoke(group, ["explain", str(tmp_path / "a.nc"), "--json"])
    assert len(json.loads(run.output)["lines"]) == 11
    CliRunner().invoke(group, ["explain", str(tmp_path / "a.nc"), "--page", str(tmp_path / "a.html")])
    page = (tmp_path / "a.html").read_text("utf-8")
    assert page.count("<tr>") == 12
    assert "<script" not in page


def test_a_file_that_is_not_there_is_named() -> None:
    run = CliRunner().invoke(group, ["explain", "gone.nc", "--line", "2"])
    assert run.exit_code != 0


@pytest.mark.parametrize("border", ["rectangle", "oval", "scalloped"])
def test_passes_are_counted_as_whoever_wrote_the_program_counts_them(border: str) -> None:
    """The comments of `--comments full` come from the operations; the reading goes by the moves alone."""
    changes = {"border": border, "holes": "none", "hole_diameter": None, "inset": None, "tabs": "3", "text": ["17"]}
    (side,) = sides_of(spec_of(**changes))
    text = dialect_named("plain").write(written(side).made, Manner(comments="full"))[-1]
    said, compared = None, 0
    for row in facts_of(trace(text)):
        if row.step.text.startswith("("):
            said = re.search(r"^\(- pass (\d+) of (\d+), [\d.]+ mm deep: edge\)$", row.step.text)
        elif said and row.level:
            compared += 1
            assert (row.pass_number, row.passes) == (int(said[1]), int(said[2])), row.step.text
    assert compared > 10
