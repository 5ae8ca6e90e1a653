"""Fonts that no repository needs to hold: built on the spot, as small as they can be."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.t2CharStringPen import T2CharStringPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.ttLib.tables.TupleVariation import TupleVariation

UNITS = 1000
CHARACTERS = {32: "space", 49: "one", 72: "H", 73: "I", 79: "O"}
FEATURE_GLYPHS = ("one.lnum",)


def draw_block(pen: object, width: int, height: int) -> None:
    """A rectangle from the origin."""
    pen.moveTo((0, 0))
    pen.lineTo((0, height))
    pen.lineTo((width, height))
    pen.lineTo((width, 0))
    pen.closePath()


def draw_round(pen: object) -> None:
    """A contour without a single on-curve point, as TrueType allows (`qCurveTo` ending in None)."""
    pen.qCurveTo((0, 0), (0, 600), (600, 600), (600, 0), None)
    pen.closePath()


def begin(is_ttf: bool) -> FontBuilder:
    builder = FontBuilder(UNITS, isTTF=is_ttf)
    builder.setupGlyphOrder([".notdef", *CHARACTERS.values(), *FEATURE_GLYPHS])
    builder.setupCharacterMap(CHARACTERS)
    return builder


def finish(builder: FontBuilder, path: Path) -> Path:
    # Declared heights that are wrong on purpose: nothing may trust them.
    builder.setupHorizontalMetrics(dict.fromkeys(builder.font.getGlyphOrder(), (700, 0)))
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable({"familyName": "Larkspur Test", "styleName": "Regular"})
    builder.setupOS2(sCapHeight=100, sxHeight=50)
    builder.setupPost()
    builder.save(path)
    return path


def truetype(blank: bool = False) -> FontBuilder:
    """H 400 wide and 650 high, I 100 x 700, O without on-curve points, 1 half as high unless `lnum` is on."""
    builder = begin(True)
    glyphs = {}
    for name in builder.font.getGlyphOrder():
        pen = TTGlyphPen(None)
        if not blank:
            if name == "H":
                draw_block(pen, 400, 650)
            elif name == "I":
                draw_block(pen, 100, 700)
            elif name == "O":
                draw_round(pen)
            elif name.startswith("one"):
                draw_block(pen, 200, 650 if name == "one.lnum" else 325)
        glyphs[name] = pen.glyph()
    builder.setupGlyf(glyphs)
    return builder


@pytest.fixture
def truetype_font(tmp_path: Path) -> Path:
    return finish(truetype(), tmp_path / "block.ttf")


@pytest.fixture
def old_style_font(tmp_path: Path) -> Path:
    builder = truetype()
    builder.addOpenTypeFeatures("feature lnum { sub one by one.lnum; } lnum;")
    return finish(builder, tmp_path / "old-style.ttf")


@pytest.fixture
def blank_font(tmp_path: Path) -> Path:
    return finish(truetype(blank=True), tmp_path / "blank.ttf")


@pytest.fixture
def cff_font(tmp_path: Path) -> Path:
    """The same H and I in CFF outlines, O as a circle-like cubic."""
    builder = begin(False)
    strings = {}
    for name in builder.font.getGlyphOrder():
        pen = T2CharStringPen(700, None)
        if name == "H":
            draw_block(pen, 400, 650)
        elif name == "I":
            draw_block(pen, 100, 700)
        elif name == "O":
            pen.moveTo((0, 300))
            pen.curveTo((0, 466), (134, 600), (300, 600))
            pen.curveTo((466, 600), (600, 466), (600, 300))
            pen.curveTo((600, 134), (466, 0), (300, 0))
            pen.curveTo((134, 0), (0, 134), (0, 300))
            pen.closePath()
        strings[name] = pen.getCharString()
    builder.setupCFF("LarkspurTest", {}, strings, {})
    return finish(builder, tmp_path / "block.otf")


@pytest.fixture
def variable_font(tmp_path: Path) -> Path:
    """H grows from 650 to 850 high over the axis `hght` from 0 to 100."""
    builder = truetype()
    builder.setupNameTable({"familyName": "Larkspur Test", "styleName": "Regular"})
    builder.setupFvar([("hght", 0, 0, 100, "Height")], [])
    deltas = [(0, 0), (0, 200), (0, 200), (0, 0)] + [(0, 0)] * 4
    builder.setupGvar({"H": [TupleVariation({"hght": (0, 1, 1)}, deltas)]})
    return finish(builder, tmp_path / "variable.ttf")


@pytest.fixture
def coloured_font(tmp_path: Path) -> Path:
    """O is drawn in two colours, H and I are plain."""
    builder = truetype()
    builder.setupCOLR({"O": [("I", 0), ("H", 1)]})
    builder.setupCPAL([[(1, 0, 0, 1), (0, 0, 1, 1)]])
    return finish(builder, tmp_path / "coloured.ttf")


@pytest.fixture
def write(tmp_path: Path) -> Callable[[str, bytes], Path]:
    """A file of the given bytes."""

    def to(name: str, data: bytes) -> Path:
        path = tmp_path / name
        path.write_bytes(data)
        return path

    return to
