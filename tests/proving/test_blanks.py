"""A blank that is already to size: engraved and drilled within its rim, its corner the datum, nothing cut outside."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.drawing.draw import draw
from signgen.errors import AskError
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.pipeline import prove, read_sign
from signgen.spec.sign_file import dump_sign_file

PLATE: dict[str, Any] = {"text": ["9"], "size": "160x120", "thickness": "9", "edge": "none"}


@pytest.fixture(scope="module")
def plate() -> JobFacts:
    return prove(read_sign({**PLATE, "holes": "side-pair"}))


def test_the_board_is_the_blank_and_its_corner_the_datum(plate: JobFacts) -> None:
    assert plate.stock.bounds_mm == (0.0, 0.0, 160.0, 120.0)
    assert (plate.zero.x_mm, plate.zero.y_mm) == (0.0, 0.0)
    assert plate.set_up.datum.x_mm == plate.set_up.datum.y_mm == 0.0


def test_nothing_is_cut_outside_and_nothing_shows_the_place(plate: JobFacts) -> None:
    assert plate.checks.passed
    assert not plate.drawing.of(Tab)
    assert plate.outline is None
    assert [program.tool.kind for program in plate.programs] == ["v-bit", "drill"]
    for program in plate.programs:
        ends = program.replay.motions.end_mm
        low = ends[ends[:, 2] < plate.drawing.thickness_mm]
        assert (low[:, :2] > 0).all()
        assert (low[:, :2] < (160.0, 120.0)).all()


def test_clamps_stand_on_its_rim_where_no_nut_passes(plate: JobFacts) -> None:
    """Letters in the middle of a wide blank leave its ends free; holes near the ends do not."""
    assert not plate.set_up.holding.screws_mm
    wide = prove(read_sign({**PLATE, "size": "260x90", "cap-height": "40"}))
    line = wide.set_up.holding.clamp_line_mm
    assert line
    assert min(x for x, _ in line) > 20
    assert max(x for x, _ in line) < 240


def test_its_shape_is_kept_as_it_is() -> None:
    spec = read_sign({**PLATE, "border": "scalloped"})
    chord = spec.tolerances.chord_mm
    outline = spec.border.outline(spec.width_mm, spec.height_mm, chord)
    assert draw(spec).edge.symmetric_difference(outline).area < 1e-9


@pytest.mark.parametrize("extra", [{"tabs": "3"}, {"onion-skin": "0.5"}, {"board": "300x200"}, {"edge-chamfer": "2"}])
def test_what_would_be_cut_outside_is_refused(extra: dict[str, str]) -> None:
    with pytest.raises(AskError) as caught:
        read_sign({**PLATE, **extra})
    assert [problem.where for problem in caught.value.problems] == list(extra)


def test_the_sign_file_says_so(tmp_path: Path) -> None:
    path = tmp_path / "sign.toml"
    path.write_text(dump_sign_file(read_sign(PLATE)))
    assert 'edge = "none"' in path.read_text()


def test_a_cut_over_the_rim_is_found(tmp_path: Path) -> None:
    out = str(tmp_path / "plate")
    words = ["9", "--size", "160x120", "--thickness", "9", "--edge", "none", "--cap-height", "40", "--out", out]
    assert CliRunner().invoke(group, ["make", *words]).exit_code == 0
    program = next(Path(out).glob("1-*.nc"))
    text = program.read_text()
    end = text.rindex("G0 Z")
    program.write_text(f"{text[:end]}G0 Z40\nG0 X6 Y60\nG1 Z8 F400\nG1 X-4\nG1 Z8.5\n{text[end:]}")
    result = CliRunner().invoke(group, ["check", out], standalone_mode=False)
    assert result.return_value == 5
    assert "C111" in result.output
