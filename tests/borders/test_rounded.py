"""Rounded corners against plane geometry: area w h - (4 - pi) r^2, perimeter 2 (w + h) - (8 - 2 pi) r."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Point

from signgen.borders.rounded import Rounded
from signgen.errors import CannotMakeError


@given(
    radius=st.floats(0.5, 70), width=st.floats(140, 600), height=st.floats(140, 600),
    chord=st.sampled_from([0.1, 0.01, 0.0025]),
)  # fmt: skip
def test_area_and_perimeter_agree_with_the_formulas(radius, width, height, chord):
    outline = Rounded(radius_mm=radius).outline(width, height, chord)
    # Chords lie inside the circles by at most `chord`, over less than the arcs' whole length.
    short = 2 * math.pi * radius * chord
    area = width * height - (4 - math.pi) * radius**2
    assert area - short <= outline.area <= area + 1e-6
    perimeter = 2 * (width + height) - (8 - 2 * math.pi) * radius
    assert perimeter - 2 * math.pi * chord <= outline.length <= perimeter + 1e-6


@given(radius=st.floats(0.5, 70), chord=st.sampled_from([0.5, 0.01, 0.0025]))
def test_chords_stay_within_the_tolerance(radius, chord):
    coords = list(Rounded(radius_mm=radius).outline(220, 140, chord).exterior.coords)
    centre = Point(radius, radius)
    in_corner = [p for p in coords if p[0] <= radius + 1e-9 and p[1] <= radius + 1e-9]
    assert len(in_corner) >= 2
    for x, y in in_corner:
        assert centre.distance(Point(x, y)) == pytest.approx(radius)
    for p, q in pairwise(coords):
        if p in in_corner and q in in_corner:
            middle = Point((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
            assert radius - centre.distance(middle) <= chord + 1e-9


def test_tangent_points_are_vertices():
    coords = set(Rounded(radius_mm=10).outline(220, 140, 0.01).exterior.coords)
    assert {(10, 0), (210, 0), (220, 10), (220, 130), (210, 140), (10, 140), (0, 130), (0, 10)} <= coords


def test_a_radius_of_half_the_side_makes_round_ends_without_double_points():
    coords = list(Rounded(radius_mm=70).outline(220, 140, 0.01).exterior.coords)
    assert len(set(coords)) == len(coords) - 1
    circle = Rounded(radius_mm=70).outline(140, 140, 0.01)
    assert circle.is_valid
    assert circle.area == pytest.approx(math.pi * 70**2, rel=1e-3)


def test_refuses_corners_that_do_not_fit():
    with pytest.raises(CannotMakeError) as caught:
        Rounded(radius_mm=80).outline(120, 60, 0.01)
    assert str(caught.value) == "corner-radius: Corners of 80 mm do not fit a sign 120 x 60 mm. Use at most 30 mm."


def test_the_default_is_in_proportion_to_the_sign():
    assert Rounded.from_options("", {}, 220, 140).radius_mm == pytest.approx(14)
    assert Rounded.from_options("", {"corner-radius": 3.0}, 220, 140).radius_mm == 3
