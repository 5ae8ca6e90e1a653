"""Filled glyphs against FreeType's rasteriser and fontTools' exact areas."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import shapely
from fontTools.pens.areaPen import AreaPen
from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from PIL import Image, ImageDraw, ImageFont

from signgen.lettering.areas import GRID_PER_MM, glyph_areas, spans_at
from signgen.lettering.catalogue import catalogue
from signgen.lettering.face import Face
from signgen.lettering.faces import open_face
from signgen.lettering.outlines import glyph_bounds_em

FACES = [face.name for face in catalogue()]


def area_of(face: Face, letter: str, scale: float = 40.0, chord: float = 0.0025) -> shapely.Geometry:
    (area,) = glyph_areas(face, [face.font.get_nominal_glyph(ord(letter))], scale_mm_per_em=scale, chord_mm=chord)
    return area


@pytest.mark.parametrize("name", FACES)
def test_letters_cover_what_freetype_paints(name: str) -> None:
    """Within 0.5 %, at 1000 pixels an em: coverage of anti-aliased pixels sums up to the area."""
    face = open_face(name)
    font = ImageFont.truetype(str(face.path), 1000, layout_engine=ImageFont.Layout.BASIC)
    for letter in "HRgQ&8" if name not in ("noto-kufi-arabic", "noto-sans-hebrew") else "H8عشאם":
        if not face.has(letter):
            continue
        image = Image.new("L", (2400, 2400))
        ImageDraw.Draw(image).text((600, 600), letter, fill=255, font=font)
        painted = np.asarray(image, dtype=np.float64).sum() / 255
        assert area_of(face, letter, scale=1000.0, chord=0.05).area == pytest.approx(painted, rel=5e-3), letter


@pytest.mark.parametrize("name", ["barlow", "noto-sans", "big-shoulders"])
def test_area_approaches_the_exact_one_from_within_the_chord(name: str) -> None:
    """fontTools integrates the curves; these letters have no overlaps, so the two must agree."""
    face = open_face(name)
    reference = TTFont(face.path)
    glyphs, names = reference.getGlyphSet(), reference.getBestCmap()
    for letter in "OSg8":
        pen = AreaPen(glyphs)
        glyphs[names[ord(letter)]].draw(pen)
        exact = abs(pen.value) * (40 / face.units_per_em) ** 2
        for chord in (0.05, 0.005):
            area = area_of(face, letter, chord=chord)
            assert abs(area.area - exact) <= area.length * (chord + 1 / GRID_PER_MM)


@pytest.mark.parametrize("name", FACES)
def test_bounds_are_those_of_the_curves_not_of_their_control_points(name: str) -> None:
    face = open_face(name)
    reference = TTFont(face.path)
    glyphs, names = reference.getGlyphSet(), reference.getBestCmap()
    for code in [code for code in names if code < 0x250 or 0x590 < code < 0x650]:
        pen = BoundsPen(glyphs)
        glyphs[names[code]].draw(pen)
        bounds = glyph_bounds_em(face, face.font.get_nominal_glyph(code))
        if pen.bounds is None:
            assert bounds is None
        else:
            assert bounds == pytest.approx(np.array(pen.bounds) / face.units_per_em, abs=1e-6)


def test_a_contour_without_on_curve_points_is_round(truetype_font: Path) -> None:
    """Four off-curve points at the corners of a 600 square: four parabolas; 5/6 of the square by integration."""
    area = area_of(open_face(truetype_font), "O", scale=1000.0, chord=0.001)
    assert area.area == pytest.approx(600 * 600 * 5 / 6, rel=1e-5)


def test_cff_curves_are_cubics(cff_font: Path) -> None:
    """Four cubics at 166 / 300 = 0.5533 of the radius come within 0.1 % of a circle."""
    area = area_of(open_face(cff_font), "O", scale=1000.0, chord=0.001)
    assert area.area == pytest.approx(np.pi * 300**2, rel=2e-3)
    assert area.bounds == pytest.approx((0, 0, 600, 600))


def test_bounds_of_a_cubic_lie_between_its_ends() -> None:
    """B(t) of 0, 1, 1, 0 reaches 3/4 at t = 1/2; the glyph's bounds must not stop at its ends."""
    from signgen.lettering import outlines

    controls = np.array([[(0, 0), (0, 1), (1, 1), (1, 0)]], dtype=float)
    t = outlines._inside(np.array([[0.0, 1.0]]), np.array([[1.0, 2.0]]))
    assert outlines._at(controls, t)[0, 1] == pytest.approx(0.75)


