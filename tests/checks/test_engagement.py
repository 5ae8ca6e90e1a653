"""How much a cutter takes at once."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.checks.engagement import engagement_of
from signgen.checks.tip_path import tip_path_of
from signgen.replay.heights import board
from signgen.replay.reader import read_program
from signgen.shop.stock import WorkZero
from signgen.shop.tools import Tool
from tests.checks.plate import END_MILL, STOCK, V_BIT

ZERO = WorkZero(x_mm=0, y_mm=0, z_mm=0)
DRILL = replace(END_MILL, kind="drill", angle_deg=118, diameter_mm=5)


def deepest(text: str, tool: Tool) -> float:
    replay = read_program(f"G17 G21 G40 G49 G54 G80 G90 G94\n{text}M2\n")
    assert not replay.faults, replay.faults
    cuts, _ = tip_path_of(replay.motions, ZERO, 0, 0.002)
    return float(engagement_of(cuts, tool, board(STOCK, 0.2)).depth_mm.max(initial=0.0))


@pytest.mark.parametrize("tool", [END_MILL, V_BIT])
def test_a_pass_over_fresh_wood_bites_its_depth(tool: Tool) -> None:
    assert deepest("G0 X0 Y0 Z10\nG1 Z7.5 F100\nG1 X40 F100\n", tool) == pytest.approx(1.5)


@pytest.mark.parametrize("tool", [END_MILL, V_BIT])
def test_a_second_pass_bites_what_the_first_left(tool: Tool) -> None:
    text = "G0 X0 Y0 Z10\nG1 Z7.5 F100\nG1 X40\nG1 Z6.7\nG1 X0\n"
    assert deepest(text, tool) == pytest.approx(1.5)
    assert deepest(text.replace("Z6.7", "Z4"), tool) == pytest.approx(3.5)


def test_a_helix_bites_its_pitch() -> None:
    turns = "".join(f"G3 X0.5 Y0 Z{z:.1f} I-0.5 J0\n" for z in np.arange(8.7, -0.1, -0.3))
    bite = deepest(f"G0 X0.5 Y0 Z10\nG1 Z9 F100\n{turns}G3 X0.5 Y0 I-0.5 J0\nG1 X0 F100\n", END_MILL)
    assert 0.2 < bite < 0.6


def test_a_ramp_and_the_way_back_over_it_bite_no_more_than_the_ramp_falls() -> None:
    text = "G0 X0 Y0 Z10\nG1 Z9 F100\nG1 X20 Z7\nG1 X0\nG1 X40\n"
    assert deepest(text, END_MILL) == pytest.approx(2.0, abs=0.02)


@pytest.mark.parametrize("lift", ["G0 Z10\nG0 Z6.2\n", "G1 Z10\nG1 Z6.2\n", "G1 Z6.4\n"])
def test_pecks_are_bites_of_their_own(lift: str) -> None:
    text = f"G0 X5 Y5 Z10\nG1 Z6 F100\n{lift}G1 Z3 F100\n{lift.replace('6.', '3.')}G1 Z0 F100\n"
    assert deepest(text, DRILL) == pytest.approx(3.0)


def test_straight_down_in_one_go_is_one_bite() -> None:
    assert deepest("G0 X5 Y5 Z10\nG1 Z6 F100\nG1 Z3\nG1 Z0\n", DRILL) == pytest.approx(9.0)


def test_beside_the_board_nothing_is_bitten() -> None:
    assert deepest("G0 X-30 Y5 Z10\nG1 Z0 F100\nG1 Y9\n", END_MILL) == 0.0
