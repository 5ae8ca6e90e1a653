"""Lettering from the command line to the finished folder: lines in their own way, circles, borrowed letters."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.cli import group

PLATE = """
size = "120x120"
thickness = 9
border = "circle"
margin = 7
tabs = 3
[[line]]
text = "MILL"
arc = 40
arc-centre = "sign"
[[line]]
text = "7"
font = "big-shoulders"
digit-height = 26
[[line]]
text = "λν"
arc = 52
arc-side = "below"
arc-centre = "sign"
"""


@pytest.fixture(scope="module")
def plate(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("plate")
    (folder / "plate.toml").write_text(PLATE, encoding="utf-8")
    words = ["make", "--from", str(folder / "plate.toml"), "--font-fallback", "--out", str(folder / "out")]
    result = CliRunner().invoke(group, words)
    assert result.exit_code == 0, result.exception
    return folder / "out"


def test_the_report_tells_lines_circles_and_reading(plate: Path) -> None:
    report = json.loads((plate / "report.json").read_text(encoding="utf-8"))
    one, number, two = report["sign"]["lettering"]
    assert one["circle"] == {"x_mm": 60.0, "y_mm": 60.0, "radius_mm": 40.0, "side": "above"}
    assert two["circle"] == {"x_mm": 60.0, "y_mm": 60.0, "radius_mm": 52.0, "side": "below"}
    assert (number["font"], number["digit_height_mm"], number["circle"]) == ("big-shoulders", 26.0, None)
    assert report["sign"]["cap_height_mm"] == min(line["cap_height_mm"] for line in (one, number, two))
    assert [line["text"] for line in report["legibility"]["lines"]] == ["MILL", "7", "λν"]
    assert [each["text"] for each in report["legibility"]["house_numbers"]] == ["7"]
    assert report["warnings"] == ["barlow lacks letters of this text; roboto-slab lends λ ν."]
    assert all(check["passed"] for check in report["checks"] if check["severity"] == "error")


def test_the_resolved_file_makes_the_same_bytes(plate: Path, tmp_path: Path) -> None:
    result = CliRunner().invoke(group, ["make", "--from", str(plate / "sign.toml"), "--out", str(tmp_path / "again")])
    assert result.exit_code == 0, result.exception
    assert {path.name: path.read_bytes() for path in plate.iterdir()} == {
        path.name: path.read_bytes() for path in (tmp_path / "again").iterdir()
    }


def test_letters_are_borrowed_only_when_asked(tmp_path: Path) -> None:
    words = ["make", "λ", "--size", "60x40", "--thickness", "6", "--out", str(tmp_path / "out")]
    result = CliRunner().invoke(group, words)
    assert "with font-fallback they lend it" in str(result.exception)
    assert not (tmp_path / "out").exists()
