"""What accepted programs make the machine do.

Source of the worked examples: NIST IR 6556 (2000).
"""

from __future__ import annotations

import math

import numpy as np
import pytest

from signgen.replay.measure import arc_frame
from signgen.replay.motion import ARC_CCW, ARC_CW, FEED, RAPID
from signgen.replay.reader import read_program
from tests.measuring import lengths_mm, sweeps_rad
from tests.replay.making import motions_of, steps

# -- words and modes -----------------------------------------------------------------------------------------


def test_white_space_means_nothing_even_inside_numbers() -> None:
    """Report 3.3.1: `g0x +0. 12 34y 7` equals `g0 x+0.1234 y7`."""
    assert steps(motions_of("g0x +0. 12 34y 7")) == [(RAPID, 0.1234, 7.0, 0.0)]


def test_words_may_come_in_any_order() -> None:
    one = motions_of("G91 G1 X1 Y2 Z3 F50 (feed)")
    for line in ("(feed) Z3 F50 Y2 X1 G1 G91", "F50 X1 G91 Z3 (feed) G1 Y2"):
        other = motions_of(line)
        assert steps(other) == steps(one)
        assert other.feed_mm_per_min.tolist() == one.feed_mm_per_min.tolist() == [50.0]


def test_motion_mode_stays_until_the_next() -> None:
    assert steps(motions_of("G1 X1", "Y2", "G0 Z3", "X0 Y0")) == [
        (FEED, 1, 0, 0),
        (FEED, 1, 2, 0),
        (RAPID, 1, 2, 3),
        (RAPID, 0, 0, 3),
    ]


def test_increments_add_up() -> None:
    assert steps(motions_of("G91 G1 X1 Y1", "X1", "G90 X1", "G91 Z-2")) == [
        (FEED, 1, 1, 0),
        (FEED, 2, 1, 0),
        (FEED, 1, 1, 0),
        (FEED, 1, 1, -2),
    ]


def test_inches_and_millimetres_make_the_same_motions() -> None:
    """1 in = 25.4 mm exactly."""
    metric = motions_of("G21 F254", "G0 X25.4 Y-12.7", "G1 Z-2.54", "G2 X50.8 I12.7 J0", "G91 G1 X2.54")
    inch = motions_of("G20 F10", "G0 X1 Y-.5", "G1 Z-.1", "G2 X2 I.5 J0", "G91 G1 X.1")
    np.testing.assert_allclose(inch.end_mm, metric.end_mm, atol=1e-12)
    np.testing.assert_allclose(inch.centre_mm, metric.centre_mm, atol=1e-12)
    np.testing.assert_allclose(inch.feed_mm_per_min, metric.feed_mm_per_min)


def test_rapids_carry_no_feed_and_every_motion_its_line() -> None:
    motions = motions_of("G1 X1 F300", "G0 X2", "", "G1 X3")
    assert motions.feed_mm_per_min.tolist() == [300.0, 0.0, 300.0]
    assert motions.line.tolist() == [2, 3, 5]


def test_inverse_time_gives_each_move_its_own_feed() -> None:
    """G93: the move takes 1 / F minutes."""
    motions = motions_of("G93 G1 X10 F2", "G3 X0 I-5 F.5")
    assert motions.feed_mm_per_min.tolist() == pytest.approx([20.0, 5 * math.pi * 0.5])


# -- order of execution within a line (Table 8) --------------------------------------------------------------


def test_m5_on_a_motion_line_stops_the_spindle_before_the_move() -> None:
    assert motions_of("G1 X1 M5", "X2").spindle_rpm.tolist() == [0.0, 0.0]


def test_s_and_m3_on_a_motion_line_act_before_the_move() -> None:
    assert motions_of("G1 X1 S5000", "M5", "X2 M3 S700").spindle_rpm.tolist() == [5000.0, 700.0]


def test_m2_acts_after_the_move_on_its_line() -> None:
    replay = read_program("G0 X5 M2\nG0 X6\n")
    assert steps(replay.motions) == [(RAPID, 5, 0, 0)]
    assert replay.ended


