"""What a V-bit has cleared, and that programs go down through it at the cutting feed, and never as a rapid."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace
from numpy.typing import NDArray

from signgen.checks import judge
from signgen.geometry.paths import CCW, CW, LINE
from signgen.geometry.paths import Path as Way
from signgen.program.cleared import Cleared
from signgen.replay.contacts import rapid_contacts
from signgen.replay.heights import board
from signgen.replay.motion import RAPID, Motions
from signgen.replay.reader import read_program
from signgen.shop.load import load_shop
from signgen.shop.stock import Stock, WorkZero
from signgen.toolpath.cut import ABOVE_CLEARED_MM, FAST, Cut
from tests.checks.plate import END_MILL, V_BIT, Plate

HIGHEST = 11.0
"""No wood reaches so high over a board of 9 mm."""

EXAMPLE = Path(__file__).parents[1] / "golden" / "quince-cottage" / "1-v-bit-60.nc"
TOP, PLUNGE, SIZE = 15.0, 210.0, (320.0, 110.0)


def groove(*points: tuple[float, float, float], feed: float = 800.0) -> Cut:
    n = len(points) - 1
    path = Way(points_mm=np.array(points), kinds=np.full(n, LINE, np.uint8), centres_mm=np.full((n, 2), np.nan))
    return Cut(path=path, feeds_mm_per_min=np.full(n, feed), feature="groove", stage=0)


def cleared(*cuts: Cut) -> Cleared:
    found = Cleared(V_BIT, HIGHEST)
    for cut in cuts:
        found.add(cut)
    return found


def test_in_a_groove_the_bit_is_free_down_to_the_groove() -> None:
    made = cleared(groove((0, 0, 7), (10, 0, 6)))
    assert made.over_mm(5, 0) == pytest.approx(6.5)


def test_beside_it_the_wall_rises_as_the_cone_does() -> None:
    # 90 degrees: a millimetre aside is a millimetre up.
    made = cleared(groove((0, 0, 7), (10, 0, 7)))
    assert made.over_mm(5, 0.2) == pytest.approx(7.2)
    # further away it is another place, where the checks would not find that the tip has been
    assert made.over_mm(5, 0.3) == math.inf


def test_nothing_is_cleared_by_rapids_nor_by_cutters_with_upright_sides() -> None:
    assert cleared(groove((0, 0, 7), (10, 0, 7), feed=FAST)).over_mm(5, 0) == math.inf
    flat = Cleared(END_MILL, HIGHEST)
    flat.add(groove((0, 0, 7), (10, 0, 7)))
    assert flat.over_mm(5, 0) == math.inf


def test_a_bit_whose_shank_may_have_been_in_the_wood_cleared_nothing() -> None:
    # The cone is 6 mm high: at 4.9 its upper end is below 11.
    assert cleared(groove((0, 0, 5.0), (10, 0, 5.0))).over_mm(5, 0) == pytest.approx(5.0)
    assert cleared(groove((0, 0, 4.9), (10, 0, 4.9))).over_mm(5, 0) == math.inf


@given(
    st.floats(-4, 4), st.floats(-4, 4), st.floats(0.3, 3), st.floats(0, 6.28), st.floats(0.2, 6), st.booleans(),
    st.floats(5.5, 9), st.floats(5.5, 9),
)  # fmt: skip
def test_what_is_said_to_be_cleared_was_within_the_cone_somewhere_on_the_arc(
    x: float, y: float, radius: float, begin: float, sweep: float, ccw: bool, z0: float, z1: float
) -> None:
    turn = begin + np.linspace(0, sweep, 4001) * (1 if ccw else -1)
    way = radius * np.column_stack([np.cos(turn), np.sin(turn)])
    height = np.linspace(z0, z1, 4001)
    arc = Way(
        points_mm=np.array([(*way[0], z0), (*way[-1], z1)]),
        kinds=np.array([CCW if ccw else CW], np.uint8),
        centres_mm=np.zeros((1, 2)),
    )
    said = cleared(Cut(path=arc, feeds_mm_per_min=np.array([800.0]), feature="arc", stage=0)).over_mm(x, y)
    # Seen from its own tip 0.01 higher, every other place of the cone lies in what one place of the arc took away.
    assert said >= float((height + np.hypot(*(way - (x, y)).T) / V_BIT.slope).min()) - 0.01


@cache
def ran() -> tuple[Motions, NDArray[np.bool_]]:
    """The example's motions, and which of them go straight down faster than the plunge feed."""
    motions = read_program(EXAMPLE.read_text(encoding="ascii")).motions
    step = motions.end_mm - motions.start_mm
    down = (step[:, 0] == 0) & (step[:, 1] == 0) & (step[:, 2] < 0) & (motions.kind != RAPID)
    return motions, down & (motions.feed_mm_per_min > 1.01 * PLUNGE)


def test_roughed_letters_are_gone_down_into_at_the_cutting_feed() -> None:
    motions, fast = ran()
    assert fast.sum() >= 25
    # The last half millimetre, and all that is not cleared, goes at the plunge feed.
    after = np.flatnonzero(fast) + 1
    assert np.all(motions.feed_mm_per_min[after] <= 1.01 * PLUNGE)
    fall = motions.start_mm[after, 2] - motions.end_mm[after, 2]
    assert np.all(fall >= ABOVE_CLEARED_MM - 1e-3)


def test_no_rapid_of_the_bit_goes_below_a_millimetre_over_the_board() -> None:
    motions, _ = ran()
    falls = (motions.kind == RAPID) & (motions.end_mm[:, 2] < motions.start_mm[:, 2])
    assert motions.end_mm[falls, 2].min() >= TOP + 1.0


@pytest.mark.parametrize("thicker_mm", [0.0, 0.5, 0.9])
def test_fast_ways_down_meet_no_wood_however_thick_the_board_is(thicker_mm: float) -> None:
    """Tried against the virtual board like rapids; 0.9 mm is what the approach still clears."""
    motions, fast = ran()
    (bit,) = (tool for tool in load_shop(None).tools if tool.name == "v-bit-60")
    stock = Stock(
        width_mm=SIZE[0] + 40, height_mm=SIZE[1] + 40, thickness_mm=TOP + thicker_mm, sign_x_mm=20, sign_y_mm=20
    )
    as_rapids = replace(motions, kind=np.where(fast, RAPID, motions.kind).astype(motions.kind.dtype))
    uncut = board(stock, 0.25)
    assert rapid_contacts(uncut, as_rapids, bit, WorkZero(x_mm=0, y_mm=0, z_mm=0)) == ()
    # And this would have seen one: without what was cut before, each of them is in the wood.
    alone = as_rapids.kind.copy()
    alone[:] = RAPID
    assert rapid_contacts(uncut, replace(motions, kind=alone), bit, WorkZero(x_mm=0, y_mm=0, z_mm=0), most=1) != ()


def test_the_judge_lets_a_fast_way_down_pass_where_the_bit_has_been_and_nowhere_else() -> None:
    there = Plate().engraving((17, "G1 X10 Y20 Z9\nG0 Z10\nG0 X12.5 Y17.5\nG1 Z7 F750"))
    beside = Plate().engraving((17, "G1 X10 Y20 Z9\nG0 Z10\nG0 X12.8 Y17.5\nG1 Z6.5 F750"))
    assert lines_named(there, "C102") == lines_named(there, "C106") == set()
    assert lines_named(beside, "C102") == {20}


def lines_named(plate: Plate, code: str) -> set[int | None]:
    return {finding.line for result, finding in judge(plate.case()).findings() if result.code == code}
