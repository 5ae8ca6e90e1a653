"""Programs that were written elsewhere: what they do in figures, and what is found."""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from signgen.checks import CHECKS
from signgen.elsewhere import check_files, moves_of, time_of
from signgen.errors import AskError
from signgen.job.judged import Judged
from signgen.pipeline import make_job
from signgen.replay.reader import read_program
from tests.asking import spec_of
from tests.measuring import cut_length_mm, lengths_mm

SLOT = """\
%
O0042 (a slot)
G21 G17 G90 ; as usual
T3 M6
G43 H3
S16000 M3
G4 P5
G0 Z5
G0 X50 Y40
G1 Z-3 F300
G1 X110 F1200
G0 Z5
M5
G91 G28 Z0
M30
%
"""
"""A slot of 60 mm with a 6 mm end mill, 3 mm deep, Z zero at the board's top; not written as this project writes."""


def judged(tmp_path: Path, *texts: str, tools: tuple[str, ...] = ("end-mill-6",), **asked: Any) -> Judged:
    paths = []
    for number, text in enumerate(texts):
        path = tmp_path / f"{number}.nc"
        path.write_text(text)
        paths.append(str(path))
    wanted = {"stock": "200x100x12", "z-zero": "top", **{k.replace("_", "-"): v for k, v in asked.items()}}
    return check_files(paths, wanted, tools)


def found(one: Judged) -> dict[str, list[int | None]]:
    """Lines of what stops the program, by code."""
    return {
        result.code: [finding.line for finding in result.findings if not finding.warns]
        for result in one.report.results
        if result.stops
    }


def test_a_program_written_elsewhere_passes_with_warnings_at_most(tmp_path: Path) -> None:
    one = judged(tmp_path, SLOT)
    assert one.report.passed
    warned = {result.code for result in one.report.results if result.findings}
    assert warned == {"C103", "C141"}
    said = " ".join(str(finding.message) for _, finding in one.report.findings())
    assert "semicolon" in said
    assert "G28" in said
    assert "G54" in said
    assert "first Z is 5.00 mm over the board" in said


def test_checks_that_need_a_drawing_do_not_apply_and_do_not_fail(tmp_path: Path) -> None:
    one = judged(tmp_path, SLOT)
    assert [result.code for result in one.report.results] == [check.code for check in CHECKS]
    assert {result.code for result in one.report.results if not result.applies} == {
        check.code for check in CHECKS if check.needs_drawing
    }
    assert {"C108", "C110", "C111"} <= {check.code for check in CHECKS if check.needs_drawing}
    assert not {"C101", "C102", "C105", "C107"} & {check.code for check in CHECKS if check.needs_drawing}


def test_what_it_does_in_figures(tmp_path: Path) -> None:
    survey = judged(tmp_path, SLOT).survey
    assert survey is not None
    (program,) = survey.programs
    assert (program.number, program.rapids, program.straights, program.arcs) == (3, 3, 2, 0)
    assert program.tip is not None
    assert (program.tip.x_mm, program.tip.z_mm) == ((50, 110), (-3, 5))
    assert np.array(program.cut) == pytest.approx(np.array([[47, 113], [37, 43]]))
    assert program.deepest is not None
    assert (program.deepest.depth_mm, program.deepest.line) == (3, 10)
    assert program.deepest.place_mm == (50, 40)
    assert (program.speeds, program.feeds, program.plunges) == ((16000, 16000), (1200, 1200), (300, 300))
    assert program.cut_length_mm == 68
    # A slot with round ends: (60 x 6 + pi 3^2) x 3 mm3.
    assert program.removed_cm3 == pytest.approx((60 * 6 + math.pi * 9) * 3 / 1000, rel=0.02)
    # At a feed 8 mm and 60 mm, 5 s of dwell, and something for rapids and for speeding up.
    assert 60 * 60 / 1200 + 8 * 60 / 300 + 5 < 60 * (program.minutes or 0) < 15
    assert survey.left_mm == pytest.approx(9)
    assert survey.through_mm2 == 0
    assert survey.fits


SPOILT = [
    ("rapid into the board", SLOT.replace("G1 Z-3 F300", "G0 Z-3"), "C102", 10),
    ("spindle off", SLOT.replace("S16000 M3\n", "\n"), "C105", 10),
    ("spindle backwards", SLOT.replace("0 M3", "0 M4"), "C105", 10),
    ("through and too deep", SLOT.replace("G1 Z-3", "G1 Z-12.9"), "C107", 10),
    ("no feed at all", SLOT.replace(" F300", "").replace(" F1200", ""), "C103", 10),
    ("a feed ten times too fast", SLOT.replace("F1200", "F12000"), "C106", 11),
    ("straight through at once", SLOT.replace("G1 Z-3", "G1 Z-11"), "C118", 10),
    ("longer than the machine", SLOT.replace("X110", "X470"), "C101", 11),
    ("compensation", SLOT.replace("G43 H3", "G43 H3\nG41 D1"), "C103", 6),
    ("a word that no rule knows", SLOT.replace("G4 P5", "G4 P5 E2"), "C103", 7),
]


