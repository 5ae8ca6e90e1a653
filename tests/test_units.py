"""Lengths, sizes, points and numbers as people write them. Exact values follow from 1 in = 25.4 mm (the international
yard and pound agreement of 1959)."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.messages.figures import plain
from signgen.units import PLACE, Limits, angle_deg, count, length_mm, number, points_mm, size_mm

MINUTE = Limits(least=0, greatest=10)


@pytest.mark.parametrize(
    ("raw", "mm"),
    [
        ("12", 12.0), ("12mm", 12.0), (" 12 mm ", 12.0), (12, 12.0), (12.5, 12.5), ("3.5in", 88.9),
        ("3 1/2 in", 88.9), ("3-1/2in", 88.9), ("3½ in", 88.9), ("½in", 12.7), ("1/4in", 6.35), ('0.25"', 6.35),
        (".25 inch", 6.35), ("2 inches", 50.8), ("1/8in", 3.175), ("11/64in", 4.365625), ("2cm", 20.0), ("0.1m", 100.0),
        ("1ft", 304.8), ("12 MM", 12.0), ("+5", 5.0), ("7.", 7.0),
    ],
)  # fmt: skip
def test_reads_a_length_exactly(raw, mm):
    assert length_mm(raw, "thickness") == mm


@pytest.mark.parametrize(
    ("raw", "what", "remedy"),
    [
        ("", "is not a length", "12mm"), ("   ", "is not a length", "12mm"), ("wide", "is not a length", "12mm"),
        ("mm", "is not a length", "12mm"), ("12 furlongs", "a unit that is not known", "Use mm"),
        ("nan", "is not a length", "12mm"), ("inf", "is not a length", "12mm"), ("1e3", "is not a length", "12mm"),
        (float("nan"), "is not a length", "12mm"), (float("inf"), "is not a length", "12mm"),
        (True, "is not a length", "12mm"), (None, "is not a length", "12mm"), ([12], "is not a length", "12mm"),
        ("3,5", "is not a length", "after a point"), ("1/0in", "divides by zero", "12mm"),
        ("1/4", "a fraction without a unit", "1/4in"), ("0", "is not more than zero", "positive"),
        ("-3", "is not more than zero", "positive"), ("−3mm", "is not more than zero", "positive"),
        (0, "is not more than zero", "positive"), ("5001", "too much", "5000"), ("6m", "too much", "5000"),
        (10**400, "too much", "5000"), (-(10**400), "not more than zero", "positive"), ("9" * 3000, "too much", "5000"),
        ("12 12", "is not a length", "12mm"), ("1/2/3in", "is not a length", "12mm"), ("٣", "is not a length", "12mm"),
    ],
)  # fmt: skip
def test_says_where_what_and_what_to_do_about_a_bad_length(raw, what, remedy):
    with pytest.raises(AskError) as caught:
        length_mm(raw, "thickness")
    (problem,) = caught.value.problems
    assert problem.where == "thickness"
    assert what in str(problem.what)
    assert remedy in str(problem.remedy)
    assert len(str(problem)) < 250


def test_shortens_what_was_typed_in_the_message():
    with pytest.raises(AskError) as caught:
        length_mm("x" * 100_000, "inset")
    assert len(str(caught.value)) < 250


@given(st.integers(0, 400), st.integers(1, 63), st.integers(0, 6))
def test_an_inch_is_exactly_25_4_mm(whole, top, power):
    bottom = 2**power
    exact = float((whole + Fraction(top, bottom)) * Fraction(254, 10))
    if exact <= 5000:
        assert length_mm(f"{whole} {top}/{bottom} in", "size") == exact


@given(st.floats(min_value=0.001, max_value=5000))
def test_a_number_comes_back_as_it_was_given(value):
    assert length_mm(value, "size") == value


@pytest.mark.parametrize("raw", [1e-320, -1e-320, "0.0009", "0.00001in"])
def test_no_length_is_finer_than_a_thousandth_of_a_millimetre(raw):
    with pytest.raises(AskError, match="less than a thousandth"):
        length_mm(raw, "depth", PLACE)
    assert length_mm(0, "depth", PLACE) == 0


@given(st.floats(min_value=0.0011, max_value=5000))
def test_a_text_means_the_same_as_its_number(value):
    assert length_mm(f"{value:.6f}", "size") == length_mm(float(f"{value:.6f}"), "size")


@pytest.mark.parametrize(
    ("raw", "size"),
    [
        ("220x140", (220, 140)), ("220 X 140", (220, 140)), ("220×140", (220, 140)), ("200 x 120 mm", (200, 120)),
        ("8.5x5.5in", (215.9, 139.7)), ("8 1/2 x 5 1/2 in", (215.9, 139.7)), ('8.5"x140mm', (215.9, 140)),
        ([220, 140], (220, 140)), (["8.5in", 140], (215.9, 140)), ("1/2x1/2in", (12.7, 12.7)),
    ],
)  # fmt: skip
def test_reads_a_size(raw, size):
    assert size_mm(raw, "size") == size


@pytest.mark.parametrize(
    ("raw", "what"),
    [
        ("220", "is not a size"), ("", "is not a size"), ("x", "is not a size"), ("220x", "is not a size"),
        ("x140", "is not a size"), ("1x2x3", "is not a size"), (220, "is not a size"), ([1], "is not a size"),
        ("8.5inx5.5", "unit for the width alone"), ("0x140", "not more than zero"), ("220x-1", "not more than zero"),
        ("9999x140", "too much"), ("axb", "is not a length"), ({"w": 1}, "is not a size"),
    ],
)  # fmt: skip
def test_refuses_what_is_no_size(raw, what):
    with pytest.raises(AskError, match=r"^size: ") as caught:
        size_mm(raw, "size")
    assert what in str(caught.value.problems[0].what)


@pytest.mark.parametrize(
    ("raw", "points"),
    [
        ("10,20", ((10, 20),)), ("10,20;30,40", ((10, 20), (30, 40))), (" 10 , 20 ; 30,40 ; ", ((10, 20), (30, 40))),
        ("1,1in", ((25.4, 25.4),)), ("1in,20", ((25.4, 20),)), ("-5,0", ((-5, 0),)),
    ],
)  # fmt: skip
def test_reads_points(raw, points):
    assert points_mm(raw, "holes") == points


@pytest.mark.parametrize("raw", ["", ";", "1", "1;2", "1,2,3", "1,", ",2", "a,b", "1,2;;3,4", 12, "1,nan", "9999,1"])
def test_refuses_what_are_no_points(raw):
    with pytest.raises(AskError, match=r"^holes: "):
        points_mm(raw, "holes")


@pytest.mark.parametrize("raw", ["60", "60deg", "60 degrees", "60°", 60, 60.0])
def test_reads_an_angle(raw):
    assert angle_deg(raw, "v-bit", Limits(least=15, greatest=150)) == 60


@pytest.mark.parametrize("raw", ["14.9", "150.1", "60in", "-60", "", "right", 0])
def test_refuses_an_angle_that_no_bit_has(raw):
    with pytest.raises(AskError, match=r"^v-bit: "):
        angle_deg(raw, "v-bit", Limits(least=15, greatest=150))


@pytest.mark.parametrize(("raw", "n"), [("4", 4), (4, 4), (4.0, 4), ("0", 0)])
def test_reads_a_count(raw, n):
    got = count(raw, "tabs", MINUTE)
    assert got == n
    assert type(got) is int


@pytest.mark.parametrize("raw", ["4.5", 4.5, "-1", "11", "four", True, ""])
def test_refuses_what_is_no_count(raw):
    with pytest.raises(AskError, match=r"^tabs: "):
        count(raw, "tabs", MINUTE)


def test_reads_a_number_without_a_unit_only():
    assert number("1.6", "line-spacing", MINUTE) == 1.6
    with pytest.raises(AskError, match=r"^line-spacing: '1.6mm' is not a number"):
        number("1.6mm", "line-spacing", MINUTE)


def said(problem):
    return tuple(map(str, problem))


def test_limits_tell_an_open_end_from_a_closed_one():
    closed, opened = Limits(least=1, greatest=2), Limits(least=1, greatest=2, open_below=True)
    assert closed.problem(1, "mm") is None
    assert said(opened.problem(1, "mm")) == ("1 mm is too little.", "Use more than 1 mm.")
    assert said(closed.problem(0.5, "mm")) == ("0.5 mm is too little.", "Use at least 1 mm.")
    assert said(closed.problem(2.5, "")) == ("2.5 is too much.", "Use at most 2.")


@pytest.mark.parametrize(
    ("value", "text"),
    [(88.9, "88.9"), (12.0, "12"), (0.00001, "0.00001"), (4.800000000000001, "4.8"), (123456.0, "123456")],
)
def test_writes_plain_numbers(value, text):
    assert plain(value) == text
