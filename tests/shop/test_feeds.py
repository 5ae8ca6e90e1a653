"""Speeds and feeds against the textbook formulas and against the machine's limits."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.shop.feeds import (
    MOST_THINNING,
    chip_load_mm,
    cutting_data,
    stepdown_mm,
    thin_feed_mm_per_min,
    thinning,
)
from signgen.shop.load import load_shop

SHOP = load_shop()
PLY = next(m for m in SHOP.materials if m.name == "birch-plywood")
MILL = next(t for t in SHOP.tools if t.name == "end-mill-6")
BIT = next(t for t in SHOP.tools if t.name == "v-bit-90")
DRILL = next(t for t in SHOP.tools if t.kind == "drill")
BENCH = next(m for m in SHOP.machines if m.name == "bench-router")
FAST = replace(BENCH, top_feed_mm_per_min=(10_000.0, 10_000.0, 10_000.0))


def test_feed_is_speed_times_teeth_times_chip_load():
    """Textbook identity, worked example: 16000 rpm, 2 flutes, 0.12 mm -> 3840 mm/min."""
    data = cutting_data(MILL, replace(PLY, chip_load_ratio=0.02, spindle_rpm=16000.0), FAST)
    assert data.spindle_rpm == 16000
    assert data.feed_mm_per_min == 3840
    assert data.chip_load_mm == pytest.approx(0.12)


def test_a_slow_machine_turns_slower_to_keep_the_chip():
    slow = replace(BENCH, top_feed_mm_per_min=(2000.0, 2500.0, 800.0))
    data = cutting_data(MILL, replace(PLY, chip_load_ratio=0.02), slow)
    assert data.feed_mm_per_min <= 2000
    assert data.spindle_rpm == 8300  # 2000 / (2 x 0.12) = 8333, in hundreds
    assert data.chip_load_mm == pytest.approx(0.12, rel=0.01)


def test_at_the_slowest_speed_the_chip_gets_thinner():
    crawl = replace(BENCH, top_feed_mm_per_min=(600.0, 600.0, 600.0), spindle_min_rpm=10_000.0)
    data = cutting_data(MILL, replace(PLY, chip_load_ratio=0.02), crawl)
    assert data.spindle_rpm == 10_000
    assert data.feed_mm_per_min == 600
    assert data.chip_load_mm == pytest.approx(0.03)


def test_a_pass_is_the_materials_share_of_the_diameter_and_within_the_edges():
    assert stepdown_mm(MILL, replace(PLY, stepdown_ratio=0.5)) == 3
    assert stepdown_mm(replace(MILL, cutting_length_mm=2.0), PLY) == 2
    assert stepdown_mm(DRILL, replace(PLY, peck_ratio=0.5)) == 2.5


def test_a_v_bit_takes_the_materials_own_depth_and_no_more_than_its_cone():
    assert stepdown_mm(BIT, replace(PLY, v_step_mm=3.0)) == 3
    assert stepdown_mm(BIT, replace(PLY, v_step_mm=50.0)) == 6


def test_a_v_bits_chip_goes_by_the_mean_diameter_of_one_pass():
    """90 degrees, 3 mm deep: 6 mm wide at the top (depth = width / 2, plane geometry of cones), 3 mm in the mean."""
    assert chip_load_mm(BIT, replace(PLY, v_step_mm=3.0, chip_load_ratio=0.02)) == pytest.approx(0.06)


def test_a_drill_turns_as_slowly_as_the_machine_goes():
    data = cutting_data(DRILL, PLY, BENCH)
    assert data.spindle_rpm == BENCH.spindle_min_rpm
    assert data.feed_mm_per_min == data.plunge_mm_per_min


@pytest.mark.parametrize("machine", SHOP.machines, ids=lambda m: m.name)
@pytest.mark.parametrize("material", SHOP.materials, ids=lambda m: m.name)
@pytest.mark.parametrize("tool", SHOP.tools, ids=lambda t: t.name)
def test_stays_within_the_machine_and_the_chip_load(tool, material, machine):
    holds(tool, material, machine)


@given(
    st.floats(0.5, 20), st.integers(1, 6), st.floats(0.005, 0.05), st.floats(5000, 30000),
    st.floats(300, 10000), st.floats(100, 5000), st.floats(1000, 12000), st.floats(0.5, 30),
)  # fmt: skip
def test_no_cutter_runs_over_a_limit(diameter, flutes, chip, rpm, feed, feed_z, rpm_min, entry):
    tool = replace(MILL, diameter_mm=diameter, flutes=flutes)
    material = replace(PLY, chip_load_ratio=chip, spindle_rpm=rpm, entry_deg=entry)
    machine = replace(BENCH, top_feed_mm_per_min=(feed, feed, feed_z), spindle_min_rpm=rpm_min)
    holds(tool, material, machine)


def holds(tool, material, machine):
    data = cutting_data(tool, material, machine)
    slack = 1 + 1e-9
    assert machine.spindle_min_rpm <= data.spindle_rpm <= machine.spindle_max_rpm
    assert 0 < data.feed_mm_per_min <= min(machine.top_feed_mm_per_min[:2]) * slack
    assert 0 < data.plunge_mm_per_min <= min(machine.top_feed_mm_per_min[2], data.feed_mm_per_min) * slack
    assert 0 < data.ramp_mm_per_min <= data.feed_mm_per_min * slack
    assert 0 < data.chip_load_mm <= chip_load_mm(tool, material) * slack
    assert 0 < data.stepdown_mm <= tool.cutting_length_mm
    assert data.chip_load_mm == pytest.approx(data.feed_mm_per_min / data.spindle_rpm / tool.flutes)


@pytest.mark.parametrize(("share", "faster"), [(0.05, 2.294), (0.1, 1.667), (0.2, 1.25), (0.25, 1.155), (0.5, 1.0)])
def test_a_thin_cut_may_feed_faster_by_the_published_factors(share, faster):
    """Textbook identity, radial chip thinning: hmax / fz = 2 sqrt(a (1 - a))."""
    assert thinning(share * 6, 6) == pytest.approx(faster, abs=5e-4)


@given(st.floats(0.01, 6), st.floats(0.5, 12))
def test_thin_cuts_keep_to_the_machine_and_to_a_bearable_chip(width, diameter):
    mill = replace(MILL, diameter_mm=diameter)
    data = cutting_data(mill, PLY, BENCH)
    feed = thin_feed_mm_per_min(mill, data, BENCH, width)
    assert data.feed_mm_per_min <= feed <= min(BENCH.top_feed_mm_per_min[:2])
    assert feed <= MOST_THINNING * data.feed_mm_per_min


def test_a_v_bit_never_only_rubs():
    brass = next(m for m in SHOP.materials if m.name == "brass")
    assert chip_load_mm(BIT, brass) == brass.least_chip_mm
