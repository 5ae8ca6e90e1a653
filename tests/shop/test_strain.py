"""Power, force and bend against published worked figures and hand values."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from signgen.shop.feeds import cutting_data
from signgen.shop.load import load_shop
from signgen.shop.strain import available_power_w, bend_mm, strain, strain_warnings
from tests.asking import english

SHOP = load_shop()
MILL = next(tool for tool in SHOP.tools if tool.name == "end-mill-6")
THIN = next(tool for tool in SHOP.tools if tool.name == "end-mill-3")
PLY, BRASS = (next(m for m in SHOP.materials if m.name == name) for name in ("birch-plywood", "brass"))
DESKTOP = SHOP.machines[0]
DATA = cutting_data(MILL, PLY, DESKTOP)


@pytest.mark.parametrize(
    ("diameter", "out", "force", "metal", "bend"),
    # Source: textbook bending of a cantilever, the column of 0.8 d; its steel has 210 GPa, ours 205.
    [
        (3.175, 12, 10, "carbide", 0.004699),
        (6, 20, 20, "carbide", 0.003411),
        (6.35, 25, 20, "carbide", 0.005311),
        (3.175, 12, 10, "steel", 0.013425 * 210 / 205),
    ],
)
def test_bend_of_the_published_cantilevers(diameter: float, out: float, force: float, metal: str, bend: float) -> None:
    tool = replace(MILL, diameter_mm=diameter, cutting_length_mm=out / 2, stickout_mm=out, metal=metal)
    assert bend_mm(tool, force) == pytest.approx(bend, rel=1e-3)


@given(st.floats(1, 20), st.floats(5, 60), st.floats(0.1, 200))
def test_twice_as_long_bends_eight_times_and_twice_as_thick_a_sixteenth(d: float, out: float, force: float) -> None:
    # Source: textbook bending of a cantilever (computed): x2 L -> x8; x2 d -> 1/16.
    tool = replace(MILL, diameter_mm=d, cutting_length_mm=1.0, stickout_mm=out)
    assert bend_mm(replace(tool, stickout_mm=2 * out), force) == pytest.approx(8 * bend_mm(tool, force))
    assert bend_mm(replace(tool, diameter_mm=2 * d), force) == pytest.approx(bend_mm(tool, force) / 16)


def test_removal_of_the_published_example() -> None:
    # Source: textbook identity: ap 3, ae 6, vf 1800 -> 32 400 mm3/min.
    found = strain(MILL, PLY, DESKTOP, replace(DATA, feed_mm_per_min=1800.0), 3.0, 6.0)
    assert found is not None
    assert found.removal_mm3_per_min == 32_400


def test_power_is_unit_power_times_removal_over_efficiency() -> None:
    # A handbook's unit power, from memory: brass 2.2 N m/mm3 = 2.2 W s/mm3; by hand 32 400 / 60 x 2.2 / 0.8 = 1485 W.
    found = strain(MILL, BRASS, DESKTOP, replace(DATA, feed_mm_per_min=1800.0), 3.0, 6.0)
    assert found is not None
    assert found.power_w == pytest.approx(1485)


def test_force_is_the_specific_force_on_the_chips_section() -> None:
    # Source: Textbook identity, F = kc ap h; by hand 50 N/mm2 x 3 mm x 0.1 mm = 15 N.
    found = strain(MILL, PLY, DESKTOP, replace(DATA, chip_load_mm=0.1), 3.0, 6.0)
    assert found is not None
    assert found.force_n == pytest.approx(15.0)


def test_a_spindle_loses_power_with_speed() -> None:
    assert available_power_w(DESKTOP, DESKTOP.spindle_max_rpm) == DESKTOP.spindle_power_w
    assert available_power_w(DESKTOP, DESKTOP.spindle_max_rpm / 2) == pytest.approx(DESKTOP.spindle_power_w / 2)
    assert available_power_w(replace(DESKTOP, spindle_power_w=None), 10_000) is None


def test_nothing_is_said_of_a_usual_cut_and_nothing_where_nobody_knows() -> None:
    assert english(strain_warnings(MILL, PLY, DESKTOP, DATA, DATA.stepdown_mm)) == ()
    unknown = replace(BRASS, specific_force_n_per_mm2=None, least_chip_mm=None, most_chip_ratio=None)
    assert english(strain_warnings(MILL, unknown, DESKTOP, DATA, 20.0)) == ()


def test_a_cut_too_deep_for_spindle_and_cutter_says_so_with_its_figures() -> None:
    data = cutting_data(THIN, BRASS, DESKTOP)
    power, bend = english(strain_warnings(replace(THIN, stickout_mm=30.0), BRASS, DESKTOP, data, 6.0))
    assert "W" in power
    assert f"{data.spindle_rpm:,.0f} rpm" in power
    assert "30 mm out of the collet" in bend


def test_a_chip_too_thin_or_too_thick_is_told() -> None:
    (thin,) = english(strain_warnings(MILL, PLY, DESKTOP, replace(DATA, chip_load_mm=0.01), 1.0))
    assert "0.010 mm" in thin
    assert "rubs" in thin
    (thick,) = english(strain_warnings(MILL, PLY, DESKTOP, replace(DATA, chip_load_mm=0.6), 1.0))
    assert "above 0.480 mm" in thick


@pytest.mark.parametrize("machine", SHOP.machines, ids=lambda m: m.name)
@pytest.mark.parametrize("material", SHOP.materials, ids=lambda m: m.name)
def test_every_shipped_cutter_runs_with_a_chip_in_range_in_every_material(material, machine) -> None:  # type: ignore[no-untyped-def]
    for tool in SHOP.tools:
        if tool.kind in ("end-mill", "ball-nose"):
            data = cutting_data(tool, material, machine)
            said = english(strain_warnings(tool, material, machine, data, data.stepdown_mm))
            assert [text for text in said if "rubs" in text or "breaks out" in text] == []
            assert math.isfinite(data.feed_mm_per_min)
