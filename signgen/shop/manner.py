"""How a control wants its programs, beside their dialect: how lines and files are framed, and what is switched with the
spindle."""

from __future__ import annotations

from typing import Literal

from msgspec import Struct

Extraction = Literal["none", "m7", "m8"]
ProgramEnd = Literal["m2", "m30"]
Comments = Literal["short", "full"]
Change = Literal["none", "pause", "lengths"]
COMMENTS: tuple[Comments, ...] = ("short", "full")
EXTRACTIONS: tuple[Extraction, ...] = ("none", "m7", "m8")
PROGRAM_ENDS: tuple[ProgramEnd, ...] = ("m2", "m30")


class Manner(Struct, frozen=True, kw_only=True):
    """`extraction`: the word that switches the dust extractor on, M7 or M8, off again with M9. `warm_up_s`: how long
    the spindle runs up to speed in steps before the first program of the job cuts; 0 for not at all. `comments`:
    of each feature what it is called, or in "full" also every pass, ramp and tab, and the words of the opening line."""

    line_numbers: bool = False
    percent_lines: bool = False
    program_end: ProgramEnd = "m2"
    extraction: Extraction = "none"
    warm_up_s: float = 0.0
    comments: Comments = "short"


USUAL = Manner()
