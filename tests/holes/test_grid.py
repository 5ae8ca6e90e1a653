import pytest

from signgen.errors import AskError
from signgen.holes.grid import HoleGrid


def test_stands_in_columns_and_rows():
    holes = HoleGrid.from_options("3x2", {"inset": 10.0}, 220, 140).centres(220, 140)
    assert [(x, y) for _, x, y in holes] == [(10, 10), (110, 10), (210, 10), (10, 130), (110, 130), (210, 130)]
    assert holes[5][0] == "row 2 column 3"


def test_a_single_column_or_row_stands_in_the_middle():
    assert [(x, y) for _, x, y in HoleGrid.from_options("1 x 2", {}, 220, 140).centres(220, 140)] == [
        (110, 10),
        (110, 130),
    ]
    assert HoleGrid.from_options("1x1", {}, 220, 140).centres(220, 140) == (("row 1 column 1", 110, 70),)


@pytest.mark.parametrize("argument", ["3", "0x2", "3x0", "3x", "x", "-1x2", "3x2x1", "axb", "99999x1"])
def test_refuses_what_is_no_number_of_columns_and_rows(argument):
    with pytest.raises(
        AskError, match=r"^holes: '.*' is no number of columns and rows\. Write grid:3x2, for example\.$"
    ):
        HoleGrid.from_options(argument, {}, 220, 140)


def test_refuses_too_many_and_those_that_run_together():
    with pytest.raises(AskError, match=r"^holes: 210 holes are too many\. Use at most 200\.$"):
        HoleGrid.from_options("21x10", {"hole-diameter": 1.0}, 2000, 1000)
    with pytest.raises(AskError, match=r"^holes: 40 holes of 5 mm stand .* Use at most"):
        HoleGrid.from_options("40x2", {}, 150, 140)