@pytest.mark.parametrize(("text", "code", "line"), [row[1:] for row in SPOILT], ids=[row[0] for row in SPOILT])
def test_what_must_stop_it(tmp_path: Path, text: str, code: str, line: int) -> None:
    stops = found(judged(tmp_path, text))
    assert code in stops
    assert line in stops[code]


WARNED = [
    ("no time to reach speed", SLOT.replace("G4 P5", ""), "C105"),
    ("left turning at the end", SLOT.replace("M5\n", ""), "C105"),
    ("low over the board", SLOT.replace("G0 Z5\nG0 X50", "G0 Z0.2\nG0 X50"), "C102"),
    ("across before it is up", SLOT.replace("G0 Z5\nG0 X50 Y40\n", "G0 X50 Y40\nG0 Z5\n"), "C102"),
    ("in from the board's side", SLOT.replace("G0 X50 Y40", "G0 X-5 Y40"), "C104"),
    ("deeper than is advised", SLOT.replace("G1 Z-3", "G1 Z-5"), "C118"),
    ("without an end", SLOT.replace("%\n", "").replace("M30\n", ""), "C103"),
    ("cut short after its end", SLOT.removesuffix("%\n"), "C103"),
]


@pytest.mark.parametrize(("text", "code"), [row[1:] for row in WARNED], ids=[row[0] for row in WARNED])
def test_what_is_only_less_careful_warns(tmp_path: Path, text: str, code: str) -> None:
    one = judged(tmp_path, text)
    assert one.report.passed, found(one)
    (result,) = (result for result in one.report.results if result.code == code)
    assert result.findings
    assert result.severity == "warning"


def scaled(text: str, factor: float, **by: float) -> str:
    """Every X, Y, Z and F times a factor, and moved."""

    def change(match: re.Match[str]) -> str:
        letter = match.group(1)
        return f"{letter}{float(match.group(2)) * factor + by.get(letter, 0):.4f}"

    return re.sub(r"\b([XYZF])(-?\d+)", change, text)


LIKELY: list[tuple[str, str, dict[str, str], str, bool]] = [
    ("Z0 meant at the bottom", scaled(SLOT, 1, Z=12), {}, "With Z0 at the board's bottom it would", True),
    ("Z0 meant at the top", SLOT, {"z-zero": "bottom"}, "with Z0 at the board's top it would fit", True),
    ("X0 Y0 meant in the middle", scaled(SLOT, 1, X=-100, Y=-30), {}, "X0 Y0 at its middle", False),
    ("X0 Y0 meant at the top right", scaled(SLOT, 1, X=-200, Y=-100), {}, "at its top right corner", True),
    ("inches read as millimetres", scaled(SLOT, 1 / 25.4), {}, "these may be inches", False),
    ("millimetres read as inches", SLOT.replace("G21", "G20").replace("Z-3", "Z-0.1"), {}, "instead of inches", True),
    ("a feed by the second", SLOT.replace("F1200", "F20").replace("F300", "F5"), {}, "by the second", False),
    ("another file", re.sub("G1 .*", "", SLOT), {}, "cuts nothing", False),
]


@pytest.mark.parametrize(("text", "asked", "words", "stops"), [row[1:] for row in LIKELY], ids=[r[0] for r in LIKELY])
def test_units_and_zeros_that_were_meant_otherwise_are_told(
    tmp_path: Path, text: str, asked: dict[str, str], words: str, stops: bool
) -> None:
    one = judged(tmp_path, text, **{key.replace("-", "_"): value for key, value in asked.items()})
    (result,) = (result for result in one.report.results if result.code == "C123")
    assert words in " ".join(str(finding.message) for finding in result.findings)
    assert result.stops == stops


def test_a_piece_that_comes_loose_is_told(tmp_path: Path) -> None:
    square = SLOT.replace("G1 X110 F1200\n", "".join(f"G1 {to} F1200\n" for to in ("X110", "Y80", "X50", "Y40")))
    assert "C119" not in {result.code for result, _ in judged(tmp_path, square).report.findings()}
    through = judged(tmp_path, square.replace("Z-3", "Z-12.2"))
    (result,) = (result for result in through.report.results if result.code == "C119")
    assert (len(result.findings), result.severity) == (1, "warning")
    area = re.search(r"([\d,]+) mm2", str(result.findings[0].message))
    assert area
    assert float(area.group(1).replace(",", "")) == pytest.approx(54 * 34, rel=0.01)


