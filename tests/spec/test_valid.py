"""A spec is valid whatever way it came to be."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import pytest
from msgspec.structs import replace

import signgen
from signgen.errors import AskError
from signgen.pipeline import read_sign
from signgen.spec.sign_spec import SignSpec


@pytest.fixture(scope="module")
def spec() -> SignSpec:
    return read_sign({"text": "17", "size": "100x80", "thickness": 12, "holes": "corners", "tabs": 4})


WRONG: list[tuple[dict[str, Any], str]] = [
    ({"thickness_mm": -3.0}, "thickness"),
    ({"width_mm": math.nan}, "size"),
    ({"breakthrough_mm": math.inf}, "breakthrough"),
    ({"origin": "corner"}, "origin"),
    ({"language": "tlh"}, "language"),
    ({"board_mm": (300.0, 0.0)}, "board"),
]


@pytest.mark.parametrize(("change", "named"), WRONG, ids=lambda value: str(value))
def test_a_wrong_value_is_refused_by_its_options_name(spec: SignSpec, change: dict[str, Any], named: str) -> None:
    with pytest.raises(AskError) as caught:
        replace(spec, **change)
    assert [problem.where for problem in caught.value.problems] == [named]
    with pytest.raises(AskError):
        SignSpec(**(msgspec.structs.asdict(spec) | change))


def test_values_within_values_are_judged_too(spec: SignSpec) -> None:
    for text in (replace(spec.text, cap_height_mm=0.0), replace(spec.text, lines=("",)), replace(spec.text, font="")):
        with pytest.raises(AskError):
            replace(spec, text=text)
    with pytest.raises(AskError, match="tabs"):
        replace(spec, tabs=replace(spec.tabs, count=-1))


def test_all_that_is_wrong_comes_at_once(spec: SignSpec) -> None:
    with pytest.raises(AskError) as caught:
        replace(spec, thickness_mm=0.0, z_zero="middle")
    assert {problem.where for problem in caught.value.problems} == {"thickness", "z-zero"}


def test_a_good_change_is_taken(spec: SignSpec) -> None:
    assert replace(spec, thickness_mm=18.0).thickness_mm == 18


def test_a_job_is_changed_by_options_which_are_read_anew() -> None:
    job = signgen.make("17", size="90x60", thickness=6, holes="corners", hole_diameter=5)
    other = job.changed("18", thickness="8mm")
    assert other.files == signgen.make("18", size="90x60", thickness=8, holes="corners", hole_diameter=5).files
    assert job.report["sign"]["lines"] == ["17"]
    with pytest.raises(AskError, match="thickness"):
        job.changed(thickness=-1)
