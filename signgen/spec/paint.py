"""The colour that letters are painted in."""

from __future__ import annotations

import re
from difflib import get_close_matches

from signgen.errors import AskError
from signgen.messages import Message

PAINTS = {
    "black": (28, 27, 26),
    "white": (244, 243, 238),
    "grey": (120, 122, 124),
    "red": (168, 34, 30),
    "green": (32, 92, 56),
    "blue": (30, 66, 120),
    "yellow": (232, 184, 40),
    "brown": (84, 52, 32),
    "gold": (190, 152, 62),
    "silver": (180, 182, 184),
}
"""Common paints as they look on wood in daylight; red, green and blue from 0 to 255 (by eye)."""


def paint_rgb(word: str, where: str) -> tuple[int, int, int]:
    """The colour of a name or of six hexadecimal digits behind a #. Raises: AskError."""
    name = word.strip().casefold()
    if name in PAINTS:
        return PAINTS[name]
    if re.fullmatch(r"#[0-9a-f]{6}", name):
        red, green, blue = (int(name[i : i + 2], 16) for i in (1, 3, 5))
        return red, green, blue
    close = get_close_matches(name, PAINTS, n=1)
    remedy = Message("spec.use_a_paint", paints=tuple(PAINTS))
    if close:
        remedy = Message("spec.did_you_mean_paint", close=close[0], paints=tuple(PAINTS))
    raise AskError.at(where, Message("spec.no_colour", word=word), remedy)
