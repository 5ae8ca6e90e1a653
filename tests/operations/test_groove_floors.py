"""Who clears the flat floors of wide letters."""

from __future__ import annotations

from typing import Any

import shapely

from signgen.drawing.draw import draw
from signgen.features.groove import Groove
from signgen.job.report import report
from signgen.operations.choose import choose_cutters
from signgen.operations.clear_floor import ClearFloor
from signgen.operations.engrave import Engrave
from signgen.operations.groove_floors import clearing_of, groove_floors
from signgen.operations.plan import make_plan
from signgen.pipeline import prove
from tests.asking import english, spec_of

WIDE: dict[str, Any] = {"text": ["I"], "cap_height": "80", "depth": "1"}

FINE = {"text": ["HUTS"], "cap_height": "40", "depth": "1", "ridge": "0.02"}
"""Floors that take long by the V-bit alone, in strokes that are too narrow for the edge's end mill."""


def test_the_edge_cutter_clears_wide_floors_and_the_v_bit_the_rest() -> None:
    spec = spec_of(**WIDE)
    facts = prove(spec)
    assert [english(program.description) for program in facts.programs] == [
        ("engraves the letters",),
        ("clears the floor, 1 mm deep", "makes 4 holes of 7 mm", "cuts the sign out, leaving 4 tabs"),
    ]
    assert facts.checks.passed


def test_what_is_cleared_is_not_engraved_again() -> None:
    spec = spec_of(**WIDE)
    drawing = draw(spec)
    plan = make_plan(drawing, spec)
    engrave = next(op for run in plan.runs for op in run.operations if isinstance(op, Engrave))
    clear = next(op for run in plan.runs for op in run.operations if isinstance(op, ClearFloor))
    assert engrave.cleared is not None
    assert shapely.symmetric_difference(engrave.cleared, clear.reached()).area < 1e-6
    alone = Engrave(
        grooves=engrave.grooves, tool=engrave.tool, cutting=engrave.cutting, thickness_mm=engrave.thickness_mm,
        tolerances=engrave.tolerances, cusp_height_mm=engrave.cusp_height_mm,
    )  # fmt: skip
    lengths = [sum(cut.path.length_mm for cut in op.toolpath().cuts) for op in (engrave, alone)]
    assert lengths[0] < 0.5 * lengths[1]


def test_the_floor_is_the_area_less_what_the_wall_takes() -> None:
    # A 90 degree wall 1 mm high is 1 mm wide: plane geometry of cones.
    spec = spec_of(**WIDE)
    (floors,) = groove_floors(draw(spec), spec).values()
    (area,) = (groove.area for groove in draw(spec).of(Groove))
    assert abs(sum(floor.area.area for floor in floors) - area.buffer(-1, join_style="mitre").area) < 0.05


def test_letters_without_floors_are_left_to_the_v_bit() -> None:
    spec = spec_of()
    drawing = draw(spec)
    assert clearing_of(drawing, choose_cutters(drawing, spec), spec).operations == ()


def test_a_named_cutter_that_reaches_nothing_is_said() -> None:
    spec = spec_of(end_mill="6", depth="1.5")
    drawing = draw(spec)
    clearing = clearing_of(drawing, choose_cutters(drawing, spec), spec)
    assert clearing.operations == ()
    assert "The 6 mm end mill reaches none of the letters' flat floors" in english(clearing.remarks)[0]


def test_a_cutter_that_the_job_lacks_is_fitted_when_it_saves_minutes() -> None:
    spec = spec_of(**FINE)
    drawing = draw(spec)
    cutters = choose_cutters(drawing, spec)
    clearing = clearing_of(drawing, cutters, spec)
    assert clearing.remarks == ()
    assert {operation.tool for operation in clearing.operations}.isdisjoint(cutters.through)


def test_beside_a_named_cutter_it_is_named_when_it_saves_minutes() -> None:
    spec = spec_of(**FINE, end_mill="6")
    drawing = draw(spec)
    remarks = english(clearing_of(drawing, choose_cutters(drawing, spec), spec).remarks)
    assert "would clear the letters' flat floors in about" in remarks[-1]


def test_other_cutters_are_compared_with_the_one_that_clears() -> None:
    spec = spec_of(**WIDE)
    compared = make_plan(draw(spec), spec).compared
    assert compared is not None
    assert compared.tool is not None
    assert compared.tool.name not in {tool.name for tool, _ in compared.others}
    sizes = [tool.diameter_mm for tool, _ in compared.others]
    assert sizes == sorted(sizes, reverse=True)
    assert min(sizes) < compared.tool.diameter_mm
    # One that the job does not use costs a change (3 min, common practice) before it cuts anything.
    assert all(minutes > 3.0 for tool, minutes in compared.others if tool.diameter_mm < compared.tool.diameter_mm)


def test_a_smaller_cutter_that_pays_saves_what_the_remark_says() -> None:
    spec = spec_of(**FINE, end_mill="6")
    clearing = clearing_of(draw(spec), choose_cutters(draw(spec), spec), spec)
    assert clearing.compared is not None
    best = min(minutes for _, minutes in clearing.compared.others)
    assert f"in about {best:.0f} min instead of {clearing.compared.minutes:.0f}" in english(clearing.remarks)[-1]


def test_the_report_says_what_other_cutters_would_save_or_cost() -> None:
    told = report(prove(spec_of(**WIDE)))["engraving"]["floors"]
    assert told["minutes"] > 0
    for other in told["other_cutters"]:
        assert abs(told["minutes"] - other["minutes"] - other["saves_minutes"]) <= 0.1001
    assert report(prove(spec_of()))["engraving"]["floors"] is None
