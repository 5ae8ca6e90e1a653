"""Text to glyphs, against HarfBuzz's own command-line tool where it is installed."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from signgen.errors import AskError
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_lines
from signgen.lettering.shaping import ShapedLine, check_characters, shape


def texts(line: ShapedLine) -> list[str]:
    """What each glyph stands for, from left to right."""
    return [line.text[glyph.start : glyph.end] for glyph in line.glyphs]


@pytest.mark.parametrize("name", ["barlow", "overpass", "roboto-slab", "noto-sans"])
def test_a_v_stand_closer_than_each_alone(name: str) -> None:
    face = open_face(name)
    assert shape(face, "AV").advance_em < shape(face, "A").advance_em + shape(face, "V").advance_em - 0.01


def test_a_face_without_kerning_sets_by_advances_alone() -> None:
    """Rye has no kerning: project notes, geometry.md section 5."""
    rye = open_face("rye")
    assert shape(rye, "AV").advance_em == pytest.approx(shape(rye, "A").advance_em + shape(rye, "V").advance_em)


def test_a_ligature_stands_for_all_its_letters() -> None:
    line = shape(open_face("overpass"), "office")
    assert len(line.glyphs) < 6
    assert "".join(texts(line)) == "office"
    assert any(len(text) > 1 for text in texts(line))


def test_letter_spacing_keeps_ligatures_apart() -> None:
    line = shape(open_face("overpass"), "office", spaced=True)
    assert texts(line) == list("office")
    assert [glyph.gaps for glyph in line.glyphs] == [0, 1, 2, 3, 4, 5]
    assert line.gaps == 5


def test_a_mark_belongs_to_its_letter() -> None:
    line = shape(open_face("noto-sans"), "q\u0303x")
    assert texts(line) == ["q\u0303", "q\u0303", "x"]
    assert [glyph.gaps for glyph in line.glyphs] == [0, 0, 1]


def test_a_letter_typed_in_parts_is_the_same_letter() -> None:
    face = open_face("barlow")
    assert [g.glyph for g in shape(face, "A\u0308").glyphs] == [g.glyph for g in shape(face, "Ä").glyphs]


@pytest.mark.parametrize("name", ["noto-sans-hebrew", "noto-kufi-arabic"])
def test_digits_keep_their_order_in_right_to_left_text(name: str) -> None:
    word = {"noto-sans-hebrew": "רחוב", "noto-kufi-arabic": "شارع"}[name]
    line = shape(open_face(name), f"{word} 173")
    assert texts(line)[:3] == ["1", "7", "3"]
    assert texts(line)[-1] == word[0]


def test_brackets_are_mirrored_in_right_to_left_text() -> None:
    face = open_face("noto-sans-hebrew")
    opening, closing = (shape(face, bracket).glyphs[0].glyph for bracket in "()")
    glyphs = [glyph.glyph for glyph in shape(face, "(א)").glyphs]
    assert (glyphs[0], glyphs[-1]) == (opening, closing)


def test_arabic_letters_take_joined_forms_and_no_spacing() -> None:
    face = open_face("noto-kufi-arabic")
    joined, alone = shape(face, "ععع"), shape(face, "ع")
    glyphs = [glyph.glyph for glyph in joined.glyphs]
    assert len({*glyphs, alone.glyphs[0].glyph}) == 4  # final, medial, initial, alone
    assert shape(face, "ععع", spaced=True).gaps == 0


def test_lining_figures_replace_old_style_ones(old_style_font: Path) -> None:
    face = open_face(old_style_font)
    assert face.digit_height_ratio == 1.0
    lettering = set_lines(["1"], face, cap_height_mm=65)
    assert lettering.ink_bounds_mm[3] - lettering.ink_bounds_mm[1] == pytest.approx(65)


def test_a_missing_character_is_named_with_the_faces_that_have_it() -> None:
    with pytest.raises(AskError) as caught:
        shape(open_face("barlow"), "Жук 漢")
    known, unknown = caught.value.problems
    assert known.where == "text"
    assert "'Ж' (U+0416 CYRILLIC CAPITAL LETTER ZHE)" in str(known.what)
    assert "U+0443" in str(known.what)
    assert "overpass" in str(known.remedy)
    assert "rye" not in str(known.remedy)
    assert "U+6F22" in str(unknown.what)
    assert "No face of the catalogue" in str(unknown.remedy)


def test_missing_characters_of_all_lines_come_at_once() -> None:
    with pytest.raises(AskError) as caught:
        check_characters(open_face("barlow"), ["Ж", "ok", "ש"])
    assert [str(problem.what).partition("U+")[2][:4] for problem in caught.value.problems] == ["0416", "05E9"]


@pytest.mark.parametrize("text", ["a\nb", "a\tb", "a\x00"])
def test_control_characters_are_refused(text: str) -> None:
    with pytest.raises(AskError, match="control character"):
        shape(open_face("barlow"), text)


def test_bytes_that_are_no_characters_are_refused() -> None:
    with pytest.raises(AskError, match="no characters"):
        shape(open_face("barlow"), b"Lark\xff".decode("utf-8", "surrogateescape"))


def test_invisible_characters_are_no_missing_ones() -> None:
    for invisible in ("\u200e", "\u200d", "\ufe0f", "\u00ad", "\u2060"):
        assert "".join(texts(shape(open_face("barlow"), f"A{invisible}B"))).startswith("A")


# Each is one run of one direction, which is what the tool shapes.
HB_SHAPE = [
    ("barlow", "AVATAR Tomato", "ltr", "latn"),
    ("barlow", "Wayfield Ty, To. L'Y", "ltr", "latn"),
    ("barlow-condensed", "17 Larkspur Lane", "ltr", "latn"),
    ("overpass", "office afflux", "ltr", "latn"),
    ("overpass", "Улица Вязов", "ltr", "cyrl"),
    ("atkinson", "Illinois 0O 1Il", "ltr", "latn"),
    ("cinzel", "THE OLD QUARRY", "ltr", "latn"),
    ("roboto-slab", "Οδός Άνθους", "ltr", "grek"),
    ("pacifico", "Bumblebee Cottage", "ltr", "latn"),
    ("unifraktur", "Waſſerfall Gaſthof", "ltr", "latn"),
    ("rye", "SALOON", "ltr", "latn"),
    ("saira-stencil", "KEEP LEFT", "ltr", "latn"),
    ("big-shoulders", "1147", "ltr", "latn"),
    ("noto-sans", "Ñandú Čeština Phố", "ltr", "latn"),
    ("noto-sans", "नमस्ते", "ltr", "deva"),
    ("noto-sans", "क्षत्रिय ज्ञान द्वार", "ltr", "deva"),
    ("noto-kufi-arabic", "شارع النخيل", "rtl", "arab"),
    ("noto-kufi-arabic", "بيت اللّه لا", "rtl", "arab"),
    ("noto-sans-hebrew", "רחוב הזית", "rtl", "hebr"),
    ("noto-sans-hebrew", "שָׁלוֹם", "rtl", "hebr"),
]


@pytest.mark.skipif(shutil.which("hb-shape") is None, reason="Debian's package libharfbuzz-bin is not installed")
@pytest.mark.parametrize(("name", "text", "direction", "script"), HB_SHAPE)
def test_glyphs_and_places_are_those_of_harfbuzzs_own_tool(name: str, text: str, direction: str, script: str) -> None:
    face = open_face(name)
    command = [
        "hb-shape",
        str(face.path),
        f"--text={text}",
        f"--direction={direction}",
        f"--script={script}",
        "--language=und",
        "--features=lnum",
        "--output-format=json",
        "--no-glyph-names",
        "--cluster-level=0",
    ]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    x, expected = 0, []
    for glyph in json.loads(done.stdout):
        expected.append((glyph["g"], x + glyph["dx"], glyph["dy"], glyph["cl"]))
        x += glyph["ax"]
    line = shape(face, text)
    em = face.units_per_em
    got = [(g.glyph, round(g.x_em * em), round(g.y_em * em), g.start) for g in line.glyphs]
    assert got == expected
    assert round(line.advance_em * em) == x
