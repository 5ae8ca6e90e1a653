"""What a round cutter leaves in inside corners, against check-values 15.3: in a corner of the angle a the gap is
R (1 / sin(a / 2) - 1) and the area R^2 (cot(a / 2) - (pi - a) / 2)."""

import math
import re

import pytest
from shapely.geometry import Point

from signgen.borders import BORDERS
from signgen.drawing.edge import ROOM_RATIO, edge_cutter_mm, edge_of
from signgen.geometry.offsets import outward
from tests.asking import spec_of


def arrow(**changes):
    return spec_of(
        border="arrow", barb="20", point_length="50", size="220x100", holes="none", hole_diameter=None, inset=None,
        **changes,
    )  # fmt: skip


@pytest.mark.parametrize("end_mill", ["3", "4", "6"])
def test_corners_behind_an_arrows_barbs_get_the_cutters_radius(end_mill):
    spec = arrow(end_mill=end_mill, thickness="7")
    outline = spec.border.outline(220, 100, 0.0025)
    edge, warnings = edge_of(spec)
    radius = ROOM_RATIO * float(end_mill) / 2
    assert edge.area - outline.area == pytest.approx(2 * 0.214602 * radius**2, rel=0.02)
    gap = edge.exterior.distance(Point(170, 20))
    assert gap == pytest.approx(0.414214 * radius, abs=0.003)
    assert edge.is_valid
    assert not edge.interiors
    assert edge.bounds == pytest.approx((0, 0, 220, 100), abs=1e-5)
    assert len(warnings) == 1
    said = re.search(r"2 inside corners of the edge round, with up to ([\d.]+) mm", warnings[0])
    assert float(said[1]) == pytest.approx(gap, abs=0.011)


def test_the_cutters_disc_rolls_round_the_drawn_edge_without_leaving_anything():
    spec = arrow()
    edge, _ = edge_of(spec)
    radius = edge_cutter_mm(spec) / 2
    assert radius == 3
    (way,) = outward(edge, radius, 0.0005)
    kerf = way.exterior.buffer(radius, quad_segs=64)
    assert kerf.intersection(edge).area < 0.01 * edge.length * 0.1
    near = [p for p in edge.exterior.segmentize(0.5).coords if kerf.distance(Point(p)) > 0.01]
    assert not near


@pytest.mark.parametrize("border", [b for b in BORDERS if not b.argument], ids=lambda b: b.name)
def test_outlines_that_the_cutter_can_follow_stay_as_they_are(border):
    size = "140x140" if border.name == "circle" else "220x140"
    spec = spec_of(border=border.name, size=size)
    width = spec.width_mm
    edge, warnings = edge_of(spec)
    assert edge.equals(spec.border.outline(width, 140, spec.tolerances.chord_mm))
    assert not warnings


def test_a_hollow_smaller_than_the_cutter_is_said_to_be_filled():
    spec = spec_of(border="scalloped", corner_radius="2")
    edge, (warning,) = edge_of(spec)
    assert "4 inside corners" in warning
    assert edge.area > spec.border.outline(220, 140, 0.0025).area
    assert math.isclose(edge.bounds[2], 220, abs_tol=1e-5)


def test_the_planner_may_take_no_thicker_cutter_for_the_edge_than_it_was_drawn_for():
    from signgen.drawing.draw import draw
    from signgen.operations.choose import choose_cutters

    for changes in ({}, {"thickness": "6", "hole_diameter": "3.4"}, {"thickness": "19"}, {"end_mill": "6"}):
        spec = spec_of(**changes)
        assert choose_cutters(draw(spec), spec).edge.diameter_mm <= edge_cutter_mm(spec)
