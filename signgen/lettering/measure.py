"""What lines of lettering take up at any size, by the exact bounds of their glyphs and without their areas.

Fitting a text "as large as fits" asks this many times and builds outlines once.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from functools import lru_cache

import numpy as np
from msgspec import Struct

from signgen.errors import AskError, Problem
from signgen.geometry.paths import FloatArray
from signgen.lettering.face import Face
from signgen.lettering.line import Align, SetLine
from signgen.lettering.outlines import glyph_bounds_em
from signgen.lettering.shaping import ShapedGlyph, ShapedLine, check_characters, described, has_ink_expected, shape
from signgen.messages import Message

__all__ = ["Align", "Box", "LineMeasure", "ink_of", "measure_line", "measure_lines"]

Box = tuple[float, float, float, float]


class LineMeasure(Struct, frozen=True, kw_only=True):
    """What a line would take up at any size, known without its outlines.

    Of each of its n glyphs that show, `inked`, read-only: `x_em`, `y_em` (n, 2) ink from and to, y up from the
    baseline; `gaps` (n,) letter spaces left of it; `middle_em` (n,) middle of the room on the baseline of the letter
    that it belongs to.
    """

    line: SetLine
    shaped: ShapedLine
    inked: tuple[ShapedGlyph, ...]
    x_em: FloatArray
    y_em: FloatArray
    gaps: FloatArray
    middle_em: FloatArray

    @property
    def shows(self) -> bool:
        return len(self.gaps) > 0

    def scale(self, cap_height_mm: float) -> float:
        """Millimetres to the em; the middle of a pen stays half its width inside the height asked for."""
        return (cap_height_mm - self.line.pen_mm) / self.line.face.cap_height_em

    def inks_mm(self, cap_height_mm: float, spacing_mm: float) -> tuple[FloatArray, FloatArray]:
        """(n, 2) twice: the glyphs' ink across and up, of the line set straight from (0, 0)."""
        scale, pen = self.scale(cap_height_mm), self.line.pen_mm
        across = self.x_em * scale + self.gaps[:, None] * spacing_mm + (-pen / 2, pen / 2)
        return across, self.y_em * scale + (0.0, pen)

    def box_mm(self, cap_height_mm: float) -> Box | None:
        """Ink (x0, y0, x1, y1) of the line set straight from (0, 0); None when it shows nothing."""
        if not self.shows:
            return None
        across, up = self.inks_mm(cap_height_mm, self.line.letter_spacing_mm)
        return float(across.min()), float(up.min()), float(across.max()), float(up.max())

    def width_mm(self, cap_height_mm: float) -> float:
        """Width of that ink, 0 when there is none."""
        box = self.box_mm(cap_height_mm)
        return 0.0 if box is None else box[2] - box[0]

    def height_of_width_mm(self, width_mm: float) -> float:
        """The cap height at which the ink is that wide; 0 when letter spacing alone makes it wider.

        The width is convex in the height, so Newton's steps from a height that is too large close in on it.
        """
        spacing, pen = self.gaps * self.line.letter_spacing_mm, self.line.pen_mm
        width_mm -= pen
        extent = float(self.x_em[:, 1].max() - self.x_em[:, 0].min())
        scale = (width_mm + float(np.ptp(spacing))) / extent
        for _ in range(len(self.gaps) + 2):  # each step leaves at least one glyph behind for good
            left, right = self.x_em[:, 0] * scale + spacing, self.x_em[:, 1] * scale + spacing
            first, last = int(left.argmin()), int(right.argmax())
            slope = self.x_em[last, 1] - self.x_em[first, 0]
            if slope <= 0:
                return 0.0
            better = scale - (right[last] - left[first] - width_mm) / slope
            if better >= scale:
                break
            scale = better
        return max(0.0, float(scale)) * self.line.face.cap_height_em + pen if scale > 0 else 0.0


