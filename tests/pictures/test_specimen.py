"""Cards of faces: both forms show the same, and the lines lie at the heights that are measured."""

from __future__ import annotations

import io
from xml.etree import ElementTree

import numpy as np
import pytest
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from PIL import Image

from signgen.lettering.catalogue import catalogue
from signgen.lettering.faces import open_face
from signgen.pictures.specimen import ALPHABETS, FIGURES, PHRASES, PX_PER_MM, _card, figures_of, specimens

SVG = "{http://www.w3.org/2000/svg}"


def entry(name: str) -> object:
    return next(face for face in catalogue() if face.name == name)


@pytest.mark.parametrize("name", ["barlow", "noto-kufi-arabic"])
def test_both_forms_have_the_same_size_and_the_same_ink(name: str) -> None:
    files = dict(specimens([entry(name)]))
    assert list(files) == [f"{name}.svg", f"{name}.png"]
    root = ElementTree.fromstring(files[f"{name}.svg"])
    wide, high = (float(root.get(side).removesuffix("mm")) for side in ("width", "height"))
    image = Image.open(io.BytesIO(files[f"{name}.png"]))
    assert image.size == pytest.approx((wide * PX_PER_MM, high * PX_PER_MM), abs=1)
    assert image.info["dpi"] == pytest.approx((PX_PER_MM * 25.4,) * 2, abs=0.1)
    dark = 1 - np.asarray(image.convert("L"), dtype=float) / 255
    ink = {"#1d262e": 0.857, "#5d6a74": 0.589, "#8c2f14": 0.71}  # darkness of each colour as a grey (ITU-R BT.601)
    card = _card(entry(name))
    drawn = sum(ink[colour] * area.area for area, colour in card.areas) * PX_PER_MM**2
    guides = sum(b[0] - a[0] for a, b in card.guides) * 0.2 * PX_PER_MM**2 * 0.3
    assert dark.sum() == pytest.approx(drawn + guides, rel=0.04)  # Pillow fills the pixels under an outline too


def test_lines_lie_where_h_and_the_figure_one_end() -> None:
    card = _card(entry("pacifico"))
    baseline, capitals, small, figures = (a[1] for a, _ in card.guides)
    tops = sorted(round(area.bounds[1], 3) for area, _ in card.areas if area.bounds[3] - area.bounds[1] > 12)
    face = open_face("pacifico")
    assert baseline - capitals == pytest.approx(30.0)
    assert baseline - figures == pytest.approx(30.0 * face.digit_height_ratio)
    assert baseline - small == pytest.approx(30.0 * face.x_height_em / face.cap_height_em)
    assert any(top == pytest.approx(figures, abs=0.02) for top in tops)


@pytest.mark.parametrize("face", catalogue(), ids=lambda face: face.name)
def test_figures_are_those_of_the_outlines(face: object) -> None:
    """Against fontTools' own bounds of H, x and the figure 1, which these faces set as lining figures anyway."""
    font = TTFont(face.path)
    glyphs, cmap = font.getGlyphSet(), font.getBestCmap()
    tops = {}
    for letter in "Hx":
        pen = BoundsPen(glyphs)
        glyphs[cmap[ord(letter)]].draw(pen)
        tops[letter] = pen.bounds[3] / font["head"].unitsPerEm
    words = figures_of(open_face(face.name))
    assert words.startswith(f"capitals {tops['H']:.3f} em, x {tops['x'] / tops['H']:.2f} of that")


def test_every_script_of_the_catalogue_has_its_samples_and_every_face_can_set_them() -> None:
    for face in catalogue():
        have = open_face(face.name).has
        for script in face.scripts:
            for text in (*ALPHABETS[script], PHRASES[script]):
                assert [letter for letter in text if letter != " " and not have(letter)] == []
        assert all(map(have, FIGURES[0][:20].replace(" ", "")))
