"""What many controls take beyond the rules is taken out, line by line, and nothing else."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.replay.extras import without_extras
from signgen.replay.reader import read_program


@pytest.mark.parametrize(
    ("line", "left"),
    [
        ("G1 X1 ; to the right", "G1 X1 "),
        (";", ""),
        ("G1 (a ; b) X1", "G1 (a ; b) X1"),
        ("G1 (a) X1 (b) ; c (d)", "G1 (a) X1 (b) "),
        ("G1 (open ; X1", "G1 (open ; X1"),
        ("O1234", ""),
        ("o 12 (name)", " (name)"),
        ("O100 sub", "O100 sub"),
        ("G1 O12", "G1 O12"),
        ("N123456 G0 X1", " G0 X1"),
        ("/N1234567G0", "/G0"),
        ("N12345 G0 X1", "N12345 G0 X1"),
        ("G0 X1", "G0 X1"),
    ],
)
def test_lines(line: str, left: str) -> None:
    assert without_extras(f"G21\n{line}\nM2\n")[0] == f"G21\n{left}\nM2\n"


def test_each_kind_is_noted_once_with_its_first_line() -> None:
    _, notes = without_extras("%\nO7\nG21 ; mm\nG90 ; absolute\n%\n")
    assert [(note.line, note.words) for note in notes] == [(3, "; mm"), (2, "O7")]


@given(st.text(st.sampled_from("GXON019 ();.\n\r/"), max_size=200))
def test_lines_stay_where_they_are_and_a_second_time_changes_nothing(text: str) -> None:
    left, _ = without_extras(text)
    assert left.count("\n") == text.replace("\r\n", "\n").replace("\r", "\n").count("\n")
    assert without_extras(left)[0] == left


@given(st.text(st.sampled_from("GXYF019 .\n"), max_size=200))
def test_what_has_none_of_them_is_read_the_same(text: str) -> None:
    left, notes = without_extras(text)
    assert notes == ()
    assert read_program(left).faults == read_program(text).faults
