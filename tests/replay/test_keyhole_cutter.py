"""What a keyhole cutter leaves: a thin slot above, a wide one below, and a torn board where its head comes out."""

from __future__ import annotations

import math

import numpy as np
import pytest

from signgen.replay.contacts import rapid_contacts
from signgen.replay.heights import HeightMap, board
from signgen.replay.motion import Motions
from signgen.replay.reader import read_program
from signgen.replay.sweep import cut, undercut
from signgen.shop.load import load_shop
from signgen.shop.stock import Stock, WorkZero

STOCK = Stock(width_mm=40, height_mm=50, thickness_mm=12, sign_x_mm=0, sign_y_mm=0)
ZERO = WorkZero(x_mm=0, y_mm=0, z_mm=0)
CUTTER = next(tool for tool in load_shop().tools if tool.name == "keyhole-9")
CELL = 0.1
START = "G17 G21 G40 G49 G54 G80 G90 G94\nG0 Z22\nS16000 M3\nG4 P4\nG0 X20 Y15\nG0 Z13\nG1 Z3 F600\n"
GOOD = f"{START}G1 Y30 F900\nG1 Y15\nG0 Z22\nM5\nM2\n"
TORN = f"{START}G1 Y30 F900\nG0 Z22\nM5\nM2\n"


def motions_of(text: str) -> Motions:
    replay = read_program(text)
    assert not replay.faults
    return replay.motions


def area(heights: HeightMap, below: float) -> float:
    return float((heights.z_mm < below).sum()) * heights.cell_mm**2


def test_from_above_an_entry_and_a_slot_as_wide_as_the_neck() -> None:
    left = cut(board(STOCK, CELL), motions_of(GOOD), CUTTER, ZERO)
    radius, neck, travel = CUTTER.radius_mm, CUTTER.neck_mm / 2, 15.0
    # The disc of the entry, the slot's rectangle and half disc beyond it, less what of them is in the disc already.
    reach = math.sqrt(radius**2 - neck**2)
    inside = neck * reach + radius**2 * math.asin(neck / radius)
    wanted = math.pi * radius**2 + 2 * neck * travel + math.pi * neck**2 / 2 - inside
    assert area(left, 11.9) == pytest.approx(wanted, rel=0.005)
    assert float(left.z_mm.min()) == pytest.approx(3.0, abs=1e-4)


def test_from_below_a_slot_as_wide_as_the_head() -> None:
    below = undercut(board(STOCK, CELL), motions_of(GOOD), CUTTER, ZERO)
    assert area(below, 11.9) == pytest.approx(math.pi * CUTTER.radius_mm**2 + CUTTER.diameter_mm * 15, rel=0.005)


def test_a_head_that_comes_out_at_the_slots_end_tears_the_board() -> None:
    contacts = rapid_contacts(board(STOCK, CELL), motions_of(TORN), CUTTER, ZERO)
    assert len(contacts) == 1
    assert contacts[0].depth_mm == pytest.approx(9.0, abs=0.01)
    assert contacts[0].place_mm[1] > 15
    assert rapid_contacts(board(STOCK, CELL), motions_of(GOOD), CUTTER, ZERO) == ()


def test_lifted_at_a_feed_the_torn_place_shows_from_above() -> None:
    torn = TORN.replace("G0 Z22\nM5", "G1 Z22\nM5")
    left = cut(board(STOCK, CELL), motions_of(torn), CUTTER, ZERO)
    x, y = np.meshgrid(left.x_mm, left.y_mm)
    end = np.hypot(x - 20, y - 30) < CUTTER.radius_mm - CELL
    assert float(left.z_mm[end].max()) == pytest.approx(3.0, abs=1e-4)


@pytest.mark.parametrize("text", [GOOD, TORN])
def test_the_compiled_sweep_agrees(text: str) -> None:
    pytest.importorskip("numba")
    from signgen.replay.sweep import carve

    motions = motions_of(text)
    maps = []
    for compiled in (False, True):
        z = board(STOCK, CELL).z_mm.copy()
        carve(z, board(STOCK, CELL).grid, motions, np.flatnonzero(motions.kind != 3), CUTTER, ZERO, 12.0, compiled)
        maps.append(z)
    assert np.array_equal(maps[0], maps[1])
