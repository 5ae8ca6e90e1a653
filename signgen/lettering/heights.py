"""How high the letters of a face are, measured on their outlines."""

from __future__ import annotations

from msgspec.structs import asdict

from signgen.errors import AskError
from signgen.lettering.face import Face, Glyphs
from signgen.lettering.outlines import glyph_bounds_em
from signgen.messages import Message

HEIGHT_LETTERS = "HIEX1אدΗНक"
"""A capital's height is that of H; a font without Latin is measured by the first of these that it has."""

LANGUAGE = "und"
"""Undetermined. HarfBuzz would otherwise take the language of the computer, and the same text would differ there."""


def measured_face(glyphs: Glyphs) -> Face:
    """The face with its heights.

    Raises: AskError if no letter of the face can be measured.
    """
    characters = frozenset(glyphs.font.face.unicodes)
    tops = ((letter, _top_em(glyphs, characters, letter)) for letter in HEIGHT_LETTERS)
    letter, top = next(((letter, top) for letter, top in tops if top is not None and top > 0), ("", 0.0))
    if not letter:
        raise AskError.at(
            "font",
            Message("lettering.none_letters_height_measured_h", name=glyphs.name),
            Message("lettering.use_another_font"),
        )
    return Face(
        **asdict(glyphs),
        characters=characters,
        height_letter=letter,
        cap_height_em=top,
        x_height_em=_top_em(glyphs, characters, "x"),
        digit_height_em=_top_em(glyphs, characters, "1"),
    )


def glyph_of(glyphs: Glyphs, letter: str) -> int:
    """The glyph of one letter by itself, with lining figures; 0 where there is none."""
    import uharfbuzz

    buffer = uharfbuzz.Buffer()
    buffer.add_str(letter)
    buffer.guess_segment_properties()
    buffer.script = buffer.script or "Zyyy"
    buffer.language = LANGUAGE
    uharfbuzz.shape(glyphs.font, buffer, {"lnum": True})
    glyph: int = buffer.glyph_infos[0].codepoint
    return glyph


def _top_em(glyphs: Glyphs, characters: frozenset[int], letter: str) -> float | None:
    """None where the face has no such letter; 0 for a blank one."""
    if ord(letter) not in characters:
        return None
    bounds = glyph_bounds_em(glyphs, glyph_of(glyphs, letter))
    return bounds[3] if bounds else 0.0
