"""Outline faces as faces of lines."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from shapely.geometry import MultiLineString

from signgen.errors import AskError
from signgen.lettering.areas import glyph_areas, stroke_ratio
from signgen.lettering.centreline import lined
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.lettering.shaping import shape

EVEN = ("barlow", "overpass", "overpass-medium", "atkinson-regular")
ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&?!Äß"


@pytest.mark.parametrize("name", EVEN)
def test_the_lines_lie_inside_the_letters_and_a_pen_as_wide_covers_them(name: str) -> None:
    face = open_face(name)
    half = stroke_ratio(face) * face.cap_height_em / 2
    lines_face = lined(face)
    foot = half_of_foot(name)
    for letter in ALPHABET:
        glyph = shape(face, letter).glyphs[0].glyph
        (area,) = glyph_areas(face, [glyph], scale_mm_per_em=100, chord_mm=0.01)
        lines = MultiLineString([100 * line + (0, 100 * foot) for line in lines_face.lines_of(glyph)])
        # But for square ends and the outer sides of corners nearly all of the letter lies within the pen.
        covered = lines.buffer(115 * half)
        assert shapely.intersection(covered, area).area > 0.87 * area.area, letter
        assert lines.difference(area.buffer(0.5)).length < 0.02 * lines.length, letter


def half_of_foot(name: str) -> float:
    """How far above the baseline the lines of H end: half the width of its upright, for its ends are square."""
    face = open_face(name)
    return stroke_ratio(face) * face.cap_height_em / 2


@pytest.mark.parametrize("name", EVEN)
def test_h_is_two_stems_and_a_bar(name: str) -> None:
    face = lined(open_face(name))
    (glyph,) = shape(face, "H").glyphs
    points = np.concatenate(face.lines_of(glyph.glyph))
    assert points[:, 1].min() == pytest.approx(0, abs=1e-9)
    outline = open_face(name)
    assert face.cap_height_em == pytest.approx(outline.cap_height_em * (1 - stroke_ratio(outline)), abs=0.004)


def test_letters_are_as_high_as_asked_for_whatever_the_pen() -> None:
    for pen in (0.5, 2.0, 3.5):
        lettering = set_lines(["H"], lined(open_face("overpass")), cap_height_mm=25, pen_mm=pen)
        _, y0, _, y1 = lettering.letters[0].area.bounds
        assert y1 - y0 == pytest.approx(25, abs=0.001)


@pytest.mark.parametrize("name", ["cinzel", "unifraktur", "rye"])
def test_faces_of_many_widths_are_refused(name: str) -> None:
    with pytest.raises(AskError, match="of many widths"):
        lined(open_face(name))
