import pytest

from signgen.borders.arrow import Arrow
from signgen.errors import CannotMakeError


@pytest.mark.parametrize(
    ("to", "points"),
    [
        ("right", [(150, 0), (200, 50), (150, 100), (0, 100), (0, 0)]),
        ("left", [(200, 0), (200, 100), (50, 100), (0, 50), (50, 0)]),
        ("both", [(150, 0), (200, 50), (150, 100), (50, 100), (0, 50), (50, 0)]),
    ],
)
def test_points_where_it_should(to, points):
    outline = Arrow(to=to, point_mm=50, barb_mm=0).outline(200, 100, 0.01)
    assert set(outline.exterior.coords) == set(map(tuple, points))


def test_points_to_the_right_at_a_right_angle_unasked():
    assert Arrow.from_options("", {}, 220, 100) == Arrow(to="right", point_mm=50, barb_mm=0)
    assert Arrow.from_options("", {"arrow-to": "both"}, 120, 100).point_mm == 40


@pytest.mark.parametrize(("to", "count", "area"), [("right", 7, 150 * 60 + 2500), ("both", 10, 100 * 60 + 5000)])
def test_barbs_stand_out_from_the_shaft(to, count, area):
    outline = Arrow(to=to, point_mm=50, barb_mm=20).outline(200, 100, 0.01)
    assert len(outline.exterior.coords) == count + 1
    assert outline.area == pytest.approx(area)


@pytest.mark.parametrize(
    ("arrow", "where", "most"),
    [
        (Arrow(to="right", point_mm=201, barb_mm=0), "point-length", "200"),
        (Arrow(to="both", point_mm=101, barb_mm=0), "point-length", "100"),
        (Arrow(to="left", point_mm=50, barb_mm=41), "barb", "40"),
    ],
)
def test_refuses_what_leaves_no_shaft(arrow, where, most):
    with pytest.raises(CannotMakeError, match=rf"^{where}: .* Use at most {most} mm\.$"):
        arrow.outline(200, 100, 0.01)
