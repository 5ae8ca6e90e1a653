"""Lines whose baseline is a circle: where each letter stands on it, turned as a whole and not bent.

The middle of a letter's room touches the circle, its baseline along the tangent there. Letters keep the distance that
they have in a straight line where they are nearest to the circle's middle, at their feet above it and at their heads
below, so none of them come closer than they are drawn to. Letters that join keep it where they join: along the
baseline, or along the headline of Devanagari and its kin.
"""

from __future__ import annotations

import itertools
import math
from functools import lru_cache

import numpy as np
import shapely
from msgspec import Struct
from shapely.affinity import translate

from signgen.geometry.offsets import Area
from signgen.geometry.paths import FloatArray
from signgen.lettering.areas import glyph_areas
from signgen.lettering.line import Arc, SetLine
from signgen.lettering.measure import LineMeasure, measure_line
from signgen.lettering.outlines import glyph_bounds_em
from signgen.lettering.shaping import shape

JOINED_RATIO = 0.6
"""Part of the neighbours in a line that touch, from which on its letters are taken to join: not all of Arabic do."""

JUDGED_MM_PER_EM = 40.0
"""The size at which it is looked whether they touch."""

CLOSED_RATIO = 0.75
"""Of a circle, from which on words on it look like a ring that wants to be closed, not like an arc (derived here)."""

HEADLINES = ((0x0900, 0x097F, "क"), (0x0980, 0x09FF, "ক"), (0x0A00, 0x0A7F, "ਕ"))
"""Scripts whose letters hang from a line, by their code points, with a letter that ends at its top. Source: the Unicode
Standard, chapter 12, on Devanagari, Bengali and Gurmukhi."""

HEADLINE_RATIO = 0.9
"""Middle of the headline over the height of such a letter."""


class CarriedLetter(Struct, frozen=True, kw_only=True):
    """A line on its circle, whose middle is (0, 0). Of each of its n glyphs that show:

    `points_mm` (n, 2) where the middle of its letter's room touches the circle; `turns_rad` (n,) how far it is turned
    counter-clockwise; `middles_mm` (n,) where that middle lies on the line set straight, letter spaces included.
    `quads_mm` (n, 4, 2) corners of its ink box as turned. Seen from the baseline at the text's middle, `rise_mm` is how
    far up the heads of the capitals reach, and `drop_mm` how far down the feet.
    """

    points_mm: FloatArray
    turns_rad: FloatArray
    middles_mm: FloatArray
    spacing_mm: float
    quads_mm: FloatArray
    rise_mm: float
    drop_mm: float


def carried(measured: LineMeasure, arc: Arc, cap_height_mm: float) -> CarriedLetter | None:
    """The line as it stands on its circle; None when there is no room for it: it is longer than the circle, with a gap
    of a capital's height between its end and its beginning, or its heads meet in the circle's middle."""
    radius, scale, spacing = arc.radius_mm, measured.scale(cap_height_mm), measured.line.letter_spacing_mm
    up = -1.0 if arc.side == "below" else 1.0
    join = _join_height_em(measured.line)
    if join is not None:
        tight = radius + up * join * scale
    else:
        tight = radius - cap_height_mm if arc.side == "below" else radius
    if min(tight, radius + min(0.0, up) * cap_height_mm) <= 0 or not measured.shows:
        return None
    between = 0.0  # added to each gap between words
    if arc.side == "ring" and arc.by_words:
        length = measured.shaped.advance_em * scale + measured.shaped.gaps * spacing
        left = 2 * math.pi * radius - length
        words = len(measured.line.text.split())
        if left < (0.0 if words > 1 else cap_height_mm):
            return None
        if words > 1 and length >= CLOSED_RATIO * (length + left):
            between = left / words
    elif arc.side == "ring":
        gaps = measured.shaped.gaps + 1  # one more between the last letter and the first
        even = (2 * math.pi * radius - measured.shaped.advance_em * scale) / gaps
        if even < spacing:
            return None
        spacing = even
    x, y = measured.inks_mm(cap_height_mm, spacing)
    middles = measured.middle_em * scale + measured.gaps * spacing
    apart = between * _words_before(measured)
    low, high = float((x + apart[:, None]).min()), float((x + apart[:, None]).max())
    if arc.side != "ring" and (high - low + cap_height_mm) / tight > 2 * math.pi:
        return None
    origin = (low + high) / 2
    along = (middles + apart - origin) / tight
    turns = along if arc.side == "below" else -along
    points = up * radius * np.stack([-np.sin(turns), np.cos(turns)], axis=1)
    across, above = x - middles[:, None], y
    corners = np.stack([across[:, [0, 1, 1, 0]], above[:, [0, 0, 1, 1]]], axis=2)
    body = np.stack(
        [across[:, [0, 1, 1, 0]], np.broadcast_to([0.0, 0.0, cap_height_mm, cap_height_mm], (len(x), 4))], 2
    )
    heights = (points[:, None, :] + turned(body, turns[:, None]))[:, :, 1] - up * radius
    return CarriedLetter(
        points_mm=points,
        turns_rad=turns,
        middles_mm=middles,
        spacing_mm=spacing,
        quads_mm=points[:, None, :] + turned(corners, turns[:, None]),
        rise_mm=max(cap_height_mm, float(heights.max())),
        drop_mm=max(0.0, -float(heights.min())),
    )