def test_a_tool_change_stops_the_spindle_and_m3_on_its_line_starts_it_again() -> None:
    """Order 5 T, 6 M6, 7 M3."""
    motions = motions_of("G0 X1", "T3 M6", "X2", "T4 M6 S900 M3", "X3")
    assert motions.spindle_rpm.tolist() == [1000.0, 0.0, 900.0]
    assert motions.tool.tolist() == [0, 3, 4]
    assert read_program("T3\nM6\nT3\nT4\nM2").tool_numbers == (3, 4)


def test_a_plane_or_unit_on_an_arc_line_acts_before_the_arc() -> None:
    assert motions_of("G20 G2 X1 I.5").end_mm[-1, 0] == pytest.approx(25.4)
    assert motions_of("G18 G2 X2 I1 K0").plane.tolist() == [18]


def test_a_dwell_counts_before_the_move_on_its_line() -> None:
    assert motions_of("G4 P2.5 G1 X1").spindle_s.tolist() == [2.5]


# -- the spindle ---------------------------------------------------------------------------------------------


def test_seconds_count_from_the_spindles_last_start() -> None:
    motions = motions_of("G4 P2", "G0 X1", "G4 P1", "G0 X2", "M5", "G4 P9", "M3", "G0 X3", "G4 P.5", "G0 X4")
    assert motions.spindle_s.tolist() == [2.0, 3.0, 0.0, 0.5]


def test_m3_while_turning_or_another_speed_is_no_new_start_but_turning_round_is() -> None:
    assert motions_of("G4 P2", "M3 S2000", "G0 X1").spindle_s.tolist() == [2.0]
    motions = motions_of("G4 P2", "M4", "G0 X1")
    assert motions.spindle_s.tolist() == [0.0]
    assert motions.spindle_rpm.tolist() == [-1000.0]


def test_a_speed_of_nothing_is_a_still_spindle() -> None:
    motions = motions_of("S0", "G4 P5", "G0 X1", "S500", "G0 X2")
    assert motions.spindle_rpm.tolist() == [0.0, 500.0]
    assert motions.spindle_s.tolist() == [0.0, 0.0]


def test_says_whether_the_spindle_still_turns_at_the_end() -> None:
    assert read_program("S9 M3\nG0 X1\nM2").spindle_on_at_end
    assert not read_program("S9 M3\nG0 X1\nM5\nM2").spindle_on_at_end
    assert read_program("G4 P2\nG4 P.5\nM2").dwell_s == 2.5


# -- what the program said before it moved -------------------------------------------------------------------


def test_lists_the_modes_stated_before_or_with_the_first_motion() -> None:
    replay = read_program("G21 G17\nG40 G49 G80\nG54 G90 G94 G0 X1\nG18 G20\nM2")
    assert replay.modes_before_motion == {"G21", "G17", "G40", "G49", "G80", "G54", "G90", "G94"}
    assert replay.units_stated
    assert not read_program("G0 X1\nG21\nM2").units_stated


def test_does_not_claim_to_know_where_the_cutter_is_before_it_is_told() -> None:
    motions = read_program("G0 Z20\nX5 Y6\nG1 Z1 F100\nM2").motions
    assert motions.start_known.tolist() == [[False] * 3, [False, False, True], [True] * 3]
    assert motions.start_mm.tolist() == [[5, 6, 20], [5, 6, 20], [5, 6, 20]]
    assert motions.end_mm.tolist() == [[5, 6, 20], [5, 6, 20], [5, 6, 1]]


def test_starts_from_the_given_place() -> None:
    motions = read_program("G0 Z20\nM2", start_mm=(1, 2, 3)).motions
    assert motions.start_mm.tolist() == [[1, 2, 3]]
    assert motions.start_known.all()


