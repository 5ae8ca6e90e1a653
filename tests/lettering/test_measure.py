"""The ink of lines without their outlines, and lines of unlike heights and faces in one block."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_rows, stacked
from signgen.lettering.line import SetLine
from signgen.lettering.measure import measure_line, measure_lines


@given(
    text=st.text("AgyWi17&é", min_size=1, max_size=12),
    width=st.floats(5, 2000),
    spacing=st.floats(-1, 10),
    name=st.sampled_from(["barlow", "pacifico", "rye"]),
)
def test_the_height_found_for_a_width_makes_the_line_that_wide(
    text: str, width: float, spacing: float, name: str
) -> None:
    line = measure_line(SetLine(text=text, face=open_face(name), letter_spacing_mm=spacing))
    height = line.height_of_width_mm(width)
    if height == 0:  # by letter spacing alone it is too wide
        assert line.width_mm(0.01) > width or abs(spacing) * len(text) > width
    else:
        assert line.width_mm(height) == pytest.approx(width, rel=1e-9)


def test_the_room_between_lines_of_unlike_heights_goes_by_their_mean() -> None:
    lines = [
        SetLine(text="H", face=open_face(name), line_spacing=1.5) for name in ("barlow", "overpass", "roboto-slab")
    ]
    lettering = set_rows(stacked(measure_lines(lines), [30.0, 10.0, 20.0]), chord_mm=0.0025)
    boxes = [letter.area.bounds for letter in lettering.letters]
    assert [box[3] - box[1] for box in boxes] == pytest.approx([30, 10, 20], abs=0.01)
    assert boxes[0][1] - boxes[1][3] == pytest.approx(0.5 * 20, abs=0.01)
    assert boxes[1][1] - boxes[2][3] == pytest.approx(0.5 * 15, abs=0.01)
    assert lettering.cap_height_mm == 10


def test_each_line_is_aligned_as_it_asks() -> None:
    face = open_face("barlow")
    lines = [
        SetLine(text="HHHHHHHH", face=face),
        SetLine(text="H", face=face, align="left"),
        SetLine(text="H", face=face, align="right"),
    ]
    wide, left, right = (row.box_mm for row in stacked(measure_lines(lines), [20.0] * 3))
    assert (left[0], right[2]) == pytest.approx((wide[0], wide[2]))
    _, left, right = (row.box_mm for row in stacked(measure_lines(lines), [20.0] * 3, half_mm=200.0))
    assert (left[0], right[2]) == pytest.approx((-200, 200))


def test_characters_that_are_missing_from_any_line_are_told_together() -> None:
    lines = [SetLine(text="λ", face=open_face("barlow")), SetLine(text="ж", face=open_face("cinzel"))]
    with pytest.raises(AskError) as caught:
        measure_lines(lines)
    assert [str(problem.what).split(" (")[0] for problem in caught.value.problems] == [
        "barlow has no 'λ'",
        "cinzel has no 'ж'",
    ]


def test_the_ink_boxes_of_letters_are_those_of_their_areas() -> None:
    (line,) = measure_lines([SetLine(text="Ag8", face=open_face("roboto-slab"))])
    lettering = set_rows(stacked([line], [25.0]), chord_mm=0.0005)
    scale = line.scale(25.0)
    start = lettering.rows[0].x_mm
    boxes = np.array([letter.area.bounds for letter in lettering.letters])
    assert boxes[:, [0, 2]] == pytest.approx(line.x_em * scale + start, abs=0.001)
    assert boxes[:, [1, 3]] == pytest.approx(line.y_em * scale + lettering.baselines_mm[0], abs=0.001)
    assert shapely.is_valid([letter.area for letter in lettering.letters]).all()
