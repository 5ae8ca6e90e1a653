"""What is said about how a drawing reads: measures of the letters as drawn, and rules that go by them."""

from __future__ import annotations

import pytest

from signgen.drawing.draw import draw
from signgen.drawing.drawn_line import DrawnLine
from signgen.drawing.legibility import house_numbers, ratios, readings
from signgen.features.groove import Groove
from tests.asking import english, spec_of

BARE = {"holes": None, "hole_diameter": None, "inset": None}


def line_of(text: str, **changes: object) -> DrawnLine:
    (line,) = draw(spec_of(**BARE | {"text": [text]} | changes)).lines
    return line


def test_the_stroke_is_that_of_the_letter_i_as_drawn() -> None:
    """Barlow's I is a plain bar, so its area over its height is its stroke."""
    drawing = draw(spec_of(**BARE, text=["I"], cap_height="50"))
    (bar,) = drawing.of(Groove)
    _, y0, _, y1 = bar.area.bounds
    assert drawing.lines[0].stroke_mm == pytest.approx(bar.area.area / (y1 - y0), rel=0.01)


def test_the_width_is_that_of_the_letter_o_as_drawn() -> None:
    drawing = draw(spec_of(**BARE, text=["O"], cap_height="50"))
    x0, _, x1, _ = drawing.of(Groove)[0].area.bounds
    assert ratios(drawing.lines[0])["width"] == pytest.approx((x1 - x0) / 50, abs=0.001)


def test_gaps_are_between_the_nearest_points_of_neighbours_within_words() -> None:
    drawing = draw(spec_of(**BARE, text=["HI HI"], cap_height="30"))
    letters = [groove.area for groove in drawing.of(Groove)]
    assert drawing.lines[0].gaps_mm == pytest.approx(
        (letters[0].distance(letters[1]), letters[2].distance(letters[3])), abs=1e-9
    )
    assert line_of("HIH", letter_spacing="4").least_gap_mm == pytest.approx(line_of("HIH").least_gap_mm + 4, abs=3)


def test_letters_that_join_have_no_gap() -> None:
    assert set(line_of("Anna", font="pacifico").gaps_mm) == {0.0}


@pytest.mark.parametrize(
    ("text", "height"),
    [
        ("LANE", "cap"),
        ("Lane", "cap"),
        ("lane", "x"),
        ("17", "digit"),
        ("No. 17", "digit"),
        ("ab 17", "x"),
        ("&", "cap"),
    ],
)
def test_the_height_that_counts_is_that_of_the_letters_there_are(text: str, height: str) -> None:
    """In Pacifico figures are 0.67 and x is 0.54 of the capitals."""
    line = line_of(text, font="pacifico", cap_height="20")
    heights = {"cap": line.cap_height_mm, "x": line.x_height_mm, "digit": line.digit_height_mm}
    assert line.letter_height_mm == pytest.approx(heights[height])


def test_lines_are_told_with_their_leading_and_circles() -> None:
    line = [{"text": "17"}, {"text": "Lane"}, {"text": "Wayfield", "arc": 200}]
    one, two, arch = draw(spec_of(**BARE, text=None, line=line, cap_height="15", line_spacing="1.5")).lines
    assert one.leading_mm is None
    assert two.leading_mm == pytest.approx(1.5 * 15)
    assert (one.circle, arch.leading_mm) == (None, None)
    assert arch.circle.radius_mm == 200
    assert arch.circle.y_mm == pytest.approx(arch.baseline_mm - 200)


def test_rules_go_by_the_height_from_the_nearest_to_the_furthest() -> None:
    (reading,) = readings([line_of("17", cap_height="25.4", font="big-shoulders")])
    metres = {rule.rule: distance for rule, distance in reading.distances_m}
    assert metres["MUTCD 2000, 2A.14"] == pytest.approx(40 * 0.3048, rel=0.002)
    assert list(metres.values()) == sorted(metres.values())


def test_proportions_outside_a_range_are_told_as_such() -> None:
    (reading,) = readings([line_of("LANE", font="saira-stencil", letter_spacing="12", cap_height="15")])
    within = {(each.rule.rule, each.rule.of): each.is_within for each in reading.proportions}
    assert within["UFC 3-120-01", "stroke"] is False  # its stroke is 0.29 of its height
    assert within["2010 ADA Standards, 703.5", "stroke"] is True
    assert within["2010 ADA Standards, 703.5", "gap"] is False


@pytest.mark.parametrize(
    ("text", "is_number"),
    [
        ("17", True), ("17A", True), ("No. 17", True), ("17-19", True), ("17 Larkspur Lane", True), ("# 4", True),
        ("17b Mill Row", True), ("in 1893", False), ("Larkspur Lane", False), ("est. 1893", False), ("10:30", False),
        ("50 % off 2 pairs", False),
    ],
)  # fmt: skip
def test_house_numbers_are_told_from_other_figures(text: str, is_number: bool) -> None:
    assert bool(house_numbers([line_of(text)])) is is_number


def test_the_note_on_a_house_number_asks_and_claims_nothing() -> None:
    (number,) = house_numbers([line_of("17", digit_height="60")])
    assert "The fire code in force where you live may ask for figures of 102 mm with strokes of 12.7 mm" in english(
        number.note
    )
    assert "17 has 60 mm" in english(number.note)
    assert not any(
        word in english(number.note).casefold() for word in ("compl", "conform", "meets", "approved", "certif")
    )


def test_a_number_with_a_letter_is_as_high_as_the_lesser_of_both() -> None:
    (number,) = house_numbers([line_of("17A", font="pacifico", cap_height="30")])
    assert number.figures_mm == pytest.approx(0.67 * 30, abs=0.2)