def test_home_and_machine_places_are_left_out_and_named() -> None:
    for line in ("G28", "G30", "G53 G0 X0 Y0 Z0"):
        replay = read_program(f"G0 X1 Y1 Z5\n{line}\nG0 X7 Y8 Z9\nM2")
        assert replay.faults == ()
        assert len(replay.notes) == 1
        assert "machine knows" in str(replay.notes[0].message)
        assert steps(replay.motions) == [(RAPID, 1, 1, 5), (RAPID, 7, 8, 9)]
        assert replay.motions.start_known[1].tolist() == [False] * 3
        assert replay.motions.start_mm[1].tolist() == [7, 8, 9]


def test_home_by_way_of_a_point_goes_there_first() -> None:
    replay = read_program("G0 X1 Y1 Z5\nG28 Z20\nM2")
    assert steps(replay.motions) == [(RAPID, 1, 1, 5), (RAPID, 1, 1, 20)]


def test_a_program_in_increments_reckons_from_zero_and_says_so() -> None:
    replay = read_program("G91 G0 X1\nX1\nM2")
    assert steps(replay.motions) == [(RAPID, 1, 0, 0), (RAPID, 2, 0, 0)]
    assert [note.line for note in replay.notes] == [1]


# -- offsets -------------------------------------------------------------------------------------------------


def test_g92_renames_places_without_moving_anything() -> None:
    assert steps(motions_of("G0 X10 Y5", "G92 X0 Y0", "G0 X1 Y1")) == [(RAPID, 10, 5, 0), (RAPID, 11, 6, 0)]


def test_g92_may_be_given_twice_suspended_restored_and_cancelled() -> None:
    lines = (
        "G0 X10",
        "G92 X0",
        "G0 X1",
        "G92 X0",
        "G0 X1",
        "G92.2",
        "G0 X1",
        "G92.3",
        "G0 X1",
        "G92.1",
        "G92.3",
        "G0 X1",
    )
    assert motions_of(*lines).end_mm[:, 0].tolist() == [10, 11, 12, 1, 12, 1]


def test_g10_moves_a_work_zero_and_says_that_its_place_is_an_assumption() -> None:
    replay = read_program("G10 L2 P2 X100 Y50\nG0 X1 Y1 Z1\nG55 G0 X1 Y1\nG54 X1 Y1\nM2")
    assert steps(replay.motions) == [(RAPID, 1, 1, 1), (RAPID, 101, 51, 1), (RAPID, 1, 1, 1)]
    assert {note.words for note in replay.notes} == {"G10 L2 P2", "G55"}


def test_g10_numbers_the_extended_work_zeros() -> None:
    assert steps(motions_of("G10 L2 P9 X7", "G59.3 G0 X1"))[-1] == (RAPID, 8, 0, 0)
    assert steps(motions_of("G10 L2 P6 X7", "G59 G0 X1"))[-1] == (RAPID, 8, 0, 0)


def test_increments_ignore_offsets() -> None:
    assert steps(motions_of("G0 X10", "G92 X0", "G91 G0 X1"))[-1] == (RAPID, 11, 0, 0)


# -- arcs ----------------------------------------------------------------------------------------------------


def test_centre_format_example_of_the_report() -> None:
    """3.5.3.2: from (7, 7), `G17 G2 x10 y16 i3 j4 z9`: centre (10, 11); sweep 143.1301 degrees, 12.4905 long."""
    motions = motions_of("G17 G2 x10 y16 i3 j4 z9", start_mm=(7, 7, 9))
    assert motions.centre_mm.tolist() == [[10, 11]]
    assert math.degrees(-sweeps_rad(motions)[0]) == pytest.approx(143.1301, abs=5e-5)
    assert lengths_mm(motions)[0] == pytest.approx(12.4905, abs=5e-5)


def test_radius_format_example_of_the_report() -> None:
    """3.5.3.1: `G17 G2 x10 y15 r20 z5` is accepted; both centres of radius 20 are 20 away from both ends."""
    motions = motions_of("G17 G2 x10 y15 r20 z5")
    for point in (motions.start_mm[0], motions.end_mm[0]):
        assert math.dist(point[:2], motions.centre_mm[0]) == pytest.approx(20)
    assert -math.pi <= sweeps_rad(motions)[0] < 0


