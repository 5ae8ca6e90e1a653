import math

import pytest

from signgen.errors import AskError
from signgen.holes.ring import HoleRing


def test_stands_on_its_circle_first_hole_on_top_then_anticlockwise():
    centres = HoleRing.from_options("", {"ring-diameter": 100.0}, 220, 140).centres(220, 140)
    assert [(round(x, 9), round(y, 9)) for _, x, y in centres] == [(110, 120), (60, 70), (110, 20), (160, 70)]


def test_neighbours_are_a_chord_apart():
    """Chord of a bolt circle: D sin(180 / n)."""
    centres = HoleRing.from_options("", {"ring-diameter": 90.0, "hole-count": 7}, 200, 200).centres(200, 200)
    apart = [math.dist(p[1:], q[1:]) for p, q in zip(centres, centres[1:] + centres[:1], strict=True)]
    assert apart == pytest.approx([90 * math.sin(math.pi / 7)] * 7)


def test_the_inset_sets_the_circle_and_the_start_turns_it():
    ring = HoleRing.from_options("", {"inset": 15.0, "ring-start": 0.0, "hole-count": 1}, 220, 140)
    assert ring.centres(220, 140) == (("1", 110 + 55, 70),)


@pytest.mark.parametrize(
    ("values", "where"),
    [
        ({"inset": 10.0, "ring-diameter": 50.0}, "inset"),
        ({"inset": 70.0}, "inset"),
        ({"ring-diameter": 10.0, "hole-count": 8}, "hole-count"),
    ],
)
def test_refuses_rings_that_make_no_sense(values, where):
    with pytest.raises(AskError, match=f"^{where}: "):
        HoleRing.from_options("", values, 220, 140)
