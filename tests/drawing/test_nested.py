"""Signs on a sheet are the signs, moved: nothing bends, nothing is lost, every name is its own."""

from __future__ import annotations

import pytest
from msgspec.structs import replace
from shapely import affinity
from shapely.geometry import MultiPolygon, Point, Polygon, box

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.drawing.nested import Placement, nested
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Countersink, Hole
from signgen.features.tab import Tab
from tests.asking import spec_of


@pytest.fixture(scope="module")
def sign() -> Drawing:
    return draw(spec_of(text=["7", "Lark"], size="120x70"))


def at(x: float, y: float, turned: bool = False, name: str = "1") -> Placement:
    return Placement(name=name, x_mm=x, y_mm=y, turned=turned)


def turned_by_shapely(area: Polygon | MultiPolygon, height: float) -> Polygon | MultiPolygon:
    """A quarter to the left about the origin, then back to where the corner is: shapely's own rotation."""
    return affinity.translate(affinity.rotate(area, 90, origin=(0, 0)), height, 0)


def test_one_sign_at_the_origin_is_itself(sign: Drawing) -> None:
    sheet = nested([(sign, at(33, 44))])
    assert (sheet.width_mm, sheet.height_mm, sheet.thickness_mm) == (120, 70, 12)
    assert sheet.edge.equals_exact(MultiPolygon([sign.edge]), 1e-9)
    for kind in (Hole, Tab):
        moved = [replace(each, name=each.name[3:], piece="", title=None) for each in sheet.of(kind)]
        assert moved == [replace(each, title=None) for each in sign.of(kind)]
        assert [str(each.called) for each in sheet.of(kind)] == [each.name for each in sheet.of(kind)]
    for placed, groove in zip(sheet.of(Groove), sign.of(Groove), strict=True):
        assert placed.area.equals_exact(groove.area, 1e-9)
        assert placed.name == f"1: {groove.name}"


def test_a_turned_sign_is_turned_as_shapely_turns_it(sign: Drawing) -> None:
    sheet = nested([(sign, at(0, 0, turned=True))])
    assert (sheet.width_mm, sheet.height_mm) == (70, 120)
    assert sheet.edge.equals_exact(MultiPolygon([turned_by_shapely(sign.edge, 70)]), 1e-9) or sheet.edge.equals(
        turned_by_shapely(sign.edge, 70)
    )
    for moved, groove in zip(sheet.of(Groove), sign.of(Groove), strict=True):
        assert moved.area.symmetric_difference(turned_by_shapely(groove.area, 70)).area < 1e-9
    for moved_hole, hole in zip(sheet.of(Hole), sign.of(Hole), strict=True):
        there = affinity.translate(affinity.rotate(Point(hole.x_mm, hole.y_mm), 90, origin=(0, 0)), 70, 0)
        assert (moved_hole.x_mm, moved_hole.y_mm) == pytest.approx((there.x, there.y))
    for tab in sheet.of(Tab):
        assert sheet.edge.boundary.distance(Point(tab.x_mm, tab.y_mm)) < 1e-9
        inside = Point(tab.x_mm - 0.5 * tab.along_y, tab.y_mm + 0.5 * tab.along_x)
        assert sheet.edge.contains(inside)  # the sign is on the left of a tab's direction


def test_shells_stay_counter_clockwise(sign: Drawing) -> None:
    sheet = nested([(sign, at(0, 0)), (sign, at(200, 0, turned=True, name="2"))])
    assert all(outline.exterior.is_ccw for outline in sheet.outlines)
    for groove in sheet.of(Groove):
        parts = groove.area.geoms if isinstance(groove.area, MultiPolygon) else [groove.area]
        assert all(part.exterior.is_ccw for part in parts)


def test_slots_turn_with_their_sign(sign: Drawing) -> None:
    slot = Hole(name="slot", x_mm=60, y_mm=20, diameter_mm=5, span_mm=10, angle_deg=30)
    sunk = Hole(name="sunk", x_mm=20, y_mm=20, diameter_mm=5, sink=Countersink(diameter_mm=9, angle_deg=90))
    sheet = nested([(sign.having(Hole, (slot, sunk)), at(0, 0, turned=True))])
    ends = [Point(end) for end in slot.ends_mm]
    there = [affinity.translate(affinity.rotate(end, 90, origin=(0, 0)), 70, 0) for end in ends]
    for found, end in zip(sheet.of(Hole)[0].ends_mm, there, strict=True):
        assert found == pytest.approx((end.x, end.y))
    assert sheet.of(Hole)[1].sink == sunk.sink


def test_the_origin_is_the_corner_of_all_pieces(sign: Drawing) -> None:
    sheet = nested([(sign, at(50, 300)), (sign, at(200, 20, turned=True, name="2"))])
    assert sheet.edge.bounds == pytest.approx((0, 0, sheet.width_mm, sheet.height_mm))
    assert (sheet.width_mm, sheet.height_mm) == (200 + 70 - 50, 300 + 70 - 20)
    assert sheet.pieces == ("1", "2")
    assert [outline.bounds for outline in sheet.outlines] == [
        pytest.approx(box(0, 280, 120, 350).bounds),
        pytest.approx(box(150, 0, 220, 120).bounds),
    ]
    assert {tab.piece for tab in sheet.of(Tab)} == {"1", "2"}
    for tab in sheet.of(Tab):
        assert (
            dict(zip(sheet.pieces, sheet.outlines, strict=True))[tab.piece].exterior.distance(Point(tab.x_mm, tab.y_mm))
            < 1e-9
        )


def test_names_are_unique_on_the_sheet(sign: Drawing) -> None:
    sheet = nested([(sign, at(0, 0)), (sign, at(200, 0, name="2"))])
    names = [feature.name for feature in (*sheet.of(Hole), *sheet.of(Groove), *sheet.of(Tab))]
    assert len(names) == len(set(names)) == 2 * len((*sign.of(Hole), *sign.of(Groove), *sign.of(Tab)))


def test_the_lines_of_strokes_go_with_their_letters() -> None:
    sign = draw(spec_of(text=["7"], finish="stroke", font="hershey-sans"))
    turned = Placement(name="2", x_mm=300, y_mm=10, turned=True)
    for groove in nested([(sign, at(0, 0)), (sign, turned)]).of(Stroke):
        pen = groove.lines.buffer(groove.limit_radius_mm, quad_segs=64)
        assert pen.symmetric_difference(groove.area).area < 0.002 * groove.area.area


def test_signs_of_different_thickness_are_refused(sign: Drawing) -> None:
    with pytest.raises(ValueError, match="one thickness"):
        nested([(sign, at(0, 0)), (replace(sign, plate=replace(sign.plate, thickness_mm=9)), at(200, 0, name="2"))])
    with pytest.raises(ValueError, match="one thickness"):
        nested([])
