"""What may disappoint in a text that can be set: figures smaller than capitals, letters of another face."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from signgen.lettering.face import Face
from signgen.lettering.shaping import ShapedLine
from signgen.messages import Message, Num

SHORT_FIGURES_RATIO = 0.9
"""Figures below this part of a capital's height are told about: in most faces they are within 3 % of each other."""


def numeral_warning(face: Face, lines: Sequence[str]) -> Message | None:
    """A sentence when the text has figures that the face draws much shorter than its capitals, else None."""
    ratio = face.digit_height_ratio
    if ratio is None or ratio >= SHORT_FIGURES_RATIO:
        return None
    if not any(character.isdecimal() for line in lines for character in line):
        return None
    return Message("lettering.figures_height_capitals_figures_given", name=face.name, ratio=Num(ratio, 2))


def borrowed_warnings(line: ShapedLine, face: Face) -> Iterator[Message]:
    """A sentence for each face that sets what the line's own lacks."""
    borrowed: dict[str, dict[str, None]] = {}
    for glyph in sorted(line.glyphs, key=lambda glyph: glyph.start):
        if glyph.face is not face:
            part = line.text[glyph.start : glyph.end].strip()
            if part:
                borrowed.setdefault(glyph.face.name, {})[part] = None
    for name, parts in borrowed.items():
        yield Message("lettering.lacks_letters_text_lends", name=face.name, lender=name, parts=" ".join(parts))
