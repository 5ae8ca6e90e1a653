from hypothesis import given
from hypothesis import strategies as st

from signgen.holes.at_points import AtPoints
from signgen.holes.none import NoHoles
from tests.asking import read_holes


def test_stands_where_it_is_told():
    holes = AtPoints.from_options("20,15;200,15.5", {"hole-diameter": 6.0}, 220, 140)
    assert holes.centres(220, 140) == (("1", 20, 15), ("2", 200, 15.5))


# Nothing is asked for in less than a thousandth of a millimetre.
PLACE = st.floats(-5000, 5000).filter(lambda value: value == 0 or abs(value) >= 0.001)


@given(PLACE, PLACE)
def test_writes_its_point_so_that_it_reads_back_the_same(x, y):
    holes = AtPoints(diameter_mm=5.0, points_mm=((x, y),))
    assert read_holes(holes.asked()["holes"], {"hole-diameter": 5.0}, 220, 140) == holes


def test_no_holes_are_none():
    assert NoHoles().centres(220, 140) == ()
    assert NoHoles().asked() == {"holes": "none"}
