import math

import pytest
from shapely.geometry import Point

from signgen.borders.circle import Circle
from signgen.errors import CannotMakeError


def test_every_vertex_lies_on_the_circle_and_chords_stay_near_it():
    outline = Circle().outline(150, 150, 0.01)
    for p in outline.exterior.coords:
        assert math.dist(p, (75, 75)) == pytest.approx(75)
    assert outline.exterior.distance(Point(75, 75)) >= 75 - 0.01


def test_refuses_a_sign_that_is_not_square():
    with pytest.raises(CannotMakeError) as caught:
        Circle().outline(220, 140, 0.01)
    assert str(caught.value) == (
        "border: A circle is as wide as high, and the sign has 220 x 140 mm. Use a size of 140x140, or the border oval."
    )
