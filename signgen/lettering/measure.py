"""What lines of lettering take up at any size, by the exact bounds of their glyphs and without their areas.

Fitting a text "as large as fits" asks this many times and builds outlines once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from signgen.errors import AskError
from signgen.geometry.paths import FloatArray
from signgen.lettering.faces import Face
from signgen.lettering.outlines import glyph_bounds_em
from signgen.lettering.shaping import ShapedLine, described, has_ink_expected, shape_lines

Align = Literal["left", "centre", "right"]
Box = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """What lines of lettering would take up at any size, known without their outlines.

    lines: those shaped. x_em, y_em: per line (n, 2) ink from and to of each glyph that shows, y up from the line's
    baseline. gaps: per line (n,) letter spaces left of it.
    """

    lines: tuple[ShapedLine, ...]
    cap_height_em: float
    line_spacing: float
    letter_spacing_mm: float
    x_em: tuple[FloatArray, ...]
    y_em: tuple[FloatArray, ...]
    gaps: tuple[FloatArray, ...]

    def boxes_mm(self, cap_height_mm: float, align: Align) -> tuple[Box, ...]:
        """Ink (x0, y0, x1, y1) of each line that has any, in the block that `set_lines` centres about (0, 0)."""
        boxes = self._raw_boxes_mm(cap_height_mm)
        return tuple(
            (box[0] + dx, box[1] + dy, box[2] + dx, box[3] + dy)
            for box, (dx, dy) in zip(boxes, self._shifts_mm(boxes, align), strict=True)
            if box is not None
        )

    def origins_mm(self, cap_height_mm: float, align: Align) -> tuple[tuple[float, float], ...]:
        """Where each line's glyphs start on its baseline in that block."""
        drop = self.line_spacing * cap_height_mm
        shifts = self._shifts_mm(self._raw_boxes_mm(cap_height_mm), align)
        return tuple((dx, dy - number * drop) for number, (dx, dy) in enumerate(shifts))

    def _raw_boxes_mm(self, cap_height_mm: float) -> tuple[Box | None, ...]:
        """Ink of each line whose text starts at x = 0, the first baseline at y = 0; None for one without ink."""
        scale = cap_height_mm / self.cap_height_em
        boxes: list[Box | None] = []
        for number, (x, y, gaps) in enumerate(zip(self.x_em, self.y_em, self.gaps, strict=True)):
            if not len(gaps):
                boxes.append(None)
                continue
            across = x * scale + gaps[:, None] * self.letter_spacing_mm
            up = y * scale - number * self.line_spacing * cap_height_mm
            boxes.append((float(across.min()), float(up.min()), float(across.max()), float(up.max())))
        return tuple(boxes)

    def _shifts_mm(self, boxes: Sequence[Box | None], align: Align) -> tuple[tuple[float, float], ...]:
        """What moves each line into its place in the centred block."""
        inked = [box for box in boxes if box is not None]
        dy = -(min(box[1] for box in inked) + max(box[3] for box in inked)) / 2
        half = max(box[2] - box[0] for box in inked) / 2
        places = {
            "left": lambda box: -half - box[0],
            "centre": lambda box: -(box[0] + box[2]) / 2,
            "right": lambda box: half - box[2],
        }
        return tuple((places[align](box) if box is not None else 0.0, dy) for box in boxes)


def measure(lines: Sequence[str], face: Face, line_spacing: float, letter_spacing_mm: float) -> Measure:
    """The ink of the lines at any size. `line_spacing` is baseline to baseline over cap height.

    Raises: AskError if the text shows nothing, or has characters that the face lacks or cannot draw.
    """
    _check_text(lines)
    shaped = shape_lines(face, lines, spaced=letter_spacing_mm != 0)
    x_em, y_em, gaps = [], [], []
    for line in shaped:
        _check_ink(face, line)
        inked = [(glyph, box) for glyph in line.glyphs if (box := glyph_bounds_em(face, glyph.glyph))]
        x_em.append(np.array([(g.x_em + box[0], g.x_em + box[2]) for g, box in inked]).reshape(-1, 2))
        y_em.append(np.array([(g.y_em + box[1], g.y_em + box[3]) for g, box in inked]).reshape(-1, 2))
        gaps.append(np.array([g.gaps for g, _ in inked], dtype=np.float64))
    return Measure(
        lines=shaped,
        cap_height_em=face.cap_height_em,
        line_spacing=line_spacing,
        letter_spacing_mm=letter_spacing_mm,
        x_em=tuple(x_em),
        y_em=tuple(y_em),
        gaps=tuple(gaps),
    )


def _check_text(lines: Sequence[str]) -> None:
    if not any(has_ink_expected(line) for line in lines):
        raise AskError.at("text", "The text shows nothing.", "Give at least one letter or digit.")


def _check_ink(face: Face, line: ShapedLine) -> None:
    """Refuses letters that would be dropped without a word: blank glyphs, and colour pictures."""
    seen = {glyph.start for glyph in line.glyphs if glyph_bounds_em(face, glyph.glyph)}
    seen -= {glyph.start for glyph in line.glyphs if _is_coloured(face, glyph.glyph)}
    clusters = dict.fromkeys(line.text[glyph.start : glyph.end] for glyph in line.glyphs if glyph.start not in seen)
    blank = [cluster[0] for cluster in clusters if has_ink_expected(cluster)]
    if blank:
        names = ", ".join(map(described, blank))
        raise AskError.at("text", f"{face.name} has no outline for {names}.", "Use another font or leave it out.")


def _is_coloured(face: Face, glyph: int) -> bool:
    """Whether the glyph is a picture in colours, whose outline alone is not what its maker drew."""
    font = face.font.face
    return bool(
        (font.has_color_layers and font.get_glyph_color_layers(glyph))
        or (font.has_color_paint and font.glyph_has_color_paint(glyph))
    )