def test_a_machine_that_is_too_small_is_told_in_the_survey(tmp_path: Path) -> None:
    survey = judged(tmp_path, SLOT.replace("X110", "X470")).survey
    assert survey is not None
    assert not survey.fits
    assert survey.way_mm[0] == 420


TWO_CUTTERS = SLOT.replace("G91 G28 Z0\n", "T5 M6\nS8000 M3\nG4 P5\nG0 X150 Y70\nG1 Z-12 F200\nG0 Z5\nM5\n")


def test_each_stretch_of_a_file_is_judged_with_its_own_cutter(tmp_path: Path) -> None:
    one = judged(tmp_path, TWO_CUTTERS, tools=("end-mill-6", "drill-5"))
    assert [(p.tool.kind, p.replay.motions.tool[-1]) for p in one.case.programs] == [("end-mill", 3), ("drill", 5)]
    assert one.survey is not None
    slot, hole = one.survey.programs
    assert np.array(hole.cut) == pytest.approx(np.array([[147.5, 152.5], [67.5, 72.5]]))
    assert np.array(slot.cut) == pytest.approx(np.array([[47, 113], [37, 43]]))


def test_too_few_cutters_are_asked_for_by_their_numbers(tmp_path: Path) -> None:
    with pytest.raises(AskError) as error:
        judged(tmp_path, TWO_CUTTERS)
    assert "T3" in str(error.value)
    assert "T5" in str(error.value)


def test_files_are_run_one_after_the_other_on_one_board(tmp_path: Path) -> None:
    deeper = SLOT.replace("Z-3", "Z-6")
    alone = judged(tmp_path, deeper.replace("G1 Z-6", "G0 Z-2.99\nG1 Z-6"))
    assert "C102" in found(alone)
    after = judged(tmp_path, SLOT, deeper.replace("G1 Z-6", "G0 Z-2.99\nG1 Z-6"))
    assert after.report.passed, found(after)
    assert after.survey is not None
    assert after.survey.programs[1].removed_cm3 == pytest.approx(after.survey.programs[0].removed_cm3, rel=1e-3)


def test_problems_of_files_and_of_options_come_together(tmp_path: Path) -> None:
    with pytest.raises(AskError) as error:
        check_files([str(tmp_path / "none.nc")], {"stock": "3x3", "machine": "mill"}, ["spoon"])
    assert len(error.value.problems) == 4
    with pytest.raises(AskError):
        check_files([str(tmp_path), str(tmp_path)], {"stock": "3x3x3"}, ["end-mill-6"])


ARCS = """\
G21 G90 G94 G17
G0 X10 Y0 Z0
G3 X0 Y10 I-10 J0 F600
G2 X10 Y0 Z5 I0 J-10
G18
G2 X30 Z5 I10 K0
G19
G3 Y-20 Z5 J-10 K0
M2
"""


def test_arcs_in_every_plane_keep_their_lengths() -> None:
    motions = read_program(ARCS).motions
    moves = moves_of(motions)
    ends = np.vstack([moves.ends_mm[:1], moves.ends_mm])
    chords = np.sqrt((np.diff(ends, axis=0) ** 2).sum(axis=1))[moves.kinds == 0].sum()
    assert chords == pytest.approx(lengths_mm(motions)[-2:].sum(), rel=1e-3)
    taken = time_of(motions, spec_of().machine, 0.0)
    assert taken.cut_length_mm == pytest.approx(cut_length_mm(motions), rel=1e-3)


def test_the_time_of_a_program_read_back_is_that_of_the_program_written() -> None:
    facts = make_job(spec_of()).facts
    for program in facts.programs:
        motions = program.replay.motions
        taken = time_of(motions, facts.spec.machine, program.replay.dwell_s)
        assert taken.minutes == pytest.approx(program.minutes, rel=0.01)
        assert taken.cut_length_mm == pytest.approx(program.cut_length_mm, rel=1e-4)


def test_a_missing_feed_leaves_the_time_open() -> None:
    motions = read_program("G21 G90 G94 G17\nG0 X0 Y0 Z0\nG1 X10\nG1 X20\nM2\n").motions
    assert not math.isfinite(time_of(motions, spec_of().machine, 0.0).minutes)
    assert time_of(read_program("M2\n").motions, spec_of().machine, 3.0).minutes == pytest.approx(0.05)


