"""Blocks of lettering: heights as asked, ink centred, letters that keep their shape."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.lettering.areas import GRID_PER_MM
from signgen.lettering.catalogue import catalogue
from signgen.lettering.faces import open_face
from signgen.lettering.layout import Lettering, alike, measure_lines, set_lines, stacked
from signgen.lettering.numerals import numeral_warning
from tests.asking import english

FACES = [face.name for face in catalogue()]


def line_boxes(lettering: Lettering, count: int) -> list[tuple[float, ...]]:
    return [
        tuple(shapely.total_bounds([letter.area for letter in lettering.letters if letter.line == line]))
        for line in range(count)
    ]


@pytest.mark.parametrize("name", FACES)
@pytest.mark.parametrize("cap_height_mm", [7.3, 60.0])
def test_h_is_as_high_as_asked(name: str, cap_height_mm: float) -> None:
    lettering = set_lines(["H"], open_face(name), cap_height_mm=cap_height_mm)
    (letter,) = lettering.letters
    assert letter.area.bounds[3] - lettering.baselines_mm[0] == pytest.approx(cap_height_mm, abs=0.01)
    assert lettering.cap_height_mm == cap_height_mm


@pytest.mark.parametrize("name", FACES)
@pytest.mark.parametrize("align", ["left", "centre", "right"])
def test_ink_is_centred_and_lines_are_aligned_by_ink(name: str, align: str) -> None:
    lettering = set_lines(["17", "Jay Lane"], open_face(name), cap_height_mm=30, align=align)
    x0, y0, x1, y1 = lettering.ink_bounds_mm
    assert (x0 + x1, y0 + y1) == pytest.approx((0, 0), abs=0.01)
    first, second = line_boxes(lettering, 2)
    if align == "left":
        assert first[0] == pytest.approx(second[0], abs=0.005)
    elif align == "right":
        assert first[2] == pytest.approx(second[2], abs=0.005)
    else:
        assert first[0] + first[2] == pytest.approx(second[0] + second[2], abs=0.01)


@pytest.mark.parametrize("name", FACES)
def test_the_measure_foretells_the_ink(name: str) -> None:
    face = open_face(name)
    lines = ["No. 17", "  ", "Jay, fy"]
    for cap, spacing, align in ((22.0, 0.0, "left"), (35.0, 4.0, "centre"), (22.0, 30.0, "right")):
        asked = alike(lines, face, align=align, line_spacing=2.5, letter_spacing_mm=spacing)
        rows = stacked(measure_lines(asked), [cap] * 3)
        boxes = [row.box_mm for row in rows if row.box_mm is not None]
        lettering = set_lines(lines, face, cap_height_mm=cap, align=align, line_spacing=2.5, letter_spacing_mm=spacing)
        assert len(boxes) == 2
        for box, line in zip(boxes, (0, 2), strict=True):
            ink = shapely.total_bounds([letter.area for letter in lettering.letters if letter.line == line])
            assert box == pytest.approx(tuple(ink), abs=0.003)


def test_baselines_lie_line_spacing_apart() -> None:
    lettering = set_lines(["A", "B", "", "C"], open_face("barlow"), cap_height_mm=20, line_spacing=1.5)
    assert np.diff(lettering.baselines_mm) == pytest.approx([-30, -30, -30])


def test_letter_spacing_moves_letters_apart_by_exactly_that() -> None:
    face = open_face("rye")
    for spacing in (5.0, -1.0):
        close = set_lines(["HIH"], face, cap_height_mm=30)
        apart = set_lines(["HIH"], face, cap_height_mm=30, letter_spacing_mm=spacing)
        for one, other in itertools.pairwise(range(3)):
            before = close.letters[other].area.bounds[0] - close.letters[one].area.bounds[0]
            after = apart.letters[other].area.bounds[0] - apart.letters[one].area.bounds[0]
            assert after - before == pytest.approx(spacing, abs=2e-5)


@pytest.mark.parametrize("name", ["barlow", "cinzel", "rye"])
def test_a_repeated_letter_has_the_same_shape_to_the_last_bit(name: str) -> None:
    lettering = set_lines(["ANNA", "BANANA"], open_face(name), cap_height_mm=33.3).moved(101.7, 52.123456)
    for letter in "AN":
        shapes = set()
        for found in (each for each in lettering.letters if each.text == letter):
            steps = np.rint(shapely.get_coordinates(found.area) * GRID_PER_MM)
            assert np.array_equal(steps / GRID_PER_MM, shapely.get_coordinates(found.area))
            shapes.add((steps - steps[0]).tobytes())
        assert len(shapes) == 1


def test_moving_keeps_everything_together() -> None:
    still = set_lines(["17"], open_face("barlow"), cap_height_mm=20)
    moved = still.moved(100.0, 40.0)
    assert moved.ink_bounds_mm == pytest.approx(np.array(still.ink_bounds_mm) + (100, 40, 100, 40))
    assert moved.baselines_mm[0] == pytest.approx(still.baselines_mm[0] + 40)
    assert tuple(shapely.total_bounds([letter.area for letter in moved.letters])) == pytest.approx(
        moved.ink_bounds_mm, abs=2e-5
    )


def test_letters_are_named_by_line_and_place_spaces_left_out() -> None:
    lettering = set_lines(["1 7", "Hi"], open_face("barlow"), cap_height_mm=20)
    assert [(letter.name, letter.text) for letter in lettering.letters] == [
        ("line 1 letter 1", "1"),
        ("line 1 letter 2", "7"),
        ("line 2 letter 1", "H"),
        ("line 2 letter 2", "i"),
    ]


def test_letters_of_right_to_left_text_are_counted_as_they_are_read() -> None:
    lettering = set_lines(["רחוב 17"], open_face("noto-sans-hebrew"), cap_height_mm=20)
    assert "".join(letter.text for letter in lettering.letters) == "רחוב17"
    lefts = [letter.area.bounds[0] for letter in lettering.letters]
    assert lefts[0] == max(lefts)
    assert lefts[4] < lefts[5] < lefts[3]  # 1, 7, then the word's last letter


def test_letters_that_join_are_one_area() -> None:
    script = set_lines(["Anna"], open_face("pacifico"), cap_height_mm=30)
    (word,) = script.letters
    assert (word.name, word.text) == ("line 1 letters 1-4", "Anna")
    assert word.area.geom_type == "Polygon"
    tight = set_lines(["HO"], open_face("barlow"), cap_height_mm=30, letter_spacing_mm=-6)
    assert [letter.name for letter in tight.letters] == ["line 1 letters 1-2"]


def test_letters_of_two_lines_that_meet_are_one_area() -> None:
    lettering = set_lines(["Hg", "HH"], open_face("barlow"), cap_height_mm=30, line_spacing=1.05)
    assert [letter.name for letter in lettering.letters] == [
        "line 1 letter 1",
        "line 1 letter 2 and line 2 letter 2",
        "line 2 letter 1",
    ]


@pytest.mark.parametrize("lines", [[], [""], ["  ", "\u00a0"], ["\u200e"]])
def test_text_that_shows_nothing_is_refused(lines: list[str]) -> None:
    with pytest.raises(AskError, match="shows nothing"):
        set_lines(lines, open_face("barlow"), cap_height_mm=20)


@pytest.mark.parametrize("size", [0.0, -3.0, float("nan"), float("inf")])
def test_sizes_that_are_none_are_refused(size: float) -> None:
    face = open_face("barlow")
    with pytest.raises(AskError, match="cap-height"):
        set_lines(["A"], face, cap_height_mm=size)
    with pytest.raises(AskError, match="line-spacing"):
        set_lines(["A"], face, cap_height_mm=10, line_spacing=size)


def test_warns_of_short_figures_only_where_there_are_some() -> None:
    """Pacifico's digits are 0.67 of cap height: project notes, geometry.md section 5."""
    pacifico = open_face("pacifico")
    warning = english(numeral_warning(pacifico, ["Lane", "17"]))
    assert warning is not None
    assert "0.67" in warning
    assert english(numeral_warning(pacifico, ["Lane"])) is None
    assert english(numeral_warning(open_face("big-shoulders"), ["17"])) is None


@settings(max_examples=40, deadline=None)
@given(
    lines=st.lists(st.text("ABTVagjy17 .&'", max_size=9), min_size=1, max_size=4).filter(
        lambda lines: any(line.strip() for line in lines)
    ),
    cap=st.floats(3, 120),
    spacing=st.floats(-0.5, 20),
    name=st.sampled_from(["barlow", "pacifico", "cinzel", "unifraktur"]),
)
def test_every_letter_is_sound_named_once_and_alone(lines: list[str], cap: float, spacing: float, name: str) -> None:
    lettering = set_lines(lines, open_face(name), cap_height_mm=cap, letter_spacing_mm=spacing)
    areas = [letter.area for letter in lettering.letters]
    assert all(area.is_valid and not area.is_empty for area in areas)
    assert len({letter.name for letter in lettering.letters}) == len(areas)
    assert "".join(sorted("".join(letter.text for letter in lettering.letters))) == "".join(
        sorted("".join(lines).replace(" ", ""))
    )
    tree = shapely.STRtree(areas)
    one, other = tree.query(areas, predicate="intersects")
    assert np.array_equal(one, other)
