"""Faces of outlines whose strokes are of one width, as faces of lines."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from signgen.errors import AskError
from signgen.geometry.centreline import centrelines
from signgen.geometry.offsets import polygons
from signgen.geometry.paths import FloatArray
from signgen.lettering.areas import glyph_areas, stroke_ratio
from signgen.lettering.face import Face, Glyphs, Lines
from signgen.lettering.heights import glyph_of, measured_face
from signgen.messages import Message, Num
from signgen.tolerances import Tolerances

TRACED_MM_PER_EM = 100.0
TRACED = Tolerances(total_mm=0.02)
"""The size and the tolerance in which middle lines are looked for: two parts in ten thousand of the em."""

JUDGED_LETTERS = "HOESnae"
"""By these it is judged whether a face has strokes of one width."""

EVEN_RATIO, EVEN_SHARE = 1.5, 0.8
"""The middle part of the strokes' widths that counts, and how much the greatest of them may be over the least: faces
that look even have level strokes up to a third thinner than upright ones."""


@lru_cache(maxsize=64)
def lined(face: Face) -> Face:
    """A face whose letters are drawn in lines: itself, or the middle lines of its strokes. A capital stands with the
    lower ends of its lines on the baseline, as a pen's width is added there.

    Raises: AskError for a face whose strokes differ in width, or that has no I to measure them by.
    """
    if face.lines_of is not None:
        return face
    stroke = stroke_ratio(face)
    if stroke is None:
        raise AskError.at("font", Message("lettering.no_i_strokes_measured", name=face.name), _REMEDY)
    half = stroke * face.cap_height_em / 2
    spread = _spread(face, half)
    if spread > EVEN_RATIO:
        what = Message("lettering.strokes_many_widths_widest_times", name=face.name, spread=Num(spread, 1))
        raise AskError.at("font", what, _REMEDY)
    foot = _traced(face, glyph_of(face, face.height_letter), half)[0]
    down = min(float(line[:, 1].min()) for line in foot)

    @lru_cache(maxsize=512)
    def lines_of(glyph: int) -> Lines:
        moved = []
        for line in _traced(face, glyph, half)[0]:
            low = line - (0.0, down)
            low.setflags(write=False)
            moved.append(low)
        return tuple(moved)

    return measured_face(
        Glyphs(name=face.name, label=face.label, path=face.path, number=face.number, font=face.font, lines_of=lines_of)
    )


_REMEDY = Message("lettering.use_face_single_lines_hershey")


def _spread(face: Face, half_em: float) -> float:
    """The widest over the thinnest stroke, the most unusual of both left out."""
    letters = [letter for letter in JUDGED_LETTERS if face.has(letter)] or [face.height_letter]
    widths = np.concatenate([_traced(face, glyph_of(face, letter), half_em)[1] for letter in letters])
    if not len(widths):
        return 1.0
    low, high = np.quantile(widths, [(1 - EVEN_SHARE) / 2, (1 + EVEN_SHARE) / 2])
    return float(high / low)


@lru_cache(maxsize=4096)
def _traced(face: Face, glyph: int, half_em: float) -> tuple[tuple[FloatArray, ...], FloatArray]:
    """The middle lines of a glyph in em, and the half widths along them."""
    (area,) = glyph_areas(face, [glyph], scale_mm_per_em=TRACED_MM_PER_EM, chord_mm=TRACED.chord_mm)
    found = [centrelines(part, half_em * TRACED_MM_PER_EM, TRACED) for part in polygons(area)]
    lines = tuple(line / TRACED_MM_PER_EM for each in found for line in each.lines)
    widths = [each.half_widths_mm for each in found]
    return lines, np.concatenate(widths) if widths else np.zeros(0)
