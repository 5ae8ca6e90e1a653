"""The words on the sign: heights, sides, circles, breaks, and what is said about them."""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon, box

from signgen.drawing.draw import draw
from signgen.drawing.words import lettering_of
from signgen.errors import AskError, CannotMakeError
from signgen.features.groove import Groove
from signgen.lettering.faces import open_face
from signgen.lettering.layout import Lettering
from tests.asking import english, spec_of
from tests.lettering.conftest import variable_font  # noqa: F401

BARE = {"holes": None, "hole_diameter": None, "inset": None, "margin": "10"}
ROOM = box(10, 10, 210, 130)


def words(room: Polygon = ROOM, **changes: object) -> Lettering:
    return lettering_of(spec_of(**BARE | changes), box(0, 0, 220, 140), room)[0]


def warnings(**changes: object) -> tuple[str, ...]:
    return english(lettering_of(spec_of(**BARE | changes), box(0, 0, 220, 140), ROOM)[1])


def ink(lettering: Lettering, line: int) -> tuple[float, float, float, float]:
    return tuple(shapely.total_bounds([letter.area for letter in lettering.letters if letter.line == line]))


def texts(lettering: Lettering) -> list[str]:
    return [row.measured.line.text for row in lettering.rows]


@settings(max_examples=25)
@given(
    lines=st.lists(st.text("AgyiW17 &", min_size=1, max_size=14).filter(str.strip), min_size=1, max_size=4),
    fit=st.sampled_from(["together", "each"]),
    align=st.sampled_from(["left", "centre", "right"]),
    spacing=st.sampled_from([0, 1.5]),
    font=st.sampled_from(["barlow", "pacifico"]),
)
def test_what_is_fitted_lies_in_the_room_and_would_not_if_larger(
    lines: list[str], fit: str, align: str, spacing: float, font: str
) -> None:
    asked = {"text": lines, "fit": fit, "align": align, "letter_spacing": spacing, "font": font}
    try:
        lettering = words(**asked)
    except CannotMakeError:
        return
    x0, y0, x1, y1 = lettering.ink_bounds_mm
    assert ROOM.buffer(0.01).contains(box(x0, y0, x1, y1))
    assert (y0 + y1) / 2 == pytest.approx(70, abs=0.01)
    if align == "centre":
        assert (x0 + x1) / 2 == pytest.approx(110, abs=0.01)
    assert x1 - x0 > 199 or y1 - y0 > 119  # as large as fits: one way the room is full


def test_lines_fitted_together_are_alike_in_height_and_ratios_are_kept() -> None:
    lettering = words(text=None, line=[{"text": "17", "height-ratio": 3}, {"text": "Larkspur Lane"}, {"text": "H"}])
    number, lane, last = (row.cap_height_mm for row in lettering.rows)
    assert number == pytest.approx(3 * lane, abs=0.03)
    assert last == lane
    assert ink(lettering, 2)[3] - ink(lettering, 2)[1] == pytest.approx(lane, abs=0.01)


def test_lines_fitted_each_are_alike_in_width() -> None:
    lettering = words(text=["at the mill", "Larkspur Lane", "by the old quarry"], fit="each")
    widths = [box[2] - box[0] for box in (ink(lettering, line) for line in range(3))]
    assert max(widths) - min(widths) < 0.05
    assert widths[0] == pytest.approx(200, abs=0.1)


@pytest.mark.parametrize("fit", ["together", "each"])
def test_a_line_that_shows_nothing_disturbs_none(fit: str) -> None:
    lettering = words(text=["Lane", "\u200e", "17"], fit=fit)
    assert ink(lettering, 0)[1] > ink(lettering, 2)[3]
    assert words(text=["A \u200e B"], wrap="30").cap_height_mm > 3


def test_a_given_height_stays_while_the_others_are_fitted() -> None:
    lettering = words(text=None, line=[{"text": "17", "cap-height": 50}, {"text": "Larkspur Lane"}])
    assert lettering.rows[0].cap_height_mm == 50
    assert ink(lettering, 1)[2] - ink(lettering, 1)[0] > 195


@pytest.mark.parametrize("font", ["pacifico", "barlow", "unifraktur"])
def test_figures_are_as_high_as_asked(font: str) -> None:
    lettering = words(text=["1"], font=font, digit_height="40")
    y1 = lettering.ink_bounds_mm[3]
    assert y1 - lettering.baselines_mm[0] == pytest.approx(40, abs=0.01)


@pytest.mark.parametrize("font", ["barlow", "pacifico", "rye"])
def test_a_line_to_a_side_begins_at_the_margin(font: str) -> None:
    for side, edge in (("left", 0), ("right", 2)):
        lettering = words(text=["17", "Lane"], cap_height="20", align=side, font=font)
        for line in (0, 1):
            assert ink(lettering, line)[edge] == pytest.approx((10, 0, 210)[edge], abs=0.01)


def test_lines_of_both_sides_keep_the_same_distance_from_the_middle() -> None:
    line = [{"text": "17", "align": "left"}, {"text": "Lane"}, {"text": "19", "align": "right"}]
    lettering = words(text=None, line=line, cap_height="20")
    assert ink(lettering, 0)[0] == pytest.approx(10, abs=0.01)
    assert ink(lettering, 1)[0] + ink(lettering, 1)[2] == pytest.approx(220, abs=0.01)
    assert ink(lettering, 2)[2] == pytest.approx(210, abs=0.01)


