import pytest

from signgen.errors import AskError
from signgen.holes.row import HoleRow


def test_spreads_evenly_from_side_to_side():
    row = HoleRow.from_options("", {"inset": 20.0, "hole-count": 4}, 200, 100)
    assert [x for _, x, _ in row.centres(200, 100)] == pytest.approx([20, 73.333, 126.667, 180], abs=1e-3)
    assert {y for _, _, y in row.centres(200, 100)} == {80}


def test_stands_at_the_height_asked_for():
    row = HoleRow.from_options("", {"row-height": 33.0}, 200, 100)
    assert [y for _, _, y in row.centres(200, 100)] == [33, 33, 33]


def test_a_single_hole_stands_in_the_middle():
    assert HoleRow.from_options("", {"hole-count": 1}, 200, 100).centres(200, 100) == (("1", 100, 90),)


@pytest.mark.parametrize("width", [200, 201, 205])
def test_says_how_many_have_room_and_so_many_have(width):
    with pytest.raises(AskError, match=r"^hole-count: ") as caught:
        HoleRow.from_options("", {"hole-diameter": 10.0, "inset": 20.0, "hole-count": 40}, width, 100)
    most = int(str(caught.value.problems[0].remedy).split()[-1].rstrip("."))
    assert (
        HoleRow.from_options("", {"hole-diameter": 10.0, "inset": 20.0, "hole-count": most}, width, 100).count == most
    )
    with pytest.raises(AskError):
        HoleRow.from_options("", {"hole-diameter": 10.0, "inset": 20.0, "hole-count": most + 1}, width, 100)
