"""German: all that signgen says, a file for each room. A file is read without being named here."""

from __future__ import annotations

from signgen.messages.language import Language, words_below

_ASCII = {"ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue", "ß": "ss", "‚": "'", "‘": "'", "–": "-"}

LANGUAGE = Language(code="de", table=words_below(__name__), point=",", thousands=".", spellings=_ASCII)
