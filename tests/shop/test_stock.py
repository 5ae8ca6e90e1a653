"""The board on the machine, and whether the machine goes round it."""

from __future__ import annotations

import pytest

from signgen.errors import CannotMakeError
from signgen.pipeline import prove
from signgen.shop.stock import around_mm, must_reach
from tests.asking import spec_of

TRAVEL_MM = (400.0, 300.0)


def problem(size_mm: tuple[float, float]) -> str:
    with pytest.raises(CannotMakeError) as error:
        must_reach(size_mm, 6.0, TRAVEL_MM)
    return str(error.value)


def test_a_sign_that_just_fits_with_the_cut_around_it_is_let_through() -> None:
    must_reach((400.0 - 2 * around_mm(6.0), 300.0 - 2 * around_mm(6.0)), 6.0, TRAVEL_MM)


def test_says_what_is_needed_what_there_is_and_how_large_the_sign_may_be() -> None:
    said = problem((396.0, 140.0))
    assert said.startswith("size: 396 x 140 mm and the 6 mm cut around it need 409 x 153 mm of travel")
    assert "the machine has 400 x 300 mm" in said
    assert "at most 387 x 287 mm" in said
    assert "quarter" not in said


def test_a_sign_that_fits_the_other_way_round_is_told_so() -> None:
    assert "turn the sign by a quarter" in problem((140.0, 300.0))


@pytest.mark.parametrize("size", ["387x70", "70x387"])
def test_what_is_let_through_passes_the_check_of_travel_too(size: str) -> None:
    facts = prove(spec_of(text="1", size=size, thickness=6, depth=1, cell="0.4"))
    passed = {result.code: result.passed for result in facts.checks.results}
    assert passed["C101"]
    assert passed["C140"]


def test_what_is_not_is_refused_before_anything_is_cut_on_the_virtual_board() -> None:
    with pytest.raises(CannotMakeError, match=r"size: 388 x 70 mm and the 6 mm cut around it need 401 x 83 mm"):
        prove(spec_of(text="1", size="388x70", thickness=6, depth=1, machine="desktop-router"))
