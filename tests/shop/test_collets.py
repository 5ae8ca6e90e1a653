"""Collets against ISO 15488:2003; the collapse of sizes 16 and up, and the
grip of two thirds of the length, are from memory."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.errors import CannotMakeError
from signgen.shop.collets import SERIES, collet_for, collet_of_tool
from signgen.shop.load import load_shop


@pytest.mark.parametrize(
    ("shank", "series", "label"),
    [
        (6.35, 16, "7-6"), (6.35, 20, "7-6"), (6.35, 11, "6.5-6.0"), (6.0, 16, "6-5"), (6.0, 20, "6-5"),
        (6.0, 11, "6.0-5.5"), (3.175, 16, "4-3"), (3.175, 20, "4-3"), (3.175, 11, "3.5-3.0"), (8, 20, "8-7"),
        (12.7, 20, "13-12"), (1.0, 16, "1.0-0.5"), (5, 16, "5-4"),
    ],
)  # fmt: skip
def test_finds_the_collet_of_a_shank(shank, series, label):
    """8 mm into an 8-7, 1/8 in into a 4-3, whole steps; half steps in size 11 (ISO 15488, collapse from memory)."""
    assert collet_for(shank, series).label == label


@pytest.mark.parametrize(
    ("series", "least", "greatest"), [(11, 0.5, 7), (16, 0.5, 10), (20, 0.5, 13), (25, 0.5, 16), (32, 1, 20)]
)
def test_knows_what_each_size_can_hold(series, least, greatest):
    """Overall capacities: ISO 15488:2003."""
    assert collet_for(least, series) is not None
    assert collet_for(greatest, series) is not None
    assert collet_for(greatest + 0.01, series) is None
    assert collet_for(least - 0.01, series) is None


@given(st.sampled_from(sorted(SERIES)), st.floats(0.5, 26))
def test_never_clamps_a_shank_larger_than_nominal_nor_below_its_range(series, shank):
    collet = collet_for(shank, series)
    if collet:
        assert collet.lower_mm <= shank <= collet.upper_mm
        assert collet.upper_mm - collet.lower_mm <= (0.5 if series == 11 else 1)


def test_two_thirds_of_the_collet_must_grip():
    assert collet_for(8, 20).grip_mm == pytest.approx(21)
    assert collet_for(3, 11).grip_mm == pytest.approx(12)


def test_names_the_cutter_that_does_not_fit():
    tool = next(t for t in load_shop().tools if t.name == "end-mill-6")
    assert collet_of_tool(tool, 16).label == "6-5"
    with pytest.raises(CannotMakeError, match=r"^end-mill-6: Its shank of 12 mm does not go into collets of size 16"):
        collet_of_tool(replace(tool, shank_mm=12.0), 16)


def test_every_cutter_that_ships_fits_every_machine_that_ships():
    shop = load_shop()
    for machine in shop.machines:
        for tool in shop.tools:
            assert collet_of_tool(tool, machine.collet_series).upper_mm >= tool.shank_mm
