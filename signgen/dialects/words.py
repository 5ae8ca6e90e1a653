"""Numbers and comments as every reader takes them."""

from __future__ import annotations

import unicodedata

from msgspec import Struct

COMMENT_WIDTH = 100
"""Characters of a comment; the standard's line holds 256, people's screens less."""

ROUNDING = 1e-6
"""Feeds are rounded down, so that no limit is passed; this much of the last decimal is noise."""


class Unit(Struct, frozen=True, kw_only=True):
    """A unit of length as a program writes it: its code, its millimetres, and the decimals of places and of feeds."""

    code: str
    mm: float
    decimals: int
    feed_decimals: int

    @property
    def grid_mm(self) -> float:
        """The last decimal of a place."""
        return self.mm / float(10**self.decimals)

    def feed(self, mm_per_min: float) -> str:
        """A feed in this unit a minute, rounded down."""
        step = 10**self.feed_decimals
        return decimal(int(mm_per_min / self.mm * step + ROUNDING), self.feed_decimals)


MILLIMETRES = Unit(code="G21", mm=1.0, decimals=4, feed_decimals=0)
INCHES = Unit(code="G20", mm=25.4, decimals=5, feed_decimals=2)


def decimal(units: int, decimals: int) -> str:
    """Whole units of the last decimal without a tail of zeros: with four, 125000 -> '12.5', -3000 -> '-0.3'."""
    sign = "-" if units < 0 else ""
    whole, rest = divmod(abs(units), 10**decimals)
    return f"{sign}{whole}.{rest:0{decimals}d}".rstrip("0").rstrip(".") if rest else f"{sign}{whole}"


AT_ONCE = "!~?"
"""Characters that serial controls act on as soon as they come (common practice)."""


def comment(text: str, message: bool = False) -> str:
    """A comment that every reader takes: ASCII, no brackets within, an operator message only when it is meant as one.

    Accents are dropped and other letters become '_'; so do characters that many controls take for commands wherever
    they stand: the ';' of their own comments and '!', '~', '?' as they come over a serial line (common practice).
    Source: NIST IR 6556, 3.3.4 for the rest.
    """
    plain = unicodedata.normalize("NFKD", text).replace("(", "[").replace(")", "]").replace(";", ",")
    kept = (c for c in plain if not unicodedata.combining(c))
    ascii_text = "".join(c if " " <= c <= "~" and c not in AT_ONCE else "_" for c in kept)[:COMMENT_WIDTH]
    if message:
        return f"(MSG, {ascii_text})"
    if "".join(ascii_text.split()).upper().startswith("MSG,"):
        ascii_text = "text: " + ascii_text
    return f"({ascii_text})"
