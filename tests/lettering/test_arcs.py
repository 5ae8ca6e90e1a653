"""Letters on a circle: their feet touch it, they are turned and not bent, none comes too near to the next."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from signgen.lettering.arcs import carried
from signgen.lettering.block import stacked
from signgen.lettering.faces import open_face
from signgen.lettering.layout import Lettering, set_rows
from signgen.lettering.line import Arc, SetLine
from signgen.lettering.measure import measure_lines

SIDES = ("above", "below", "ring")


def on_circle(text: str, side: str, radius: float, cap: float, name: str = "barlow", spacing: float = 0.0) -> Lettering:
    """The text about (0, 0)."""
    arc = Arc(radius_mm=radius, side=side, about_sign=True)
    lines = measure_lines([SetLine(text=text, face=open_face(name), arc=arc, letter_spacing_mm=spacing)])
    rows = stacked(lines, [cap])
    assert rows is not None
    return set_rows(rows, chord_mm=0.0025)


def sides_of_a_block(area: shapely.Geometry) -> list[tuple[float, np.ndarray]]:
    """Of each side of a turned H, which has the hull of a rectangle: its distance from (0, 0), and its middle."""
    corners = shapely.get_coordinates(area.minimum_rotated_rectangle.exterior)
    found = []
    for a, b in itertools.pairwise(corners):
        if np.hypot(*(b - a)) > 1:
            found.append((abs(a[0] * b[1] - a[1] * b[0]) / np.hypot(*(b - a)), (a + b) / 2))
    return found


@pytest.mark.parametrize("side", SIDES)
@pytest.mark.parametrize("radius", [60.0, 333.3])
def test_the_feet_of_every_h_lie_on_the_tangent_and_its_head_a_capital_further(side: str, radius: float) -> None:
    lettering = on_circle("HHHHH", side, radius, 20.0)
    assert len(lettering.letters) == 5
    for letter in lettering.letters:
        sides = sides_of_a_block(letter.area)
        assert len(sides) == 4
        foot = min(sides, key=lambda each: abs(each[0] - radius))
        head = max(sides, key=lambda each: np.hypot(*(each[1] - foot[1])))
        assert foot[0] == pytest.approx(radius, abs=0.01)
        assert np.hypot(*foot[1]) == pytest.approx(radius, abs=0.01)  # Barlow's H stands in the middle of its room
        assert head[0] == pytest.approx(radius + (-20 if side == "below" else 20), abs=0.01)


@given(
    text=st.text("AgyWi17&' é", min_size=1, max_size=9).filter(str.strip),
    side=st.sampled_from(SIDES),
    radius=st.floats(40, 2000),
    cap=st.floats(3, 60),
    spacing=st.floats(0, 5),
    name=st.sampled_from(["barlow", "pacifico", "rye"]),
)
def test_every_baseline_point_lies_on_the_circle_and_the_baseline_along_it(
    text: str, side: str, radius: float, cap: float, spacing: float, name: str
) -> None:
    arc = Arc(radius_mm=radius, side=side)
    (line,) = measure_lines([SetLine(text=text, face=open_face(name), arc=arc, letter_spacing_mm=spacing)])
    placed = carried(line, arc, cap)
    if placed is None:
        return
    assert np.hypot(*placed.points_mm.T) == pytest.approx(np.full(len(line.inked), radius), abs=0.01)
    along = np.stack([np.cos(placed.turns_rad), np.sin(placed.turns_rad)], axis=1)
    assert np.abs(np.sum(along * placed.points_mm, axis=1)) == pytest.approx(np.zeros(len(line.inked)), abs=0.01)


@pytest.mark.parametrize("side", SIDES)
def test_letters_are_turned_and_not_bent(side: str) -> None:
    """The same areas and outlines as in a straight line, whatever the circle."""
    bent = on_circle("Hag8 Q&", side, 55.0, 15.0)
    (line,) = measure_lines([SetLine(text="Hag8 Q&", face=open_face("barlow"))])
    straight = set_rows(stacked([line], [15.0]), chord_mm=0.0025)
    assert [letter.text for letter in bent.letters] == [letter.text for letter in straight.letters]
    for turned, plain in zip(bent.letters, straight.letters, strict=True):
        assert turned.area.is_valid
        assert turned.area.area == pytest.approx(plain.area.area, rel=1e-5)
        assert turned.area.length == pytest.approx(plain.area.length, rel=1e-5)
        steps = shapely.get_coordinates(turned.area) * 1e5
        assert steps == pytest.approx(np.rint(steps), abs=1e-4)


def directions(lettering: Lettering) -> list[float]:
    """Clockwise angle of each letter's middle from the top of the circle, in degrees."""
    centres = [letter.area.minimum_rotated_rectangle.centroid for letter in lettering.letters]
    return [math.degrees(math.atan2(c.x, c.y)) for c in centres]


def test_above_reads_clockwise_and_below_counter_clockwise_both_from_the_left() -> None:
    above, below = (directions(on_circle("HIHIH", side, 80.0, 12.0)) for side in ("above", "below"))
    assert above == sorted(above)
    assert above[2] == pytest.approx(0, abs=0.1)
    from_the_bottom = [(angle + 360) % 360 - 180 for angle in below]
    assert from_the_bottom == sorted(from_the_bottom, reverse=True)
    assert from_the_bottom[2] == pytest.approx(0, abs=0.1)


