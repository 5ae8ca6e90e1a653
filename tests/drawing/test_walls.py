"""Weak holding is refused or said: thin walls, single bridges, low tabs, lines of text over each other."""

from __future__ import annotations

import re
from typing import Any

import pytest

from signgen.drawing.draw import draw
from signgen.errors import CannotMakeError
from signgen.features.groove import Groove
from signgen.features.recess import Recess
from signgen.spec.sign_spec import SignSpec
from tests.asking import english, spec_of


def sign(text: str | list[str], **changes: Any) -> SignSpec:
    asked: dict[str, Any] = {"size": "220x80", "holes": None, "hole_diameter": None, "inset": None}
    return spec_of(text=[text] if isinstance(text, str) else text, **{**asked, **changes})


def refusal(spec: SignSpec) -> str:
    with pytest.raises(CannotMakeError) as refused:
        draw(spec)
    return str(refused.value)


def warnings(spec: SignSpec) -> str:
    return " ".join(english(draw(spec).warnings))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"tab_height": "0.2"}, "tab-height: Tabs of 0.2 mm are lost"),
        ({"tab_height": "0.39"}, "Use 0.4 mm or more"),
        ({"tab_width": "1"}, "tab-width: Tabs 1 mm wide break"),
        ({"tab_width": "1.9", "tabs": None, "tab_spacing": "60"}, "Use 2 mm or more"),
    ],
)
def test_tabs_that_would_not_hold_are_refused(changes: dict[str, Any], said: str) -> None:
    assert said in refusal(sign("Lane", **changes))


@pytest.mark.parametrize("thickness", ["1.5", "2", "3", "12", "30"])
def test_the_usual_tabs_hold_in_every_board(thickness: str) -> None:
    draw(sign("Lane", thickness=thickness, depth="0.3"))


@pytest.mark.parametrize("held", [{"tab_height": "0.5"}, {"onion_skin": "0.3"}])
def test_what_holds_by_little_is_doubtful_from_the_boards_top(held: dict[str, str]) -> None:
    assert "measured from the board's top" in warnings(sign("Lane", z_zero="top", **held))
    assert "measured from the board's top" not in warnings(sign("Lane", **held))


def test_an_inside_on_a_bridge_that_breaks_is_refused() -> None:
    said = refusal(sign("OOOO", finish="through", bridges="1", bridge_width="0.6"))
    assert "would hang on less than 1 mm of wood, and break off" in said
    assert said.count("letter ") == 4
    assert said.startswith("bridge-width: ")


def test_an_inside_on_one_bridge_or_on_thin_ones_is_said() -> None:
    assert "hangs on one bridge" in warnings(sign("OOOO", finish="through", bridges="1"))
    assert "hangs on less than 2 mm" in warnings(sign("OOOO", finish="through", bridges="2", bridge_width="1.6"))
    assert "hangs" not in warnings(sign("OOOO", finish="through", bridges="2"))
    assert "hangs" not in warnings(sign("LILT", finish="through", bridges="2"))


def test_what_a_face_of_stencils_leaves_is_measured_too() -> None:
    assert "hang on less than 1 mm" in refusal(sign("OO", finish="through", font="saira-stencil", cap_height="10"))
    assert not re.search("hangs? on", warnings(sign("OO", finish="through", font="saira-stencil", cap_height="50")))


def test_a_letter_cut_through_near_the_edge_is_refused_by_the_wood_that_would_stay() -> None:
    def cut(height: float) -> SignSpec:
        return sign("H", size=f"120x{height:.4f}", finish="through", cap_height="40", margin="1")

    (letter,) = draw(cut(60)).of(Recess)
    tall = letter.area.bounds[3] - letter.area.bounds[1]
    assert "is cut right through, and only 1.2 mm of wood" in refusal(cut(tall + 2.4))
    draw(cut(tall + 4.2))


def test_letters_cut_through_side_by_side_are_held_apart() -> None:
    tight = {"finish": "through", "cap_height": "40", "size": "160x80"}
    natural = draw(sign("ll", **tight))
    one, other = natural.of(Recess)
    gap = one.area.distance(other.area)
    assert gap > 1.5
    assert "breaks" not in warnings(sign("ll", **tight))
    assert "it may break" in warnings(sign("ll", letter_spacing=f"{1.2 - gap:.3f}", **tight))
    assert "letter-spacing: Only 0.3 mm" in refusal(sign("ll", letter_spacing=f"{0.3 - gap:.3f}", **tight))


@pytest.mark.parametrize("wall", [-0.4, 0.1, 0.4])
def test_a_letter_too_near_to_the_frame_is_refused_by_the_wood_that_would_stay(wall: float) -> None:
    def framed(inset: float) -> SignSpec:
        return sign("Lane", cap_height="40", frame=f"{inset:.3f}", frame_width="1", margin="1")

    drawing = draw(framed(5))
    letters = [groove for groove in drawing.of(Groove) if groove.is_letter]
    (line,) = (groove for groove in drawing.of(Groove) if not groove.is_letter)
    room = min(letter.area.distance(line.area) for letter in letters)
    said = refusal(framed(5 + room - wall))
    assert said.startswith("frame: ")
    assert (f"Only {wall:g} mm of wood" if wall > 0 else "runs into frame") in said
    draw(framed(5 + room - 0.6))


@pytest.mark.parametrize("face", ["barlow", "pacifico"])
def test_lines_over_each_other_are_refused_and_lines_that_touch_are_said(face: str) -> None:
    assert "Lines 1 and 2 run into each other. Use more line-spacing." in refusal(
        sign(["One", "Two"], line_spacing="0.6", font=face)
    )
    assert "Letters of lines 1 and 2 touch" in warnings(sign(["gy", "Hl"], line_spacing="1.05", font=face))
    assert "touch" not in warnings(sign(["gy", "Hl"], line_spacing="1.8", font=face))
