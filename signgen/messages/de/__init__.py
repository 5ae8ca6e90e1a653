"""German: all that signgen says, a file for each room of the program."""

from __future__ import annotations

from signgen.messages.de import (
    art,
    asking,
    batches,
    cutting,
    drawing,
    files,
    general,
    glossary,
    lettering,
    lines,
    making,
    reading,
    rs274,
    shapes,
    sheet,
    shop,
    spec,
    things,
)
from signgen.messages.language import Language, together

_ROOMS = (
    art, asking, batches, cutting, drawing, files, general, glossary, lettering, lines, making, reading, rs274,
    shapes, sheet, shop, spec, things,
)  # fmt: skip

LANGUAGE = Language(code="de", table=together(*(room.WORDS for room in _ROOMS)), point=",", thousands=".")