def test_negative_radius_takes_the_long_way() -> None:
    short, long = motions_of("G3 X3 Y4 R4"), motions_of("G3 X3 Y4 R-4")
    assert sweeps_rad(short)[0] + sweeps_rad(long)[0] == pytest.approx(2 * math.pi)
    assert sweeps_rad(short)[0] < math.pi < sweeps_rad(long)[0]


def test_arcs_of_the_reports_first_sample_program() -> None:
    """Appendix C.1; centres and sweeps as computed by hand from its listing."""
    g2_by_radius = motions_of("g2 x69 r4", start_mm=(64, 4, -0.5))
    assert g2_by_radius.centre_mm[0].tolist() == pytest.approx([66.5, 0.877501], abs=1e-6)
    assert math.degrees(-sweeps_rad(g2_by_radius)[0]) == pytest.approx(77.3644, abs=5e-5)
    last = motions_of("g2 j2.5 y5", start_mm=(79.5, 0, -0.5))
    assert last.centre_mm[0].tolist() == [79.5, 2.5]
    assert math.degrees(abs(sweeps_rad(last)[0])) == pytest.approx(180)
    circle = motions_of("G2 X32.5 J2.5", start_mm=(32.5, 0, -0.5))
    assert circle.centre_mm[0].tolist() == [32.5, 2.5]
    assert abs(sweeps_rad(circle)[0]) == 2 * math.pi
    assert lengths_mm(circle)[0] == pytest.approx(5 * math.pi)


def test_helix_goes_along_with_the_angle() -> None:
    """Hole 10, cutter 6, pitch 1: radius 2, 12.606 mm a turn. Source: plane geometry, derived here."""
    motions = motions_of("G0 X2", "G3 X2 I-2 Z-1")
    assert lengths_mm(motions)[1] == pytest.approx(12.606, abs=5e-4)


@pytest.mark.parametrize(
    ("plane", "line", "start", "middle"),
    [
        # A quarter turn, clockwise seen from the end of the third axis.
        ("G17", "G2 X1 Y0 I0 J-1", (0, 1, 5), (math.sqrt(0.5), math.sqrt(0.5), 5)),
        ("G18", "G2 X0 Z1 I-1 K0", (1, 5, 0), None),
        ("G18", "G3 X0 Z1 I-1 K0", (1, 5, 0), None),
        ("G19", "G2 Y1 Z0 J0 K-1", (5, 0, 1), (5, math.sqrt(0.5), math.sqrt(0.5))),
    ],
)
def test_planes(
    plane: str, line: str, start: tuple[float, float, float], middle: tuple[float, float, float] | None
) -> None:
    motions = motions_of(f"{plane} {line}", start_mm=start)
    sweep = math.degrees(sweeps_rad(motions)[0])
    if plane == "G18":
        # Seen from +Y, Z turns towards X counter-clockwise: from +X to +Z is a quarter by G2, the rest by G3.
        assert sweep == pytest.approx(-90 if "G2" in line else 270)
    else:
        assert sweep == pytest.approx(-90)
    assert middle is None or np.allclose(arc_frame(motions).points_mm(np.array([0]), np.array([0.5]))[0], middle)


def test_tolerance_of_radii_is_2_micrometres_or_2_tenths_of_a_thou() -> None:
    """3.5.3.2: 0.002 mm, 0.0002 in."""
    motions_of("G21 G2 X10.0019 Y0 I5")
    assert read_program("G21 F9\nG2 X10.0021 Y0 I5\nM2", start_mm=(0, 0, 0)).fault_count == 1
    motions_of("G20 G2 X1.00019 Y0 I.5")
    assert read_program("G20 F9\nG2 X1.00021 Y0 I.5\nM2", start_mm=(0, 0, 0)).fault_count == 1


# -- drilling cycles (3.5.16) --------------------------------------------------------------------------------


