"""Choices that save time: the depth of wide letters, a thinner mill for floors, and what is said of slow signs."""

from __future__ import annotations

from typing import Any

import pytest

from signgen.drawing.draw import draw
from signgen.messages import Message
from signgen.operations.clear_floor import ClearFloor
from signgen.operations.plan import make_plan
from signgen.pipeline import read_sign
from signgen.proving import slow
from signgen.proving.prove import proved
from signgen.proving.sides import sides_of
from signgen.spec.sign_spec import SignSpec

NUMBER: dict[str, Any] = {"text": ["17"], "size": "220x140", "thickness": "12"}


def minutes(spec: SignSpec) -> float:
    found = slow._minutes(spec)
    assert found is not None
    return found


def test_wide_letters_are_as_deep_as_is_quick() -> None:
    """By the programs' own times: a fifth less than with 0.4 of the thickness, and a minute at least."""
    chosen, usual = read_sign(NUMBER), read_sign({**NUMBER, "depth": "4.8"})
    assert chosen.depth_mm == 3.0
    assert minutes(chosen) < min(0.8 * minutes(usual), minutes(usual) - 1)


def test_letters_without_floors_keep_the_usual_depth() -> None:
    assert read_sign({**NUMBER, "text": ["17", "Larkspur Lane"]}).depth_mm == pytest.approx(0.4 * 12)


def test_a_depth_that_is_stated_holds() -> None:
    assert read_sign({**NUMBER, "depth": "4.5"}).depth_mm == 4.5


def test_a_mill_that_the_job_does_not_use_is_fitted_where_it_saves_minutes() -> None:
    """Floors of 2.1 mm and more in letters 69 mm high, for which the edge's 6 mm mill has no room."""
    asked = {"text": ["Quince"], "size": "390x200", "thickness": "18", "depth": "4"}
    plan = make_plan(draw(read_sign(asked)), read_sign(asked))
    clearing = {run.tool.diameter_mm for run in plan.runs for each in run.operations if isinstance(each, ClearFloor)}
    assert clearing
    assert max(clearing) < 6
    named = read_sign({**asked, "end-mill": "6"})
    remarks = make_plan(draw(named), named).remarks
    assert any(isinstance(said, Message) and said.key == "cut.another_would_clear_in" for said in remarks)


def test_a_slow_sign_says_what_about_halves_its_time(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(slow, "LONG_MIN", 8.0)
    spec = read_sign({**NUMBER, "depth": "4.8"})
    facts = slow.with_quicker(proved(sides_of(spec)))
    first = facts.warnings[0]
    assert isinstance(first, Message)
    assert first.key == "slow.takes_with"
    depth = first.values["way"].values["depth"].value  # type: ignore[union-attr]
    told = first.values["less"].value  # type: ignore[union-attr]
    assert minutes(read_sign({**NUMBER, "depth": depth})) == pytest.approx(told, rel=0.01)
    assert told <= slow.WORTH_RATIO * minutes(spec)


def test_a_quick_sign_says_nothing_of_its_time() -> None:
    facts = proved(sides_of(read_sign(NUMBER)))
    assert slow.with_quicker(facts) is facts
