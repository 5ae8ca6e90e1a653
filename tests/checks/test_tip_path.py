"""The tip's way in straight pieces."""

from __future__ import annotations

import numpy as np
import pytest
from msgspec.structs import replace

from signgen.checks.tip_path import TipPath, joined, tip_path_of
from signgen.replay.reader import read_program
from signgen.shop.stock import WorkZero
from tests.checks.plate import END_MILL, V_BIT

NOWHERE = WorkZero(x_mm=0, y_mm=0, z_mm=0)
HEAD = "G17 G21 G40 G49 G54 G80 G90 G94\n"


def way(text: str, zero: WorkZero = NOWHERE, chord_mm: float = 0.001) -> tuple[TipPath, TipPath]:
    replay = read_program(HEAD + text + "M2\n")
    assert not replay.faults, replay.faults
    return tip_path_of(replay.motions, zero, 0, chord_mm)


def test_feeds_and_rapids_are_told_apart_with_their_lines() -> None:
    cuts, rapids = way("G0 Z5\nG0 X1 Y2\nG1 Z-1 F100\nG1 X9\nG0 Z5\n")
    assert cuts.line.tolist() == [4, 5]
    assert rapids.line.tolist() == [2, 3, 6]
    assert cuts.end_mm.tolist() == [[1, 2, -1], [9, 2, -1]]


def test_the_zero_moves_everything_into_sign_coordinates() -> None:
    cuts, _ = way("G0 X0 Y0 Z5\nG1 X1 Z0 F100\n", WorkZero(x_mm=-12, y_mm=-8, z_mm=9))
    assert cuts.start_mm.tolist() == [[-12, -8, 14]]
    assert cuts.end_mm.tolist() == [[-11, -8, 9]]


@pytest.mark.parametrize("chord_mm", [0.01, 0.001, 0.0005])
def test_chords_stay_within_their_tolerance(chord_mm: float) -> None:
    cuts, _ = way("G0 X10 Y0 Z0\nG3 X10 Y0 Z-2 I-10 J0 F100\n", chord_mm=chord_mm)
    middle = (cuts.start_mm + cuts.end_mm) / 2
    sagitta = 10 - np.hypot(middle[:, 0], middle[:, 1])
    assert sagitta.max() <= chord_mm
    assert len(cuts) <= np.ceil(np.pi / np.arccos(1 - chord_mm / 10)) + 1
    assert cuts.end_mm[:, 2] == pytest.approx(np.linspace(-2 / len(cuts), -2, len(cuts)))
    assert np.array_equal(cuts.start_mm[1:], cuts.end_mm[:-1])


@pytest.mark.parametrize(
    ("plane", "words", "middle"),
    [
        # A quarter turn from (0, 0, 0); clockwise as seen from the end of the axis that stands upright on the plane.
        # Source: NIST IR 6556 section 3.5.3.
        ("G17", "G3 X-4 Y4 Z0 I-4 J0", (-4 + 4 * np.cos(np.pi / 4), 4 * np.sin(np.pi / 4), 0)),
        ("G18", "G3 X4 Y0 Z-4 I0 K-4", (4 * np.sin(np.pi / 4), 0, -4 + 4 * np.cos(np.pi / 4))),
        ("G19", "G3 X0 Y-4 Z4 J-4 K0", (0, -4 + 4 * np.cos(np.pi / 4), 4 * np.sin(np.pi / 4))),
    ],
)
def test_arcs_of_every_plane(plane: str, words: str, middle: tuple[float, float, float]) -> None:
    cuts, _ = way(f"G0 X0 Y0 Z0\n{plane}\n{words} F100\n", chord_mm=0.0001)
    away = np.linalg.norm(cuts.start_mm - np.array(middle), axis=1).min()
    assert away < 0.05


def test_the_part_below_a_height_is_cut_out_of_a_ramp() -> None:
    cuts, _ = way("G0 X0 Y0 Z4\nG1 X8 Z-4 F100\nG1 X8 Z-2\nG1 Z3\n")
    below = cuts.below(0.0)
    assert below.start_mm.tolist() == [[4, 0, 0], [8, 0, -4], [8, 0, -2]]
    assert below.end_mm.tolist() == [[8, 0, -4], [8, 0, -2], [8, 0, 0]]
    assert below.line.tolist() == [3, 4, 5]


def test_radii_of_cutters_at_a_height() -> None:
    cuts, _ = way("G0 X0 Y0 Z5\nG1 Z-2 F100\n")
    assert cuts.radii_mm(END_MILL, 0.0).tolist() == [[-1, 3]]
    assert cuts.radii_mm(V_BIT, 0.0)[0] == pytest.approx([-1, 2])
    ball = replace(END_MILL, kind="ball-nose")
    # A ball of radius 3 sunk 2 deep: sqrt(2 (6 - 2)).
    assert cuts.radii_mm(ball, 0.0)[0] == pytest.approx([-1, 8**0.5])
    drill = replace(END_MILL, kind="drill", angle_deg=118)
    # Common handbook factor: the point of a 118 degree drill is 0.3004 D long.
    assert cuts.radii_mm(drill, 0.0)[0, 1] == pytest.approx(3.0)
    assert cuts.radii_mm(drill, -2 + 0.3004 * 6)[0, 1] == pytest.approx(3.0, abs=1e-3)
    assert cuts.radii_mm(drill, -2 + 0.3004 * 3)[0, 1] == pytest.approx(1.5, abs=1e-3)


def test_joined_pieces_keep_their_programs() -> None:
    first, _ = way("G0 X0 Y0 Z0\nG1 X1 F100\n")
    both = joined([first, first])
    assert len(both) == 2
    assert both.program.tolist() == [0, 0]


def test_what_lies_outside_a_rectangle_is_left_out() -> None:
    cuts, _ = way("G0 X-50 Y1 Z0\nG1 X50 F100\nG1 Y60\nG1 X20 Y80\n")
    inside, owner = cuts.within((-10, -10, 10, 10))
    assert inside.start_mm.tolist() == [[-10, 1, 0]]
    assert inside.end_mm.tolist() == [[10, 1, 0]]
    assert owner.tolist() == [0]
