"""Figures as the sheet writes them."""

from __future__ import annotations

import doctest

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen import numbers
from signgen.markup import markup


@pytest.mark.parametrize("module", [numbers, markup])
def test_examples_in_the_docstrings_hold(module: object) -> None:
    result = doctest.testmod(module)  # type: ignore[arg-type]
    assert result.attempted > 0
    assert result.failed == 0


@given(st.floats(-1e5, 1e5), st.integers(0, 4))
def test_a_figure_reads_back_within_its_last_place_and_never_shows_minus_zero(value: float, places: int) -> None:
    text = numbers.figure(value, places)
    assert abs(float(text) - value) <= 0.5000001 * 10**-places
    assert text != "-0"
    assert "." not in text or not text.endswith("0")


@given(st.floats(0, 300), st.floats(0, 300))
def test_a_longer_time_is_never_written_as_a_shorter_one(a: float, b: float) -> None:
    def minutes(text: str) -> float:
        words = text.split()
        factor = {"s": 1 / 60, "min": 1.0, "h": 60.0}
        return sum(float(n) * factor[unit] for n, unit in zip(words[::2], words[1::2], strict=True))

    low, high = sorted((a, b))
    assert minutes(numbers.span(low)) <= minutes(numbers.span(high))
    assert minutes(numbers.span(high)) >= high - 1e-3
