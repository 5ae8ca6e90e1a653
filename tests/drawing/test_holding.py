"""What holds the sign, and what is said where it may not."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import box

from signgen.drawing.holding import holding_warnings, tabs_of
from tests.asking import english, spec_of


@settings(deadline=None, max_examples=30)
@given(st.integers(30, 400))
def test_a_tab_for_each_length_of_the_edge_and_never_fewer_than_three(spacing: int) -> None:
    spec = spec_of(tab_spacing=spacing)
    edge = box(0, 0, 220, 140)
    tabs = tabs_of(spec, edge, ())
    assert len(tabs) == max(3, math.ceil(720 / spacing))


def test_ramped_tabs_run_out_at_thirty_degrees_down_to_the_cuts_bottom() -> None:
    spec = spec_of(tab_shape="ramped", tab_height=1.5, breakthrough=0.3)
    for tab in tabs_of(spec, box(0, 0, 220, 140), ()):
        assert math.degrees(math.atan2(1.8, tab.foot_mm)) == pytest.approx(30)


def said(width: float = 220, height: float = 140, **changes: object) -> list[str]:
    spec = spec_of(size=f"{width}x{height}", **changes)
    edge = box(0, 0, width, height)
    return list(english(holding_warnings(spec, edge, tabs_of(spec, edge, ()))))


def test_nothing_is_said_of_a_usual_sign_on_tabs_or_on_a_skin() -> None:
    assert said() == []
    assert said(onion_skin=0.4) == []


@pytest.mark.parametrize("count", [1, 2])
def test_fewer_than_three_tabs_are_told(count: int) -> None:
    (text,) = said(tabs=count)
    assert text.startswith(f"{count} tab")
    assert "three or more" in text


@pytest.mark.parametrize(
    ("changes", "word"),
    [
        ({"width": 160, "height": 45, "holes": None, "hole_diameter": None, "inset": None}, "small"),
        ({"thickness": 2, "depth": 0.8}, "thin"),
        ({"tabs": 0}, "Nothing holds"),
    ],
)
def test_a_piece_that_wants_tape_is_told(changes: dict[str, object], word: str) -> None:
    (text,) = said(**changes)
    assert word in text
    assert "tape" in text
