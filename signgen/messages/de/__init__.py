"""German: all that signgen says. A file for each room of the program, as in English."""

from __future__ import annotations

from signgen.messages.de import files, general, making, reading
from signgen.messages.language import Language, together

LANGUAGE = Language(
    code="de", table=together(files.WORDS, general.WORDS, making.WORDS, reading.WORDS), point=",", thousands="."
)
