"""`signgen list`, `signgen explain` and the way errors leave the program."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.checks import CHECKS
from signgen.cli import COMMANDS, group
from signgen.cli.list_command import KINDS
from signgen.errors import AskError
from signgen.lettering.catalogue import catalogue, stroke_catalogue
from signgen.shop.load import load_shop
from signgen.spec.keys import KEYS


@pytest.mark.parametrize("kind", KINDS)
def test_lists_a_line_each(kind: str) -> None:
    result = CliRunner().invoke(group, ["list", kind])
    assert result.exit_code == 0
    lines = [line for line in result.output.splitlines() if not line.startswith(" ")]
    assert lines
    assert all(len(line.split(None, 1)) == 2 for line in lines)


@pytest.mark.parametrize("kind", ["tools", "materials", "machines"])
def test_below_each_row_of_the_shop_stands_where_its_figures_come_from(kind: str) -> None:
    lines = CliRunner().invoke(group, ["list", kind, "--sources"]).output.splitlines()
    rows = [n for n, line in enumerate(lines) if not line.startswith(" ")]
    assert len(rows) == len(getattr(load_shop(None), kind))
    assert all(lines[n + 1].startswith("    ") for n in rows)
    assert max(len(line) for line in lines if line.startswith(" ")) <= 100


def test_figures_of_one_source_are_said_together() -> None:
    text = CliRunner().invoke(group, ["list", "materials", "--sources"]).output
    assert "v-step, entry-angle: common practice;" in text
    brass = " ".join(text[text.index("brass ") :].split())
    assert "specific-force: Groover, Fundamentals of Modern Manufacturing" in brass
    keys = re.findall(r"[a-z]+(?:-[a-z]+)+(?=[,:])", text[text.index("birch-plywood") : text.index("softwood-plywood")])
    assert {"chip-load-ratio", "spindle-rpm", "stepdown-ratio", "plunge-ratio", "most-chip-ratio"} <= set(keys)


def test_without_sources_a_list_is_a_short_line_each() -> None:
    for kind in ("tools", "materials", "machines"):
        lines = CliRunner().invoke(group, ["list", kind]).output.splitlines()
        assert len(lines) == len(getattr(load_shop(None), kind))
        assert max(map(len, lines)) <= 90


def test_the_short_help_fits_60_lines_and_the_long_one_has_every_option() -> None:
    short = CliRunner().invoke(group, ["make", "--help"], terminal_width=80).output
    assert len(short.splitlines()) <= 60
    often = [key for key in KEYS if key.often]
    assert len(often) == 15
    assert all(f"--{key.name} {key.example}" in short for key in often)
    assert "+KEY=VALUE" in short
    full = CliRunner().invoke(group, ["make", "--help-all"], terminal_width=80).output
    assert all(re.search(rf"--{key.name}\b", full) for key in KEYS if key.name != "text")


@pytest.mark.parametrize("command", ["make", "batch"])
def test_an_unknown_option_offers_one_that_means_the_same(command: str) -> None:
    result = CliRunner().invoke(group, [command, "x", "--colour", "red"])
    assert str(result.exception) == "--colour: There is no such option. Did you mean --paint?"
    result = CliRunner().invoke(group, [command, "x", "--zzzz", "red"])
    assert "signgen explain zzzz" in str(result.exception)


def test_lines_on_the_command_line_have_settings_of_their_own(tmp_path: Path) -> None:
    words = ["make", "7", "+digit-height=30", "Elm Row", "+font=pacifico", "--size", "120x80", "--thickness", "10"]
    result = CliRunner().invoke(group, [*words, "--out", str(tmp_path / "7"), "--quiet"])
    assert result.exit_code == 0, result.exception
    lines = tomllib.loads((tmp_path / "7" / "sign.toml").read_text(encoding="utf-8"))["line"]
    assert lines == [{"text": "7", "digit-height": 30}, {"text": "Elm Row", "font": "pacifico"}]


def test_rows_of_ones_own_come_first_and_take_the_place_of_those_that_ship(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    shop.write_text(
        '[tool.end-mill-6]\nkind = "end-mill"\ndiameter = 6\nshank = 6\ncutting-length = 20\nflutes = 3\n'
        'stick-out = 24\nsource = "my drawer"\n',
        encoding="utf-8",
    )
    lines = CliRunner().invoke(group, ["list", "tools", "--sources", "--shop", str(shop)]).output.splitlines()
    assert lines[0].startswith("end-mill-6 ")
    assert "6 mm end mill, cuts 20 mm deep" in lines[0]
    assert [line.strip() for line in lines[1:3]] == ["3 flutes, 6 mm shank, cannot plunge", "my drawer"]
    assert sum(line.startswith("end-mill-6 ") for line in lines) == 1


def test_faces_are_listed_with_scripts_and_measures() -> None:
    lines = CliRunner().invoke(group, ["list", "fonts"]).output.splitlines()
    row = next(line for line in lines if line.startswith("pacifico "))
    assert "Latin, Cyrillic; capitals 0.877 em, x 0.54 of that, figures 0.67, stroke 0.159; OFL-1.1" in row


def test_specimens_are_drawn_of_every_face(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    two, strokes = catalogue()[:2], stroke_catalogue()
    monkeypatch.setattr("signgen.lettering.catalogue.catalogue", lambda: two)
    few = (*two, *strokes)
    folder = tmp_path / "cards"
    result = CliRunner().invoke(group, ["list", "fonts", "--specimen", str(folder)])
    names = [f"{face.name}.{suffix}" for face in few for suffix in ("svg", "png")]
    assert result.output.splitlines() == [str(folder / name) for name in names]
    assert sorted(path.name for path in folder.iterdir()) == sorted(names)


def test_only_fonts_have_specimens(tmp_path: Path) -> None:
    result = CliRunner().invoke(group, ["list", "tools", "--specimen", str(tmp_path / "cards")])
    assert isinstance(result.exception, AskError)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.code)
def test_explains_every_check_by_code_and_by_name(check: object) -> None:
    for word in (check.code, check.code.lower(), check.name):  # type: ignore[attr-defined]
        result = CliRunner().invoke(group, ["explain", word])
        assert result.exit_code == 0
        assert len(result.output) > 100
        assert all(len(line) <= 80 for line in result.output.splitlines())


@pytest.mark.parametrize("term", ["tab", "datum", "collet", "Climb milling", "spoilboard"])
def test_explains_words_of_the_trade(term: str) -> None:
    assert len(CliRunner().invoke(group, ["explain", *term.split()]).output) > 60


def test_an_unknown_word_offers_close_ones() -> None:
    result = CliRunner().invoke(group, ["explain", "colet"])
    assert isinstance(result.exception, AskError)
    assert "collet" in str(result.exception)


def test_check_codes_are_unique_and_never_reused() -> None:
    codes = [check.code for check in CHECKS]
    assert len(codes) == len(set(codes))
    assert {"C101": "inside_travel", "C102": "rapids_clear"}.items() <= {c.code: c.name for c in CHECKS}.items()


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_help(command: str) -> None:
    result = CliRunner().invoke(group, [command, "--help"])
    assert result.exit_code == 0


def test_problems_go_to_standard_error_a_line_each_with_their_exit_code() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "signgen", "make", "17", "--size", "0x1", "--material", "cheese"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert done.stdout == ""
    lines = done.stderr.splitlines()
    assert {line.split(":")[0] for line in lines} == {"size", "thickness", "material"}
    assert len(lines) == 3
