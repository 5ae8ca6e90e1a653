import pytest

from signgen.errors import AskError
from signgen.holes.side_pair import SidePair


def test_stands_half_way_up_at_either_side():
    holes = SidePair.from_options("", {"inset": 12.0}, 220, 140)
    assert holes.centres(220, 140) == (("left", 12, 70), ("right", 208, 70))


def test_the_pair_keeps_wood_between():
    with pytest.raises(AskError, match=r"^inset: .* 100 mm wide"):
        SidePair.from_options("", {"inset": 48.0}, 100, 140)
