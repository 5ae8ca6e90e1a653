"""Answers for other programs: each fits its schema, and tells what the words tell."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner

from signgen.cli import group
from signgen.cli.list_command import KINDS
from signgen.schemas.formats import NAMES, schema_text
from tests.schemas.strict import must_fit


def told(*words: str) -> Any:
    done = CliRunner().invoke(group, words)
    assert done.exit_code == 0, done.exception
    return json.loads(done.stdout)


@pytest.mark.parametrize("kind", KINDS)
def test_lists_tell_the_same_words(kind: str) -> None:
    data = told("list", kind, "--json")
    must_fit("list", data)
    lines = CliRunner().invoke(group, ["list", kind]).output.splitlines()
    assert [line.split()[0] for line in lines] == [row["name"].split()[0] for row in data["rows"]]
    assert all(row["about"] in line for row, line in zip(data["rows"], lines, strict=True))


def test_the_shops_figures_are_told() -> None:
    row = next(row for row in told("list", "tools", "--json")["rows"] if row["name"] == "v-bit-90")
    assert (row["figures"]["kind"], row["figures"]["angle_deg"]) == ("v-bit", 90)
    row = told("list", "machines", "--json")["rows"][0]
    assert len(row["figures"]["travel_mm"]) == 3


def test_feeds_tell_what_they_print() -> None:
    data = told("feeds", "end-mill-6", "hardwood", "--json")
    must_fit("feeds", data)
    text = " ".join(CliRunner().invoke(group, ["feeds", "end-mill-6", "hardwood"]).output.split())
    assert all(step["result"] in text for step in data["steps"])
    assert f"{data['cutting']['spindle_rpm']:g} rpm" in text
    assert all(" ".join(said.split()) in text for said in (*data["advice"], *data["warnings"]))


def test_explanations_tell_their_pages_and_others() -> None:
    data = told("explain", "tab", "--json")
    must_fit("explain", data)
    text = CliRunner().invoke(group, ["explain", "tab"]).output
    assert data["pages"][0]["text"] in text
    assert all(name in text for name in data["see_also"])


def test_lines_of_a_program_are_told(tmp_path: Path) -> None:
    file = tmp_path / "slot.nc"
    file.write_text("G21 G90 G17 G94\nS9000 M3\nG0 X1 Y2 Z5\nG1 Z-1 F300\nG3 X3 I1\n(end)\nG0 Z9\nM2\n")
    data = told("explain", str(file), "--json")
    must_fit("lines", data)
    assert [line["line"] for line in data["lines"]] == list(range(1, 9))


@pytest.mark.parametrize("name", NAMES)
def test_every_schema_is_printed_and_named_on_its_page(name: str) -> None:
    assert CliRunner().invoke(group, ["explain", "schema", name]).stdout == schema_text(name)
    assert f"    {name} " in CliRunner().invoke(group, ["explain", "schema"]).stdout


WRONG: list[tuple[list[str], int, list[str]]] = [
    (["make", "17", "--size", "0x1", "--material", "cheese"], 2, ["size", "thickness", "material"]),
    (["make", "17", "--siz", "0x1"], 2, ["--siz"]),
    (["list", "food"], 2, ["kind"]),
    (["make", "17", "--size", "20x20", "--thickness", "6", "--cap-height", "19"], 4, ["cap-height"]),
    (["explain", "colet"], 2, ["colet"]),
]


@pytest.mark.parametrize(("words", "code", "named"), WRONG, ids=lambda value: str(value)[:30])
def test_errors_are_one_line_on_standard_error(words: list[str], code: int, named: list[str], tmp_path: Path) -> None:
    command = [sys.executable, "-m", "signgen", *words, "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=False, cwd=tmp_path)
    assert (done.returncode, done.stdout) == (code, "")
    (line,) = done.stderr.splitlines()
    data = json.loads(line)
    must_fit("error", data)
    assert data["exit_code"] == code
    assert [problem["where"] for problem in data["problems"]] == named


def test_a_word_behind_two_dashes_asks_for_no_json() -> None:
    command = [sys.executable, "-m", "signgen", "make", "--size", "0x1", "--thickness", "6", "--", "--json"]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.stderr.startswith("size: ")
