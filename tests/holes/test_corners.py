import pytest

from signgen.errors import AskError
from signgen.holes.corners import Corners


def test_stands_inset_from_both_edges_of_each_corner():
    holes = Corners.from_options("", {"hole-diameter": 7.0, "inset": 14.0}, 220, 140)
    assert holes.centres(220, 140) == (
        ("bottom left", 14, 14), ("bottom right", 206, 14), ("top right", 206, 126), ("top left", 14, 126),
    )  # fmt: skip


def test_corners_never_change_places():
    with pytest.raises(AskError, match=r"^inset: 80 mm .* 140 mm high\. Use less than 66\.5 mm\.$"):
        Corners.from_options("", {"hole-diameter": 7.0, "inset": 80.0}, 220, 140)
