"""`signgen doctor` tells what is there, and what is amiss."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from signgen.cli import doctor_command, group
from signgen.lettering.catalogue import catalogue, stroke_catalogue

ROOT = Path(__file__).parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]


def test_all_that_is_needed_is_here() -> None:
    done = CliRunner().invoke(group, ["doctor"], standalone_mode=False)
    assert done.return_value == 0
    for needed in PROJECT["dependencies"]:
        name, least = needed.split(">=")
        assert f"(needs {least})" in next(line for line in done.output.splitlines() if line.startswith(f"{name} "))
    assert "amiss" not in done.output


def test_what_is_amiss_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    real = doctor_command._version
    other = {"shapely": "2.0.4", "pillow": None}
    monkeypatch.setattr(doctor_command, "_version", lambda name: other[name] if name in other else real(name))
    monkeypatch.setattr(doctor_command, "_digest", lambda path: "")
    done = CliRunner().invoke(group, ["doctor"], standalone_mode=False)
    assert done.return_value == 3
    assert [line.split()[0] for line in done.output.splitlines() if line.endswith("amiss")] == [
        "pillow", "shapely", "faces",
    ]  # fmt: skip


VERSIONS = [("10.1", "10.3", False), ("11.0rc1", "10.3", True), ("2", "2.0", True), ("2.0.4", "2.1", False)]


@pytest.mark.parametrize(("has", "least", "good"), VERSIONS)
def test_versions_are_told_apart(has: str, least: str, good: bool) -> None:
    assert doctor_command._at_least(has, least) is good


def test_extras_are_those_of_the_project() -> None:
    for library, extra in doctor_command.EXTRAS.items():
        (needed,) = PROJECT["optional-dependencies"][extra]
        assert needed.replace("dask[distributed]", "distributed").startswith(library)


def test_the_licence_expression_names_those_of_faces_and_pictograms() -> None:
    """SPDX expressions joined by AND: all of them hold for what is installed."""
    faces = {face.licence for face in (*catalogue(), *stroke_catalogue())}
    (table,) = (ROOT / "signgen" / "pictograms_open").glob("*.toml")
    pictures = {row["licence"] for row in tomllib.loads(table.read_text(encoding="utf-8"))["pictogram"]}
    assert set(PROJECT["license"].split(" AND ")) == {"MIT"} | faces | pictures
