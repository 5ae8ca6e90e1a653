"""The formats' schemas: what tests write is held against them, and what is amiss is found."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import msgspec
import pytest

import signgen
from signgen.guide.sign_file import EXAMPLE, LINES_EXAMPLE
from signgen.schemas.formats import FORMATS, schema_of
from signgen.schemas.report import Report
from signgen.schemas.sign_file import sign_file_schema
from signgen.spec.keys import KEYS
from tests.schemas.strict import problems

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def job() -> signgen.Job:
    return signgen.make("17", size="90x60", thickness=6)


def test_a_report_is_read_back_by_its_type(job: signgen.Job) -> None:
    read = msgspec.json.decode(job.files["report.json"], type=Report)
    assert (read.sign.width_mm, read.programs[0].file) == (90, "1-v-bit-90.nc")


SPOILT: list[tuple[str, object, str]] = [
    ("minutes", "9", "$.minutes: '9' is not of type 'number'"),
    ("version", 2, "$.version: 2 is not one of [1]"),
    ("colour", "red", "Additional properties are not allowed ('colour' was unexpected)"),
]


@pytest.mark.parametrize(("key", "value", "said"), SPOILT)
def test_a_spoilt_report_is_found(job: signgen.Job, key: str, value: object, said: str) -> None:
    assert problems("report", job.report) == []
    (found,) = problems("report", job.report | {key: value})
    assert said in found


def test_whoever_reads_a_report_need_not_know_later_keys() -> None:
    assert all("additionalProperties" not in schema_of(name) for name in FORMATS)


def test_the_watch_stops_a_report_with_an_unknown_key(monkeypatch: pytest.MonkeyPatch) -> None:
    from signgen.job import report

    told = report._outline
    monkeypatch.setattr(report, "_outline", lambda facts: {**(told(facts) or {}), "colour": "red"})
    with pytest.raises(AssertionError, match="colour"):
        signgen.make("17", size="90x60", thickness=6)


@pytest.mark.parametrize("path", sorted((ROOT / "examples").glob("*.toml")), ids=lambda path: path.name)
def test_examples_are_sign_files(path: Path) -> None:
    assert problems("sign-file", tomllib.loads(path.read_text(encoding="utf-8"))) == []


def test_examples_of_the_guide_are_sign_files() -> None:
    assert [problems("sign-file", tomllib.loads(text)) for text in (EXAMPLE, LINES_EXAMPLE)] == [[], []]


WRONG: list[tuple[dict[str, Any], str]] = [
    ({"thicknes": 6}, "thicknes"),
    ({"thickness": -6}, "thickness"),
    ({"align": "middle"}, "align"),
    ({"tabs": 2.5}, "tabs"),
    ({"line": [{"font": "barlow"}]}, "line"),
    ({"steps": 3}, "steps"),
    ({"size": [1, 2, 3]}, "size"),
]


@pytest.mark.parametrize(("keys", "named"), WRONG, ids=lambda value: str(value))
def test_slips_in_a_sign_file_are_found(keys: dict[str, Any], named: str) -> None:
    (found,) = problems("sign-file", keys)
    assert named in found


def test_every_key_is_explained_and_words_that_ship_are_offered() -> None:
    table = sign_file_schema()["properties"]
    assert set(table) == {key.name for key in KEYS} | {"out", "line", "format", "version"}
    assert all(len(each["description"]) > 10 for each in table.values())
    offered = {name: table[name]["anyOf"][0]["enum"] for name in ("font", "border", "material", "holes", "machine")}
    assert "pacifico" in offered["font"]
    assert {"oval", "path:"} <= set(offered["border"])
    assert "oak" in offered["material"]
    assert all(problems("sign-file", {name: "of-my-own"}) == [] for name in offered)
