"""Where cutters are touched off: on face that nothing takes, or on the spoilboard beside the board."""

from __future__ import annotations

from msgspec.structs import replace
from shapely.geometry import Point, box

from signgen.fastening.touching import AROUND_MM, touched_discs, touches_of
from signgen.features.groove import Groove
from signgen.features.recess import Panel, Recess
from signgen.shop.stock import WorkZero
from tests.checks.plate import DRAWING, END_MILL, MACHINE, STOCK, V_BIT, ZERO

TOP = WorkZero(x_mm=0, y_mm=0, z_mm=9)
TOOLS = (V_BIT, END_MILL)


def test_with_zero_on_top_the_face_is_touched_near_the_signs_middle() -> None:
    ways = touches_of(DRAWING, STOCK, TOP, TOOLS, 6.0, MACHINE)
    assert [[touch.on for touch in each] for each in ways] == [["face"], ["face"]]
    (first,), (second,) = ways
    assert (first.x_mm, first.y_mm) == (second.x_mm, second.y_mm)
    place = Point(first.x_mm, first.y_mm)
    room = END_MILL.radius_mm + AROUND_MM
    assert place.distance(Point(30, 20)) < 2
    assert place.distance(DRAWING.of(Groove)[0].area) >= room
    assert place.distance(Point(45, 20)) >= 4 + room


def test_with_zero_below_the_spoilboard_goes_before_the_face() -> None:
    (ways, _) = touches_of(DRAWING, STOCK, ZERO, TOOLS, 6.0, MACHINE)
    beside, face = ways
    assert (beside.on, face.on) == ("spoilboard", "face")
    assert not beside.plus_thickness
    assert face.plus_thickness
    # the nut, 28 mm wide, stays clear of the board whatever the stick-out
    assert box(*STOCK.bounds_mm).distance(Point(beside.x_mm, beside.y_mm)) >= 14


def test_where_the_whole_sign_is_sunk_the_waste_is_touched() -> None:
    sunk = DRAWING.having(Recess, (Panel(name="ground", source="panel", area=box(0, 0, 60, 40), depth_mm=2),))
    (first,), _ = touches_of(sunk, STOCK, TOP, TOOLS, 2.0, MACHINE)
    place = Point(first.x_mm, first.y_mm)
    assert box(*STOCK.bounds_mm).buffer(-END_MILL.radius_mm - AROUND_MM).covers(place)
    assert place.distance(DRAWING.edge) > 2.0 + END_MILL.radius_mm + AROUND_MM


def test_where_no_face_stands_the_spoilboard_serves_a_zero_on_top() -> None:
    """Derived here: on the paper the tip stands 0.1 mm over the spoilboard, 9 mm below the board's top."""
    sunk = DRAWING.having(Recess, (Panel(name="ground", source="panel", area=box(0, 0, 60, 40), depth_mm=2),))
    (first,), (second,) = touches_of(sunk, STOCK, TOP, TOOLS, 12.0, MACHINE)
    assert first == second
    assert first.on == "spoilboard"
    assert first.types_mm == -8.9


def test_the_spoilboard_is_left_out_where_the_machine_does_not_reach_it() -> None:
    short = replace(MACHINE, travel_mm=(75.0, 55.0, 80.0))
    (ways, _) = touches_of(DRAWING, STOCK, ZERO, TOOLS, 6.0, short)
    assert [touch.on for touch in ways] == ["face"]


def test_places_move_with_the_zero() -> None:
    corner = WorkZero(x_mm=-12, y_mm=-12, z_mm=9)
    (here,), _ = touches_of(DRAWING, STOCK, TOP, TOOLS, 6.0, MACHINE)
    (there,), _ = touches_of(DRAWING, STOCK, corner, TOOLS, 6.0, MACHINE)
    assert (there.x_mm - 12, there.y_mm - 12) == (here.x_mm, here.y_mm)


def test_a_touched_place_keeps_screws_away() -> None:
    ways = touches_of(DRAWING, STOCK, TOP, TOOLS, 6.0, MACHINE)
    (disc,) = touched_discs(ways, TOP, TOOLS)
    assert disc.contains(Point(ways[0][0].x_mm, ways[0][0].y_mm).buffer(6.0))