@pytest.mark.parametrize("side", ["above", "below"])
@pytest.mark.parametrize("radius", [30.0, 200.0])
def test_letters_stand_no_closer_than_in_a_straight_line(side: str, radius: float) -> None:
    (line,) = measure_lines([SetLine(text="HINMH", face=open_face("overpass"), letter_spacing_mm=0.7)])
    plain = set_rows(stacked([line], [10.0]), chord_mm=0.0025).letters
    bent = on_circle("HINMH", side, radius, 10.0, "overpass", spacing=0.7).letters
    for i in range(4):
        least = plain[i].area.distance(plain[i + 1].area)
        assert bent[i].area.distance(bent[i + 1].area) >= least * math.cos(math.radians(20)) - 0.01


@pytest.mark.parametrize("side", ["above", "below"])
@pytest.mark.parametrize(
    ("name", "word"), [("pacifico", "Anna"), ("noto-kufi-arabic", "نخيل"), ("noto-sans", "कमल"), ("noto-sans", "गली")]
)
def test_letters_that_join_stay_joined(name: str, word: str, side: str) -> None:
    (line,) = measure_lines([SetLine(text=word, face=open_face(name))])
    plain = set_rows(stacked([line], [15.0]), chord_mm=0.0025)
    bent = on_circle(word, side, 90.0, 15.0, name)
    assert [letter.name for letter in bent.letters] == [letter.name for letter in plain.letters]
    assert len(bent.letters) == 1


def test_letters_that_are_kerned_closely_are_not_taken_to_join() -> None:
    """Heads of a bowl stand as far apart as in a straight line, though each A lies under the arms of the next V."""
    for text in ("AVAVA", "HHH"):
        (line,) = measure_lines([SetLine(text=text, face=open_face("barlow"))])
        plain = set_rows(stacked([line], [10.0]), chord_mm=0.0025).letters
        bent = on_circle(text, "below", 60.0, 10.0).letters
        assert len(bent) == len(text)
        assert bent[0].area.distance(bent[1].area) >= plain[0].area.distance(plain[1].area) - 0.1


def test_a_ring_is_spread_evenly_all_round() -> None:
    angles = directions(on_circle("HHHHHHHH", "ring", 90.0, 12.0))
    steps = np.diff([*angles, angles[0] + 360])
    assert steps == pytest.approx(np.full(8, 45.0), abs=0.01)
    assert angles[0] == pytest.approx(-angles[-1], abs=0.01)  # the text's middle is on top


def test_a_ring_of_words_ends_in_a_space_like_those_between_them() -> None:
    angles = directions(on_circle("HH HH", "ring", 90.0, 12.0))
    steps = np.diff([*angles, angles[0] + 360])
    assert steps[[0, 2]] == pytest.approx(steps[0])
    assert steps[[1, 3]] == pytest.approx(steps[1], abs=0.01)
    assert steps[1] > steps[0] + 5


@pytest.mark.parametrize("side", SIDES)
def test_text_longer_than_the_circle_has_no_room(side: str) -> None:
    arc = Arc(radius_mm=20.0, side=side)
    (line,) = measure_lines([SetLine(text="ROUND AND ROUND IT GOES", face=open_face("barlow"), arc=arc)])
    assert carried(line, arc, 10.0) is None
    assert carried(line, arc, 3.0) is not None
    assert stacked([line], [10.0]) is None


def test_heads_that_would_meet_in_the_middle_have_no_room() -> None:
    arc = Arc(radius_mm=9.0, side="below")
    (line,) = measure_lines([SetLine(text="I", face=open_face("barlow"), arc=arc)])
    assert carried(line, arc, 9.5) is None


@pytest.mark.parametrize("side", ["above", "below"])
def test_an_arch_keeps_clear_of_the_line_below_and_a_bowl_of_the_line_above(side: str) -> None:
    """Between the lowest feet and the highest heads lies what line spacing leaves between straight lines."""
    face = open_face("saira-stencil")  # whose H has sharp corners
    bent = SetLine(text="HHHHHHHH", face=face, arc=Arc(radius_mm=150.0, side=side), line_spacing=1.5)
    plain = SetLine(text="HHHH", face=face, line_spacing=1.5)
    pair = [bent, plain] if side == "above" else [plain, bent]
    lettering = set_rows(stacked(measure_lines(pair), [20.0, 20.0]), chord_mm=0.01)
    first, second = (
        shapely.union_all([letter.area for letter in lettering.letters if letter.line == line]) for line in (0, 1)
    )
    assert first.bounds[1] - second.bounds[3] == pytest.approx(20 * 0.5, abs=0.01)


@given(text=st.text("AgyWi17é", min_size=1, max_size=9), radius=st.floats(60, 500), side=st.sampled_from(SIDES[:2]))
def test_the_ink_of_a_block_with_arcs_is_centred(text: str, radius: float, side: str) -> None:
    face = open_face("barlow")
    lines = measure_lines(
        [SetLine(text=text, face=face, arc=Arc(radius_mm=radius, side=side)), SetLine(text="17", face=face)]
    )
    rows = stacked(lines, [9.0, 20.0])
    assert rows is not None
    lettering = set_rows(rows, chord_mm=0.01, block_at_mm=(50.0, 30.0))
    _, y0, _, y1 = lettering.ink_bounds_mm
    assert (y0 + y1) / 2 == pytest.approx(30.0, abs=0.01)
