"""Borrowing from other faces what one lacks: only when asked, whole words together, capitals as high."""

from __future__ import annotations

import pytest

from signgen.errors import AskError
from signgen.lettering.block import stacked
from signgen.lettering.faces import open_face
from signgen.lettering.layout import set_rows
from signgen.lettering.line import SetLine
from signgen.lettering.measure import measure_lines
from signgen.lettering.shaping import shape


def faces(name: str, text: str) -> str:
    """The face of every glyph in reading order, a run once."""
    line = shape(open_face(name), text, fallback=True)
    named = [glyph.face.name for glyph in sorted(line.glyphs, key=lambda glyph: glyph.start)]
    return " ".join(face for i, face in enumerate(named) if i == 0 or named[i - 1] != face)


def test_nothing_is_borrowed_unless_asked() -> None:
    with pytest.raises(AskError, match=r"barlow has no 'λ'.*Faces that have it: roboto-slab, noto-sans"):
        shape(open_face("barlow"), "17 λ")


def test_what_the_face_has_is_never_borrowed() -> None:
    own, asked = shape(open_face("noto-sans"), "Ωmega 17"), shape(open_face("noto-sans"), "Ωmega 17", fallback=True)
    assert own == asked


def test_the_first_face_that_has_all_is_taken_for_all() -> None:
    assert faces("barlow", "17 λν") == "barlow roboto-slab"
    assert faces("barlow", "λ and क") == "noto-sans barlow noto-sans"  # Roboto Slab has the one, Noto Sans both


def test_scripts_that_no_face_has_together_come_from_one_each() -> None:
    assert faces("barlow", "λν أب") == "roboto-slab barlow noto-kufi-arabic"


def test_words_of_a_phrase_stay_together_with_the_spaces_between() -> None:
    line = shape(open_face("barlow"), "No. 17, Οδός Δελφών", fallback=True)
    borrowed = [glyph for glyph in line.glyphs if glyph.face.name == "roboto-slab"]
    assert "".join(line.text[glyph.start : glyph.end] for glyph in borrowed) == "Οδός Δελφών"


def test_a_face_with_a_few_letters_of_a_script_leaves_the_word_to_one_that_has_all() -> None:
    assert open_face("barlow").has("Ω")
    assert faces("barlow", "Ωμέγα") == "roboto-slab"
    assert faces("barlow", "10 Ω") == "barlow"


def test_a_single_missing_letter_takes_no_other_with_it() -> None:
    assert faces("unifraktur", "Kőszeg") == "unifraktur barlow unifraktur"


def test_an_arabic_word_is_joined_as_its_own_face_joins_it() -> None:
    word = "شارع"
    alone = [glyph.glyph for glyph in shape(open_face("noto-kufi-arabic"), word).glyphs]
    line = shape(open_face("rye"), f"Lane {word}", fallback=True)
    assert [glyph.glyph for glyph in line.glyphs if glyph.face.name == "noto-kufi-arabic"] == alone


def test_a_mark_goes_with_its_letter() -> None:
    line = shape(open_face("barlow"), "a\u0951 b", fallback=True)  # a Vedic accent over a Latin letter
    assert {line.text[g.start : g.end]: g.face.name for g in line.glyphs}["a\u0951"] == "noto-sans"


@pytest.mark.parametrize("name", ["barlow", "pacifico", "cinzel"])
def test_borrowed_capitals_are_as_high(name: str) -> None:
    (line,) = measure_lines([SetLine(text="H Η", face=open_face(name), fallback=True)])  # a Greek Eta
    row = stacked([line], [40.0])[0]
    letters = set_rows([row], chord_mm=0.0025).letters
    assert [letter.area.bounds[3] - row.baseline_mm for letter in letters] == pytest.approx([40, 40], abs=0.01)
    assert letters[1].area.bounds[0] >= letters[0].area.bounds[2]


def test_what_no_face_has_is_an_error_still() -> None:
    with pytest.raises(AskError, match="No face of the catalogue has it"):
        shape(open_face("barlow"), "17 λ 木", fallback=True)
