"""Cutters' shapes against published factors: depth over width of cones (Engineers Edge spot-drill table) and
point lengths of drills (plane geometry)."""

import pytest
from msgspec.structs import replace

from signgen.shop.load import load_shop

TOOLS = {tool.name: tool for tool in load_shop().tools}


@pytest.mark.parametrize(
    ("angle", "factor"),
    [(60, 0.866), (82, 0.5752), (90, 0.5), (118, 0.3004), (120, 0.2887), (135, 0.2071), (30, 1.8660), (45, 1.2071)],
)
def test_depth_follows_from_width(angle, factor):
    bit = replace(TOOLS["v-bit-90"], angle_deg=float(angle))
    width = 3.0
    assert bit.depth_for_radius_mm(width / 2) == pytest.approx(factor * width, abs=3e-4)


def test_a_flat_tip_makes_the_groove_shallower():
    """plane geometry of cones: depth = (w - t) / (2 tan a)."""
    bit = replace(TOOLS["v-bit-60"], tip_mm=0.4)
    assert bit.depth_for_radius_mm(1.5) == pytest.approx((3 - 0.4) * 0.866, abs=3e-4)
    assert bit.depth_for_radius_mm(0.1) == 0
    assert bit.radius_at_depth_mm(bit.depth_for_radius_mm(1.5)) == pytest.approx(1.5)


@pytest.mark.parametrize(("diameter", "point"), [(3, 0.901), (5, 1.502), (6, 1.803), (10, 3.004)])
def test_a_drills_point_leads_its_full_diameter(diameter, point):
    """118 degrees, handbook factor."""
    assert replace(TOOLS["drill-5"], diameter_mm=float(diameter)).point_length_mm == pytest.approx(point, abs=5e-4)


def test_a_v_bit_reaches_no_deeper_than_its_cone():
    assert TOOLS["v-bit-90"].reach_mm == 6
    assert replace(TOOLS["v-bit-90"], cutting_length_mm=20.0).reach_mm == pytest.approx(6)
    assert replace(TOOLS["v-bit-90"], cutting_length_mm=4.0).reach_mm == 4
    assert TOOLS["end-mill-6"].reach_mm == TOOLS["end-mill-6"].cutting_length_mm


@pytest.mark.parametrize(
    ("tool", "label"),
    [
        (TOOLS["v-bit-90"], "90 degree V-bit, 12 mm"),
        (replace(TOOLS["v-bit-60"], tip_mm=0.2), "60 degree V-bit, 12 mm, 0.2 mm flat tip"),
        (TOOLS["end-mill-6"], "6 mm end mill"),
        (TOOLS["drill-5"], "5 mm drill"),
    ],
)
def test_says_what_it_is(tool, label):
    assert tool.label == label
    assert tool.label.isascii()
