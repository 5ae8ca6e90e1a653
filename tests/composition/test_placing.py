"""Where the middle of the text may lie."""

import numpy as np
import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from signgen.borders import BORDERS
from signgen.composition.fit import largest_size, lying_within
from signgen.composition.placing import text_middles
from signgen.drawing.draw import draw
from signgen.features.groove import Groove
from signgen.lettering.faces import open_face
from signgen.lettering.layout import alike, measure_lines, stacked
from tests.asking import english, spec_of

ALIKE = {"rectangle", "rounded", "chamfered", "scalloped", "ogee", "oval", "circle", "pill", "hexagon", "octagon"}
UPRIGHT = {"arched", "gable", "shield"}
LYING = {"arrow", "tag"}


def outline_of(name, width=220, height=140):
    border = next(each for each in BORDERS if each.name == name)
    return border.from_options("", {}, width, height).outline(width, height, 0.0025)


@pytest.mark.parametrize("name", sorted(ALIKE))
def test_a_sign_alike_on_all_sides_has_its_text_in_its_middle(name):
    edge = outline_of(name, 140) if name == "circle" else outline_of(name)
    middles = text_middles(edge, edge.buffer(-10).difference(box(0, 0, 60, 60)))
    assert middles == pytest.approx(np.array([[edge.bounds[2] / 2, 70]]))


@pytest.mark.parametrize("name", sorted(UPRIGHT | LYING))
def test_another_sign_has_it_on_its_axis_nearest_to_the_centroid_first(name):
    edge = outline_of(name)
    middles = text_middles(edge, edge.buffer(-10))
    fixed, free = (0, 1) if name in UPRIGHT else (1, 0)
    centroid = (edge.centroid.x, edge.centroid.y)
    assert np.ptp(middles[:, fixed]) == 0
    assert middles[0] == pytest.approx(centroid, abs=1e-6)
    away = np.abs(middles[:, free] - centroid[free])
    assert (np.diff(away) >= -1e-9).all()
    assert np.ptp(middles[:, free]) > 60


def test_a_lopsided_sign_may_have_it_anywhere():
    edge = Polygon([(0, 0), (100, 0), (100, 60), (30, 60), (30, 40), (0, 40)])
    middles = text_middles(edge, edge)
    assert np.ptp(middles, axis=0) == pytest.approx((100, 60))


def test_text_is_at_least_as_large_as_in_the_middle_of_the_bounds():
    for border in ("gable", "shield", "arrow", "tag", "arched"):
        spec = spec_of(border=border, holes="none", hole_diameter=None, inset=None)
        free = draw(spec).cap_height_mm
        room = spec.border.outline(220, 140, 0.0025).buffer(-spec.text.margin_mm)
        for _, x, y, d in spec.border.eyes(220, 140):
            away = d / 2 + min(spec.text.margin_mm, d)
            room = room.difference(box(x - away, y - away, x + away, y + away))
        lines = measure_lines(alike(spec.text.lines, open_face(spec.text.font)))

        def places(size, middles, room=room, lines=lines):
            return lying_within(room, [row.box_mm for row in stacked(lines, [size] * 2)], middles)

        found = largest_size(places, np.array([[110.0, 70.0]]), 3, 140)
        assert found is None or free >= found[0]


def test_text_lies_below_a_roof():
    drawing = draw(spec_of(text=["XXX"], border="gable", size="200x200", holes="none", hole_diameter=None, inset=None))
    low = min(groove.area.bounds[1] for groove in drawing.of(Groove))
    high = max(groove.area.bounds[3] for groove in drawing.of(Groove))
    assert (low + high) / 2 < 90


def test_text_that_has_no_room_in_the_middle_goes_above_or_below_what_is_there():
    drawing = draw(spec_of(text=["17"], size="200x140", holes="centre", hole_diameter="8", inset=None))
    x0, y0, x1, y1 = unary_union([groove.area for groove in drawing.of(Groove)]).bounds
    assert (x0 + x1) / 2 == pytest.approx(100, abs=0.01)
    assert y1 < 70 - 4 or y0 > 70 + 4
    assert drawing.cap_height_mm > 20
    assert "The text lies off the middle of the sign, for it has no room there." in english(drawing.warnings)
    asked = draw(spec_of(text=["17"], size="200x140", holes="centre", hole_diameter="8", inset=None, cap_height="15"))
    low, high = (box(*unary_union([groove.area for groove in asked.of(Groove)]).bounds).bounds[i] for i in (1, 3))
    assert high < 70 - 4 or low > 70 + 4
