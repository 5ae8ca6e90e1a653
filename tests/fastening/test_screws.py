"""No cutter ever meets a screw that the sheet suggests."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import Point, box

from signgen.fastening.fastening import CLAMP_AIR_MM, CLAMP_GRIP_MM, fastening_of
from signgen.fastening.keep_out import tip_lines
from signgen.fastening.screws import ROUNDING_MM, suggest_screws
from signgen.job.facts import JobFacts
from signgen.shop.stock import GAP_MM, HEAD_STANDS_MM, SCREW_EDGE_MM, SCREW_HEAD_MM

Make = Callable[..., JobFacts]


def suggested(facts: JobFacts) -> tuple[tuple[float, float], ...]:
    pairs = [(program.tool, program.replay) for program in facts.programs]
    return suggest_screws(facts.drawing, facts.stock, facts.zero, pairs, facts.spec.machine.collet_series)


def nearest_mm(facts: JobFacts, x: float, y: float) -> float:
    """Distance in program coordinates from a point to the nearest flank of a cutter lower than a head may stand."""
    least = np.inf
    for program in facts.programs:
        lines = tip_lines(program.replay.motions)
        low = lines[lines[:, :, 2].min(axis=1) + facts.zero.z_mm < facts.drawing.thickness_mm + HEAD_STANDS_MM]
        for share in np.linspace(0, 1, 60):
            places = low[:, 0, :2] + (low[:, 1] - low[:, 0])[:, :2] * share
            least = min(least, float(np.hypot(*(places - (x, y)).T).min()) - program.tool.radius_mm)
    return least


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    width=st.floats(60, 500), height=st.floats(60, 400), margin=st.floats(8, 70),
    origin=st.sampled_from(["sign", "stock"]), z_zero=st.sampled_from(["bottom", "top"]),
)  # fmt: skip
def test_every_place_clears_every_cutter_and_lies_on_the_board(
    make_facts: Make, width: float, height: float, margin: float, origin: str, z_zero: str
) -> None:
    facts = make_facts(width=width, height=height, margin=margin, origin=origin, z_zero=z_zero, cell=20.0)
    left, front, right, back = facts.stock.bounds_mm
    for x, y in suggested(facts):
        assert nearest_mm(facts, x, y) >= SCREW_HEAD_MM / 2 + GAP_MM - ROUNDING_MM
        sx, sy = x + facts.zero.x_mm, y + facts.zero.y_mm
        rim = min(sx - left, right - sx, sy - front, back - sy)
        assert rim >= SCREW_HEAD_MM / 2 + SCREW_EDGE_MM - ROUNDING_MM
        assert not facts.drawing.edge.intersects(Point(sx, sy).buffer(SCREW_HEAD_MM / 2))


def test_a_board_with_room_gets_one_at_each_corner_the_same_on_both_sides(facts: JobFacts) -> None:
    places = suggested(facts)
    assert len(places) == 4
    mirrored = {(round(200 - x, 1), y) for x, y in places}
    assert mirrored == set(places)


def test_they_go_round_from_the_lower_left(facts: JobFacts) -> None:
    (x1, y1), (x2, y2), (x3, y3), (x4, y4) = suggested(facts)
    assert x1 == x4 < 0 < x2 == x3
    assert y1 == y2 < 0 < y3 == y4


def test_long_sides_get_one_in_the_middle_too(make_facts: Make) -> None:
    places = suggested(make_facts(width=400.0, cell=10.0))
    assert len(places) == 6
    assert sum(x == 200 for x, _ in places) == 2


def test_the_least_board_of_the_shop_has_room_for_them(make_facts: Make) -> None:
    from signgen.shop.stock import least_margin_mm

    assert len(suggested(make_facts(margin=least_margin_mm(6.0), cell=10.0))) == 4


def test_a_board_without_room_gets_none(make_facts: Make) -> None:
    assert suggested(make_facts(margin=15.0, cell=10.0)) == ()


def test_waste_in_front_and_behind_alone_is_used(make_facts: Make) -> None:
    facts = make_facts(cell=10.0)
    slim = replace(facts, stock=replace(facts.stock, width_mm=218.0, sign_x_mm=9.0))
    places = suggested(slim)
    assert len(places) == 4
    assert all(0 < x < 200 for x, _ in places)


def test_waste_on_one_side_alone_is_not_enough(make_facts: Make) -> None:
    facts = make_facts(cell=10.0)
    flush = replace(facts, stock=replace(facts.stock, width_mm=218.0, sign_x_mm=9.0, height_mm=169.0, sign_y_mm=9.0))
    assert suggested(flush) == ()


def test_a_screw_far_from_the_sign_is_brought_near(make_facts: Make) -> None:
    near = suggested(make_facts(margin=150.0, cell=20.0))
    assert min(x for x, _ in near) == pytest.approx(-28, abs=0.2)


def test_clamps_have_no_place_on_the_least_board_and_some_on_a_large_one(make_facts: Make) -> None:
    small, large = (fastening_of(make_facts(margin=margin, cell=10.0)) for margin in (20.0, 90.0))
    assert not small.takes_clamps
    assert large.takes_clamps
    assert large.clamp_room_mm > CLAMP_GRIP_MM


def test_the_line_for_clamps_encloses_nut_and_cutter(facts: JobFacts) -> None:
    line = fastening_of(facts).clamp_line
    # the nut of size 16 is 28 mm across, the cutter's middle runs 3 mm outside the sign
    assert line.contains(box(-16.9, 10, 216.9, 110))
    assert not line.contains(Point(-17 - CLAMP_AIR_MM - 0.5, 60))