def test_a_line_to_a_side_stops_at_a_hole() -> None:
    room = ROOM.difference(box(30, 60, 40, 80))
    lettering = words(room, text=["17"], cap_height="20", align="left")
    assert ink(lettering, 0)[0] == pytest.approx(40, abs=0.01)


@pytest.mark.parametrize(("margin", "inside"), [(None, 5 + 1 + 0.04 * 140), ("14", 14), ("3", 5 + 1 + 1)])
def test_the_margin_is_from_the_edge_and_never_lets_letters_onto_the_frame(margin: str | None, inside: float) -> None:
    spec = spec_of(**BARE | {"margin": margin}, text=["Larkspur Lane"], frame="5", frame_width="2")
    letters = [groove.area for groove in draw(spec).of(Groove) if groove.text]
    x0, _, x1, _ = shapely.total_bounds(letters)
    assert (x0, 220 - x1) == pytest.approx((inside, inside), abs=0.25)  # a step of the height is as much in the width


def test_text_out_of_the_room_is_not_moved_further() -> None:
    lettering = words(text=["Larkspur Lane"], cap_height="40", align="left")
    x0, _, x1, _ = lettering.ink_bounds_mm
    assert (x0 + x1) / 2 == pytest.approx(110, abs=0.01)


def test_long_text_is_broken_at_the_width() -> None:
    lettering = words(text=["The house of the seven gables above the mill"], wrap="120", cap_height="12")
    assert " ".join(texts(lettering)) == "The house of the seven gables above the mill"
    assert len(texts(lettering)) > 2
    assert all(ink(lettering, line)[2] - ink(lettering, line)[0] <= 120 for line in range(len(texts(lettering))))
    assert {row.measured.line.source for row in lettering.rows} == {0}


def test_broken_text_gets_larger_than_text_in_one_line() -> None:
    text = ["The house of the seven gables"]
    assert words(text=text, wrap="1000").cap_height_mm > 2 * words(text=text).cap_height_mm


def test_a_word_that_is_too_wide_is_named() -> None:
    with pytest.raises(CannotMakeError, match=r"^wrap: 'Larkspur' alone is .* mm wide with capitals of 30 mm"):
        words(text=["At Larkspur Lane"], wrap="60", cap_height="30")


def test_a_circle_about_the_sign_is_round_its_middle_and_a_line_in_it_keeps_clear() -> None:
    line = [{"text": "HHHHHHHH", "arc": 50, "arc-centre": "sign"}, {"text": "17", "cap-height": 40}]
    lettering = words(text=None, line=line)
    assert lettering.rows[0].about_sign
    letters = [letter for letter in lettering.letters if letter.line == 0]
    feet = [
        min(shapely.distance(shapely.Point(110, 70), shapely.points(letter.area.exterior.coords))) for letter in letters
    ]
    assert len(feet) == 8
    assert feet == pytest.approx([feet[0]] * 8, abs=0.01)
    assert 50 <= feet[0] < 50.5  # corners of a foot lie a little further out than the point that touches
    inside = [letter.area for letter in lettering.letters if letter.line == 1]
    gap = 0.25 * min(row.cap_height_mm for row in lettering.rows)
    assert min(one.area.distance(other) for one, other in itertools.product(letters, inside)) >= gap - 0.01


def test_lines_that_run_into_a_circle_are_told() -> None:
    line = [{"text": "HHHH", "arc": 40, "arc-centre": "sign"}, {"text": "LARKSPUR"}]
    with pytest.raises(CannotMakeError, match="text: Lines 1 and 2 run into each other"):
        words(text=None, line=line, cap_height=30, font="overpass")


def test_text_too_long_for_its_circle_is_told() -> None:
    with pytest.raises(CannotMakeError, match=r"^arc: 'ROUND AND ROUND' has no room on a circle of 10 mm"):
        words(text=["ROUND AND ROUND"], arc="10", cap_height="20")


def test_a_setting_of_a_variable_font_reaches_the_letters(variable_font: Path) -> None:  # noqa: F811
    """At the end of its axis H is 850 high instead of 650, and its widths are the same: 400."""
    widths = []
    for axes in ("hght=0", "hght=100"):
        x0, _, x1, _ = words(text=["H"], font=str(variable_font), font_axes=axes, cap_height="40").ink_bounds_mm
        widths.append(x1 - x0)
    assert widths == pytest.approx([40 * 400 / 650, 40 * 400 / 850], abs=0.001)


def test_problems_of_fonts_come_from_all_lines_with_their_number(variable_font: Path) -> None:  # noqa: F811
    line = [
        {"text": "a", "font": "ryee"},
        {"text": "b", "font": str(variable_font), "font-axes": "wght=9"},
        {"text": "c"},
    ]
    with pytest.raises(AskError) as caught:
        words(text=None, line=line)
    assert [str(problem).split(" ")[:3] for problem in caught.value.problems] == [
        ["line", "1.font:", "There"],
        ["line", "2.font-axes:", str(variable_font)],
    ]


def test_short_figures_are_warned_of_unless_their_height_is_asked_for() -> None:
    assert "0.67 of the height of its capitals" in warnings(text=["No. 17"], font="pacifico")[0]
    assert warnings(text=["No. 17"], font="pacifico", digit_height="20") == ()
    assert warnings(text=["Lane"], font="pacifico") == ()


def test_borrowed_letters_are_told() -> None:
    text = ["17 λν", "λν"]
    assert warnings(text=text, font_fallback="true") == ("barlow lacks letters of this text; roboto-slab lends λ ν.",)
    assert open_face("barlow").name == "barlow"
    with pytest.raises(AskError, match="Faces that have them: roboto-slab"):
        words(text=text)
