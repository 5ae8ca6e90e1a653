"""The shares of the tolerance add up to it, on both sides of a wall."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.tolerances import LEAST_TOLERANCE_MM, ROUNDING_MM, Tolerances


@given(st.floats(LEAST_TOLERANCE_MM, 1.0))
def test_what_may_stay_uncut_adds_up_to_the_tolerance(total_mm: float) -> None:
    own = Tolerances(total_mm=total_mm)
    shares = (own.chord_mm, own.prune_mm, own.branch_mm, own.fit_mm, ROUNDING_MM)
    assert all(share > 0 for share in shares)
    assert sum(shares) == pytest.approx(total_mm)


@given(st.floats(LEAST_TOLERANCE_MM, 1.0))
def test_what_may_be_cut_too_much_adds_up_to_the_tolerance(total_mm: float) -> None:
    own = Tolerances(total_mm=total_mm)
    assert own.chord_mm + own.branch_mm + own.deeper_mm + ROUNDING_MM == pytest.approx(total_mm)


def test_pruning_takes_what_chords_add() -> None:
    assert Tolerances().prune_mm >= Tolerances().chord_mm


def test_less_than_what_rounding_needs_is_refused() -> None:
    with pytest.raises(ValueError, match="at least"):
        Tolerances(total_mm=LEAST_TOLERANCE_MM / 2)
