"""Plain RS-274 in millimetres, for controllers that know the common words and no more.

Source for the words and their order: NIST IR 6556 (check-values section 1).
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from signgen.geometry.paths import CCW, CW, LINE
from signgen.program.blocks import RAPID, WRITTEN_MM, Program

UNITS_PER_MM = round(1 / WRITTEN_MM)

COMMENT_WIDTH = 100
"""Characters of a comment; the standard's line holds 256, people's screens less."""

ROUNDING = 1e-6
"""Feeds are written in whole millimetres a minute, rounded down, so that no limit is passed; this much is noise."""

MODES = "G17 G21 G40 G49 G54 G80 G90 G94"
WORDS = {LINE: "G1", CW: "G2", CCW: "G3", RAPID: "G0"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Plain:
    """Every line states its motion word, so that a reader may start anywhere; axis words stand where they change."""

    name: str = "plain"
    about: str = "Plain RS-274 in millimetres: G0 to G3 with I and J, one tool a file, M2 at the end."

    def write(self, program: Program) -> str:
        lines = [comment(line) for line in program.heading]
        lines += [MODES]
        lines += list(self._body(program))
        lines += ["M5", "M2"]
        return "\n".join(lines) + "\n"

    def _body(self, program: Program) -> Iterator[str]:
        moves = program.moves
        ends = np.rint(moves.ends_mm * UNITS_PER_MM).astype(np.int64)
        begin = np.vstack([ends[:1], ends[:-1]])
        centres = np.rint(np.nan_to_num(moves.centres_mm) * UNITS_PER_MM).astype(np.int64)
        notes = dict(program.notes)

        yield f"G0 Z{number(int(ends[0, 2]))}"
        yield f"S{program.cutting.spindle_rpm:.0f} M3"
        yield f"G4 P{program.spindle_start_s:g}"
        at = (None, None, int(ends[0, 2]))
        feed_now = -1
        rows = zip(
            moves.kinds.tolist(),
            ends.tolist(),
            (centres - begin[:, :2]).tolist(),
            moves.feeds_mm_per_min.tolist(),
            strict=True,
        )
        for index, (kind, end, offset, feed) in enumerate(rows):
            if index in notes:
                yield comment(notes[index])
            arc = kind in (CW, CCW)
            words = [
                letter + number(value)
                for letter, value, old in zip("XYZ", end, at, strict=True)
                if value != old or (arc and letter != "Z")
            ]
            if index == 0 or not words:
                continue
            if arc:
                words += [f"I{number(offset[0])}", f"J{number(offset[1])}"]
            if kind != RAPID and int(feed + ROUNDING) != feed_now:
                feed_now = int(feed + ROUNDING)
                words.append(f"F{feed_now}")
            at = (end[0], end[1], end[2])
            yield f"{WORDS[kind]} {' '.join(words)}"


def number(units: int) -> str:
    """Ten-thousandths as a decimal without a tail of zeros: 125000 -> '12.5', -3000 -> '-0.3', 0 -> '0'."""
    sign = "-" if units < 0 else ""
    whole, rest = divmod(abs(units), UNITS_PER_MM)
    return f"{sign}{whole}.{rest:04d}".rstrip("0").rstrip(".") if rest else f"{sign}{whole}"


def comment(text: str) -> str:
    """A comment that every reader takes: ASCII, no brackets within, never an operator message by accident.

    Accents are dropped and other letters become '?' (check-values 1.4, K2 and K4).
    """
    plain = unicodedata.normalize("NFKD", text).replace("(", "[").replace(")", "]")
    kept = (c for c in plain if not unicodedata.combining(c))
    ascii_text = "".join(c if " " <= c <= "~" else "?" for c in kept)[:COMMENT_WIDTH]
    if "".join(ascii_text.split()).upper().startswith("MSG,"):
        ascii_text = "text: " + ascii_text
    return f"({ascii_text})"


PLAIN = Plain()
