"""What a line of lettering is before it is set."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

from signgen.lettering.face import Face

Align = Literal["left", "centre", "right"]
Side = Literal["above", "below", "ring"]


class Arc(Struct, frozen=True, kw_only=True):
    """A circle that carries the baseline of a line.

    `side`: letters stand on the circle's top and read clockwise (`above`), stand in its bottom with their heads towards
    its middle and read counter-clockwise (`below`), or stand on it all the way round (`ring`): spread evenly, or
    (`by_words`) with letters as in a straight line, the middle of the text at the top, and the gaps between words made
    even where they nearly close the ring.
    `about_sign`: the circle's middle is the middle of the sign; otherwise the text's middle has the place that it would
    have as a straight line.
    """

    radius_mm: float
    side: Side = "above"
    about_sign: bool = False
    by_words: bool = False


class SetLine(Struct, frozen=True, kw_only=True):
    """A line to be set, at a height that is given beside it.

    `line_spacing`: from the baseline before to this one, over the cap height; between lines of unlike heights, the room
    above this line's capitals goes by their mean. `letter_spacing_mm` is added between letters, on a ring it is the
    least. `fallback`: characters that the face lacks are set in faces of the catalogue. `source`: which of the asked
    lines it is, from 0; those that a long text was broken into share it. `pen_mm`: how wide the lines of a face are cut
    that is drawn in lines; 0 for outlines. Heights are those of the letters as cut, the pen's width included.
    """

    text: str
    face: Face
    align: Align = "centre"
    line_spacing: float = 1.6
    letter_spacing_mm: float = 0.0
    arc: Arc | None = None
    fallback: bool = False
    source: int = 0
    pen_mm: float = 0.0
