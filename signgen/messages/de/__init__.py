"""German: all that signgen says. A file for each room of the program, as in English."""

from __future__ import annotations

from signgen.messages.de import general, making, reading
from signgen.messages.language import Language, together

LANGUAGE = Language(code="de", table=together(general.WORDS, making.WORDS, reading.WORDS), point=",", thousands=".")
