import pytest

from signgen.errors import AskError
from signgen.holes.top_pair import TopPair


def test_stands_in_the_upper_corners():
    holes = TopPair.from_options("", {"inset": 12.0}, 220, 140)
    assert holes.centres(220, 140) == (("top left", 12, 128), ("top right", 208, 128))


def test_the_pair_keeps_wood_between():
    with pytest.raises(AskError, match=r"^inset: .* 100 mm wide"):
        TopPair.from_options("", {"inset": 48.0}, 100, 140)
