"""Signs by default options look as they were accepted."""

from tests.golden.composed import FIGURES, SIGNS, drawings, figures


def test_forty_signs_are_composed_as_accepted():
    assert len(SIGNS.read_text().splitlines()) >= 40
    assert figures(list(drawings())) == FIGURES.read_text()
