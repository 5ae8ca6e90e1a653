"""English: all that signgen says. A file for each room of the program."""

from __future__ import annotations

from signgen.messages.en import files, general, making, reading
from signgen.messages.language import Language, together

LANGUAGE = Language(code="en", table=together(files.WORDS, general.WORDS, making.WORDS, reading.WORDS))
