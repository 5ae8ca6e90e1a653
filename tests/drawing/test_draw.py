"""The sign put together and looked over."""

from __future__ import annotations

import itertools

import pytest
from shapely.geometry import Point
from shapely.ops import unary_union

from signgen.drawing.draw import draw
from signgen.drawing.spacing import LEAST_WALL_MM
from signgen.errors import CannotMakeError, SignGenError
from signgen.features.groove import Groove
from signgen.features.hole import Hole
from signgen.features.tab import Tab
from tests.asking import spec_of


def test_what_leaves_the_stage_keeps_its_promise() -> None:
    drawing = draw(spec_of(border="rounded", corner_radius="10", frame="5", frame_width="1.5", rule_width="1"))
    assert drawing.edge.is_valid
    assert drawing.edge.exterior.is_ccw
    assert drawing.edge.bounds == pytest.approx((0, 0, 220, 140))
    names = [part.name for part in (*drawing.of(Groove), *drawing.of(Hole), *drawing.of(Tab))]
    assert len(names) == len(set(names))
    for groove in drawing.of(Groove):
        assert groove.area.is_valid
        assert drawing.edge.buffer(-LEAST_WALL_MM).contains(groove.area)
        for hole in drawing.of(Hole):
            assert groove.area.distance(Point(hole.x_mm, hole.y_mm)) >= hole.diameter_mm / 2 + LEAST_WALL_MM
    for one, other in itertools.combinations(drawing.of(Groove), 2):
        assert one.area.intersection(other.area).area < 0.01


def test_text_is_centred_by_its_ink_and_as_large_as_fits() -> None:
    drawing = draw(spec_of())
    x0, y0, x1, y1 = unary_union([groove.area for groove in drawing.of(Groove)]).bounds
    assert ((x0 + x1) / 2, (y0 + y1) / 2) == pytest.approx((110, 70), abs=0.01)
    with pytest.raises(CannotMakeError):
        draw(spec_of(cap_height=str(drawing.cap_height_mm * 1.4)))


def test_the_height_asked_for_is_the_height_of_a_capital() -> None:
    drawing = draw(spec_of(text=["H"], cap_height="40"))
    (h,) = drawing.of(Groove)
    assert h.area.bounds[3] - h.area.bounds[1] == pytest.approx(40.0, abs=0.01)


def test_holes_lie_where_the_inset_says() -> None:
    drawing = draw(spec_of())
    assert {(hole.x_mm, hole.y_mm) for hole in drawing.of(Hole)} == {(14, 14), (206, 14), (206, 126), (14, 126)}


@pytest.mark.parametrize(
    ("changes", "where"),
    [
        ({"cap_height": "90"}, "cap-height"),
        ({"text": ["A very long line that has no room on a door plaque, whatever one does"], "size": "60x30",
          "inset": "6", "hole_diameter": "4"}, "text"),
        ({"inset": "1"}, "holes"),
        ({"holes": "at:110,70", "inset": None, "cap_height": "60", "text": ["HHH"]}, "cap-height"),
        ({"holes": "at:50,50;57.5,50", "inset": None}, "holes"),
        ({"rule_width": "20"}, "rule-width"),
    ],
)  # fmt: skip
def test_what_has_no_room_is_refused_under_the_word_that_was_typed(changes: dict[str, object], where: str) -> None:
    with pytest.raises(SignGenError) as error:
        draw(spec_of(**changes))
    assert error.value.exit_code == 4
    assert {problem.where for problem in error.value.problems} == {where}
    assert all(problem.remedy for problem in error.value.problems)


def test_a_character_that_the_face_lacks_is_named() -> None:
    with pytest.raises(SignGenError) as error:
        draw(spec_of(text=["17 東"]))
    assert "東" in str(error.value)
