"""The reader of single-stroke glyph data, and the faces made of it."""

from __future__ import annotations

import contextlib
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from signgen.errors import AskError
from signgen.lettering.catalogue import stroke_catalogue
from signgen.lettering.faces import open_face
from signgen.lettering.hershey import read_glyphs
from signgen.lettering.layout import set_lines
from signgen.lettering.shaping import shape

SANS = next(face for face in stroke_catalogue() if face.name == "hershey-sans")


def test_a_record_is_read_as_its_makers_describe_it(tmp_path: Path) -> None:
    # H of the simplex set: its box from J to Z about R, two stems and a bar, Y down from -12 to 9.
    path = tmp_path / "one.jhf"
    path.write_text("    8  9G]KFK[ RYFY[ RKPYP\n".replace("  9", "  9", 1), encoding="ascii")
    (glyph,) = read_glyphs(path)
    assert glyph.advance == 22
    assert glyph.lines == (((4, 21), (4, 0)), ((18, 21), (18, 0)), ((4, 11), (18, 11)))


@pytest.mark.parametrize("face", stroke_catalogue(), ids=lambda face: face.name)
def test_every_file_has_the_glyphs_of_ascii_and_capitals_21_high(face: object) -> None:
    glyphs = read_glyphs(face.path)
    assert len(glyphs) == 96
    tops = [y for line in glyphs[ord("H") - 32].lines for _, y in line]
    assert (min(tops), max(tops)) == (0, 21)


@pytest.mark.parametrize(
    "text",
    ["", "\n\n", "12345  xAB\n", "12345 99MWRFRT\n", "12345  0MW\n", "12345  3MW\n", "æ\n", "12345  2M\n"],
)
def test_what_is_no_glyph_data_is_refused_with_its_place(text: str, tmp_path: Path) -> None:
    path = tmp_path / "bad.jhf"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(AskError) as caught:
        read_glyphs(path)
    assert "font" in str(caught.value)


@given(st.binary(max_size=300))
def test_any_bytes_are_read_or_refused(data: bytes) -> None:
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "any.jhf"
        path.write_bytes(data)
        with contextlib.suppress(AskError):
            assert read_glyphs(path)


def test_the_letters_of_greek_and_cyrillic_stand_for_themselves() -> None:
    greek, cyrillic = open_face("hershey-greek"), open_face("hershey-cyrillic")
    assert [greek.has(letter) for letter in "ΩλAς"] == [True, True, False, False]
    assert [cyrillic.has(letter) for letter in "ЖщЙё"] == [True, True, False, False]


def test_curves_stay_within_a_hair_of_the_points_that_were_drawn() -> None:
    face = open_face("hershey-sans")
    for letter, number in (("S", ord("S") - 32), ("g", ord("g") - 32), ("8", ord("8") - 32)):
        (glyph,) = shape(face, letter).glyphs
        curve = np.concatenate(face.lines_of(glyph.glyph)) * 32
        for line in read_glyphs(SANS.path)[number].lines:
            for point in line:
                assert np.hypot(*(curve - point).T).min() < 1e-6


def test_the_height_asked_for_is_that_of_the_letter_as_cut() -> None:
    lettering = set_lines(["H"], open_face("hershey-sans"), cap_height_mm=30, pen_mm=2)
    x0, y0, x1, y1 = lettering.letters[0].area.bounds
    assert y1 - y0 == pytest.approx(30, abs=0.001)
    # Stems 14 of 21 units apart, and the pen's width.
    assert x1 - x0 == pytest.approx(28 * 14 / 21 + 2, abs=0.001)
    assert lettering.letters[0].pen_lines.length == pytest.approx(2 * 28 + 28 * 14 / 21, abs=0.001)
