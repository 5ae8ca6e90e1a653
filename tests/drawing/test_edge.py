"""What a round cutter leaves in inside corners, against plane geometry: in a corner of the angle a the gap is
R (1 / sin(a / 2) - 1) and the area R^2 (cot(a / 2) - (pi - a) / 2)."""

import math
import re

import pytest
from shapely.geometry import Point, Polygon

from signgen.borders import BORDERS
from signgen.drawing.edge import ROOM_RATIO, edge_of, follows, left_by
from signgen.errors import CannotMakeError
from signgen.geometry.offsets import outward
from signgen.spec.edge_mills import edge_mills
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
    said = re.search(r"2 inside corners of the edge round, with up to ([\d.]+) mm", str(warnings[0]))
    assert float(said[1]) == pytest.approx(gap, abs=0.011)


def test_the_cutters_disc_rolls_round_the_drawn_edge_without_leaving_anything():
    spec = arrow()
    edge, _ = edge_of(spec)
    radius = edge_mills(spec)[0].diameter_mm / 2
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
    assert "4 inside corners" in str(warning)
    assert edge.area > spec.border.outline(220, 140, 0.0025).area
    assert math.isclose(edge.bounds[2], 220, abs_tol=1e-5)


NOTCHES = {
    "a slot": "M0 0H98V30H102V0H200V100H0Z",
    "a nick": "M0 0H98V3H102V0H200V100H0Z",
    "a slot from the side": "M0 0H200V48H150V51H200V100H0Z",
    "a narrow V": "M0 0H95L100 20L105 0H200V100H0Z",
    "a keyhole": "M0 0H98V12A8 8 0 1 0 102 12V0H200V100H0Z",
}


def notched(tmp_path, way, **changes):
    file = tmp_path / "plate.svg"
    view = 'width="200mm" height="100mm" viewBox="0 0 200 100"'
    file.write_text(f'<svg xmlns="http://www.w3.org/2000/svg" {view}><path d="{way}"/></svg>')
    plain = {"holes": None, "hole_diameter": None, "inset": None, "text": ["Lane"], "cap_height": "15"}
    return spec_of(border=f"path:{file}", size="200x100", **{**plain, **changes})


@pytest.mark.parametrize("thickness", ["10", "12"])
@pytest.mark.parametrize("way", NOTCHES.values(), ids=NOTCHES)
def test_a_notch_too_narrow_for_the_cutters_is_refused_with_one_that_gets_in(tmp_path, way, thickness):
    with pytest.raises(CannotMakeError) as refused:
        edge_of(notched(tmp_path, way, thickness=thickness))
    said = str(refused.value)
    assert re.match(r"border: The \d mm cutter does not get into a notch of the outline near X[\d.]+ Y[\d.]+: ", said)
    would = re.search(r"end-mill ([\d.]+), which gets in|an end-mill of ([\d.]+) mm or less", said)
    spec = notched(tmp_path, way, thickness=thickness, end_mill=would[1] or would[2])
    edge, _ = edge_of(spec)
    ordered = spec.border.outline(200, 100, spec.tolerances.chord_mm)
    assert edge.area - ordered.area < 10


@pytest.mark.parametrize(("wide", "cutter"), [(6.2, 6), (4.2, 4), (5.9, 4)])
def test_a_notch_is_cut_by_the_stoutest_cutter_that_gets_in(tmp_path, wide, cutter):
    from signgen.drawing.draw import draw
    from signgen.operations.choose import choose_cutters

    spec = notched(tmp_path, f"M0 0H98V30H{98 + wide}V0H200V100H0Z", thickness="9")
    drawing = draw(spec)
    assert choose_cutters(drawing, spec).edge.diameter_mm == cutter
    assert follows(drawing.edge, cutter)
    assert not follows(drawing.edge, wide + 0.2)


def test_a_named_cutter_that_does_not_get_in_is_refused_by_its_option(tmp_path):
    with pytest.raises(CannotMakeError, match=r"end-mill: The 6 mm cutter does not get into a notch"):
        edge_of(notched(tmp_path, NOTCHES["a slot"], end_mill="6"))


def test_a_corner_of_sixty_degrees_is_a_corner():
    # Source: plane geometry: R (1 / sin 30 - 1) = R.
    corner = Polygon([(0, 0), (100, 0), (100, 60), (70, 60), (50, 60 - 20 * math.sqrt(3)), (30, 60), (0, 60)])
    left = left_by(corner, 6.0, 0.0025)
    assert left.deepest_mm == pytest.approx(3 * ROOM_RATIO, abs=0.01)
    assert left.notch_at_mm is None


def test_the_planner_may_take_no_thicker_cutter_for_the_edge_than_it_was_drawn_for():
    from signgen.drawing.draw import draw
    from signgen.operations.choose import choose_cutters

    for changes in ({}, {"thickness": "6", "hole_diameter": "3.4"}, {"thickness": "19"}, {"end_mill": "6"}):
        spec = spec_of(**changes)
        assert choose_cutters(draw(spec), spec).edge.diameter_mm <= edge_mills(spec)[0].diameter_mm