def test_the_deepest_cut_is_named_at_one_line_and_its_own_place(tmp_path: Path) -> None:
    again = "G1 Z-3 F300\nG1 X110 F1200\nG0 Z5\nG0 X20 Y20\nG1 Z-3 F300\nG1 X30 F1200\nG0 Z5\n"
    one = judged(tmp_path, SLOT.replace("G1 Z-3 F300\nG1 X110 F1200\nG0 Z5\n", again))
    assert one.survey
    deepest = one.survey.programs[0].deepest
    assert deepest
    assert (deepest.depth_mm, deepest.place_mm) == (3.0, (50.0, 40.0))
    assert (tmp_path / "0.nc").read_text().splitlines()[deepest.line - 1] == "G1 Z-3 F300"


USUAL = {
    "a tolerance for corners": ("G17\n", "G17 G64 P0.01\n"),
    "a tolerance and a second one": ("G17\n", "G17\nG64 P0.01 Q0.01\n"),
    "up by G28 first": ("G17\n", "G17\nG28 G91 Z0\nG90\n"),
    "up by G53 first": ("G17\n", "G17\nG53 Z0\n"),
    "up by G53 at the end": ("G91 G28 Z0\n", "G53 Z0\n"),
    "a zero set after a probe": ("G17\n", "G17\nG38.2 Z-30 F80\nG10 L20 P1 Z1.5\nG0 Z30\n"),
    "nothing stated": ("G21 G17 G90 ; as usual\n", "(nothing)\n"),
}


@pytest.mark.parametrize("change", USUAL.values(), ids=list(USUAL))
def test_what_is_usual_elsewhere_does_not_stop_a_program(tmp_path: Path, change: tuple[str, str]) -> None:
    text = SLOT.replace(" ; as usual", "").replace("G21 G17 G90\n", "G21 G90\nG17\n")
    if change[0] not in text:
        text = SLOT
    assert change[0] in text
    one = judged(tmp_path, text.replace(*change))
    assert found(one) == {}
    stated = [f for _, f in one.report.findings() if str(f.message).startswith("Not stated")]
    assert len(stated) == 1


def test_a_head_sent_home_first_is_no_dive(tmp_path: Path) -> None:
    for way_up in ("G28 G91 Z0\nG90\n", "G53 Z0\n"):
        one = judged(tmp_path, SLOT.replace("G0 Z5\nG0 X50 Y40", f"{way_up}G0 X50 Y40\nG0 Z5"))
        assert not any(result.findings for result in one.report.results if result.code in ("C141", "C102"))


def test_a_drill_may_go_two_and_a_half_diameters_in_one_cycle(tmp_path: Path) -> None:
    text = "G17 G21 G40 G49 G54 G80 G90 G94\nG0 Z40\nS9000 M3\nG4 P5\nG0 X50 Y40\nG81 Z-10 R2 F200\n"
    text += "G80\nG0 Z40\nM5\nM2\n"
    one = judged(tmp_path, text, tools=("drill 4",))
    assert "C118" not in found(one)
    deeper = judged(tmp_path, text.replace("Z-10", "Z-16"), tools=("drill 4",), stock="200x100x20")
    assert any(f for result in deeper.report.results if result.code == "C118" for f in result.findings)


def test_a_dwell_of_more_than_an_hour_is_asked_about(tmp_path: Path) -> None:
    one = judged(tmp_path, SLOT.replace("G4 P5", "G4 P4000"))
    assert one.report.passed
    (said,) = [str(f.message) for result in one.report.results if result.code == "C143" for f in result.findings]
    assert "Is 4 s meant?" in said


def test_o_words_are_named_as_what_they_are(tmp_path: Path) -> None:
    one = judged(tmp_path, SLOT.replace("G0 Z5\nG0 X50 Y40", "G0 Z5\no100 call\nG0 X50 Y40"))
    assert not one.report.passed
    assert any("An O word" in str(finding.message) for _, finding in one.report.findings())


def test_what_is_not_stated_is_one_warning_for_all_cutters(tmp_path: Path) -> None:
    two = SLOT.replace("G21 G17 G90 ; as usual\n", "").replace("M30\n", "G90\nT4 M6\nG43 H4\nS16000 M3\nG4 P5\n")
    text = two.replace("%\n", "") + "G0 Z5\nG0 X50 Y60\nG1 Z-3 F300\nG1 X90 F1200\nG0 Z5\nM5\nM30\n"
    one = judged(tmp_path, text, tools=("end-mill-6", "end-mill-4"))
    assert sum(str(f.message).startswith("Not stated") for _, f in one.report.findings()) == 1
