"""What is too much to judge is refused; what only looks like it is not."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from signgen.checks.effort import must_be_bearable
from signgen.errors import AskError
from signgen.replay.reader import read_program
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool
from tests.checks.plate import END_MILL, STOCK, V_BIT

ZERO = WorkZero(x_mm=0, y_mm=0, z_mm=0)
CELL_MM = 0.02
WIDE_V_BIT = replace(V_BIT, diameter_mm=16.0, cutting_length_mm=20.0)
PIECES = 15_000


def judge(tool: Tool, depth_mm: float) -> None:
    """Pieces of a quarter of a millimetre, as letters are made of, side by side."""
    lines = ["G17 G21 G40 G49 G54 G80 G90 G94", "G0 X0 Y0 Z20", f"G1 Z{STOCK.thickness_mm - depth_mm:.3f} F100"]
    lines += [f"X{(i + 1) % 160 / 4:.2f} Y{i // 160 / 50:.2f}" for i in range(PIECES)]
    replay = read_program("\n".join([*lines, "G0 Z20", "M2", ""]))
    assert not replay.faults
    must_be_bearable(["1.nc"], [replay], [tool], STOCK, ZERO, CELL_MM)


def test_a_v_bit_counts_as_wide_as_it_goes_in() -> None:
    judge(WIDE_V_BIT, 1.0)


@pytest.mark.parametrize(("tool", "depth_mm"), [(WIDE_V_BIT, 8.0), (replace(END_MILL, diameter_mm=16.0), 1.0)])
def test_as_many_wide_cuts_are_too_much(tool: Tool, depth_mm: float) -> None:
    with pytest.raises(AskError, match=r"1\.nc"):
        judge(tool, depth_mm)
