import pytest

from signgen.errors import AskError
from signgen.holes.column import Column


def test_spreads_evenly_from_bottom_to_top():
    column = Column.from_options("", {"inset": 20.0, "hole-count": 4}, 100, 200)
    assert [y for _, _, y in column.centres(100, 200)] == pytest.approx([20, 73.333, 126.667, 180], abs=1e-3)
    assert {x for _, x, _ in column.centres(100, 200)} == {20}


def test_stands_at_the_place_asked_for():
    column = Column.from_options("", {"column-place": 33.0}, 100, 200)
    assert [x for _, x, _ in column.centres(100, 200)] == [33, 33, 33]


def test_a_single_hole_stands_half_way_up():
    assert Column.from_options("", {"hole-count": 1}, 100, 200).centres(100, 200) == (("1", 10, 100),)


def test_refuses_holes_that_run_together():
    with pytest.raises(AskError, match=r"^hole-count: 40 holes of 10 mm stand 4\.10256 mm apart .* Use at most 16\.$"):
        Column.from_options("", {"hole-diameter": 10.0, "inset": 20.0, "hole-count": 40}, 100, 200)
    with pytest.raises(AskError, match=r"^inset: .* 30 mm high"):
        Column.from_options("", {"inset": 14.0}, 100, 30)
