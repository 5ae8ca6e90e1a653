"""German: all that signgen says, a file for each room. A file is read without being named here."""

from __future__ import annotations

from signgen.messages.language import Language, words_below

LANGUAGE = Language(code="de", table=words_below(__name__), point=",", thousands=".")