def _words_before(measured: LineMeasure) -> FloatArray:
    """(n,) how many words stand to the left of each glyph's."""
    text = measured.line.text
    before = np.array([len(text[: glyph.start].split(" ")) - 1 for glyph in measured.inked], dtype=np.float64)
    left = measured.middle_em
    from_the_right = len(left) > 1 and left[before.argmax()] < left[before.argmin()]
    return before.max() - before if from_the_right else before


@lru_cache(maxsize=256)
def _join_height_em(line: SetLine) -> float | None:
    """How far above the baseline the letters of a line join; None for letters that stand apart."""
    if line.face.lines_of is not None:
        return None
    measured = measure_line(line)
    letters: dict[tuple[int, int], list[Area]] = {}
    gaps: dict[tuple[int, int], int] = {}
    for glyph in measured.inked:
        size = 1.0 if glyph.face is line.face else line.face.cap_height_em / glyph.face.cap_height_em
        (area,) = glyph_areas(glyph.face, [glyph.glyph], scale_mm_per_em=JUDGED_MM_PER_EM * size, chord_mm=0.1)
        moved = translate(area, glyph.x_em * JUDGED_MM_PER_EM, glyph.y_em * JUDGED_MM_PER_EM)
        letters.setdefault((glyph.start, glyph.end), []).append(moved)
        gaps[glyph.start, glyph.end] = glyph.gaps
    # From left to right neighbours follow each other in the text one way or the other, unless a space is between.
    pairs = [(one, other) for one, other in itertools.pairwise(letters) if one[1] == other[0] or other[1] == one[0]]
    meet = [
        (line.letter_spacing_mm == 0 or gaps[one] == gaps[other])
        and any(bool(shapely.intersects(a, b)) for a in letters[one] for b in letters[other])
        for one, other in pairs
    ]
    if not pairs or sum(meet) < JOINED_RATIO * len(pairs):
        return None
    return _headline_em(measured)


def _headline_em(measured: LineMeasure) -> float:
    """How high above the baseline the letters hang from their line; 0 for those that do not."""
    line = measured.line
    for glyph in measured.inked:
        for first, last, letter in HEADLINES:
            if first <= ord(line.text[glyph.start]) <= last and glyph.face.has(letter):
                bounds = glyph_bounds_em(glyph.face, shape(glyph.face, letter).glyphs[0].glyph)
                size = 1.0 if glyph.face is line.face else line.face.cap_height_em / glyph.face.cap_height_em
                return HEADLINE_RATIO * bounds[3] * size if bounds else 0.0
    return 0.0


def turned(points: FloatArray, turns_rad: FloatArray) -> FloatArray:
    """Points (..., 2) turned counter-clockwise about (0, 0)."""
    cos, sin = np.cos(turns_rad), np.sin(turns_rad)
    x, y = points[..., 0], points[..., 1]
    return np.stack([x * cos - y * sin, x * sin + y * cos], axis=-1)
