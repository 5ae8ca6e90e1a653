"""The compiled sweep gives the same heights bit for bit."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.replay import fast
from signgen.replay.boxes import boxes_of
from signgen.replay.heights import board
from signgen.replay.motion import Motions
from signgen.replay.pieces import straight_pieces
from signgen.replay.sweep import carve
from signgen.replay.swept import Profile
from signgen.shop.tools import Tool
from tests.replay.making import AT_ZERO, a_board, a_tool, straight_motions

compiled = pytest.mark.skipif(
    not fast.is_there(), reason="the extra signgen[fast] is not installed (pip install 'signgen[fast]')"
)

TOOLS = {
    "flat": a_tool("end-mill", 3),
    "pointed": a_tool("v-bit", 6, angle_deg=90),
    "sharp": a_tool("v-bit", 3, angle_deg=20),
    "blunt": a_tool("v-bit", 6, angle_deg=60, tip_mm=0.4),
    "ball": a_tool("ball-nose", 4),
    "drill": a_tool("drill", 5, angle_deg=118),
}
PLACES = st.tuples(st.floats(-4, 24), st.floats(-4, 16), st.floats(3, 11)).map(
    lambda place: tuple(round(value, 3) for value in place)
)
WAYS = st.lists(PLACES, min_size=2, max_size=9)


def left_by(motions: Motions, tool: Tool, cell_mm: float, *, by_machine_code: bool) -> np.ndarray:
    """Heights after the motions."""
    uncut = board(a_board(20, 12), cell_mm)
    z = uncut.z_mm.copy()
    carve(z, uncut.grid, motions, np.arange(len(motions)), tool, AT_ZERO, 10.0, compiled=by_machine_code)
    return z


def left_by_python(motions: Motions, tool: Tool, cell_mm: float) -> np.ndarray:
    """The same by the function that is compiled, run as plain Python."""
    uncut, profile = board(a_board(20, 12), cell_mm), Profile.of(tool)
    z = uncut.z_mm.copy()
    for pieces in straight_pieces(motions, np.arange(len(motions)), np.zeros(3)):
        boxes = boxes_of(uncut.grid, pieces, profile, 10.0)
        every = np.arange(len(boxes.pieces))
        fast.lower(
            z, boxes.first, boxes.size, boxes.from_start_mm(uncut.grid, every), boxes.moves(every), boxes.level,
            uncut.cell_mm, profile, compiled=False,
        )  # fmt: skip
    return z


@pytest.mark.parametrize("tool", TOOLS.values(), ids=TOOLS.keys())
@settings(max_examples=12)
@given(way=WAYS)
def test_cell_by_cell_is_array_by_array(tool: Tool, way: list[tuple[float, float, float]]) -> None:
    motions = straight_motions(way)
    assert np.array_equal(left_by_python(motions, tool, 1.1), left_by(motions, tool, 1.1, by_machine_code=False))


@compiled
@pytest.mark.parametrize("tool", TOOLS.values(), ids=TOOLS.keys())
@settings(max_examples=60)
@given(way=WAYS)
def test_compiled_is_the_same_bit_for_bit(tool: Tool, way: list[tuple[float, float, float]]) -> None:
    motions = straight_motions(way)
    assert np.array_equal(
        left_by(motions, tool, 0.2, by_machine_code=True), left_by(motions, tool, 0.2, by_machine_code=False)
    )


@compiled
def test_compiled_is_the_same_for_thousands_of_moves_in_every_direction() -> None:
    dice = np.random.default_rng(5)
    way = [tuple(place) for place in np.cumsum(dice.normal(0, 0.4, (4000, 3)), axis=0) % (20, 12, 9) + (0, 0, 3)]
    way += [(x, y, z) for x, y, z in zip(range(20), range(20), (9.5, 4.5) * 10, strict=True)]
    motions = straight_motions(way)
    for tool in TOOLS.values():
        assert np.array_equal(
            left_by(motions, tool, 0.1, by_machine_code=True), left_by(motions, tool, 0.1, by_machine_code=False)
        )


@compiled
def test_once_loaded_it_is_used_for_everything() -> None:
    assert fast.load()
    assert fast.pays(1)


def test_it_is_loaded_for_large_jobs_only(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(__import__("sys").modules, "numba", raising=False)
    assert not fast.pays(fast.PAYS_CELLS - 1)
    assert fast.pays(fast.PAYS_CELLS) == fast.is_there()
