"""Every way to make letters: simulated against its drawing, refused when it cannot be made."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
import shapely
from msgspec.structs import replace
from shapely import affinity

from signgen.checks import judge
from signgen.drawing.draw import draw
from signgen.errors import AskError, CannotMakeError
from signgen.features.groove import Groove, Stroke
from signgen.features.hole import Hole
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.job.facts import JobFacts
from signgen.operations.clear_floor import ClearFloor
from signgen.operations.plan import make_plan
from signgen.operations.recesses import has_room, largest_cutter_mm
from signgen.pipeline import prove
from signgen.spec.sign_file import dump_sign_file
from tests.asking import english, spec_of

FACES = ("barlow", "big-shoulders", "roboto-slab")
NUMBER: dict[str, Any] = {"text": ["17"]}


def ground_mm(facts: JobFacts, x_mm: float, y_mm: float) -> float:
    """How deep the simulated board is at a place."""
    board = facts.boards[-1]
    i, j = round((x_mm - board.x0_mm) / board.cell_mm), round((y_mm - board.y0_mm) / board.cell_mm)
    return facts.spec.thickness_mm - float(board.z_mm[j, i])


def problems(**changes: Any) -> list[str]:
    def attempt() -> None:
        spec = spec_of(**changes)
        make_plan(draw(spec), spec)

    with pytest.raises((AskError, CannotMakeError)) as caught:
        attempt()
    return [f"{problem.where}: {problem.what} {problem.remedy}" for problem in caught.value.problems]


def test_recessed_letters_are_flat_pockets_of_the_end_mill_alone() -> None:
    facts = prove(spec_of(**NUMBER, finish="recess", depth="3"))
    assert [program.tool.kind for program in facts.programs] == ["end-mill"]
    assert facts.checks.passed
    for recess in facts.drawing.of(Recess):
        x, y = shapely.get_coordinates(shapely.point_on_surface(recess.area))[0]
        assert ground_mm(facts, x, y) == pytest.approx(3.0, abs=0.01)


def test_the_corners_that_stay_round_are_reported_with_their_area() -> None:
    facts = prove(spec_of(**NUMBER, finish="recess"))
    (said,) = [warning for warning in english(facts.warnings) if warning.startswith("Inner corners stay round")]
    # The same figure from shapely's own opening.
    left = sum(
        r.area.area - r.area.buffer(-3, quad_segs=64).buffer(3, quad_segs=64).area for r in facts.drawing.of(Recess)
    )
    assert float(said.split("reach ")[1].split(" ")[0]) == pytest.approx(left, abs=0.2)
    (detail,) = [str(result.detail) for result in facts.checks.results if result.code == "C126"]
    assert f"{left:.1f} mm2 in corners" in detail


def test_a_right_angle_leaves_what_the_formula_says() -> None:
    # plane geometry: r^2 (cot(a / 2) - (pi - a) / 2).
    square = shapely.box(0, 0, 20, 20)
    reach = square.buffer(-3, quad_segs=256).buffer(3, quad_segs=256)
    assert square.area - reach.area == pytest.approx(4 * 9 * (1 - math.pi / 4), abs=0.01)


def test_sharp_corners_are_cut_by_the_v_bit_first() -> None:
    facts = prove(spec_of(**NUMBER, finish="recess", sharp_corners="true"))
    assert [english(program.description)[0] for program in facts.programs] == [
        "sharpens the corners",
        "clears the floors, 3 mm deep",
    ]
    assert not any(warning.startswith("Inner corners") for warning in english(facts.warnings))
    (seven,) = [recess for recess in facts.drawing.of(Recess) if recess.text == "7"]
    # At the upper left corner, a right angle, 1 mm inside both walls the slope of 45 degrees is 1 mm deep.
    x0, _, _, y1 = seven.area.bounds
    assert ground_mm(facts, x0 + 1.0, y1 - 1.0) >= 0.95
    blunt = prove(spec_of(**NUMBER, finish="recess"))
    assert ground_mm(blunt, x0 + 0.5, y1 - 0.5) == 0.0


def test_raised_letters_stand_at_the_face_in_a_sunken_panel() -> None:
    facts = prove(spec_of(text=["AB"], finish="raised", panel="22", panel_depth="2.5"))
    assert facts.checks.passed
    (ground,) = facts.drawing.of(Recess)
    x, y = shapely.get_coordinates(shapely.point_on_surface(ground.area))[0]
    assert ground_mm(facts, x, y) == pytest.approx(2.5, abs=0.01)
    for letter in facts.drawing.of(Raised):
        x, y = shapely.get_coordinates(shapely.point_on_surface(letter.area))[0]
        assert ground_mm(facts, x, y) == 0.0
    assert ground_mm(facts, 110, 11) == 0.0  # the rim


def test_recessed_letters_in_a_panel_begin_on_its_floor() -> None:
    facts = prove(spec_of(text=["BAY"], finish="recess", panel="20", depth="2", panel_depth="1.5"))
    letter = facts.drawing.of(Recess)[1]
    x, y = shapely.get_coordinates(shapely.point_on_surface(letter.area))[0]
    assert ground_mm(facts, x, y) == pytest.approx(3.5, abs=0.01)


def test_a_stroke_narrower_than_the_cutter_names_the_largest_that_would_do() -> None:
    (said,) = problems(finish="recess", end_mill="8", end_mill_length="20", holes="none", hole_diameter=None,
                       inset=None, text=["17"], cap_height="40")  # fmt: skip
    drawn = draw(spec_of(finish="recess", text=["17"], cap_height="40"))
    least, name = min((largest_cutter_mm(recess.area), recess.name) for recess in drawn.of(Recess))
    start = f"end-mill: A 8 mm end mill has no room in {name}: the largest cutter that would do has {least:g} mm."
    assert said.startswith(start)


def test_no_cutter_in_the_shop_is_said_before_anything_is_cut() -> None:
    (said,) = problems(finish="recess")  # the small line of the house number
    assert said.startswith("finish: No end mill in the shop has room in line 2 letter")


def test_letters_too_close_for_the_cutter_are_an_error() -> None:
    said = problems(finish="raised", text=["17", "Larkspur"], panel="22")
    assert "has room in ground" in said[0]


@pytest.mark.parametrize(
    ("area", "diameter", "fits"),
    [
        (shapely.box(0, 0, 6.1, 40), 6.0, True),
        (shapely.box(0, 0, 5.9, 40), 6.0, False),
        # A dumb-bell: both ends have room, the neck has not.
        (shapely.union_all([shapely.box(*b) for b in ((0, 0, 20, 20), (20, 8, 40, 12), (40, 0, 60, 20))]), 6.0, False),
        # A square with a thin spur, which the cutter would leave out.
        (shapely.union_all([shapely.box(0, 0, 20, 20), shapely.box(20, 9, 45, 11)]), 6.0, False),
        # An island close to the wall.
        (shapely.box(0, 0, 40, 40).difference(shapely.box(4, 10, 30, 30)), 6.0, False),
    ],
    ids=["wide enough", "too narrow", "neck", "spur", "island"],
)  # fmt: skip
def test_a_cutter_has_room_where_it_makes_the_shape(area: Any, diameter: float, fits: bool) -> None:
    assert has_room(area, diameter / 2) is fits


def test_the_largest_cutter_of_a_bar_is_its_width() -> None:
    assert largest_cutter_mm(shapely.box(0, 0, 5.0, 40)) == pytest.approx(5.0, abs=0.03)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"finish": "groove", "panel": "10"}, "panel: The V-bit engraves the board's face"),
        ({"panel_depth": "3"}, "panel-depth: There is no panel for it."),
        ({"finish": "raised", "panel": "80"}, "panel: 80 mm on both sides leaves no room"),
        ({"finish": "raised", "panel": "60", "panel_radius": "30"}, "panel: A panel 60 mm inside the edge"),
        ({"finish": "recess", "depth": "11"}, "depth: 11 mm leaves only 1 mm of a board of 12 mm."),
        ({"finish": "recess", "panel": "20", "panel_depth": "8"}, "panel-depth: The panel and the letters in it go"),
        ({"finish": "raised", "panel": "12"},
         "panel: The panel's wall runs through hole bottom left or close by. Use panel 9.5 or less, or 18.5 or more"),
        ({"sharp_corners": "true"}, "sharp-corners: Only flat floors have corners"),
        ({"finish": "recess", "depth": "7", "sharp_corners": "true"}, "sharp-corners: The V-bit reaches 6 mm"),
        ({"finish": "raised", "text": ["17"], "panel": "22", "frame": "30"}, "frame: frame runs into panel"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_said(changes: dict[str, Any], said: str) -> None:
    assert any(problem.startswith(said) for problem in problems(**changes)), problems(**changes)


@pytest.mark.parametrize("finish", ["recess", "raised"])
def test_a_finish_reads_back_equal(finish: str) -> None:
    import tomllib

    spec = spec_of(finish=finish, panel="20", panel_depth="2", panel_radius="7", sharp_corners="true", depth="2")
    again = tomllib.loads(dump_sign_file(spec))
    assert spec_of(**{key.replace("-", "_"): value for key, value in again.items()}) == spec


def test_a_recess_is_sabotaged_and_seen() -> None:
    from signgen.proving.judge_sides import case_of  # the evidence of a job, put together as the pipeline does
    from signgen.proving.sides import sides_of

    spec = spec_of(**NUMBER, finish="recess")
    (side,) = sides_of(spec)
    drawing = side.drawing
    texts = [program.text for program in prove(spec).programs]
    good = case_of(side, texts)
    assert judge(good).passed
    for wrong in (
        lambda r: replace(r, depth_mm=3.1),
        lambda r: replace(r, depth_mm=2.9),
        lambda r: replace(r, area=affinity.translate(r.area, 0.03)),
        lambda r: replace(r, area=r.area.buffer(0.03)),
    ):
        spoilt = drawing.having(Recess, tuple(wrong(recess) for recess in drawing.of(Recess)))
        case = case_of(replace(side, drawing=spoilt), texts)
        (result,) = [result for result in judge(case).results if result.code == "C126"]
        assert result.findings


def test_holes_in_a_sunken_ground_are_bored_and_judged_from_its_floor() -> None:
    facts = prove(spec_of(text=["8B"], finish="raised"))
    (ground,) = facts.drawing.of(Recess)
    assert all(ground.area.contains(shapely.Point(hole.x_mm, hole.y_mm)) for hole in facts.drawing.of(Hole))
    assert facts.checks.passed


@pytest.mark.parametrize(
    ("finish", "said"), [("recess", "is missing: 0 % of it is cut"), ("raised", "is missing: 0 % of it stands")]
)
def test_a_letter_that_is_not_there_is_named(finish: str, said: str) -> None:
    from signgen.proving.judge_sides import case_of
    from signgen.proving.sides import sides_of

    spec = spec_of(**NUMBER, finish=finish)
    (side,) = sides_of(spec)
    drawing = side.drawing
    texts = [program.text for program in prove(spec).programs]
    away = {Recess: shapely.box(100, 5, 110, 12), Raised: shapely.box(10, 60, 20, 80)}
    spoilt = replace(
        drawing,
        features=tuple(replace(r, area=away[type(r)]) if r.text == "7" else r for r in drawing.features),
    )
    case = case_of(replace(side, drawing=spoilt), texts)
    (result,) = [result for result in judge(case).results if result.code == "C125"]
    assert any("letter 2 '7'" in str(finding.message) and said in str(finding.message) for finding in result.findings)


def test_a_thin_floor_is_warned_about() -> None:
    facts = prove(spec_of(**NUMBER, finish="recess", depth="9.5"))
    (result,) = [result for result in facts.checks.results if result.code == "C115"]
    assert "only 2.50 mm of the 12 mm board is left" in str(result.findings[0].message)


def test_floors_of_a_sheet_of_signs_move_with_their_sign() -> None:
    from signgen.drawing.nested import Placement, nested

    drawing = draw(spec_of(**NUMBER, finish="raised"))
    places = [Placement(name="1", x_mm=0, y_mm=0, turned=False), Placement(name="2", x_mm=0, y_mm=150, turned=True)]
    sheet = nested([(drawing, place) for place in places])
    assert [recess.name for recess in sheet.of(Recess)] == ["1: ground", "2: ground"]
    assert sheet.of(Recess)[1].area.area == pytest.approx(drawing.of(Recess)[0].area.area)
    assert len(sheet.of(Raised)) == 2 * len(drawing.of(Raised))


def test_floors_come_before_holes_and_edge_and_level_by_level() -> None:
    spec = spec_of(**NUMBER, finish="recess", depth="6")
    plan = make_plan(draw(spec), spec)
    clear = next(op for run in plan.runs for op in run.operations if isinstance(op, ClearFloor))
    stages = [cut.stage for cut in clear.toolpath().cuts]
    assert stages == sorted(stages)
    assert max(stages) < 50
    lowest: dict[str, float] = {}
    for cut in clear.toolpath().cuts:
        low = float(np.min(cut.path.points_mm[:, 2]))
        assert low <= lowest.get(cut.feature, math.inf) + 1e-9
        lowest[cut.feature] = low


def test_letters_cut_through_are_cleared_whole_and_nothing_comes_loose() -> None:
    facts = prove(spec_of(text=["I7"], finish="through"))
    said = [does for program in facts.programs for does in english(program.description)]
    assert "cuts the letters right through" in said
    assert facts.checks.passed
    for letter in facts.drawing.of(Recess):
        x, y = shapely.get_coordinates(shapely.point_on_surface(letter.area))[0]
        assert ground_mm(facts, x, y) >= facts.spec.thickness_mm


def test_an_o_would_fall_out_and_the_error_names_it_with_the_remedy() -> None:
    (said,) = problems(text=["TO"], finish="through")
    assert said.startswith("finish: The inside of line 1 letter 2 'O' would fall out.")
    assert "saira-stencil" in said
    assert "bridges 2" in said


def test_two_insides_of_a_b_are_counted() -> None:
    (said,) = problems(text=["B"], finish="through")
    assert "2 insides of line 1 letter 1 'B' would fall out." in said


@pytest.mark.parametrize("count", [1, 2, 3])
@pytest.mark.parametrize("text", ["O", "B", "A", "8"])
def test_with_bridges_what_remains_is_one_piece(text: str, count: int) -> None:
    drawing = draw(spec_of(text=[text], finish="through", bridges=count))
    rest = drawing.edge
    for letter in drawing.of(Recess):
        rest = rest.difference(letter.area)
    assert rest.geom_type == "Polygon"
    # No thinner than the bridges were asked for: shrunk by nearly half of that it still hangs together.
    assert rest.buffer(-0.45 * 3.0).geom_type == "Polygon"


def test_an_o_with_bridges_is_cut_and_holds_together() -> None:
    facts = prove(spec_of(text=["O"], finish="through", bridges="2"))
    assert facts.checks.passed
    (letter,) = facts.drawing.of(Recess)
    assert letter.area.geom_type == "MultiPolygon"


def test_the_stencil_face_needs_no_bridges() -> None:
    drawing = draw(spec_of(text=["BOA"], finish="through", font="saira-stencil"))
    rest = drawing.edge
    for letter in drawing.of(Recess):
        rest = rest.difference(letter.area)
    assert rest.geom_type == "Polygon"


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"bridges": "2"}, "bridges: Only letters that are cut through need bridges."),
        ({"finish": "through", "bridge_width": "3"}, "bridge-width: There are no bridges for it."),
        ({"finish": "through", "sharp_corners": "true"}, "sharp-corners: Only flat floors have corners"),
    ],
)
def test_bridges_where_they_make_no_sense_are_refused(changes: dict[str, Any], said: str) -> None:
    assert any(problem.startswith(said) for problem in problems(**changes)), problems(**changes)


WAYS: tuple[dict[str, Any], ...] = (
    {"finish": "groove"},
    {"finish": "recess"},
    {"finish": "recess", "sharp_corners": "true"},
    {"finish": "recess", "panel": "9", "panel_depth": "1.5", "depth": "2"},
    {"finish": "raised"},
    {"finish": "raised", "sharp_corners": "true"},
    {"finish": "stroke"},
    {"finish": "through", "bridges": "2"},
)


@pytest.mark.sweep
@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("way", WAYS, ids=lambda way: "-".join(way.values()))
def test_each_finish_on_three_faces(face: str, way: dict[str, Any]) -> None:
    facts = prove(spec_of(text=["HUB 7"], font=face, size="320x160", letter_spacing="3", **way))
    assert facts.checks.passed


def test_strokes_are_followed_at_one_depth_and_judged_like_grooves() -> None:
    facts = prove(spec_of(text=["R5"], finish="stroke", font="hershey-sans", depth="1.2"))
    assert [program.tool.kind for program in facts.programs] == ["v-bit", "end-mill"]
    assert english(facts.programs[0].description) == ("follows the letters' lines, 1.2 mm deep",)
    assert len(facts.drawing.of(Stroke)) == len(facts.drawing.of(Groove)) == 2
    for letter in facts.drawing.of(Stroke):
        for share in np.linspace(0.05, 0.95, 7):
            x, y = shapely.get_coordinates(letter.lines.geoms[0].interpolate(share, normalized=True))[0]
            assert ground_mm(facts, x, y) == pytest.approx(1.2, abs=0.15)  # a cell beside the bottom of the V
    # A V-bit of 90 degrees cuts a line twice as wide as it is deep.
    (result,) = [result for result in facts.checks.results if result.code == "C116"]
    assert not result.findings
    assert facts.drawing.of(Groove)[0].limit_radius_mm == pytest.approx(1.2)


@pytest.mark.parametrize("face", ["overpass", "barlow", "atkinson-regular"])
def test_strokes_follow_the_middle_lines_of_faces_with_even_strokes(face: str) -> None:
    facts = prove(spec_of(text=["Bw6&"], finish="stroke", font=face, size="300x140"))
    assert facts.checks.passed
    assert {program.tool.kind for program in facts.programs[:1]} == {"v-bit"}
    assert facts.drawing.lines[0].stroke_mm == pytest.approx(2.0)


def test_strokes_are_arcs_and_not_facets() -> None:
    facts = prove(spec_of(text=["O"], finish="stroke", font="hershey-sans"))
    words = [line.split()[0] for line in facts.programs[0].text.splitlines() if line[:3] in ("G1 ", "G2 ", "G3 ")]
    # Twenty chords make the O of the data, and two arcs at the most lead from each point to the next.
    assert words.count("G1") == 1  # down
    assert 8 <= words.count("G2") + words.count("G3") <= 40


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"font": "hershey-sans"}, "font: hershey-sans is drawn in single lines"),
        ({"finish": "stroke", "panel": "10"}, "panel: The V-bit engraves the board's face"),
        ({"finish": "stroke", "font": "hershey-sans", "font_fallback": "true"}, "font-fallback: Strokes follow"),
        ({"finish": "stroke", "font": "cinzel"}, "font: The strokes of cinzel are of many widths"),
        ({"finish": "stroke", "font": "hershey-sans", "cap_height": "7"}, "cap-height: Strokes 2 mm wide fill letters"),
        ({"finish": "stroke", "font": "hershey-sans", "text": ["Café"]}, "text: hershey-sans has no 'é'"),
        ({"finish": "stroke", "font": "hershey-sans", "sharp_corners": "true"}, "sharp-corners: Only flat floors"),
        ({"finish": "stroke", "font": "hershey-sans", "font_axes": "wght=4"}, "font-axes: hershey-sans is no variable"),
    ],
)  # fmt: skip
def test_strokes_that_cannot_be_are_refused(changes: dict[str, Any], said: str) -> None:
    assert any(problem.startswith(said) for problem in problems(**changes)), problems(**changes)


LINES: dict[str, Any] = {
    "text": None,
    "line": [
        {"text": "17", "cap-height": 40},
        {"text": "Larkspur Lane", "font": "hershey-sans", "finish": "stroke", "cap-height": 14, "depth": 0.8},
    ],
}


def test_each_line_has_its_own_finish() -> None:
    facts = prove(spec_of(**LINES))
    assert english(facts.programs[0].description) == ("engraves the letters", "follows the letters' lines, 0.8 mm deep")
    by_line = {groove.name.split(" letter")[0]: groove for groove in facts.drawing.of(Groove)}
    assert not isinstance(by_line["line 1"], Stroke)
    assert isinstance(by_line["line 2"], Stroke)
    assert by_line["line 2"].max_depth_mm == 0.8
    assert facts.checks.passed


def test_recessed_figures_over_an_engraved_name() -> None:
    lines = [{"text": "17", "finish": "recess", "depth": 2.5, "cap-height": 60}, {"text": "Larkspur", "cap-height": 14}]
    facts = prove(spec_of(text=None, line=lines))
    assert {recess.depth_mm for recess in facts.drawing.of(Recess)} == {2.5}
    assert len(facts.drawing.of(Groove)) == 8
    assert facts.checks.passed


def test_finishes_of_lines_read_back_equal() -> None:
    import tomllib

    spec = spec_of(**LINES)
    again = tomllib.loads(dump_sign_file(spec))
    assert spec_of(text=None, **{key.replace("-", "_"): value for key, value in again.items()}) == spec


@pytest.mark.parametrize(
    ("sign", "line", "said"),
    [
        ({"finish": "raised"}, {"finish": "recess"}, "line 1.finish: Raised letters stand in one ground"),
        ({"finish": "recess", "panel": "10"}, {"finish": "groove"}, "line 1.finish: The V-bit engraves the board's"),
        ({}, {"finish": "through", "depth": 3}, "line 1.depth: These letters are cut right through."),
        ({}, {"finish": "raised"}, "line 1.finish: "),
        ({}, {"finish": "recess", "depth": 11}, "line 1.depth: 11 mm leaves only 1 mm"),
        ({"bridges": "2"}, {"finish": "recess"}, "bridges: Only letters that are cut through"),
    ],
)
def test_finishes_of_lines_that_cannot_be_are_refused(sign: dict[str, Any], line: dict[str, Any], said: str) -> None:
    found = problems(text=None, line=[{"text": "17", **line}], **sign)
    assert any(problem.startswith(said) for problem in found), found


def test_bridges_hold_a_line_that_is_cut_through() -> None:
    facts = prove(spec_of(text=None, bridges="2", line=[{"text": "O", "finish": "through", "cap-height": 60},
                                                        {"text": "Larkspur", "cap-height": 12}]))  # fmt: skip
    assert facts.checks.passed
    assert facts.drawing.is_through(facts.drawing.of(Recess)[0])


def test_lines_made_in_different_ways_must_not_touch() -> None:
    lines = [
        {"text": "17", "finish": "recess", "cap-height": 40},
        {"text": "17", "cap-height": 40, "line-spacing": 0.9},
    ]
    assert any("run into each other" in problem for problem in problems(text=None, line=lines))


def test_a_stroke_is_sabotaged_and_seen() -> None:
    from signgen.proving.judge_sides import case_of
    from signgen.proving.sides import sides_of

    spec = spec_of(text=["K"], finish="stroke", font="hershey-sans")
    (side,) = sides_of(spec)
    texts = [program.text for program in prove(spec).programs]
    assert judge(case_of(side, texts)).passed
    lines = texts[0].splitlines()
    cutting = [n for n, line in enumerate(lines) if line.startswith("G1 X") or line.startswith("G1 Y")]
    for n in cutting:  # a line left out
        spoilt = "\n".join(line for k, line in enumerate(lines) if k != n) + "\n"
        report = judge(case_of(side, [spoilt, *texts[1:]]))
        assert {result.code for result in report.results if result.findings} & {"C108", "C116"}
    shallow = texts[0].replace("G1 Z11 ", "G1 Z11.06 ")
    report = judge(case_of(side, [shallow, *texts[1:]]))
    assert {result.code for result in report.results if result.findings} >= {"C108", "C116"}
