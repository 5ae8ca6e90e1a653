"""Defaults that stand beside each other never make a sign fail."""

import pytest

from signgen.drawing.draw import draw
from signgen.features.hole import Hole
from tests.asking import spec_of


@pytest.mark.parametrize("frame", ["5", "8", "12", "30"])
@pytest.mark.parametrize("holes", ["corners", "side-pair", "top-pair"])
def test_holes_without_an_inset_keep_off_the_frame(frame, holes):
    drawing = draw(spec_of(size="300x180", frame=frame, holes=holes, hole_diameter="5", inset=None, layout=None))
    assert len(drawing.of(Hole)) == (4 if holes == "corners" else 2)


def test_an_inset_that_is_given_is_kept():
    (left, _) = draw(spec_of(holes="side-pair", hole_diameter="5", inset="20", frame="8", layout=None)).of(Hole)
    assert left.x_mm == 20
