"""What goes round the letters, made and judged."""

from __future__ import annotations

from typing import Any

import pytest
import shapely
from shapely.geometry import LineString, Point

from signgen.drawing.draw import draw
from signgen.errors import SignGenError
from signgen.features.edge import Bevel
from signgen.features.raised import Raised
from signgen.features.recess import Recess
from signgen.job.report import report
from signgen.pages.setup_sheet import setup_html
from signgen.pipeline import make_job, prove
from signgen.spec.sign_file import dump_sign_file
from tests.asking import english, spec_of
from tests.test_finishes import ground_mm

PLAIN: dict[str, Any] = {"text": ["17"], "holes": "none", "hole_diameter": None, "inset": None, "size": "120x80"}


def test_each_line_of_a_double_frame_is_as_deep_as_it_is_wide_and_wood_stays_between() -> None:
    facts = prove(spec_of(**PLAIN, frame="6", frame_width="1.2", frame_lines="2", frame_gap="2"))
    assert facts.checks.passed
    # A 90 degree bit: half the width deep in the middle of each line.
    assert ground_mm(facts, 60, 6) == pytest.approx(0.6, abs=0.15)
    assert ground_mm(facts, 60, 9.2) == pytest.approx(0.6, abs=0.15)
    assert ground_mm(facts, 60, 7.6) == 0


def test_ornaments_and_frame_are_told_on_the_sheet_in_both_languages_and_in_the_report() -> None:
    asked = {**PLAIN, "ornament": "*", "ornament_size": "12", "frame": "4", "frame_lines": "2", "frame_width": "1"}
    facts = prove(spec_of(**asked))
    page = setup_html(facts)
    assert "of 12\N{NO-BREAK SPACE}mm in every corner" in page
    assert "The frame is 2 lines" in page
    german = setup_html(prove(spec_of(**asked, language="de")))
    assert "In jeder Ecke" in german
    assert "Der Rahmen hat 2 Linien" in german
    trim = report(facts)["sign"]["trim"]
    assert trim["ornament"] == {"character": "*", "font": "barlow", "size_mm": 12}
    assert trim["frame"] == {"insets_mm": [4, 6.5], "width_mm": 1}
    assert trim["rim"] is None


def test_a_rim_and_raised_ornaments_stand_at_the_height_of_the_face() -> None:
    asked = {**PLAIN, "finish": "raised", "depth": "2", "thickness": "8", "rim": "3", "ornament": "*"}
    facts = prove(spec_of(**asked, ornament_font="rye", ornament_size="12", end_mill="2", end_mill_length="12"))
    assert facts.checks.passed
    standing = {letter.name: letter.area for letter in facts.drawing.of(Raised)}
    assert {"rim", "ornament top left"} <= set(standing)
    for area in standing.values():
        x, y = shapely.get_coordinates(shapely.point_on_surface(area))[0]
        assert ground_mm(facts, x, y) == 0
    rim = standing["rim"]
    assert rim.area == pytest.approx(3 * (rim.exterior.length + rim.interiors[0].length) / 2, rel=0.01)
    (ground,) = facts.drawing.of(Recess)
    assert len(ground.area.geoms) == 2  # outside the rim and inside it


def test_the_resolved_file_makes_the_same_bytes() -> None:
    asked = {**PLAIN, "ornament": "&", "ornament_size": "14", "frame": "4", "frame_lines": "2", "frame_gap": "1.5"}
    spec = spec_of(**asked, frame_width="1")
    import tomllib

    from signgen.shop.load import load_shop
    from signgen.spec.read import read_spec

    again = read_spec(tomllib.loads(dump_sign_file(spec)), load_shop(None))
    assert again == spec
    assert make_job(again).files == make_job(spec).files


BORDERS_BEVELLED = ("rectangle", "oval", "scalloped", "arrow", "ogee", "shield")


@pytest.mark.parametrize("border", BORDERS_BEVELLED)
def test_the_bevel_falls_evenly_from_the_face_to_the_upright_edge_on_every_kind_of_outline(border: str) -> None:
    facts = prove(spec_of(**PLAIN, border=border, edge_chamfer="3", cap_height="14"))
    assert facts.checks.passed
    edge, (bevel,) = facts.drawing.edge, facts.drawing.of(Bevel)
    assert bevel.depth_mm == pytest.approx(3)  # 45 degrees with a 90 degree bit
    for share in (0.05, 0.3, 0.55, 0.8):
        at = edge.exterior.interpolate(share, normalized=True)
        for x, y in shapely.get_coordinates(LineString([at, edge.centroid]).interpolate([0.8, 1.6, 2.4])):
            inside = edge.exterior.distance(Point(x, y))
            assert ground_mm(facts, x, y) == pytest.approx(3 - inside, abs=0.2)  # a cell's half diagonal


def test_the_bevel_follows_the_bits_angle_and_is_cut_before_anything_else_frees_the_sign() -> None:
    facts = prove(spec_of(**PLAIN, edge_chamfer="2", v_bit="60", finish="recess", depth="2"))
    assert facts.checks.passed
    assert facts.programs[0].tool.kind == "v-bit"
    assert "bevels the edge by 2 mm" in english(facts.programs[0].description)
    assert report(facts)["sign"]["trim"]["edge_chamfer"] == {"width_mm": 2, "depth_mm": 3.4641}
    page = setup_html(facts)
    assert "Edge bevelled 2" in page
    assert "30° from the upright" in page


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"holes": "corners", "hole_diameter": "5", "inset": "8"}, "edge-chamfer: The bevel of 5 mm runs into hole"),
        ({"finish": "raised", "depth": "2", "panel": "5"}, "edge-chamfer: The bevel of 5 mm leaves less than 1 mm"),
        ({"frame": "6"}, "frame: frame lies outside the sign or within 1 mm of its bevelled edge."),
        ({"cap_height": "70"}, "cap-height: line 1 letter 1 '1' lies outside"),
        ({"size": "120x11", "cap_height": "3"}, "edge-chamfer: A bevel of 5 mm all round leaves nothing"),
    ],
)
def test_a_bevel_without_room_is_refused(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(SignGenError) as caught:
        draw(spec_of(**{**PLAIN, "edge_chamfer": "5", "margin": "1", **changes}))
    assert any(f"{each.where}: {each.what}".startswith(said) for each in caught.value.problems)  # type: ignore[attr-defined]
