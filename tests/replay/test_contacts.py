"""Rapids that meet wood, in the order of time."""

from __future__ import annotations

import numpy as np
import pytest

from signgen.replay.contacts import rapid_contacts
from signgen.replay.heights import board
from signgen.replay.motion import RAPID
from tests.replay.making import AT_ZERO, a_board, a_tool, motions_of, straight_motions

TOP = 10.0
MILL = a_tool("end-mill", 4)


def contacts_of(*lines: str, tool=MILL, start=(0.0, 0.0, 20.0)):
    return rapid_contacts(board(a_board(40, 30), 0.5), motions_of(*lines, start_mm=start), tool, AT_ZERO)


def test_a_rapid_above_the_board_is_clear() -> None:
    assert contacts_of("G0 X5 Y5", "G0 Z10", "G0 X30 Y20", "G1 Z8", "G0 Z20") == ()


def test_a_rapid_too_low_by_a_tenth_is_found_with_its_depth_and_place() -> None:
    (contact,) = contacts_of("G0 X5 Y5", "G0 Z9.9", "G1 Z9", "G0 Z20")
    assert contact.motion == 1
    assert contact.depth_mm == pytest.approx(0.1, abs=1e-5)
    assert np.hypot(contact.place_mm[0] - 5, contact.place_mm[1] - 5) <= 2


def test_a_rapid_across_uncut_wood_is_found() -> None:
    contacts = contacts_of("G0 X5 Y5 Z12", "G1 Z8", "G0 X30", "G0 Z20")
    assert [(contact.motion, round(contact.depth_mm, 4)) for contact in contacts] == [(2, 2.0)]


def test_a_rapid_back_along_the_slot_just_cut_is_clear() -> None:
    assert contacts_of("G0 X5 Y5 Z12", "G1 Z8", "G1 X30", "G0 X5", "G0 Z20") == ()


def test_the_same_rapid_before_the_slot_is_cut_is_not() -> None:
    contacts = contacts_of("G0 X5 Y5 Z8", "G0 X30", "G1 X5", "G0 Z20")
    # The first comes down slantwise from X0 Y0 Z20, the second crosses what the first left standing.
    assert [contact.motion for contact in contacts] == [0, 1]


def test_a_rapid_down_into_a_pocket_is_clear_to_its_floor_and_no_further() -> None:
    lines = ["G0 X5 Y5 Z12", "G1 Z8", "G1 X30", "G0 Z12", "G0 X20", "G0 Z8", "G1 Z7", "G0 Z12"]
    assert contacts_of(*lines) == ()
    lines[5] = "G0 Z7.9"
    (contact,) = contacts_of(*lines)
    assert (contact.motion, round(contact.depth_mm, 3)) == (5, 0.1)


def test_straight_up_is_clear_unless_the_cutter_came_by_no_way() -> None:
    assert contacts_of("G0 X5 Y5", "G1 Z3", "G0 Z20") == ()
    assert [contact.motion for contact in contacts_of("G0 Z20", start=(5.0, 5.0, 3.0))] == [0]


def test_a_bit_that_returns_to_its_groove_lies_against_its_walls_without_touching() -> None:
    lines = ("G0 X5 Y5 Z12", "G1 Z7 F100", "G3 X15 Y5 R5 Z6", "G0 Z12", "G0 X5 Y5", "G0 Z7", "G0 Z12")
    assert contacts_of(*lines, tool=a_tool("v-bit", 12, 60)) == ()


def test_only_as_many_as_asked_for() -> None:
    heights = board(a_board(40, 30), 0.5)
    motions = straight_motions([(5, 5, 12), (5, 5, 9), (9, 5, 9), (15, 5, 9), (20, 5, 9)], RAPID)
    assert len(rapid_contacts(heights, motions, MILL, AT_ZERO)) == 4
    assert len(rapid_contacts(heights, motions, MILL, AT_ZERO, most=2)) == 2


def test_a_place_torn_out_by_one_rapid_is_not_blamed_on_the_next() -> None:
    motions = straight_motions([(5, 5, 12), (5, 5, 9), (15, 5, 9), (5, 5, 9)], RAPID)
    contacts = rapid_contacts(board(a_board(40, 30), 0.5), motions, MILL, AT_ZERO)
    assert [contact.motion for contact in contacts] == [0, 1]
