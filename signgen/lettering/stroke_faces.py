"""Faces whose letters are lines, not areas: the Hershey glyph data, as a font that shapes like any other."""

from __future__ import annotations

import io
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from signgen.geometry.paths import FloatArray
from signgen.geometry.smooth import chained, smoothed
from signgen.lettering.catalogue import CatalogueFace
from signgen.lettering.face import Face, Glyphs, Lines
from signgen.lettering.heights import measured_face
from signgen.lettering.hershey import CAP_UNITS, FIRST_CODE, StrokeGlyph, read_glyphs

if TYPE_CHECKING:
    import uharfbuzz

EM_UNITS = 32
"""The glyphs' own box from the lowest to the highest stroke; the font's square."""

LONG_UNITS = 6.0
"""A chord as long as this, of capitals 21 high, is no chord of a curve."""

SMOOTH_EM = 1e-5
"""How finely curves are chorded: 0.0015 mm in letters 100 mm high."""

GREEK = "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩ"
"""In the Greek file the capitals stand from the place of A on and the small letters from that of a, in their own
order. Its final sigma is missing. Source: the drawings themselves."""

CYRILLIC = (
    ("ABCDFGHIJKLMNOPQRSTUVWXYZ[]^_`$", "АБЭДФГЖИЧКЛМНОПШРСТЮВЩХУЗЕЪЯЬЦЫ"),
    ("abdefghijklmnopqrstuvwxyz{|}~%&", "абдйфгжичклмнопшрстювщхузеъяьцы"),
)
"""In the Cyrillic file letters stand in the places of these characters. At E it repeats И instead of Й, and at c the
capital instead of э: those two are missing, as is ё. Source: the drawings themselves."""


@lru_cache(maxsize=8)
def stroke_face(entry: CatalogueFace) -> Face:
    """The open face of glyph data that ships. Raises: AskError for a damaged file."""
    glyphs = read_glyphs(entry.path)
    codes = _codes(entry, len(glyphs))
    used = [number for number in sorted(set(codes.values())) if number < len(glyphs)]

    @lru_cache(maxsize=256)
    def lines_of(glyph: int) -> Lines:
        return _curves(glyphs[used[glyph - 1]]) if glyph else ()

    font = _font(entry, [glyphs[number].advance for number in used], {c: used.index(n) + 1 for c, n in codes.items()})
    drawn = Glyphs(name=entry.name, label=entry.label, path=entry.path, number=1, font=font, lines_of=lines_of)
    return measured_face(drawn)


def _codes(entry: CatalogueFace, count: int) -> dict[int, int]:
    """Which glyph of the file stands for each character: those of ASCII in their order, in the Greek file other
    letters."""
    last = min(count, 127 - FIRST_CODE)  # the last glyph of 96 is a test pattern
    codes = {FIRST_CODE + number: number for number in range(last)}
    codes[0xA0] = codes[FIRST_CODE]
    if "Greek" in entry.scripts:
        codes = {code: number for code, number in codes.items() if not chr(code).isalpha()}
        for i, letter in enumerate(GREEK):
            codes[ord(letter)] = ord("A") + i - FIRST_CODE
            codes[ord(letter.lower())] = ord("a") + i - FIRST_CODE
    if "Cyrillic" in entry.scripts:
        places = {place: letter for row in CYRILLIC for place, letter in zip(*row, strict=True)}
        codes = {code: number for code, number in codes.items() if not chr(code).isalpha() and chr(code) not in places}
        codes |= {ord(letter): ord(place) - FIRST_CODE for place, letter in places.items()}
    return codes


def _curves(glyph: StrokeGlyph) -> Lines:
    """The lines of a glyph in em, its chords rounded to the curves that they stand for."""
    lines = chained([np.array(line, dtype=np.float64) for line in glyph.lines])
    curves: list[FloatArray] = []
    for line in lines:
        curve = smoothed(line, SMOOTH_EM * EM_UNITS, LONG_UNITS) / EM_UNITS
        curve.setflags(write=False)
        curves.append(curve)
    return tuple(curves)


def _font(entry: CatalogueFace, advances: list[float], codes: dict[int, int]) -> uharfbuzz.Font:
    """A font of blank glyphs with these advances, which HarfBuzz shapes; glyph 0 is the one for what is missing."""
    import uharfbuzz
    from fontTools.fontBuilder import FontBuilder
    from fontTools.ttLib.tables._g_l_y_f import Glyph

    names = [".notdef", *(f"g{place}" for place in range(1, len(advances) + 1))]
    scale = 1024 // EM_UNITS
    builder = FontBuilder(EM_UNITS * scale, isTTF=True)
    builder.setupGlyphOrder(names)
    builder.setupCharacterMap({code: names[place] for code, place in sorted(codes.items())})
    builder.setupGlyf(dict.fromkeys(names, Glyph()))
    widths = [CAP_UNITS, *advances]
    builder.setupHorizontalMetrics({name: (round(w * scale), 0) for name, w in zip(names, widths, strict=True)})
    builder.setupHorizontalHeader(ascent=CAP_UNITS * scale, descent=-7 * scale)
    builder.setupNameTable({"familyName": entry.label, "styleName": "Regular"})
    builder.setupOS2()
    builder.setupPost()
    data = io.BytesIO()
    builder.save(data)
    return uharfbuzz.Font(uharfbuzz.Face(data.getvalue()))
