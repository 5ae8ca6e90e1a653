"""Whoever lacks a V-bit or an end mill gets what the cutters at hand can make, and is told."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from signgen.drawing.draw import draw
from signgen.errors import CannotMakeError
from signgen.messages import Message
from signgen.operations.plan import Plan, make_plan
from signgen.pipeline import read_sign
from signgen.spec.sign_file import dump_sign_file, load_sign_file

MILL = """only-these-tools = true
[tool.mine]
kind = "end-mill"
diameter = 3
shank = 3
cutting-length = 16
flutes = 2
stick-out = 22
can-plunge = true
source = "measured"
"""
BIT = """only-these-tools = true
[tool.mine]
kind = "v-bit"
angle = 90
diameter = 12
shank = 6
cutting-length = 6
flutes = 2
stick-out = 18
source = "measured"
"""
ASKED: dict[str, Any] = {"text": ["17"], "size": "140x140", "thickness": "12"}


def planned(asked: dict[str, Any]) -> Plan:
    spec = read_sign(asked)
    return make_plan(draw(spec), spec)


def keys(plan: Plan) -> set[str]:
    return {said.key for said in plan.remarks if isinstance(said, Message)}


@pytest.fixture
def shop(tmp_path: Path, request: pytest.FixtureRequest) -> str:
    path = tmp_path / "shop.toml"
    path.write_text(request.param)
    return str(path)


@pytest.mark.parametrize("shop", [MILL], indirect=True)
def test_without_a_v_bit_letters_are_sunk_flat(shop: str, tmp_path: Path) -> None:
    asked = {**ASKED, "shop": shop}
    plan = planned(asked)
    assert {run.tool.name for run in plan.runs} == {"mine"}
    assert "choose.no_v_bit" in keys(plan)
    file = tmp_path / "sign.toml"
    file.write_text(dump_sign_file(read_sign(asked)))
    assert read_sign(load_sign_file(file)) == read_sign(asked)


@pytest.mark.parametrize("shop", [MILL], indirect=True)
@pytest.mark.parametrize(
    ("extra", "where"),
    [({"finish": "groove"}, "finish"), ({"frame": "8"}, "frame"), ({"edge-chamfer": "2"}, "edge-chamfer")],
)
def test_what_only_a_v_bit_cuts_is_refused_by_its_option(shop: str, extra: dict[str, str], where: str) -> None:
    with pytest.raises(CannotMakeError) as caught:
        planned({**ASKED, "finish": "recess", "shop": shop, **extra})
    assert [problem.where for problem in caught.value.problems] == [where]


@pytest.mark.parametrize("shop", [BIT], indirect=True)
def test_without_an_end_mill_a_blank_is_engraved(shop: str) -> None:
    plan = planned({**ASKED, "shop": shop})
    assert [run.tool.name for run in plan.runs] == ["mine"]
    assert plan.edge is None
    assert "choose.no_end_mill" in keys(plan)


@pytest.mark.parametrize("shop", [BIT], indirect=True)
def test_a_cut_that_is_asked_for_wants_its_mill(shop: str) -> None:
    with pytest.raises(CannotMakeError):
        planned({**ASKED, "shop": shop, "edge": "cut"})
