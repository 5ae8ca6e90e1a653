"""Cutters and cutting data that the tests of operations share (the figures are common practice)."""

from __future__ import annotations

import pytest

from signgen.shop.materials import CuttingData
from signgen.shop.tools import Tool


@pytest.fixture
def mill() -> Tool:
    return Tool(
        name="end-mill-6",
        kind="end-mill",
        diameter_mm=6.0,
        shank_mm=6.0,
        cutting_length_mm=22.0,
        flutes=2,
        stickout_mm=28.0,
        source="test",
    )


@pytest.fixture
def drill() -> Tool:
    return Tool(
        name="drill-5",
        kind="drill",
        diameter_mm=5.0,
        shank_mm=5.0,
        cutting_length_mm=40.0,
        flutes=2,
        angle_deg=118.0,
        stickout_mm=45.0,
        source="test",
    )


@pytest.fixture
def cutting() -> CuttingData:
    return CuttingData(
        spindle_rpm=16000.0,
        chip_load_mm=0.0625,
        feed_mm_per_min=2000.0,
        plunge_mm_per_min=500.0,
        ramp_mm_per_min=1000.0,
        stepdown_mm=3.0,
        stepover_mm=2.4,
        entry_deg=5.0,
    )
