"""The sign's plan, the board's plan and the cutters' profiles: legible, to scale, with the right figures."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace
from shapely.geometry import box

from signgen.fastening.fastening import fastening_of
from signgen.features.tab import Tab
from signgen.job.facts import JobFacts
from signgen.pictures.board_svg import board_plate
from signgen.pictures.cutter_svg import cutter_plate
from signgen.pictures.drawing_svg import sign_plate
from signgen.pictures.plate import Figure
from signgen.shop.load import load_shop
from signgen.shop.tools import Tool

Make = Callable[..., JobFacts]
SVG = "{http://www.w3.org/2000/svg}"
QUICK = settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])


def faults(plate: Figure) -> list[str]:
    """Labels that overlap each other or leave the drawing."""
    root = ET.fromstring(plate.svg())
    width, height = (float(v) for v in root.get("viewBox", "").split()[2:])
    boxes = [(label.text, box(*label.box)) for label in plate.labels]
    bad = [
        f"{text} leaves the drawing" for text, b in boxes if b.bounds[0] < -0.01 or b.bounds[1] < -0.01
        or b.bounds[2] > width + 0.01 or b.bounds[3] > height + 0.01
    ]  # fmt: skip
    for i, (text, b) in enumerate(boxes):
        bad += [f"{text} overlaps {other}" for other, c in boxes[:i] if b.intersection(c).area > 0.02]
    return bad


def texts(plate: Figure) -> list[str]:
    return [label.text for label in plate.labels]


@QUICK
@given(
    width=st.floats(60, 900), height=st.floats(40, 600),
    places=st.lists(st.tuples(st.floats(0.04, 0.96), st.floats(0.04, 0.96)), max_size=9),
)  # fmt: skip
def test_labels_of_the_sign_never_overlap_and_stay_on_the_drawing(
    make_facts: Make, width: float, height: float, places: list[tuple[float, float]]
) -> None:
    holes = tuple((round(u * width, 1), round(v * height, 1)) for u, v in places)
    facts = make_facts(width=round(width, 1), height=round(height, 1), holes=holes, cell=20.0)
    assert faults(sign_plate(facts, 91, 62)) == []


def test_the_sign_shows_its_size_and_the_distances_of_its_holes(facts: JobFacts) -> None:
    plate = sign_plate(facts, 91, 62)
    assert sorted(texts(plate)) == sorted(["200", "120", "14", "186", "14", "106"])
    assert plate.complete


def test_a_small_sign_is_not_drawn_larger_than_it_is(make_facts: Make) -> None:
    plate = sign_plate(make_facts(width=40.0, height=20.0, holes=((5.0, 10.0),), cell=2.0), 91, 62)
    outline = ET.fromstring(plate.svg()).find(f"{SVG}path")
    assert outline is not None
    xs = [float(v) for v in re.findall(r"[ML]([\d.]+) ", outline.get("d", ""))]
    assert max(xs) - min(xs) == pytest.approx(40, abs=0.02)


def test_a_plan_without_room_for_its_labels_says_so(make_facts: Make) -> None:
    holes = tuple((10.0 + 2 * i, 10.0 + i) for i in range(60))
    assert not sign_plate(make_facts(holes=holes, cell=5.0), 91, 62).complete


@QUICK
@given(
    width=st.floats(50, 900), height=st.floats(40, 600), margin=st.sampled_from([9.0, 20.0, 60.0, 150.0]),
    origin=st.sampled_from(["sign", "stock"]),
)  # fmt: skip
def test_labels_of_the_board_never_overlap_and_stay_on_the_drawing(
    make_facts: Make, width: float, height: float, margin: float, origin: str
) -> None:
    facts = make_facts(
        width=round(width, 1), height=round(height, 1), margin=margin, origin=origin, cell=20.0, holes=()
    )
    plate = board_plate(facts, fastening_of(facts), 100, 92)
    assert faults(plate) == []


def test_the_board_shows_its_size_the_datums_distances_and_where_the_front_is(make_facts: Make) -> None:
    facts = make_facts(margin=36.5)
    shown = texts(board_plate(facts, fastening_of(facts), 100, 92))
    assert shown.count("36.5") == 2
    assert {"273", "193", "X", "Y", "grain"} <= set(shown)
    assert any("front" in text for text in shown)
    assert {"1", "2"} <= set(shown)


def test_a_board_without_grain_shows_none(make_facts: Make) -> None:
    facts = make_facts()
    bare = replace(facts, spec=replace(facts.spec, material=replace(facts.spec.material, grain=False)))
    assert "grain" not in texts(board_plate(bare, fastening_of(bare), 100, 92))


def test_tabs_are_drawn_in_the_cut_and_nowhere_else(facts: JobFacts) -> None:
    plate = board_plate(facts, fastening_of(facts), 100, 92)
    black = [
        element
        for element in ET.fromstring(plate.svg()).findall(f"{SVG}polygon")
        if len(element.get("points", "").split()) == 4
    ]
    blocks = [element for element in black if element.get("fill") == "#1d262e"]
    assert len(blocks) == len(facts.drawing.of(Tab))


@pytest.mark.parametrize("tool", load_shop().tools, ids=lambda tool: tool.name)
def test_every_cutter_of_the_shop_can_be_drawn(tool: Tool) -> None:
    plate = cutter_plate(tool, 1, max(26.0, tool.stickout_mm))
    assert faults(plate) == []


@pytest.mark.parametrize("angle", [60.0, 90.0, 120.0])
def test_a_v_bit_is_drawn_with_its_own_angle(facts: JobFacts, angle: float) -> None:
    bit = replace(facts.spec.v_bit, angle_deg=angle)
    cone = ET.fromstring(cutter_plate(bit, 1, 26.0).svg()).findall(f"{SVG}polygon")[0]
    points = [tuple(map(float, pair.split(","))) for pair in cone.get("points", "").split()]
    (x0, y0), (x1, y1) = points[1], points[2]
    assert math.degrees(2 * math.atan((x1 - x0) / (y1 - y0))) == pytest.approx(angle, abs=0.2)
