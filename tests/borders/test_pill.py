"""A stadium: area 2 r a + pi r^2, perimeter 2 a + 2 pi r (plane geometry; r 5, a 40: 478.540, 111.416)."""

import pytest

from signgen.borders.pill import Pill


@pytest.mark.parametrize("size", [(50, 10), (10, 50)])
def test_agrees_with_the_hand_values_of_a_stadium(size):
    outline = Pill().outline(*size, 1e-6)
    assert outline.area == pytest.approx(478.540, abs=1e-3)
    assert outline.length == pytest.approx(111.416, abs=1e-3)
