"""Which cutters a job takes."""

from __future__ import annotations

import pytest

from signgen.drawing.draw import draw
from signgen.errors import CannotMakeError
from signgen.operations.choose import choose_cutters
from signgen.operations.plan import make_plan
from tests.asking import spec_of


def tools(**changes: object) -> list[str]:
    spec = spec_of(**changes)
    return [run.tool.name for run in make_plan(draw(spec), spec).runs]


def test_two_cutters_make_the_house_number() -> None:
    assert tools() == ["v-bit-90", "end-mill-6"]


def test_small_holes_beside_a_six_millimetre_edge_cutter_add_a_third_program() -> None:
    # The contract's own example: 5 mm holes in 12 mm plywood.
    assert tools(hole_diameter="5") == ["v-bit-90", "drill-5", "end-mill-6"]


def test_a_thin_cutter_bores_small_holes_but_is_not_sent_round_a_thick_edge() -> None:
    # Common practice: an edge no deeper than three diameters.
    assert tools(hole_diameter="5.5") == ["v-bit-90", "end-mill-4", "end-mill-6"]


def test_in_thin_stock_one_thin_cutter_does_holes_and_edge() -> None:
    assert tools(thickness="6", hole_diameter="5.5") == ["v-bit-90", "end-mill-4"]


def test_no_holes_no_cutter_for_them() -> None:
    assert tools(holes="none", hole_diameter=None, inset=None) == ["v-bit-90", "end-mill-6"]


def test_a_named_cutter_is_kept_to() -> None:
    spec = spec_of(end_mill="6")
    cutters = choose_cutters(draw(spec), spec)
    assert cutters.edge.diameter_mm == 6.0
    assert {tool.diameter_mm for _, tool in cutters.holes} == {6.0}


def test_a_named_cutter_that_is_too_thick_for_the_holes_is_an_error_that_says_which_would_do() -> None:
    spec = spec_of(end_mill="6", hole_diameter="5")
    with pytest.raises(CannotMakeError) as error:
        choose_cutters(draw(spec), spec)
    (problem,) = error.value.problems
    assert problem.where == "end-mill"
    assert "The largest that would do has 4.7 mm" in str(problem.what)


def test_a_board_that_no_cutter_reaches_through() -> None:
    spec = spec_of(thickness="45", text=["17"])
    with pytest.raises(CannotMakeError) as error:
        choose_cutters(draw(spec), spec)
    assert error.value.problems[0].where == "thickness"