@pytest.mark.parametrize("name", FACES)
def test_all_of_a_face_is_valid_oriented_and_on_the_grid(name: str) -> None:
    face = open_face(name)
    glyphs = range(1, min(face.font.face.glyph_count, 400))
    for area in glyph_areas(face, glyphs, scale_mm_per_em=28.57, chord_mm=0.0025):
        assert area.is_valid
        steps = shapely.get_coordinates(area) * GRID_PER_MM
        assert np.abs(steps - np.rint(steps)).max(initial=0) < 1e-6
        for part in shapely.get_parts(area):
            assert part.exterior.is_ccw
            assert not any(hole.is_ccw for hole in part.interiors)


def test_counters_stay_open() -> None:
    for letter, holes in (("H", 0), ("A", 1), ("B", 2), ("8", 2), ("i", 0)):
        parts = shapely.get_parts(area_of(open_face("barlow"), letter))
        assert sum(len(part.interiors) for part in parts) == holes
        assert len(parts) == (2 if letter == "i" else 1)


def test_the_stencil_face_has_no_counters() -> None:
    """Project notes, geometry.md section 5: no closed counters in Latin."""
    for letter in "ABDOPQRabdegopq04689":
        assert not any(part.interiors for part in shapely.get_parts(area_of(open_face("saira-stencil"), letter)))


def test_a_blank_glyph_is_an_empty_area() -> None:
    assert area_of(open_face("barlow"), " ").is_empty


def test_spans_are_told_from_the_left() -> None:
    area = area_of(open_face("barlow"), "H")
    _, y0, _, y1 = area.bounds
    spans = spans_at(area, y0 + 0.25 * (y1 - y0))
    assert len(spans) == 2
    assert spans[0][1] < spans[1][0]
    assert len(spans_at(area, (y0 + y1) / 2)) == 1
    assert spans_at(area, y1 + 1) == ()


@pytest.mark.sweep
@pytest.mark.parametrize("name", FACES)
def test_every_glyph_is_what_freetype_paints(name: str) -> None:
    """Area within 0.5 % and no pixel further than one pixel from the edge wrong, unhinted, every glyph of the face."""
    freetype = pytest.importorskip("freetype", reason="freetype-py, a development reference, is not installed")
    face = open_face(name)
    reference = freetype.Face(str(face.path))
    size = 400
    reference.set_pixel_sizes(0, size)
    flags = freetype.FT_LOAD_NO_HINTING | freetype.FT_LOAD_RENDER | freetype.FT_LOAD_NO_BITMAP
    areas = glyph_areas(face, range(face.font.face.glyph_count), scale_mm_per_em=size, chord_mm=0.01)
    for glyph, area in enumerate(areas):
        reference.load_glyph(glyph, flags)
        bitmap = reference.glyph.bitmap
        if area.is_empty or not bitmap.rows:
            assert area.area < 1, f"glyph {glyph} is painted and has no area"
            continue
        pixels = np.array(bitmap.buffer, dtype=float).reshape(bitmap.rows, bitmap.pitch)[:, : bitmap.width] / 255
        # Each pixel is rounded to 1/255, so small glyphs get that much of their outline as slack.
        assert abs(area.area - pixels.sum()) <= 5e-3 * pixels.sum() + area.length / 255, f"glyph {glyph}"
        x = reference.glyph.bitmap_left + np.arange(bitmap.width) + 0.5
        y = reference.glyph.bitmap_top - np.arange(bitmap.rows) - 0.5
        across, up = np.meshgrid(x, y)
        shapely.prepare(area)
        sure = (pixels > 0.999) | (pixels < 0.001)
        inside = shapely.contains_xy(area, across, up)
        wrong = sure & (inside != (pixels > 0.5))
        if wrong.any():
            far = shapely.distance(shapely.boundary(area), shapely.points(across[wrong], up[wrong]))
            assert far.max() <= 1, f"glyph {glyph}"
