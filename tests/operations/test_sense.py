"""What an engraving is like in figures, against hand values, and the letters that warnings name."""

from __future__ import annotations

import math
from typing import Any

import pytest
from shapely.geometry import MultiPolygon, Polygon, box

from signgen.drawing.draw import draw
from signgen.drawing.drawing import Drawing
from signgen.features.groove import Groove
from signgen.messages.wording import Wording
from signgen.operations.plan import make_plan
from signgen.operations.sense import Sense, sense_of
from signgen.spec.sign_spec import SignSpec
from tests.asking import english, spec_of


def drawn(spec: SignSpec, *areas: Polygon | MultiPolygon, text: str = "x") -> Drawing:
    grooves = tuple(
        Groove(
            name=f"groove {i}", source="text" if text else "frame", text=text and chr(ord("A") + i),
            area=area, angle_deg=spec.v_bit.angle_deg or 0.0,
            tip_mm=spec.v_bit.tip_mm, max_depth_mm=spec.depth_mm,
        )
        for i, area in enumerate(areas)
    )  # fmt: skip
    return draw(spec).having(Groove, grooves)


def sense(*areas: Polygon | MultiPolygon, text: str = "x", **asked: Any) -> Sense:
    spec = spec_of(**asked)
    found = sense_of(drawn(spec, *areas, text=text), spec)
    assert found is not None
    return found


@pytest.mark.parametrize(("angle", "factor"), [(60, 0.866), (90, 0.5)])
def test_the_deepest_point_is_where_the_stroke_is_widest(angle: int, factor: float) -> None:
    # Plane geometry of cones: depth over width.
    found = sense(box(0, 0, 40, 2), box(0, 10, 40, 16), v_bit=str(angle), depth="5.5")
    assert found.deepest.value_mm == pytest.approx(6 * factor, abs=0.02)
    assert found.deepest.groove.text == "B"
    assert found.deepest.y_mm == pytest.approx(13.0, abs=0.02)
    assert found.wood_left_mm == pytest.approx(12 - 6 * factor, abs=0.02)


def test_no_deeper_than_the_limit() -> None:
    assert sense(box(0, 0, 40, 8), depth="2.5").deepest.value_mm == 2.5


def test_a_flat_tip_goes_less_deep_by_half_its_width_at_ninety_degrees() -> None:
    # Plane geometry of cones: depth = (w - t) / (2 tan(angle / 2)).
    assert sense(box(0, 0, 40, 6), v_bit_tip="0.4", depth="5.5").deepest.value_mm == pytest.approx(2.8, abs=0.02)


def test_the_narrowest_and_the_widest_stroke_belong_to_their_letters() -> None:
    found = sense(box(0, 0, 40, 2), box(0, 10, 40, 16), box(0, 20, 40, 23), depth="5")
    assert (found.narrowest.groove.text, found.widest.groove.text) == ("A", "B")
    assert (found.narrowest.value_mm, found.widest.value_mm) == pytest.approx((2.0, 6.0), abs=0.02)


def test_a_frame_counts_only_where_there_are_no_letters() -> None:
    spec = spec_of(frame="5", frame_width="0.8")
    found = sense_of(draw(spec), spec)
    assert found is not None
    assert found.narrowest.groove.text != ""
    lines = sense(box(0, 0, 40, 1), text="")
    assert lines.narrowest.value_mm == pytest.approx(1.0, abs=0.02)


@pytest.mark.parametrize(("angle", "wider"), [(60, 0.11547), (90, 0.2)])
def test_a_board_thicker_by_a_tenth_widens_the_letters_by_twice_the_tangent(angle: int, wider: float) -> None:
    # Plane geometry of cones: w = 2 d tan(angle / 2) + t.
    assert 0.1 * sense(box(0, 0, 40, 6), v_bit=str(angle)).wider_ratio == pytest.approx(wider, abs=1e-5)


def test_what_is_said_of_a_thicker_board_is_what_a_deeper_bit_cuts() -> None:
    found = sense(box(0, 0, 40, 4))
    bit = spec_of().v_bit
    deeper = 2 * bit.radius_at_depth_mm(found.deepest.value_mm + 0.1)
    assert deeper - found.widest.value_mm == pytest.approx(0.1 * found.wider_ratio, abs=1e-6)


def test_a_stroke_narrower_than_the_tip_is_named_by_its_letter() -> None:
    found = sense(box(0, 0, 40, 6), box(0, 10, 40, 10.3), v_bit_tip="0.5")
    assert english(found.warnings) == (
        'A stroke of "B" is narrower than the 0.5 mm flat of the bit\'s tip and stays uncut there, at most '
        "100 % of a letter. Use larger letters, or a bit with a finer tip.",
    )


def test_a_hairline_of_a_letter_that_is_wide_elsewhere_is_named_too() -> None:
    letter = box(0, 0, 6, 30).union(box(5, 14.9, 25, 15.1))
    assert '"A" is narrower' in english(sense(letter, v_bit_tip="0.5").warnings)[0]


def test_a_detail_smaller_than_the_tolerance_is_named_by_its_letter() -> None:
    pinhole = box(0, 0, 20, 6).difference(box(9.98, 3, 10.02, 3.04))
    found = sense(pinhole, box(0, 10, 20, 10.03), box(0, 20, 20, 26), tolerance="0.05")
    assert len(english(found.warnings)) == 1
    assert english(found.warnings)[0].startswith('A detail of "A", "B" is smaller than the tolerance of 0.05 mm')


def test_of_touching_letters_the_one_that_is_thin_is_named() -> None:
    found = sense(box(0, 0, 20, 6), box(20, 2.9, 40, 3.1), v_bit_tip="0.5")
    assert '"B" is narrower' in english(found.warnings)[0]


def test_nothing_is_said_where_every_stroke_takes_the_bit() -> None:
    assert english(sense(box(0, 0, 40, 6), box(0, 10, 40, 10.6), v_bit_tip="0.5").warnings) == ()


def test_many_letters_are_not_all_named() -> None:
    areas = [box(0, i, 40, i + 0.3) for i in range(20)]
    warning = english(sense(*areas, v_bit_tip="0.5").warnings)[0]
    assert warning.count('"') == 24
    assert '"L", ... is narrower' in warning


def test_warnings_reach_the_plan_and_are_said_in_german_too() -> None:
    spec = spec_of(text=["Larkspur"], font="cinzel", cap_height="12", v_bit_tip="0.5")
    spoilt = make_plan(draw(spec), spec).spoilt
    (warning,) = (each for each in spoilt if str(each).startswith("A stroke of"))
    german = Wording("de")
    assert "Fläche von 0,5 mm" in german(warning)
    (tiny,) = sense(box(0, 10, 20, 10.03), tolerance="0.05").warnings[:1]
    assert "Toleranz von 0,05 mm" in german(tiny)
    assert german.lacking == set()


def test_a_sign_without_grooves_has_no_sense() -> None:
    spec = spec_of(finish="recess", text=["I"], cap_height="60", depth="3")
    assert sense_of(draw(spec), spec) is None
    assert make_plan(draw(spec), spec).sense is None


def test_floors_are_as_deep_as_asked_whatever_the_tip() -> None:
    found = sense(box(0, 0, 40, 20), depth="3", v_bit_tip="0.2")
    assert found.deepest.value_mm == 3.0
    assert math.isclose(found.wood_left_mm, 9.0)