def test_first_cycle_example_of_the_report() -> None:
    """3.5.16.2, from (1, 2, 3)."""
    motions = motions_of("G90 G81 G98 X4 Y5 Z1.5 R2.8", start_mm=(1, 2, 3))
    assert steps(motions) == [(RAPID, 4, 5, 3), (RAPID, 4, 5, 2.8), (FEED, 4, 5, 1.5), (RAPID, 4, 5, 3)]


def test_second_cycle_example_of_the_report() -> None:
    """3.5.16.2, from (1, 2, 3): three holes by increments."""
    motions = motions_of("G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3", start_mm=(1, 2, 3))
    expected = [(RAPID, 1, 2, 4.8)]
    for x, y in ((5, 7), (9, 12), (13, 17)):
        expected += [(RAPID, x, y, 4.8), (FEED, x, y, 4.2), (RAPID, x, y, 4.8)]
    assert steps(motions) == expected


def test_pecks() -> None:
    """The expected list is computed by hand from the rule of NIST IR 6556, 3.5.16."""
    motions = motions_of("G90 G99 G83 X0 Y0 R15 Z2 Q4", start_mm=(0, 0, 20))
    expected = [(RAPID, 15.0), (FEED, 11.0), (RAPID, 15.0), (RAPID, 11.254), (FEED, 7.0), (RAPID, 15.0), (RAPID, 7.254)]
    expected += [(FEED, 3.0), (RAPID, 15.0), (RAPID, 3.254), (FEED, 2.0), (RAPID, 15.0)]
    assert [(kind, z) for kind, _, _, z in steps(motions)] == expected


def test_session_of_table_10() -> None:
    """Table 10 of the report: expressions, a tool length, increments and a cycle, with the interpreter's
    answers."""
    text = "F60 g2 x[6-[4*3/2]] r7.01 z0.5\ng43 h1\ng1 x asin[0.5]\ng91 g81 x3 y2 z-0.8 r1.5 l2\nM2\n"
    replay = read_program(text, start_mm=(3, 1, 0), tool_lengths_mm={1: 1.0})
    assert replay.faults == ()
    motions = replay.motions
    assert motions.centre_mm[0].tolist() == pytest.approx([1.5, 7.8476], abs=5e-5)
    assert sweeps_rad(motions)[0] < 0
    expected = [(ARC_CW, 0, 1, 0.5), (FEED, 30, 1, -0.5), (RAPID, 30, 1, 1.0)]
    for x, y in ((33, 3), (36, 5)):
        expected += [(RAPID, x, y, 1.0), (FEED, x, y, 0.2), (RAPID, x, y, 1.0)]
    assert steps(motions) == expected


def test_g99_returns_to_r_and_g98_to_the_old_height_unless_below_r() -> None:
    high = (0.0, 0.0, 20.0)
    assert steps(motions_of("G99 G81 X1 Z-1 R2", start_mm=high))[-1][3] == 2
    assert steps(motions_of("G98 G81 X1 Z-1 R2", start_mm=high))[-1][3] == 20
    assert steps(motions_of("G98 G81 X1 Z-1 R2"))[-1][3] == 2


def test_a_cycle_goes_on_with_its_numbers_until_another_motion_code() -> None:
    motions = motions_of("G99 G81 X1 Y1 Z-1 R2", "X2", "Y3 Z-2", "G80", "G0 X9", start_mm=(0, 0, 5))
    feeds = [step for step in steps(motions) if step[0] == FEED]
    assert feeds == [(FEED, 1, 1, -1), (FEED, 2, 1, -1), (FEED, 2, 3, -2)]
    assert read_program("G99 G81 X1 Z-1 R2\nG0 X2\nG81 X3\nM2", start_mm=(0, 0, 5)).fault_count == 1


