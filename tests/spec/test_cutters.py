"""The cutters that the user names."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.shop.load import load_shop
from signgen.spec.cutters import named_end_mill, named_v_bit

SHOP = load_shop()


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ((None, None, None), "v-bit-90"), ((60, None, None), "v-bit-60"), ((None, 12, None), "v-bit-90"),
        ((90, 12, 0), "v-bit-90"), ((90, 6, None), "v-bit-90-6"), ((45, None, None), "v-bit-45"),
        ((22.5, None, None), "v-bit-22.5-6"), ((None, None, 0.2), "v-bit-90-12"),
    ],
)  # fmt: skip
def test_takes_the_shops_bit_where_it_matches(asked, name):
    assert named_v_bit(SHOP, *asked).name == name


def test_without_a_90_degree_bit_takes_the_shops_first():
    only_60 = replace(SHOP, tools=tuple(t for t in SHOP.tools if t.name != "v-bit-90"))
    assert named_v_bit(only_60, None, None, None).name == "v-bit-60"
    assert named_v_bit(only_60, 90, None, None).diameter_mm == 6


@given(st.floats(15, 150), st.floats(1, 40), st.floats(0, 0.9))
def test_a_bit_of_the_users_own_reaches_as_deep_as_its_cone(angle, diameter, tip_share):
    tip = diameter * tip_share
    bit = named_v_bit(SHOP, angle, diameter, tip)
    assert bit.reach_mm == pytest.approx((diameter - tip) / 2 / math.tan(math.radians(angle / 2)))
    assert bit.stickout_mm >= bit.cutting_length_mm
    assert named_v_bit(SHOP, bit.angle_deg, bit.diameter_mm, bit.tip_mm) == bit


@given(st.floats(0.5, 50), st.none() | st.floats(1, 100))
def test_an_end_mill_of_the_users_own_is_found_again_by_its_figures(diameter, length):
    mill = named_end_mill(SHOP, diameter, length)
    assert named_end_mill(SHOP, mill.diameter_mm, mill.cutting_length_mm) == mill
    assert mill.cutting_length_mm == (length or mill.cutting_length_mm)


def test_takes_the_shops_mill_unless_its_length_is_another():
    assert named_end_mill(SHOP, 6, None).name == "end-mill-6"
    assert named_end_mill(SHOP, 6, 22).name == "end-mill-6"
    long = named_end_mill(SHOP, 6, 32)
    assert (long.name, long.cutting_length_mm) == ("end-mill-6-named", 32)


@pytest.mark.parametrize(("diameter", "shank"), [(6.35, 6.35), (3.175, 3.175), (3, 6), (8, 8), (1, 6)])
def test_assumes_the_usual_shank(diameter, shank):
    """Common practice: inch cutters come on shanks of their own diameter, small metric ones on 6 mm."""
    assert named_end_mill(SHOP, diameter, 10).shank_mm == shank
