"""The outline and the air cut: what they go round, that they touch nothing, and that spoiled ones are refused."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest

from signgen.checks.check import CheckReport
from signgen.errors import AskError
from signgen.files import write_folder
from signgen.folder import check_folder
from signgen.job.facts import JobFacts
from signgen.pipeline import make_job
from signgen.replay.heights import board
from signgen.replay.motion import RAPID
from signgen.replay.sweep import cut
from signgen.shop.stock import CLAMP_STANDS_MM
from tests.asking import spec_of

OUTLINE, LIFT_MM = "0-outline.nc", 20.0


@pytest.fixture(scope="module")
def job() -> JobFacts:
    return make_job(spec_of(air_cut=f"{LIFT_MM}")).facts


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    write_folder(tmp_path / "sign", make_job(spec_of(air_cut=f"{LIFT_MM}")).files)
    return tmp_path / "sign"


def found(report: CheckReport) -> list[str]:
    return [str(finding.message) for result in report.results if result.code == "C140" for finding in result.findings]


def test_nothing_is_removed_by_any_of_them(job: JobFacts) -> None:
    assert job.outline is not None
    bare = board(job.stock, 0.5)
    assert len(job.lifted) == len(job.programs)
    for program in (job.outline, *job.lifted):
        left = cut(bare, program.replay.motions, program.tool, job.zero, rapids=True)
        assert np.array_equal(left.z_mm, bare.z_mm), program.file


def test_the_outline_waits_at_four_corners_of_what_the_cutters_take(job: JobFacts) -> None:
    assert job.outline is not None
    text = job.outline.text
    assert text.count("M0\n") == 4
    assert "M3" not in text
    motions = job.outline.replay.motions
    assert (motions.spindle_rpm == 0).all()
    x0, y0 = motions.end_mm[:, :2].min(axis=0)
    x1, y1 = motions.end_mm[:, :2].max(axis=0)
    # the last board: what the cut around the sign took out of its face
    gone = job.boards[-1].z_mm < job.drawing.thickness_mm - 0.1
    last = job.boards[-1]
    columns, rows = last.x_mm[gone.any(axis=0)], last.y_mm[gone.any(axis=1)]
    assert (x0, x1) == pytest.approx((columns.min(), columns.max()), abs=1.5 * last.cell_mm)
    assert (y0, y1) == pytest.approx((rows.min(), rows.max()), abs=1.5 * last.cell_mm)
    heights = motions.end_mm[:, 2]
    over = job.drawing.thickness_mm + np.array([CLAMP_STANDS_MM, job.spec.clearance_mm])
    assert (heights[[0, 1, -1]] >= over[0]).all()
    assert (heights[2:-1] == over[1]).all()


def test_an_air_cut_is_the_program_moved_up_and_nothing_else(job: JobFacts) -> None:
    for program, lifted in zip(job.programs, job.lifted, strict=True):
        assert lifted.file == f"air-{program.file}"
        own, high = program.replay.motions, lifted.replay.motions
        assert np.allclose(high.end_mm - own.end_mm, [0.0, 0.0, LIFT_MM])
        assert np.array_equal(high.kind, own.kind)
        assert np.array_equal(high.spindle_rpm, own.spindle_rpm)
        fed = own.kind != RAPID
        assert np.allclose(high.feed_mm_per_min[fed], own.feed_mm_per_min[fed])


def test_a_lift_that_would_cut_is_refused_with_the_least_that_would_not() -> None:
    with pytest.raises(AskError) as refused:
        spec_of(air_cut="13")
    (problem,) = refused.value.problems
    assert problem.where == "air-cut"
    assert "14.3 mm" in str(problem)


def test_without_being_asked_for_there_is_an_outline_and_no_air_cut() -> None:
    job = make_job(spec_of())
    assert OUTLINE in job.files
    assert not [name for name in job.files if name.startswith("air-")]
    assert [program.file for program in job.facts.programs] == ["1-v-bit-90.nc", "2-end-mill-6.nc"]


@pytest.mark.parametrize("dialect", ["inch", "no-arcs", "cycles", "one-file", "changer"])
def test_they_are_written_as_the_control_wants_them(dialect: str) -> None:
    job = make_job(spec_of(air_cut="20", dialect=dialect))
    assert job.facts.checks.passed
    assert OUTLINE in job.files
    assert sum(name.startswith("air-") for name in job.files) == (1 if dialect in ("one-file", "changer") else 2)


def test_a_good_folder_passes(folder: Path) -> None:
    report = check_folder(folder).report
    assert report.passed
    assert found(report) == []


Spoil = Callable[[str], str]
SPOILED: dict[str, tuple[str, Spoil, str]] = {
    "the spindle turns": (
        OUTLINE,
        lambda text: text.replace("M5\n", "S9000 M3\nG4 P4\n", 1),
        "spindle turns",
    ),
    "the outline is low": (OUTLINE, lambda text: text.replace("Z22", "Z12.2"), "within 0.5 mm"),
    "the outline cuts": (OUTLINE, lambda text: text.replace("Z22", "Z11"), "into the board"),
    "the outline is elsewhere": (OUTLINE, lambda text: text.replace("X226", "X225.9"), "differs by 0.10 mm"),
    "a word is wrong": (OUTLINE, lambda text: text.replace("M2\n", "M222\n"), "M222"),
    "one move of the air cut is as deep as the real one": (
        "air-1-v-bit-90.nc",
        lambda text: re.sub(r"^(G1.*?)Z29\.(\d+)", r"\1Z9.\2", text, count=1, flags=re.MULTILINE),
        "into the board",
    ),
}


@pytest.mark.parametrize("name", SPOILED)
def test_a_spoiled_one_is_refused(folder: Path, name: str) -> None:
    file, spoil, said = SPOILED[name]
    before = (folder / file).read_text()
    after = spoil(before)
    assert after != before
    (folder / file).write_text(after)
    judged = check_folder(folder)
    assert not judged.report.passed
    assert any(said in message for message in found(judged.report)), found(judged.report)


def test_the_report_names_them_beside_the_programs_that_cut(folder: Path) -> None:
    report = json.loads((folder / "report.json").read_text())
    assert [program["file"] for program in report["programs"]] == ["1-v-bit-90.nc", "2-end-mill-6.nc"]
    assert report["outline"]["file"] == OUTLINE
    assert report["outline"]["extent"]["z_mm"] == [22, 43]
    assert report["air_cut"] == {"lifted_mm": LIFT_MM, "files": ["air-1-v-bit-90.nc", "air-2-end-mill-6.nc"]}
    assert {OUTLINE, "air-1-v-bit-90.nc"} < set(report["files"])