def test_dwelling_cycles_feed_out_or_go_out() -> None:
    start = (0.0, 0.0, 5.0)
    out = {"G82": RAPID, "G85": FEED, "G89": FEED, "G86": RAPID, "G88": RAPID, "G84": FEED}
    for code, kind in out.items():
        p = " P2" if code in ("G82", "G86", "G88", "G89") else ""
        motions = motions_of(f"G99 {code} X1 Z-1 R2{p}", "G80", "G0 X0", start_mm=start)
        assert steps(motions)[-3:-1] == [(FEED, 1, 0, -1), (kind, 1, 0, 2)], code
        assert motions.spindle_s[-1] == (0 if code in ("G86", "G88") else 2 if p else 0)


def test_g86_goes_out_with_a_still_spindle_and_starts_it_again() -> None:
    motions = motions_of("G99 G86 X1 Z-1 R2 P1", "G80", "G0 X0", start_mm=(0, 0, 5))
    assert motions.spindle_rpm[-2:].tolist() == [0.0, 1000.0]


def test_cycles_in_the_other_planes_work_along_their_upright_axis() -> None:
    along_y = motions_of("G18 G99 G81 X1 Z2 Y-3 R4", start_mm=(0, 9, 0))
    assert steps(along_y) == [(RAPID, 1, 9, 2), (RAPID, 1, 4, 2), (FEED, 1, -3, 2), (RAPID, 1, 4, 2)]
    along_x = motions_of("G19 G99 G81 Y1 Z2 X-3 R4", start_mm=(9, 0, 0))
    assert steps(along_x) == [(RAPID, 9, 1, 2), (RAPID, 4, 1, 2), (FEED, -3, 1, 2), (RAPID, 4, 1, 2)]


def test_a_cycle_without_end_is_refused_rather_than_followed() -> None:
    for line in ("G81 X1 Z-1 R2 L1000000000", "G83 X1 Z-1 R2 Q.0000001"):
        replay = read_program(f"F9\nG91 {line}\nM2", start_mm=(0, 0, 5))
        assert replay.fault_count == 1
        assert len(replay.motions) == 0


# -- parameters ----------------------------------------------------------------------------------------------


def test_a_parameter_set_on_a_line_is_read_from_the_next_on() -> None:
    """3.3.2.1: a setting takes effect after all parameters of its line were read."""
    assert motions_of("#3=15", "#3=6 G1 X#3", "G1 X#3").end_mm[:, 0].tolist() == [15, 6]


def test_setting_a_parameter_twice_keeps_the_last() -> None:
    assert motions_of("#3=1 #3=2", "G0 X#3").end_mm[-1, 0] == 2


def test_a_parameter_never_set_counts_as_0_and_is_mentioned() -> None:
    replay = read_program("G0 X#7 Y#7\nM2")
    assert steps(replay.motions) == [(RAPID, 0, 0, 0)]
    assert [note.words for note in replay.notes] == ["#7"]


def test_compensation_is_followed_as_written_and_mentioned() -> None:
    replay = read_program("F9 G1 Z-1\nG41 D1 G1 X1\nM2", start_mm=(0, 0, 0))
    assert steps(replay.motions) == [(FEED, 0, 0, -1), (FEED, 1, 0, -1)]
    assert len(replay.notes) == 1


def test_where_a_probe_stops_is_unknown_until_a_zero_is_set_there() -> None:
    replay = read_program("F9 G38.2 Z-20\nG10 L20 P1 Z1.5\nG0 Z20\nM2", start_mm=(0, 0, 10))
    assert steps(replay.motions) == [(RAPID, 0, 0, 20)]
    assert replay.motions.start_mm.tolist() == [[0, 0, 1.5]]
    assert len(replay.notes) == 2


def test_a_zero_set_where_the_tool_is_known_to_be_moves_what_follows() -> None:
    assert steps(motions_of("G0 X10 Y0 Z0", "G10 L20 P1 X0", "G0 X5"))[-1] == (RAPID, 15, 0, 0)


def test_arcs_turn_the_way_their_code_says() -> None:
    motions = motions_of("G2 X2 Y0 I1", "G3 X4 Y0 I1")
    assert motions.kind.tolist() == [ARC_CW, ARC_CCW]
    assert np.degrees(sweeps_rad(motions)).tolist() == pytest.approx([-180, 180])
