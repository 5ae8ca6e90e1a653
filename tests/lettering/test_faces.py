"""What an open face says of itself, against fontTools, which reads the same files by code of its own."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTCollection, TTFont

from signgen.errors import AskError
from signgen.lettering.areas import stroke_ratio
from signgen.lettering.catalogue import catalogue
from signgen.lettering.faces import faces_with, open_face

FACES = [face.name for face in catalogue()]


def top_em(font: TTFont, letter: str) -> float:
    glyphs = font.getGlyphSet()
    pen = BoundsPen(glyphs)
    glyphs[font.getBestCmap()[ord(letter)]].draw(pen)
    return pen.bounds[3] / font["head"].unitsPerEm


@pytest.mark.parametrize("name", FACES)
def test_heights_are_those_of_the_outlines(name: str) -> None:
    face = open_face(name)
    reference = TTFont(face.path)
    assert face.cap_height_em == pytest.approx(top_em(reference, "H"), abs=1e-9)
    assert face.x_height_em == pytest.approx(top_em(reference, "x"), abs=1e-9)
    assert face.height_letter == "H"


def test_measures_what_the_font_declares_wrongly() -> None:
    """Declared against measured: project notes, geometry.md section 5."""
    for name, declared, measured in (("unifraktur", 0.237, 0.750), ("rye", 0.177, 0.757)):
        face = open_face(name)
        font = TTFont(face.path)
        assert font["OS/2"].sCapHeight / font["head"].unitsPerEm == pytest.approx(declared, abs=5e-4)
        assert face.cap_height_em == pytest.approx(measured, abs=5e-4)


def test_stroke_and_digits_are_as_measured_by_others() -> None:
    """Project notes, geometry.md section 5: Overpass Medium 14.4 % of height, Pacifico's digits 0.67 of cap height."""
    assert stroke_ratio(open_face("overpass-medium")) == pytest.approx(0.144, abs=5e-4)
    assert open_face("pacifico").digit_height_ratio == pytest.approx(0.67, abs=5e-3)
    assert open_face("big-shoulders").digit_height_ratio == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize("name", FACES)
def test_knows_the_characters_of_the_font(name: str) -> None:
    face = open_face(name)
    assert face.characters == frozenset(TTFont(face.path).getBestCmap())


def test_a_block_of_known_size_measures_as_built(truetype_font: Path, cff_font: Path) -> None:
    for path in (truetype_font, cff_font):
        face = open_face(path)
        assert (face.cap_height_em, face.x_height_em) == (0.65, None)
        assert stroke_ratio(face) == pytest.approx(0.1 / 0.65, abs=1e-4)
        assert face.label == "Larkspur Test Regular"


def test_opens_once() -> None:
    assert open_face("barlow") is open_face(" Barlow ")
    assert open_face("barlow") is not open_face("rye")


def test_offers_close_names() -> None:
    with pytest.raises(AskError) as caught:
        open_face("barlo")
    (problem,) = caught.value.problems
    assert problem.where == "font"
    assert "'barlo'" in str(problem.what)
    assert "barlow" in str(problem.remedy)


def test_a_collection_opens_by_number(truetype_font: Path, variable_font: Path, tmp_path: Path) -> None:
    collection = TTCollection()
    collection.fonts = [TTFont(truetype_font), TTFont(open_face("rye").path)]
    path = tmp_path / "two.ttc"
    collection.save(path)
    assert open_face(path).cap_height_em == 0.65
    assert open_face(f"{path}#1").cap_height_em == 0.65
    assert open_face(f"{path}#2").cap_height_em == open_face("rye").cap_height_em
    for number in (0, 3):
        with pytest.raises(AskError, match=f"no number {number}"):
            open_face(f"{path}#{number}")


def test_a_number_sign_in_a_file_name_is_part_of_it(truetype_font: Path) -> None:
    named = truetype_font.rename(truetype_font.with_name("font#2"))
    assert open_face(named).cap_height_em == 0.65


def test_a_variable_font_opens_at_its_default_and_takes_axes(variable_font: Path) -> None:
    assert open_face(variable_font).cap_height_em == 0.65
    assert open_face(variable_font, {"hght": 50}).cap_height_em == 0.75
    assert open_face(variable_font, {"hght": 100}).cap_height_em == 0.85


def test_tells_every_wrong_axis(variable_font: Path) -> None:
    with pytest.raises(AskError) as caught:
        open_face(variable_font, {"hght": 101, "wght": 400})
    assert ["hght 101" in str(p.what) or "'wght'" in str(p.what) for p in caught.value.problems] == [True, True]
    assert "0 to 100" in str(caught.value.problems[0].remedy)
    with pytest.raises(AskError, match="no variable font"):
        open_face("barlow", {"wght": 400})


def test_finds_the_faces_that_have_all_characters() -> None:
    assert faces_with("ش") == ("noto-kufi-arabic",)
    assert faces_with("क") == ("noto-sans",)
    assert "barlow" in faces_with("Ä")
    assert faces_with("漢") == ()


def test_listing_the_faces_loads_no_font_library() -> None:
    code = (
        "import sys; from signgen.lettering.catalogue import catalogue; assert len(catalogue()) > 3;"
        "print(sorted({'fontTools', 'uharfbuzz', 'shapely', 'numpy'} & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