def measure_lines(lines: Sequence[SetLine]) -> tuple[LineMeasure, ...]:
    """The ink of the lines at any size.

    Raises: AskError if the text shows nothing, or has characters that the face lacks (those of all lines) or cannot
        draw.
    """
    if not any(has_ink_expected(line.text) for line in lines):
        raise AskError.at(
            "text", Message("lettering.text_shows_nothing"), Message("lettering.give_least_one_letter_digit")
        )
    problems: dict[Problem, None] = {}
    alike: dict[tuple[Face, bool], list[str]] = {}
    for line in lines:
        alike.setdefault((line.face, line.fallback), []).append(line.text)
    for (face, fallback), texts in alike.items():
        try:
            check_characters(face, texts, fallback=fallback)
        except AskError as error:
            problems.update(dict.fromkeys(error.problems))
    if problems:
        raise AskError(problems)
    return tuple(map(measure_line, lines))


@lru_cache(maxsize=4096)
def measure_line(line: SetLine) -> LineMeasure:
    """As `measure_lines`, for one line, which may show nothing."""
    ring = line.arc is not None and line.arc.side == "ring"
    # Between the end of a ring's words and their beginning lies a space, as between the words.
    text = f"{line.text} " if ring and " " in line.text.strip() else line.text
    shaped = shape(line.face, text, spaced=line.letter_spacing_mm != 0 or ring, fallback=line.fallback)
    _check_ink(shaped)
    rooms = _rooms(shaped.glyphs)
    inked = [(glyph, box) for glyph in shaped.glyphs if (box := ink_of(line.face, glyph)) is not None]
    arrays = (
        np.array([(box[0], box[2]) for _, box in inked]).reshape(-1, 2),
        np.array([(box[1], box[3]) for _, box in inked]).reshape(-1, 2),
        np.array([glyph.gaps for glyph, _ in inked], dtype=np.float64),
        np.array([sum(rooms[glyph.start, glyph.end]) / 2 for glyph, _ in inked]),
    )
    for array in arrays:
        array.setflags(write=False)
    x_em, y_em, gaps, middle_em = arrays
    return LineMeasure(
        line=line,
        shaped=shaped,
        inked=tuple(glyph for glyph, _ in inked),
        x_em=x_em,
        y_em=y_em,
        gaps=gaps,
        middle_em=middle_em,
    )


def ink_of(face: Face, glyph: ShapedGlyph) -> Box | None:
    """Bounds of a glyph's ink where it stands on the line, in em of the line's face; None for a blank one."""
    box = glyph_bounds_em(glyph.face, glyph.glyph)
    if box is None:
        return None
    size = 1.0 if glyph.face is face else face.cap_height_em / glyph.face.cap_height_em
    x, y = glyph.x_em, glyph.y_em
    return x + box[0] * size, y + box[1] * size, x + box[2] * size, y + box[3] * size


def _rooms(glyphs: Iterable[ShapedGlyph]) -> dict[tuple[int, int], tuple[float, float]]:
    """Where on the baseline the room of each cluster begins and ends; a mark has none of its own."""
    rooms: dict[tuple[int, int], tuple[float, float]] = {}
    for glyph in glyphs:
        low, high = rooms.get((glyph.start, glyph.end), (math.inf, -math.inf))
        ends = (glyph.pen_em, glyph.pen_em + glyph.advance_em)
        rooms[glyph.start, glyph.end] = (min(low, *ends), max(high, *ends))
    return rooms


def _check_ink(line: ShapedLine) -> None:
    """Refuses letters that would be dropped without a word: blank glyphs, and colour pictures."""
    seen = {glyph.start for glyph in line.glyphs if glyph_bounds_em(glyph.face, glyph.glyph)}
    seen -= {glyph.start for glyph in line.glyphs if _is_coloured(glyph.face, glyph.glyph)}
    clusters = {line.text[glyph.start : glyph.end]: glyph.face for glyph in line.glyphs if glyph.start not in seen}
    blank = {cluster[0]: face for cluster, face in clusters.items() if has_ink_expected(cluster)}
    if blank:
        names = ", ".join(map(described, blank))
        face = next(iter(blank.values()))
        raise AskError.at(
            "text",
            Message("lettering.no_outline", name=face.name, names=names),
            Message("lettering.use_another_font_leave_out"),
        )


def _is_coloured(face: Face, glyph: int) -> bool:
    """Whether the glyph is a picture in colours, whose outline alone is not what its maker drew."""
    font = face.font.face
    return bool(
        (font.has_color_layers and font.get_glyph_color_layers(glyph))
        or (font.has_color_paint and font.glyph_has_color_paint(glyph))
    )
