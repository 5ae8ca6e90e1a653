"""How high the cutter goes between cuts, and where it ends."""

from __future__ import annotations

import pytest
from shapely.geometry import box

from signgen.program.travel import LOW_MM, OVER_CLAMPS_MM, PARK_MM, Travel
from signgen.shop.stock import CLAMP_STANDS_MM

BARE = Travel(top_mm=12.0, safe_mm=22.0, bare=box(0, 0, 100, 50))


def test_over_the_bare_board_it_goes_low_and_over_clamps_high() -> None:
    assert BARE.height_mm((10, 10), (90, 40)) == 12 + LOW_MM
    assert BARE.height_mm((10, 10), (110, 40)) == 22


def test_a_way_between_two_bare_places_that_leaves_the_bare_board_is_high() -> None:
    horseshoe = Travel(top_mm=12.0, safe_mm=22.0, bare=box(0, 0, 100, 50).difference(box(40, 10, 60, 50)))
    assert horseshoe.height_mm((10, 40), (90, 40)) == 22


def test_where_nobody_knows_what_stands_there_it_goes_high() -> None:
    assert Travel(top_mm=12.0, safe_mm=22.0).height_mm((1, 1), (2, 1)) == 22


def test_it_ends_higher_than_it_travels_as_far_as_the_machine_goes() -> None:
    assert Travel(top_mm=12.0, safe_mm=40.0).park_mm == 40 + PARK_MM
    assert BARE.park_mm == 12 + CLAMP_STANDS_MM + OVER_CLAMPS_MM
    assert Travel(top_mm=12.0, safe_mm=22.0, most_mm=30.0).park_mm == 30
    assert Travel(top_mm=12.0, safe_mm=22.0, most_mm=20.0).park_mm == 22


def test_in_inches_it_is_no_lower_than_in_millimetres() -> None:
    # 43 mm are 1.69291 in, which would be written as 1.6929.
    inches = BARE.written(0.00254, 0.0)
    assert inches.park_mm == pytest.approx(1.6930 * 25.4)
    assert inches.safe_mm >= BARE.safe_mm
    assert Travel(top_mm=12.0, safe_mm=22.0).written(0.0001, 0.0).safe_mm == pytest.approx(22.0, abs=1e-9)
