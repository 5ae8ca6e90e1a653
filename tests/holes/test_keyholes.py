"""Keyholes by their options, and the screws that go with them."""

from __future__ import annotations

import pytest

from signgen.errors import AskError
from signgen.holes.keyholes import Keyholes
from signgen.holes.screws import shank_and_head_mm
from tests.asking import read_holes


def keyholes(**values: object) -> Keyholes:
    made = read_holes("keyholes", {name.replace("_", "-"): value for name, value in values.items()}, 220.0, 140.0)
    assert isinstance(made, Keyholes)
    return made


def test_two_hang_level_near_the_top() -> None:
    assert keyholes().centres(220, 140) == (("1", 25.0, 115.0), ("2", 195.0, 115.0))


def test_a_single_one_hangs_in_the_middle() -> None:
    assert keyholes(hole_count=1, inset=20.0).centres(220, 140) == (("1", 110.0, 120.0),)


@pytest.mark.parametrize(
    ("screw", "shank", "head"),
    [("#8", 4.17, 8.43), ("#6", 3.51, 7.09), ("#12", 5.49, 11.13), ("M4", 4.0, 8.4), ("M5", 5.0, 9.3)],
)
def test_shank_and_head_are_those_of_the_tables(screw: str, shank: float, head: float) -> None:
    """ASME B18.6.1 (shank 0.060 + 0.013 N in, flat head), ISO 7046 (greatest actual head)."""
    assert shank_and_head_mm(screw) == pytest.approx((shank, head), abs=0.006)


@pytest.mark.parametrize(
    ("values", "message"),
    [
        ({"keyhole_travel": 5.0}, "keyhole-travel: 5 mm is less than the screw's head of 8.43 mm"),
        ({"hole_count": 20}, "hole-count: 20 holes"),
        ({"inset": 105.0}, "inset: 105 mm from both ends leaves no wood"),
        ({"screw": "M12"}, "screw: The tables have no head of M12."),
        ({"screw": "nail"}, "screw: There is no screw 'nail' in the tables."),
    ],
)
def test_refuses_what_makes_no_keyhole(values: dict[str, object], message: str) -> None:
    with pytest.raises(AskError) as caught:
        keyholes(**values)
    assert str(caught.value).startswith(message)
