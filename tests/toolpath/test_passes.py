"""Equal passes."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.toolpath.passes import levels


def test_twelve_millimetres_and_a_bit_in_steps_of_three() -> None:
    assert levels(12.0, -0.3, 3.0) == pytest.approx((9.54, 7.08, 4.62, 2.16, -0.3))


def test_a_depth_of_whole_steps_takes_no_extra_pass() -> None:
    assert levels(9.0, 0.0, 3.0) == pytest.approx((6.0, 3.0, 0.0))


def test_nothing_to_go_down_is_no_pass() -> None:
    assert levels(2.0, 2.0, 1.0) == ()


@given(st.floats(-1, 50), st.floats(0.01, 40), st.floats(0.1, 20))
def test_passes_are_equal_within_the_step_and_end_at_the_bottom(bottom: float, depth: float, step: float) -> None:
    found = levels(bottom + depth, bottom, step)
    drops = [a - b for a, b in itertools.pairwise((bottom + depth, *found))]
    assert found[-1] == bottom
    assert max(drops) <= step * (1 + 1e-6)
    assert max(drops) == pytest.approx(min(drops), abs=1e-9)
